// A lesson, worked out: the sheets, the worksheet and the answers that are made of it.
#pragma once

#include <cstdint>
#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "libsim/scene/lesson.h"
#include "libsim/writers/lesson_page.h"
#include "tools/series_answer.h"
#include "tools/series_pictures.h"

namespace fillside::tools {

/// So many pictures have room on a page, and letters in the alphabet to spare.
inline constexpr std::size_t kMostLessonValues = 12;

struct LessonAnswer {
  const Description& description;
  LessonSection lesson;
  SeriesAnswer series;
  Settings settings;  ///< of all pictures
  std::vector<Picture> pictures;
  std::vector<std::size_t> order;  ///< which point stands at A, B, C, ...
};

/// The numbers 0 to count - 1 in an order that the seed alone decides.
std::vector<std::size_t> shuffled(std::size_t count, std::uint64_t seed);

/// The pictures with what they show burned in.
Picture lesson_sheet(const LessonAnswer& answer);
/// The same pictures in the shuffled order, with letters and nothing else.
Picture blank_sheet(const LessonAnswer& answer);

LessonPage worksheet_of(const LessonAnswer& answer);
LessonPage answers_of(const LessonAnswer& answer);
std::string answers_text(const LessonAnswer& answer);
nlohmann::ordered_json lesson_json(const LessonAnswer& answer);

}  // namespace fillside::tools
