#include "libsim/geometry/obj_scan.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdint>
#include <iterator>

#include "libsim/geometry/obj_numbers.h"
#include "libsim/geometry/obj_words.h"

namespace fillside {
namespace {

using Words = std::vector<ObjWord>;

/// Curves, surfaces and the like: real OBJ, but no faces.
constexpr std::array<std::string_view, 6> kLeftOut{"l", "p", "curv", "curv2", "surf", "call"};
/// Words that say nothing about the shape of faces, or belong to what is left out.
constexpr std::array<std::string_view, 26> kOfNoMatter{
    "s",        "vp",     "cstype", "deg",        "bmat",      "step",  "parm",  "trim", "hole",
    "scrv",     "sp",     "end",    "con",        "mg",        "lod",   "bevel", "csh",  "c_interp",
    "d_interp", "usemap", "maplib", "shadow_obj", "trace_obj", "ctech", "stech", "bsp"};

class Scan {
 public:
  Scan(std::string_view text, const std::string& file, std::size_t most_triangles)
      : words_(text), file_(file), most_triangles_(most_triangles) {
    result_.plain.reserve(text.size() + 64);
  }

  ObjScan read() {
    Words line;
    while (!is_full() && words_.next_line(line)) read_line(line);
    if (!is_full()) check_later_indices();
    if (left_out_ > 0)
      warn(first_left_out_,
           fmt::format("{} lines, points, curves or free-form surfaces are left out", left_out_),
           "export the model as polygons");
    return std::move(result_);
  }

 private:
  struct Count {
    std::string_view what;
    std::int64_t seen = 0;
  };
  struct LaterIndex {
    ObjWord word;
    std::int64_t index;
    std::size_t list;
  };

  bool is_full() const { return error_count_ >= kMostObjProblems || too_many_; }

  void report(const ObjWord& word, std::string message, std::string remedy, Severity severity) {
    result_.problems.push_back({{file_, word.line, word.column},
                                std::move(message),
                                std::move(remedy),
                                severity,
                                std::string(words_.written_line(word))});
  }
  void fault(const ObjWord& word, std::string message, std::string remedy) {
    ++error_count_;
    report(word, std::move(message), std::move(remedy), Severity::error);
  }
  void warn(const ObjWord& word, std::string message, std::string remedy) {
    report(word, std::move(message), std::move(remedy), Severity::warning);
  }

  void read_line(const Words& line) {
    const std::string_view keyword = line.front().text;
    if (keyword == "v") {
      read_vertex(line);
    } else if (keyword == "f") {
      read_face(line);
    } else if (keyword == "vt") {
      read_picture_place(line);
    } else if (keyword == "vn") {
      read_other(line, 3, 3, 2);
    } else if (keyword == "usemtl") {
      name("usemtl", line);
    } else if (keyword == "g" || keyword == "o") {
      name("g", line);
    } else if (keyword == "mtllib") {
      read_material_file(line);
    } else if (std::ranges::count(kLeftOut, keyword) > 0) {
      if (left_out_++ == 0) first_left_out_ = line.front();
    } else if (std::ranges::count(kOfNoMatter, keyword) == 0) {
      fault(line.front(), fmt::format("'{}' is not a word of an OBJ file", obj_printable(keyword)),
            "is this an OBJ file?");
    }
  }

  /// A finite number of sensible size, else a fault.
  bool read_number(const ObjWord& word, double& value) {
    const ObjNumber number = obj_number(word.text);
    if (!number.fault.empty()) fault(word, number.fault, number.remedy);
    value = number.value;
    return number.fault.empty();
  }

  bool read_numbers(const Words& line, std::array<double, 8>& values) {
    bool good = true;
    for (std::size_t i = 1; i < line.size(); ++i)
      good = read_number(line[i], values[std::min<std::size_t>(i, 8) - 1]) && good;
    return good;
  }

  /// x y z, perhaps a weight, perhaps a colour; only the place is kept.
  void read_vertex(const Words& line) {
    ++lists_[0].seen;
    std::array<double, 8> values{};
    const std::size_t count = line.size() - 1;
    const bool good = read_numbers(line, values);
    if (count != 3 && count != 4 && count != 6 && count != 7)
      fault(line.front(), fmt::format("a vertex of {} numbers", count), "write v x y z");
    else if (good)
      fmt::format_to(std::back_inserter(result_.plain), "v {} {} {}\n", values[0], values[1], values[2]);
  }

  /// A place on a picture; a third number, for pictures with depth, is left out.
  void read_picture_place(const Words& line) {
    const std::array<double, 8> values = read_other(line, 1, 3, 1);
    fmt::format_to(std::back_inserter(result_.plain), "vt {} {}\n", values[0], values[1]);
  }

  /// Numbers that are counted and checked; normals are not kept.
  std::array<double, 8> read_other(const Words& line, std::size_t least, std::size_t most, std::size_t list) {
    ++lists_[list].seen;
    std::array<double, 8> values{};
    read_numbers(line, values);
    const std::size_t count = line.size() - 1;
    if (count < least || count > most)
      fault(
          line.front(), fmt::format("'{}' with {} numbers", line.front().text, count),
          least == most ? fmt::format("it takes {}", least) : fmt::format("it takes {} to {}", least, most));
    return values;
  }

  void read_face(const Words& line) {
    const std::size_t count = line.size() - 1;
    if (count < 3)
      return fault(line.front(), fmt::format("a face of {} corners", count), "a face takes at least 3");
    if (count > kMostObjFaceCorners)
      return fault(line.front(), fmt::format("a face of {} corners", count),
                   fmt::format("split faces of more than {} corners", kMostObjFaceCorners));
    triangles_ += count - 2;
    if (triangles_ > most_triangles_) {
      too_many_ = true;
      return fault(line.front(), fmt::format("more than {} triangles", most_triangles_),
                   "reduce the model first");
    }
    result_.plain += 'f';
    for (std::size_t i = 1; i < line.size(); ++i) write_corner(read_corner(line[i]));
    result_.plain += '\n';
    result_.face_lines.push_back(line.front().line);
  }

  struct Corner {
    std::int64_t vertex = 1, picture_place = 0;  ///< absolute, from 1; 0: none
  };

  /// Absolute indices, whose range the loader may take for granted; the first vertex where there is a fault.
  Corner read_corner(const ObjWord& word) {
    const ObjCorner corner = obj_corner(word.text);
    if (!corner.fault.empty()) {
      fault(word, corner.fault, corner.remedy);
      return {};
    }
    for (std::size_t list = 0; list < lists_.size(); ++list) check_index(word, corner.indices[list], list);
    return {absolute(corner.indices[0], lists_[0]), absolute(corner.indices[1], lists_[1])};
  }

  static std::int64_t absolute(std::int64_t index, const Count& of) {
    return index < 0 ? of.seen + 1 + index : index;
  }

  void write_corner(const Corner& corner) {
    fmt::format_to(std::back_inserter(result_.plain), " {}", corner.vertex);
    if (corner.picture_place > 0)
      fmt::format_to(std::back_inserter(result_.plain), "/{}", corner.picture_place);
  }

  /// Backward indices must be there by now; forward ones may still come.
  void check_index(const ObjWord& word, std::int64_t index, std::size_t list) {
    const Count& of = lists_[list];
    if (index < -of.seen)
      fault(word, fmt::format("there is no {} {}", of.what, index), fmt::format("{} so far", of.seen));
    if (index > of.seen) later_.push_back({word, index, list});
  }

  void check_later_indices() {
    for (const LaterIndex& later : later_) {
      const Count& list = lists_[later.list];
      if (later.index > list.seen && !is_full())
        fault(later.word, fmt::format("there is no {} {}", list.what, later.index),
              fmt::format("the file has {}", list.seen));
    }
  }

  /// Everything after the keyword is one name, spaces and all.
  static std::string name_of(const Words& line) {
    std::string joined;
    for (std::size_t i = 1; i < line.size(); ++i) {
      if (i > 1) joined += ' ';
      joined += line[i].text;
    }
    return joined;
  }

  void name(std::string_view keyword, const Words& line) {
    fmt::format_to(std::back_inserter(result_.plain), "{} n{}\n", keyword, result_.names.size());
    result_.names.push_back(name_of(line));
  }

  void read_material_file(const Words& line) {
    const ObjWord& word = line.size() > 1 ? line[1] : line[0];
    result_.material_files.push_back({{file_, word.line, word.column},
                                      name_of(line),
                                      {},
                                      Severity::warning,
                                      std::string(words_.written_line(word))});
  }

  ObjWords words_;
  const std::string& file_;
  std::size_t most_triangles_, triangles_ = 0, error_count_ = 0, left_out_ = 0;
  bool too_many_ = false;
  std::array<Count, 3> lists_{Count{"vertex"}, Count{"texture place"}, Count{"normal"}};
  std::vector<LaterIndex> later_;
  ObjWord first_left_out_{};
  ObjScan result_;
};

}  // namespace

ObjScan scan_obj(std::string_view text, const std::string& file, std::size_t most_triangles) {
  return Scan(text, file, most_triangles).read();
}

}  // namespace fillside
