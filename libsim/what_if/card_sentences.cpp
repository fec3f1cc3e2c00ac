// The sentences themselves.
#include <array>

#include "libsim/what_if/card_sentence.h"

namespace fillside {
namespace {

constexpr bool kIfSaid = false;
constexpr CardSentence kByClock{"at", "{clock}, {distance} from the cross"},
    kByXY{"at", "{x:right|left} and {y:back|front} of the cross"}, kByX{"at", "{x:right|left} of the cross"},
    kByY{"at", "{y:back|front} of the cross"},
    kHeldUp{"stands", "held up from the {stands}, lower edge {z:above|below} the table top"},
    kStands{"stands", "on the {stands}, lower edge {foot_gap} above it"},
    kTurned{"turned", "{turn:clockwise|anticlockwise} as seen from above", kIfSaid};

constexpr std::array kSet{CardSentence{"title", "{title}"}, CardSentence{"seed", "{seed}"}};
constexpr std::array kRoom{
    CardSentence{"size", "{width} along the first window's wall, {depth} deep, {height} high"},
    CardSentence{"middle", "{along:right|left} of the cross's foot on the first window's wall", kIfSaid},
    CardSentence{"returns", "walls {walls}, ceiling {ceiling}, floor {floor} of the light"}};
constexpr std::array kWindow{
    CardSentence{"wall", "at {clock}, {distance} from the cross, square to the wall"},
    CardSentence{"wall", "at {clock}"},
    CardSentence{"looks", "to {facing}"},
    CardSentence{"opening", "{width} wide, {height} high, sill {sill} above the floor"},
    CardSentence{"middle", "{along:right|left} of the cross's foot on that wall, as one faces it"},
    CardSentence{"glass", "{glass}"},
    CardSentence{"covered",
                 "{cover_left} from its left edge, {cover_right} from its right, {cover_top} from its top, "
                 "{cover_bottom} from its sill up",
                 kIfSaid},
    CardSentence{"bars", "{bars_across} across and {bars_up} upright, {bar_width} wide", kIfSaid},
    CardSentence{"reveal", "{reveal} deep", kIfSaid},
    CardSentence{"curtain",
                 "{curtain}: {curtain_direct} of the light passes straight, {curtain_diffuse} scattered, "
                 "{curtain_reflectance} returns"},
    CardSentence{"curtain", "{curtain}"}};
constexpr std::array kTable{
    CardSentence{"top", "{height} above the floor"},
    CardSentence{"size", "{width} from left to right, {depth} from front to back"},
    CardSentence{"middle", "{x:right|left} and {y:back|front} of the cross"},
    CardSentence{"looks", "as the picture {picture}, returns {reflectance} of the light"},
    CardSentence{"looks", "as the picture {picture}"},
    CardSentence{"looks", "{surface}, returns {reflectance} of the light"},
    CardSentence{"looks", "{surface}"}};
constexpr std::array kItem{CardSentence{"what", "{kind}"},
                           kByClock,
                           kByXY,
                           kByX,
                           kByY,
                           CardSentence{"stands", "on {on}", kIfSaid},
                           kTurned,
                           CardSentence{"size", "{width} wide, {depth} deep, {height} high"},
                           CardSentence{"size", "{width} wide, {depth} deep"},
                           CardSentence{"size", "{width} wide, {height} high"},
                           CardSentence{"size", "{width} wide"},
                           CardSentence{"size", "{height} high"},
                           CardSentence{"liquid", "{liquid}", kIfSaid},
                           CardSentence{"full", "to {level} of its height"}};
constexpr std::array kMesh{CardSentence{"file", "{file}"},
                           kByClock,
                           kByXY,
                           kByX,
                           kByY,
                           CardSentence{"stands", "on {on}", kIfSaid},
                           kTurned};
constexpr std::array kBoard{CardSentence{"size", "{width} wide, {height} high, {thickness} thick"},
                            CardSentence{"face", "as the picture {picture}"},
                            CardSentence{"face", "{surface}, returns {reflectance} of the light"},
                            CardSentence{"face", "{surface}"},
                            kByClock,
                            kByXY,
                            kByX,
                            kByY,
                            kHeldUp,
                            kStands,
                            CardSentence{"leans", "{lean:toward|away from} the food"},
                            CardSentence{"faces", "{faces}"},
                            CardSentence{"folded", "upright in the middle, {fold} between the wings"}};
constexpr std::array kDiffuser{
    CardSentence{"size", "{width} wide, {height} high"},
    CardSentence{
        "cloth",
        "{cloth}: {direct} of the light passes straight, {diffuse} scattered, {reflectance} returns"},
    CardSentence{"cloth", "{cloth}"},
    kByClock,
    kByXY,
    kByX,
    kByY,
    kHeldUp,
    kStands,
    CardSentence{"leans", "{lean:toward|away from} the food"},
    CardSentence{"faces", "{faces}"}};
constexpr std::array kLamp{
    CardSentence{"switched", "{on:on|off}"},
    CardSentence{"shape", "{shape}, {diameter} across"},
    CardSentence{"shape", "{shape}, {width} wide, {height} high"},
    CardSentence{"shape", "{shape}"},
    kByClock,
    kByXY,
    kByX,
    kByY,
    CardSentence{"height", "{z:above|below} the table top"},
    CardSentence{"hangs", "{ceiling:under|clear of} the ceiling, its top {drop} below it", kIfSaid}};
constexpr std::array kCamera{
    CardSentence{"lens", "{distance} from what it looks at, at {clock}, {elevation} above level"},
    CardSentence{"lens", "{distance} from what it looks at, at {clock}, {view}"},
    CardSentence{"looks at",
                 "{look_x:right|left} and {look_y:back|front} of the cross, {look_z:above|below} the table "
                 "top"},
    CardSentence{"looks at", "{look_x:right|left} and {look_y:back|front} of the cross"},
    CardSentence{"sensor", "{sensor}, long side {portrait:upright|level}"},
    CardSentence{"set to", "{focal_length mm}, {aperture}"},
    CardSentence{"focus", "on {focus_on}", kIfSaid},
    CardSentence{"focus", "{focus} from the lens"}};
constexpr std::array kMeter{CardSentence{"kind", "{kind}, faces {faces}"},
                            kByClock,
                            kByXY,
                            kByX,
                            kByY,
                            CardSentence{"height", "{z:above|below} the table top"},
                            CardSentence{"looks", "to {faces_clock}, {elevation:up|down}"}};

}  // namespace

std::span<const CardSentence> card_sentences(std::string_view heading) {
  if (heading == "set") return kSet;
  if (heading == "room") return kRoom;
  if (heading == "window") return kWindow;
  if (heading == "table") return kTable;
  if (heading == "food" || heading == "prop") return kItem;
  if (heading == "mesh") return kMesh;
  if (heading == "board") return kBoard;
  if (heading == "diffuser") return kDiffuser;
  if (heading == "lamp") return kLamp;
  if (heading == "camera") return kCamera;
  if (heading == "meter") return kMeter;
  return {};
}

}  // namespace fillside
