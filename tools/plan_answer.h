// A set's plan, worked out: its card with readings and cautions, as text, as a page and for programs.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "libsim/what_if/cut_list.h"
#include "libsim/what_if/expected_readings.h"
#include "libsim/what_if/set_card.h"
#include "libsim/writers/plan_sheet.h"

namespace fillside::tools {

struct PlanAnswer {
  const Description& description;
  Effort effort;
  SetReading reading;
  ExposurePlan plan;
  std::vector<ExpectedReading> readings;
  SetCard card;  ///< with its last step
};

PlanAnswer plan_answer(const Description& description, const Scene& set, SetReading reading,
                       const Effort& effort);

/// "scene 4f.., seed 1, precision 0.05 stop, fillside 0.1.0": what a sheet says at its foot.
std::string sheet_caption(const Description& description, const Effort& effort);

PlanSheet plan_sheet_of(const PlanAnswer& answer);
nlohmann::ordered_json plan_json(const PlanAnswer& answer);
nlohmann::ordered_json cut_json(const Description& description, const CutList& list);

}  // namespace fillside::tools
