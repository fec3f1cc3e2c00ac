#include "libsim/scene/check.h"

#include "libsim/scene/anchor_check.h"
#include "libsim/scene/camera_check.h"
#include "libsim/scene/claim_check.h"
#include "libsim/scene/daylight.h"
#include "libsim/scene/lamp_check.h"
#include "libsim/scene/pictures.h"
#include "libsim/scene/placed_check.h"
#include "libsim/scene/room_check.h"
#include "libsim/scene/spot_check.h"
#include "libsim/scene/surface_check.h"
#include "libsim/scene/wording.h"

namespace fillside {

std::vector<Problem> check(const Description& description) {
  std::vector<Problem> problems;
  check_surfaces(description, problems);
  check_pictures(description, problems);
  check_lamps(description, problems);
  check_room(description, problems);
  check_daylight(description, problems);
  check_spots(description, problems);
  check_camera_keys(description, problems);
  check_anchor(description, problems);
  if (!any_error(problems)) check_placed(description, problems);  // else its finds would only repeat those
  check_claims(description, problems);
  attach_source_lines(problems, description.file, description.text);
  return in_order(std::move(problems));
}

}  // namespace fillside
