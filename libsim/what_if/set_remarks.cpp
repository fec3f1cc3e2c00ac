#include "libsim/what_if/set_remarks.h"

#include "libsim/scene/wording.h"
#include "libsim/what_if/remarks_on_camera.h"
#include "libsim/what_if/remarks_on_light.h"
#include "libsim/what_if/remarks_on_picture.h"
#include "libsim/what_if/remarks_on_shading.h"
#include "libsim/what_if/remarks_on_standing.h"

namespace fillside {

SetRemarks look_over(const Description& description, const Scene& scene, const Effort& effort) {
  SetRemarks remarks;
  remark_on_picture(description, scene, remarks);
  remark_on_shading(description, scene, remarks);
  remark_on_standing(description, scene, remarks);
  remark_on_camera(description, scene, remarks);
  remark_on_darkness(description, scene, effort, remarks);
  remark_on_mirror_images(description, scene, effort, remarks);
  caution_on_sun(description, scene, remarks);
  for (std::vector<Problem>* list : {&remarks.warnings, &remarks.cautions}) {
    *list = in_order(std::move(*list));
    attach_source_lines(*list, description.file, description.text);
  }
  return remarks;
}

}  // namespace fillside
