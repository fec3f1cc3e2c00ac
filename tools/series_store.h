// What a series has finished, kept in a folder, so that an interrupted run goes on where it stopped.
#pragma once

#include <filesystem>
#include <map>
#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <vector>

#include "libsim/scene/description.h"
#include "libsim/view/picture.h"
#include "libsim/what_if/effort.h"
#include "libsim/what_if/series.h"

namespace fillside::tools {

class SeriesStore {
 public:
  /// `light_factor` is that of the series' anchor, 1 without one. What is kept goes into the first folder,
  /// made with the first file; it is looked for in all of them.
  SeriesStore(std::vector<std::filesystem::path> folders, const Effort& effort, double light_factor);

  /// The figures of that set when they were measured with the same program, effort and anchor; nothing when
  /// one of them is missing or the file is not ours.
  std::optional<FiguresRead> kept(const Description& description,
                                  const std::vector<SeriesFigure>& figures) const;
  /// Whole or not at all; figures kept before stay.
  void keep(const Description& description, const std::vector<SeriesFigure>& figures,
            const FiguresRead& read) const;

  /// The same for the developed picture; `look` says how it was taken and developed.
  std::optional<Picture> kept_picture(const Description& description, const std::string& look) const;
  void keep_picture(const Description& description, const std::string& look, const Picture& picture) const;

  const std::filesystem::path& folder() const { return folders_.front(); }

 private:
  std::string name_of(const Description& description, const std::string& ending) const;
  nlohmann::ordered_json identity(const Description& description) const;

  std::vector<std::filesystem::path> folders_;
  Effort effort_;
  double light_factor_;
  mutable std::map<std::string, std::string> models_;  ///< fingerprints by file
};

}  // namespace fillside::tools
