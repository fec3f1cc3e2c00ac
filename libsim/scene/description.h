// A set as its owner writes it down: plain values, no geometry. Each struct has one field table, `fields`,
// which lists key, member, range and one line of help; the TOML reader, the unknown-key suggestions, --set,
// the canonical writer and the page of keys all come from it. There is no second list.
//
// A visitor is called as v(Field{...}, member). Member types: bool, int, double, std::string, Clock, Colour,
// any Quantity, Names, and std::optional of these (absent means: see the help text).
#pragma once

#include <functional>
#include <limits>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "libsim/base/clock.h"
#include "libsim/base/colour.h"
#include "libsim/base/instant.h"
#include "libsim/base/problem.h"
#include "libsim/base/quantity.h"

namespace fillside {

class MadeOnce;

/// One row of a field table. Bounds are in SI units and inclusive.
struct Field {
  std::string_view key;
  std::string_view help;
  double least = -std::numeric_limits<double>::infinity();
  double most = std::numeric_limits<double>::infinity();
  std::string_view choices = {};  ///< allowed texts, separated by '|'; empty: any text
};

inline constexpr double kRightAngle = 1.5707964;  ///< rad, rounded up so that "90 deg" is within

/// A key that takes one of a few texts.
constexpr Field one_of(std::string_view key, std::string_view help, std::string_view choices) {
  return {.key = key, .help = help, .choices = choices};
}

/// "#rrggbb" as written, kept linear.
struct Colour {
  Rgb linear = grey(1.0);
};

using Names = std::map<std::string, std::string>;  ///< for example OBJ group -> catalogue name

/// Where a section and its keys stood in the file, for messages about them.
struct Section {
  Place place;
  std::map<std::string, Place, std::less<>> key_places;

  /// The key's place, else the section's.
  Place place_of(std::string_view key) const {
    const auto found = key_places.find(key);
    return found == key_places.end() ? place : found->second;
  }
};

/// Where a thing stands: clock and distance from the dish, or plain x (right), y (away from the camera).
struct Spot {
  std::optional<Clock> clock;
  std::optional<Length> distance, x, y, z;
};

/// How a surface looks, wherever a thing may have its own: a catalogue name, or own figures over it.
struct Finish {
  std::string surface;                 ///< catalogue name; empty: the thing's own default
  std::optional<double> reflectance;   ///< luminous, 0..1
  std::optional<Colour> colour;        ///< hue; scaled to the reflectance when both are given
  std::optional<std::string> gloss{};  ///< of a clear coat over it; absent: the catalogue's
};

/// A picture on a surface, in place of a finish.
struct PictureOn {
  std::string file;             ///< relative to the scene's folder; empty: none
  std::optional<Length> width;  ///< of one picture; absent: the whole surface's
};

struct SetSection : Section {
  std::string title = "a table by a window";
  int seed = 1;
  std::string key;                    ///< a window's name; empty: the strongest at the dish
  std::string reference = "dish up";  ///< the meter that falloff counts from
};

struct DaylightSection : Section {
  std::string sky = "overcast";
  std::optional<Illuminance> outdoor;
  std::optional<Angle> latitude, longitude;
  std::optional<Instant> time;
  std::optional<Angle> sun_altitude, sun_off_window;
  std::optional<bool> sun;
  std::optional<Illuminance> sun_illuminance;
  std::optional<Angle> skyline;
  std::optional<Length> building_distance, building_height;
  Names skyline_profile;
  double skyline_reflectance = 0.3;
  std::optional<Luminance> window_luminance;
  double ground = 0.2;
  std::optional<Colour> ground_colour;
};

struct RoomSection : Section {
  Length depth = metres(4.0), width = metres(3.5), height = metres(2.5);
  Length along = metres(0.0);
  double walls = 0.6, ceiling = 0.8, floor = 0.25;
  std::optional<Colour> wall_colour, ceiling_colour, floor_colour;
  PictureOn wall_picture;
};

struct WindowSection : Section {
  std::string name;
  Clock clock{9.0};
  std::string facing;
  std::optional<Length> distance;
  Length along = metres(0.0);
  std::string size = "medium";
  std::optional<Length> width, height, sill;
  std::string glass = "double";
  double glass_absorption = 0.02;
  std::optional<double> transmittance;
  double dirt = 0.0;
  Length reveal = metres(0);
  double reveal_reflectance = 0.7;
  std::string curtain;
  std::optional<double> curtain_direct, curtain_diffuse, curtain_reflectance;
  double folds = 1.0;
  int bars_across = 0, bars_up = 0;
  Length bar_width = millimetres(25);
  Length cover_left = metres(0), cover_right = metres(0), cover_top = metres(0), cover_bottom = metres(0);
  double cover_reflectance = 0.05, bar_reflectance = 0.8;
  bool used = true;
};

struct TableSection : Section {
  Finish finish{.surface = "light oak", .reflectance = {}, .colour = {}};
  PictureOn picture;
  Length width = metres(1.2), depth = metres(0.8), height = metres(0.75);
  Length x = metres(0.0), y = metres(0.0);
  bool used = true;
};

/// Food or crockery. [[food]] is the subject: an empty-spot reading takes it away; [[prop]] stays.
struct ItemSection : Section {
  std::string name, kind = "tart";
  bool subject = true;
  Spot spot;
  Angle turn = radians(0.0);
  std::string on;
  std::optional<Length> width, depth, height, relief;
  std::optional<double> level;
  Finish finish;
  Finish filling;
  std::string liquid;
  Names parts;
  int seed = 1;
  bool used = true;
};

struct MeshSection : Section {
  std::string name, file;
  double scale = 1.0;
  std::string up = "y";
  bool subject = true;
  Spot spot;
  Angle turn = radians(0.0);
  std::string on;
  Finish finish;
  Names groups;
  bool used = true;
};

struct BoardSection : Section {
  std::string name;
  std::string sheet;
  std::optional<Length> width, height;
  bool upright = false;
  Finish finish{.surface = "white foam board", .reflectance = {}, .colour = {}};
  PictureOn picture;
  std::optional<double> specular_share, roughness;
  std::optional<Angle> fold;
  Length thickness = millimetres(5);
  Length foot_gap = metres(0.0);
  std::string stands = "table";
  Spot spot;
  Angle lean = radians(0.0);
  std::optional<Clock> faces;
  bool used = true;
};

struct DiffuserSection : Section {
  std::string name;
  std::string cloth = "white cotton sheet";
  std::string sheet;
  std::optional<Length> width, height;
  std::optional<double> direct, diffuse, reflectance;
  Length foot_gap = metres(0.0);
  std::string stands = "table";
  Spot spot;
  Angle lean = radians(0.0);
  std::optional<Clock> faces;
  bool used = true;
};

struct LampSection : Section {
  std::string name;
  bool on = false;
  std::string shape = "sphere";
  std::optional<Length> diameter, width, height;
  Spot spot;
  bool ceiling = false;
  Length drop = centimetres(2);
  std::optional<std::string> faces;
  std::optional<Clock> faces_clock;
  Angle elevation = radians(0.0);
  std::optional<LuminousFlux> lumens;
  std::optional<Illuminance> lux;
  std::optional<Length> at;
  std::optional<Luminance> luminance;
  ColourTemperature temperature = kelvin(2700);
  double reflectance = 0.7;
  bool used = true;
};

struct CameraSection : Section {
  std::string view = "45 deg";
  std::optional<Angle> elevation;
  Clock clock{6.0};
  Length distance = metres(1.0);
  std::optional<Length> look_x, look_y, look_z;
  std::string sensor = "full frame";
  bool portrait = false;
  Length focal_length = millimetres(100);
  FNumber aperture = f_number(5.6);
  bool pinhole = false;
  std::optional<Length> focus;
  std::string focus_on;
  std::optional<Length> closest_focus, confusion;
  std::optional<Stops> headroom;
  std::optional<ColourTemperature> white;
  std::string grey_card;
  int pixels = 720;
};

struct MeterSection : Section {
  std::string name;
  std::string kind = "flat";
  std::string faces = "up";
  std::optional<Clock> faces_clock;
  Angle elevation = radians(0.0);
  Spot spot;
  std::optional<std::string> subject;
};

/// One real reading, in lux or as camera settings, that the whole set is scaled to.
struct AnchorSection : Section {
  std::optional<std::string> meter;
  std::optional<Illuminance> lux;
  std::optional<FNumber> aperture;
  std::optional<Duration> shutter;
  std::optional<int> iso;
  std::optional<std::string> reading;
  std::optional<double> reflectance;
  bool used = true;

  bool says_settings() const { return aperture || shutter; }
  bool says_anything() const { return used && (lux || says_settings()); }
};

struct PlaneSection : Section {
  std::string name;
  Spot spot;
  Length width = metres(1.0), height = metres(0.8);
  std::string faces = "up";
  std::optional<Clock> faces_clock;
};

struct ClaimSection : Section {
  std::string figure;
  std::optional<double> is, at_least, at_most, tolerance;
  std::string without, with;
  std::string reason, source;
};

struct Description {
  std::string file;  ///< as named by its owner, for messages
  std::string text;  ///< as read: the scene's hash and the report come from it
  SetSection set;
  DaylightSection daylight;
  RoomSection room;
  std::vector<WindowSection> windows;
  TableSection table;
  std::vector<ItemSection> items;  ///< [[food]] and [[prop]] in file order
  std::vector<MeshSection> meshes;
  std::vector<BoardSection> boards;
  std::vector<DiffuserSection> diffusers;
  std::vector<LampSection> lamps;
  CameraSection camera;
  std::vector<MeterSection> meters;
  AnchorSection anchor;
  std::vector<PlaneSection> planes;
  std::vector<ClaimSection> claims;
  std::shared_ptr<MadeOnce> made = {};  ///< shared by its variants; none: all is made anew
};

// ---------------------------------------------------------------------------------------------------------------
// Field tables. Order is the order in which the canonical writer prints the keys.

template <class V>
void fields(V&& v, SetSection& s) {
  v(Field{"title", "what the set is called, for headings"}, s.title);
  v(Field{"seed", "number that fixes every random choice", 0, 2147483647}, s.seed);
  v(Field{"key", "window or lamp that is the main light; left out: the strongest at the dish"}, s.key);
  v(Field{"reference", "meter that falloff is counted from"}, s.reference);
}

template <class V>
void fields(V&& v, DaylightSection& s) {
  v(one_of("sky", "kind of sky, by name or by its type in the CIE standard general sky",
           "overcast|heavy overcast|lopsided overcast|even overcast|bright overcast|uniform|thin "
           "cloud|bright thin cloud|"
           "hazy|hidden sun|partly cloudy|pale blue|clear|clear over a city|dusty clear|white haze|cie 1|cie "
           "2|cie 3|cie 4|"
           "cie 5|cie 6|cie 7|cie 8|cie 9|cie 10|cie 11|cie 12|cie 13|cie 14|cie 15"),
    s.sky);
  v(Field{"outdoor",
          "illuminance of the sky alone on open level ground; left out: the usual one for the sky and the "
          "sun's altitude, or 10 klx when the sun's place is not said",
          0, 2e5},
    s.outdoor);
  v(Field{"latitude", "of the place, north positive", -1.5707964, 1.5707964}, s.latitude);
  v(Field{"longitude", "of the place, east positive", -3.1415927, 3.1415927}, s.longitude);
  v(Field{"time",
          "date and time with its offset, 2026-06-21T15:30:00+02:00; needs the place and the window's "
          "facing"},
    s.time);
  v(Field{"sun_altitude", "of the sun, instead of place and time", -1.5707964, 1.5707964}, s.sun_altitude);
  v(Field{"sun_off_window", "of the sun from straight out of the first window, to the right as you look out",
          -3.1415927, 3.1415927},
    s.sun_off_window);
  v(Field{"sun", "does the sun itself shine? left out: when its place is said and the sky is not overcast"},
    s.sun);
  v(Field{"sun_illuminance", "by the sun on a plane that faces it; left out: the usual one for its altitude",
          0, 1.5e5},
    s.sun_illuminance);
  v(Field{"skyline", "altitude of what stands before the sky all round", 0, 1.5}, s.skyline);
  v(Field{"building_distance", "of a long building parallel to the first window", 0.5, 10000},
    s.building_distance);
  v(Field{"building_height", "of that building above the middle of the window", 0, 1000}, s.building_height);
  v(Field{"skyline_profile",
          "altitudes by compass bearing, for example { \"90 deg\" = \"12 deg\", \"180 deg\" = \"30 "
          "deg\" }"},
    s.skyline_profile);
  v(Field{"skyline_reflectance", "reflectance of what stands before the sky", 0, 1}, s.skyline_reflectance);
  v(Field{"window_luminance", "luminance seen through every bare opening, instead of sky and ground", 0, 1e7},
    s.window_luminance);
  v(Field{"ground", "reflectance of the ground outside", 0, 1}, s.ground);
  v(Field{"ground_colour", "hue of the ground outside, \"#rrggbb\""}, s.ground_colour);
}

template <class V>
void fields(V&& v, RoomSection& s) {
  v(Field{"depth", "from the first window's wall to the wall opposite", 0.3, 100}, s.depth);
  v(Field{"width", "along the first window's wall", 0.3, 100}, s.width);
  v(Field{"height", "floor to ceiling", 0.3, 30}, s.height);
  v(Field{"along",
          "middle of the first window's wall from the dish's foot on it, to the right as you face it", -50,
          50},
    s.along);
  v(Field{"walls", "reflectance of the walls", 0, 1}, s.walls);
  v(Field{"ceiling", "reflectance of the ceiling", 0, 1}, s.ceiling);
  v(Field{"floor", "reflectance of the floor", 0, 1}, s.floor);
  v(Field{"wall_colour", "hue of the walls, \"#rrggbb\""}, s.wall_colour);
  v(Field{"ceiling_colour", "hue of the ceiling, \"#rrggbb\""}, s.ceiling_colour);
  v(Field{"floor_colour", "hue of the floor, \"#rrggbb\""}, s.floor_colour);
  v(Field{"wall_picture", "PNG or JPEG file of all walls, scaled in the mean to the walls' reflectance"},
    s.wall_picture.file);
  v(Field{"wall_picture_width", "width of one such picture, which repeats; left out: the whole wall's", 0.001,
          50},
    s.wall_picture.width);
}

template <class V>
void fields(V&& v, WindowSection& s) {
  v(Field{"name", "what the results call it; left out: window, window 2, ..."}, s.name);
  v(Field{"clock", "clock position of its wall seen from the dish; the first window's wall is square to it"},
    s.clock);
  v(Field{"facing",
          "compass direction the first window looks to: N, SW, or clockwise from north as \"210 deg\""},
    s.facing);
  v(Field{"distance",
          "from the dish to the wall, and to the glass if there is no reveal, square to the wall; left out: "
          "80 cm for the first window, from "
          "the room's size for the others",
          0.01, 100},
    s.distance);
  v(Field{"along", "middle of the opening from the dish's foot on that wall, to the right as you face it",
          -50, 50},
    s.along);
  v(one_of("size",
           "stock opening: small 0.6 x 0.9 m, medium 0.9 x 1.2 m, wide 1.5 x 1.2 m, patio door 1.8 x 2.0 m",
           "small|medium|wide|patio door"),
    s.size);
  v(Field{"width", "clear width of the opening; left out: the stock size's", 0.01, 50}, s.width);
  v(Field{"height", "clear height of the opening; left out: the stock size's", 0.01, 20}, s.height);
  v(Field{"sill", "bottom of the opening above the floor; left out: 90 cm, a patio door 10 cm", 0, 20},
    s.sill);
  v(one_of("glass", "clear panes in the opening", "none|single|double|triple"), s.glass);
  v(Field{"glass_absorption", "share exponent K L absorbed in each pane at normal incidence", 0, 2},
    s.glass_absorption);
  v(Field{"transmittance",
          "share of light the glazing passes square on, as its maker says, for coated or tinted glass; "
          "left out: as glass and glass_absorption have it",
          0.01, 1},
    s.transmittance);
  v(Field{"dirt", "share of light lost to dirt on the glass: 0.1 for a house window not washed lately", 0,
          0.9},
    s.dirt);
  v(Field{"reveal", "depth of the wall at the opening; glass, bars, cover and curtain lie that far out", 0,
          2},
    s.reveal);
  v(Field{"reveal_reflectance", "reflectance of the four faces of the reveal", 0, 1}, s.reveal_reflectance);
  v(Field{"curtain", "cloth hung over the whole opening, by catalogue name; left out: bare"}, s.curtain);
  v(Field{"curtain_direct", "share of light that passes the curtain straight; left out: the catalogue's", 0,
          1},
    s.curtain_direct);
  v(Field{"curtain_diffuse", "share of light that passes the curtain scattered; left out: the catalogue's", 0,
          1},
    s.curtain_diffuse);
  v(Field{"curtain_reflectance", "share of light that the curtain returns; left out: the catalogue's", 0, 1},
    s.curtain_reflectance);
  v(Field{"folds",
          "how full the curtain hangs: cloth per width of the opening, 1 stretched flat, 2 in deep folds", 1,
          3},
    s.folds);
  v(Field{"bars_across", "horizontal glazing bars", 0, 20}, s.bars_across);
  v(Field{"bars_up", "vertical glazing bars", 0, 20}, s.bars_up);
  v(Field{"bar_width", "width of a glazing bar", 0, 0.5}, s.bar_width);
  v(Field{"cover_left", "opening covered from its left edge, as you face it", 0, 50}, s.cover_left);
  v(Field{"cover_right", "opening covered from its right edge", 0, 50}, s.cover_right);
  v(Field{"cover_top", "opening covered from the top", 0, 20}, s.cover_top);
  v(Field{"cover_bottom", "opening covered from the sill up", 0, 20}, s.cover_bottom);
  v(Field{"cover_reflectance", "reflectance of the cover's room side", 0, 1}, s.cover_reflectance);
  v(Field{"bar_reflectance", "reflectance of the glazing bars", 0, 1}, s.bar_reflectance);
  v(Field{"used", "false: wall instead of this window"}, s.used);
}

template <class V>
void spot_fields(V&& v, Spot& s) {
  v(Field{"clock", "clock position from the dish (12 behind it, 6 camera side)"}, s.clock);
  v(Field{"distance", "from the dish, on the table top", 0, 50}, s.distance);
  v(Field{"x", "to the right of the dish, instead of clock and distance", -50, 50}, s.x);
  v(Field{"y", "behind the dish, away from the camera", -50, 50}, s.y);
  v(Field{"z", "above the table top", -20, 20}, s.z);
}

constexpr Field gloss_field(std::string_view key) {
  return one_of(key, "clear coat over the colour: varnish, glaze, oil, water; left out: the catalogue's",
                "matt|satin|glossy|wet");
}

template <class V>
void finish_fields(V&& v, Finish& f) {
  v(Field{"surface", "surface by catalogue name"}, f.surface);
  v(Field{"reflectance", "luminous reflectance, instead of the catalogue's", 0, 1}, f.reflectance);
  v(Field{"colour", "hue, \"#rrggbb\"; scaled to the reflectance when one is given"}, f.colour);
  v(gloss_field("gloss"), f.gloss);
}

template <class V>
void picture_fields(V&& v, PictureOn& p) {
  v(Field{"picture",
          "PNG or JPEG file of the surface, instead of a surface by name; sRGB values are taken for "
          "reflectances, or scaled to the reflectance where one is given"},
    p.file);
  v(Field{"picture_width", "width of one picture, which repeats; left out: the whole width", 0.001, 50},
    p.width);
}

template <class V>
void fields(V&& v, TableSection& s) {
  finish_fields(v, s.finish);
  picture_fields(v, s.picture);
  v(Field{"width", "left to right", 0.05, 20}, s.width);
  v(Field{"depth", "front to back", 0.05, 20}, s.depth);
  v(Field{"height", "top above the floor", 0.01, 3}, s.height);
  v(Field{"x", "middle of the table to the right of the dish", -10, 10}, s.x);
  v(Field{"y", "middle of the table behind the dish", -10, 10}, s.y);
  v(Field{"used", "false: no table, the dish hangs in the air"}, s.used);
}

template <class V>
void fields(V&& v, ItemSection& s) {
  v(Field{"name", "what the results call it; left out: its kind"}, s.name);
  v(one_of(
        "kind", "stand-in shape",
        "ball|egg|plate|bowl|tart|layer cake|loaf|dumpling|jar|tumbler|box|citrus tart|cut cake|dumplings|"
        "garnish|berries|leaves|noodles|citrus half|cheese|cookies|pickle jar|iced tumbler|spoon|fork|napkin|"
        "cutting board"),
    s.kind);
  spot_fields(v, s.spot);
  v(Field{"turn", "turned clockwise seen from above", -6.3, 6.3}, s.turn);
  v(Field{"on", "name of the plate, bowl, cutting board, napkin or box it stands on; left out: the table"},
    s.on);
  v(Field{"width", "left to right, or diameter; left out: the kind's usual size", 0.001, 3}, s.width);
  v(Field{"depth", "front to back, for kinds that are not round", 0.001, 3}, s.depth);
  v(Field{"height", "from foot to top", 0.001, 3}, s.height);
  v(Field{"relief", "height of crust or skin bumps", 0, 0.05}, s.relief);
  v(Field{"level", "how full a bowl, jar or tumbler is, 0 to 1", 0, 1}, s.level);
  finish_fields(v, s.finish);
  v(Field{"filling_reflectance", "luminous reflectance of the filling, soup or contents", 0, 1},
    s.filling.reflectance);
  v(Field{"filling_colour", "hue of the filling, soup or contents, \"#rrggbb\""}, s.filling.colour);
  v(gloss_field("filling_gloss"), s.filling.gloss);
  v(Field{"liquid",
          "clear liquid by catalogue name, in place of the filling of a tumbler or bowl, around it in a jar"},
    s.liquid);
  v(Field{"parts", "surface by part, for example { rind = \"lemon\", flesh = \"orange\" }"}, s.parts);
  v(Field{"seed", "number that fixes bumps and arrangement", 0, 2147483647}, s.seed);
  v(Field{"used", "false: as if it were not in the file"}, s.used);
}

template <class V>
void fields(V&& v, MeshSection& s) {
  v(Field{"name", "what the results call it; left out: the file's name"}, s.name);
  v(Field{"file", "OBJ file, relative to the scene's folder"}, s.file);
  v(Field{"scale", "metres per unit of the file", 1e-6, 1e6}, s.scale);
  v(one_of("up", "axis of the file that points up", "x|y|z"), s.up);
  v(Field{"subject", "true: part of the subject, taken away for empty-spot readings"}, s.subject);
  spot_fields(v, s.spot);
  v(Field{"turn", "turned clockwise seen from above", -6.3, 6.3}, s.turn);
  v(Field{"on", "name of the plate, bowl, cutting board, napkin or box it stands on; left out: the table"},
    s.on);
  finish_fields(v, s.finish);
  v(Field{"groups", "surface by OBJ material or group name, for example { crust = \"rye crust\" }"},
    s.groups);
  v(Field{"used", "false: as if it were not in the file"}, s.used);
}

template <class V>
void fields(V&& v, BoardSection& s) {
  v(Field{"name", "what the results call it; left out: board, board 2, ..."}, s.name);
  v(Field{"sheet", "stock sheet such as \"A3\" or \"20x30 in\"; long side level unless upright"}, s.sheet);
  v(Field{"width", "level side, instead of a stock sheet; a folded board's, laid flat", 0.005, 10}, s.width);
  v(Field{"height", "standing side, instead of a stock sheet", 0.005, 10}, s.height);
  v(Field{"upright", "true: the sheet stands on its short side"}, s.upright);
  finish_fields(v, s.finish);
  picture_fields(v, s.picture);
  v(Field{"specular_share", "share of the reflected light that goes mirror-wise; left out: the catalogue's",
          0, 1},
    s.specular_share);
  v(Field{"roughness", "width of the mirror-wise lobe, 0 a mirror; left out: the catalogue's", 0, 1},
    s.roughness);
  v(Field{"fold",
          "angle between the wings of a board folded upright in the middle, opening to the dish; left out: "
          "flat",
          0.1, 3.1},
    s.fold);
  v(Field{"thickness", "thickness of the sheet", 0.0001, 0.2}, s.thickness);
  v(Field{"foot_gap", "gap under the board, from clips or blocks", 0, 3}, s.foot_gap);
  v(one_of("stands", "what it stands on", "table|floor"), s.stands);
  spot_fields(v, s.spot);
  v(Field{"lean", "top leans toward the dish when positive", -kRightAngle, kRightAngle}, s.lean);
  v(Field{"faces", "clock direction its front looks in; left out: the dish"}, s.faces);
  v(Field{"used", "false: as if it were not in the file"}, s.used);
}

template <class V>
void fields(V&& v, DiffuserSection& s) {
  v(Field{"name", "what the results call it; left out: diffuser, diffuser 2, ..."}, s.name);
  v(Field{"cloth", "cloth by catalogue name"}, s.cloth);
  v(Field{"sheet", "stock sheet; long side level"}, s.sheet);
  v(Field{"width", "level side, instead of a stock sheet", 0.005, 10}, s.width);
  v(Field{"height", "standing side, instead of a stock sheet", 0.005, 10}, s.height);
  v(Field{"direct", "share that passes straight; left out: the catalogue's", 0, 1}, s.direct);
  v(Field{"diffuse", "share that passes scattered; left out: the catalogue's", 0, 1}, s.diffuse);
  v(Field{"reflectance", "share returned; left out: the catalogue's", 0, 1}, s.reflectance);
  v(Field{"foot_gap", "gap under the frame", 0, 3}, s.foot_gap);
  v(one_of("stands", "what it stands on", "table|floor"), s.stands);
  spot_fields(v, s.spot);
  v(Field{"lean", "top leans toward the dish when positive", -kRightAngle, kRightAngle}, s.lean);
  v(Field{"faces", "clock direction its front looks in; left out: the dish"}, s.faces);
  v(Field{"used", "false: as if it were not in the file"}, s.used);
}

template <class V>
void fields(V&& v, LampSection& s) {
  v(Field{"name", "what the results call it; left out: lamp, lamp 2, ..."}, s.name);
  v(Field{"on", "true: it shines; false: it only stands there, dark"}, s.on);
  v(one_of("shape", "ball that shines all round, or flat face that shines from its front",
           "sphere|disc|rectangle"),
    s.shape);
  v(Field{"diameter", "of a ball or disc; left out: 6 cm and 25 cm", 0.001, 5}, s.diameter);
  v(Field{"width", "level side of a rectangle; left out: 30 cm", 0.001, 10}, s.width);
  v(Field{"height", "other side of a rectangle; left out: 20 cm", 0.001, 10}, s.height);
  v(Field{"clock", "clock position of its middle from the dish (12 behind it, 6 camera side)"}, s.spot.clock);
  v(Field{"distance", "from the dish to below its middle, on the table top", 0, 50}, s.spot.distance);
  v(Field{"x", "to the right of the dish, instead of clock and distance", -50, 50}, s.spot.x);
  v(Field{"y", "behind the dish, away from the camera", -50, 50}, s.spot.y);
  v(Field{"z", "height of its middle above the table top; left out: 40 cm", -20, 20}, s.spot.z);
  v(Field{"ceiling", "true: it hangs under the ceiling, over the dish unless it has a place"}, s.ceiling);
  v(Field{"drop", "from the ceiling down to its top, with ceiling = true", 0.001, 20}, s.drop);
  v(one_of("faces", "where a disc or rectangle shines; left out: the dish, from the ceiling down",
           "down|up|dish|clock"),
    s.faces);
  v(Field{"faces_clock", "clock direction it shines in, with faces = \"clock\""}, s.faces_clock);
  v(Field{"elevation", "height angle it shines in, with faces = \"clock\"", -kRightAngle, kRightAngle},
    s.elevation);
  v(Field{"lumens", "all its light, as printed on the box", 0, 1e6}, s.lumens);
  v(Field{"lux", "or what a meter reads of it alone, straight before it and square to it", 0, 1e6}, s.lux);
  v(Field{"at", "with lux: distance of that reading, from the face's or ball's middle", 0.001, 50}, s.at);
  v(Field{"luminance", "or how bright it is to the camera", 0, 1e9}, s.luminance);
  v(Field{"temperature", "colour temperature, as printed on the box", 1000, 25000}, s.temperature);
  v(Field{"reflectance", "reflectance of its face and body, for other light", 0, 1}, s.reflectance);
  v(Field{"used", "false: as if it were not in the file"}, s.used);
}

template <class V>
void fields(V&& v, CameraSection& s) {
  v(one_of("view", "usual viewpoint", "45 deg|overhead|straight-on"), s.view);
  v(Field{"elevation", "height angle of the camera over the dish; left out: the view's", 0, kRightAngle},
    s.elevation);
  v(Field{"clock", "clock position of the camera"}, s.clock);
  v(Field{"distance", "from the lens to what it looks at", 0.02, 50}, s.distance);
  v(Field{"look_x", "looks at: right of the dish", -10, 10}, s.look_x);
  v(Field{"look_y", "looks at: behind the dish", -10, 10}, s.look_y);
  v(Field{"look_z", "looks at: above the table; left out: half the subject's height", -2, 5}, s.look_z);
  v(one_of("sensor", "sensor by size", "full frame|APS-C|micro four thirds|one inch|phone"), s.sensor);
  v(Field{"portrait", "true: long side upright"}, s.portrait);
  v(Field{"focal_length", "focal length of the lens", 0.001, 2}, s.focal_length);
  v(Field{"aperture", "f-number, for depth of field", 0.5, 128}, s.aperture);
  v(Field{"pinhole", "true: everything sharp"}, s.pinhole);
  v(Field{"focus", "focused distance from the lens; left out: the camera's distance", 0.02, 100}, s.focus);
  v(Field{"focus_on", "or the name of a thing to focus on: its skin, in the middle as the camera sees it"},
    s.focus_on);
  v(Field{"closest_focus", "nearest distance from the lens that it focuses at, as its maker says", 0.01, 100},
    s.closest_focus);
  v(Field{"confusion", "blur on the sensor that still passes for a point; left out: its diagonal / 1500",
          1e-6, 1e-3},
    s.confusion);
  v(Field{"headroom",
          "from what the meter takes for right to a full sensor; left out: 3.26 stops, by ISO 12232", 0.5, 8},
    s.headroom);
  v(Field{"white", "colour temperature that the picture shows as white; left out: 6504 K", 1667, 25000},
    s.white);
  v(Field{"grey_card", "or the meter in whose light a grey card comes out grey, for example \"dish up\""},
    s.grey_card);
  v(Field{"pixels", "long side of the picture in pixels", 8, 8000}, s.pixels);
}

template <class V>
void fields(V&& v, MeterSection& s) {
  v(Field{"name", "what the results call it; left out: meter, meter 2, ..."}, s.name);
  v(one_of("kind", "flat disc (cosine) or half dome (cardioid)", "flat|dome"), s.kind);
  v(one_of("faces", "where the receptor looks; away is opposite to the key window",
           "up|down|camera|window|away|clock"),
    s.faces);
  v(Field{"faces_clock", "clock direction it looks in, with faces = \"clock\""}, s.faces_clock);
  v(Field{"elevation", "height angle it looks in, with faces = \"clock\"", -kRightAngle, kRightAngle},
    s.elevation);
  spot_fields(v, s.spot);
  v(one_of("subject",
           "is the food there while it is read? left out: away for a meter in the dish's place, else there",
           "there|away"),
    s.subject);
}

template <class V>
void fields(V&& v, AnchorSection& s) {
  v(Field{"meter", "where it was read: one of the scene's meters or the usual ones; left out: dish up"},
    s.meter);
  v(Field{"lux", "what a lux meter read there", 0.01, 2e5}, s.lux);
  v(Field{"aperture", "or the settings that a light meter or camera gave: f-number", 0.5, 128}, s.aperture);
  v(Field{"shutter", "of those settings", 1e-5, 3600}, s.shutter);
  v(Field{"iso", "of those settings; left out: 100", 1, 1000000}, s.iso);
  v(one_of("reading",
           "incident: a meter in the light; reflected: a camera filled with a matte card held there; left "
           "out: incident",
           "incident|reflected"),
    s.reading);
  v(Field{"reflectance", "of that card; left out: 0.18, a grey card", 0.01, 1}, s.reflectance);
  v(Field{"used", "false: as if it were not in the file"}, s.used);
}

template <class V>
void fields(V&& v, PlaneSection& s) {
  v(Field{"name", "what map --plane calls it"}, s.name);
  spot_fields(v, s.spot);
  v(Field{"width", "of the mapped rectangle", 0.01, 20}, s.width);
  v(Field{"height", "of the mapped rectangle (depth, when it faces up)", 0.01, 20}, s.height);
  v(one_of("faces", "side that receives the light", "up|down|camera|window|away|clock"), s.faces);
  v(Field{"faces_clock", "clock direction it looks in, with faces = \"clock\""}, s.faces_clock);
}

template <class V>
void fields(V&& v, ClaimSection& s) {
  v(Field{"figure",
          "what is claimed, for example \"subject.stops\", \"meter.shadow.lx\" or "
          "\"board.fill.gain.shadow\""},
    s.figure);
  v(Field{"is", "claimed value"}, s.is);
  v(Field{"tolerance", "allowed distance from `is`", 0}, s.tolerance);
  v(Field{"at_least", "claimed lower bound"}, s.at_least);
  v(Field{"at_most", "claimed upper bound"}, s.at_most);
  v(Field{"without",
          "name of a board, diffuser, food or prop that is taken out, or lamp that is switched off, for this "
          "claim"},
    s.without);
  v(Field{"with",
          "name of one that stands in the file with used = false and is put in, or lamp that is switched on, "
          "for this claim"},
    s.with);
  v(Field{"reason", "why it should be so"}, s.reason);
  v(Field{"source", "where the reason or number comes from"}, s.source);
}

}  // namespace fillside
