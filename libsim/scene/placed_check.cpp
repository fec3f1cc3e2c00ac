#include "libsim/scene/placed_check.h"

#include "libsim/scene/footing_check.h"
#include "libsim/scene/instrument_check.h"
#include "libsim/scene/lamp_check.h"
#include "libsim/scene/passage_check.h"
#include "libsim/scene/room_fit_check.h"

namespace fillside {

void check_placed(const Description& description, std::vector<Problem>& problems) {
  const PlacedSet set(description);
  check_room_fit(set, problems);
  check_footings(set, problems);
  check_passages(set, problems);
  check_placed_lamps(set, problems);
  check_instruments(set, problems);
}

}  // namespace fillside
