// The command line as typed, checked: one struct for all verbs. Only arguments.cpp knows the argument reader.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "libsim/base/instant.h"
#include "libsim/base/quantity.h"
#include "libsim/what_if/cut_list.h"
#include "libsim/what_if/place.h"
#include "libsim/what_if/series.h"
#include "tools/shard.h"
#include "tools/variant.h"

namespace fillside::tools {

/// How well each verb measures when the options do not say.
inline constexpr Stops kCheckPrecision = stops(0.02), kMeterPrecision = stops(0.05),
                       kMapPrecision = stops(0.15), kPicturePrecision = stops(0.15),
                       kCalendarPrecision = stops(0.02), kComparePrecision = stops(0.02),
                       kPlacePrecision = stops(0.05), kSeriesPrecision = stops(0.03),
                       kSensitivityPrecision = stops(0.01), kRulesPrecision = stops(0.03),
                       kReportPrecision = stops(0.02);
/// How long each picture of a report is taken.
inline constexpr Duration kReportSeconds = seconds(15.0);

struct Arguments {
  std::string verb;
  std::vector<std::string> scenes;
  std::vector<std::string> edits;  ///< --set
  std::optional<Stops> precision;
  std::optional<Duration> seconds;
  std::optional<std::uint64_t> seed;
  int threads = 0;
  bool unbiased = false;  ///< map, render
  std::string folder = ".";
  std::string stem;  ///< --name: what the files are called; empty: as the scene
  bool json = false, quiet = false;
  // check
  bool full = false, light = false;
  // meter
  bool exposure = false, shadows = false, relief = false, casts = false;
  // map
  std::vector<std::string> figures;
  std::string plane = "table";
  int cells = 72;
  bool empty_spot = false;
  // render
  std::optional<int> pixels;
  Stops brighter = stops(0.0);
  bool zebra = false, glare = false, layers = false, clay = false;
  // compare
  std::vector<Variant> variants;  ///< its --map words stand in `figures`
  bool pictures = false;
  // series
  std::vector<SeriesAxis> axes;  ///< --vary; its --figure words stand in `figures`
  std::optional<Shard> shard;
  bool merge = false;
  std::vector<std::string> merged;  ///< --merge: folders; empty: the one of -o
  // place
  std::vector<Want> wants;
  std::vector<Freedom> freedoms;  ///< --move
  std::optional<Preference> preference;
  bool may_show = false, may_shade = false;
  // sensitivity
  std::vector<std::string> keys, off_by;  ///< its --of words stand in `figures`
  // plan
  bool cut = false, back = false;
  std::vector<StockSize> stock, prices;
  Length kerf = metres(0.0);
  // rules
  std::vector<int> rules;  ///< their numbers; empty: all
  // calendar
  std::optional<Instant> date;    ///< --date: at midnight; the offset is another's business
  std::optional<int> offset_min;  ///< --offset
  std::optional<int> year;
  std::optional<Duration> slowest;
  int iso = 100;
  int step_min = 30;
  int facings = 1;
  // report
  std::string page;  ///< the file; empty: after the scene
  // scene
  std::string new_file;
  bool schema = false;  ///< --schema
  bool catalogue = false;
  /// The command for the files' metadata, quoted for a shell; without what cannot change a file (threads,
  /// folder).
  std::string command;
};

/// Nothing to run: print the text (help, version or what is wrong) and end with the status.
struct NothingToRun {
  std::string text;
  bool to_stderr = false;
  int status = 0;
};

std::variant<Arguments, NothingToRun> read_arguments(int count, const char* const* words);

}  // namespace fillside::tools
