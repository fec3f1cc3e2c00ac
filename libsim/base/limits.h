// How much of everything an input may hold: what is more is refused with a message that says so, before it
// takes memory or time. Stated here once; the manual prints the table at the end.
#pragma once

#include <array>
#include <cstddef>
#include <string_view>

namespace fillside {

// A scene file.
inline constexpr std::size_t kLargestScene = 1u << 20;  ///< bytes: a hundred times what a rich set takes
inline constexpr std::size_t kMostThings = 200;         ///< under one heading; a set has a few dozen in all
inline constexpr std::size_t kMostNames = 200;          ///< in one table of names
inline constexpr std::size_t kLongestName = 100;        ///< of a thing, characters
inline constexpr std::size_t kLongestText = 2000;       ///< any other text of a scene, characters
inline constexpr std::size_t kLongestWish = 1000;       ///< --want, --move, bytes
inline constexpr std::size_t kMostProblems = 100;       ///< that are listed of one scene, and of one section

// Models.
inline constexpr std::size_t kLargestObjBytes = 400'000'000;
inline constexpr std::size_t kLargestMaterialBytes = 10'000'000;
inline constexpr std::size_t kMostTriangles = 5'000'000;  ///< of one model, and of the whole set
inline constexpr std::size_t kMostObjFaceCorners = 255;   ///< tinyobjloader counts them in one byte

// Pictures of surfaces.
inline constexpr std::size_t kLargestPictureBytes = 100'000'000;  ///< of the file
inline constexpr int kLongestPictureSide = 8192;                  ///< pixels
inline constexpr std::size_t kMostPicturePixels = 100'000'000;    ///< of all pictures of a set

// What is asked for.
inline constexpr int kFewestPixels = 8, kMostPixels = 8000;       ///< long side of a picture
inline constexpr int kFewestCells = 4, kMostCells = 1024;         ///< across a map
inline constexpr std::size_t kMostMeasuredBytes = 4'000'000'000;  ///< a picture's or map's light, by rows
inline constexpr std::size_t kMostSeriesSets = 10'000;  ///< of a series, all its values taken together
inline constexpr std::size_t kMostShards = 1000;        ///< that a series is shared among

/// A row of the manual's table.
struct Limit {
  std::string_view what;
  std::size_t most;
  std::string_view unit;
};

inline constexpr std::array kLimits{
    Limit{"a scene file", kLargestScene, "bytes"},
    Limit{"things under one heading (windows, food, boards, lamps, meters, ...)", kMostThings, ""},
    Limit{"names in one table of names", kMostNames, ""},
    Limit{"a thing's name", kLongestName, "characters"},
    Limit{"any other text of a scene", kLongestText, "characters"},
    Limit{"a wish or a freedom of fillside place", kLongestWish, "bytes"},
    Limit{"problems that are listed", kMostProblems, ""},
    Limit{"a model's OBJ file", kLargestObjBytes, "bytes"},
    Limit{"a model's material file", kLargestMaterialBytes, "bytes"},
    Limit{"triangles of a model, and of the whole set", kMostTriangles, ""},
    Limit{"corners of a face", kMostObjFaceCorners, ""},
    Limit{"a picture's file", kLargestPictureBytes, "bytes"},
    Limit{"a side of a picture on a surface", kLongestPictureSide, "pixels"},
    Limit{"all pictures on surfaces together", kMostPicturePixels, "pixels"},
    Limit{"the long side of a picture that is made", kMostPixels, "pixels"},
    Limit{"cells across a map", kMostCells, ""},
    Limit{"the light of a picture or map while it is made", kMostMeasuredBytes, "bytes"},
    Limit{"the sets of a series", kMostSeriesSets, ""},
    Limit{"the shards of a series", kMostShards, ""},
};

}  // namespace fillside
