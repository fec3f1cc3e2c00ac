#include "tools/help_pages.h"

#include <algorithm>

namespace fillside::tools {
namespace {

const std::vector<HelpLine> kTradeWords{
    {"key", "the main light, here the window's; it makes the shadows you see"},
    {"fill", "all other light on the food: by way of boards, table, walls and ceiling"},
    {"stop", "twice the light, or half of it; a third of a stop is just visible"},
    {"lit:shadow", "what two meters read, one facing the key, one facing away; 2:1 is one stop"},
    {"key:fill", "the two parts of one meter's reading; never the same number as lit:shadow"},
    {"falloff", "how the light weakens over the table, in stops from a reference meter"},
    {"empty spot", "read in the dish's place with the food taken away; else on the food"},
    {"clock", "where things stand round the dish: the camera at 6, 12 behind the food, 9 left"}};

}  // namespace

const std::array<VerbPage, 14> kVerbPages{
    VerbPage{"scene", "[FILE]", "Write a starter scene to change into your own",
             "The starter goes to a new file, or to standard output. A file that exists is left alone.",
             "fillside scene my_table.toml"},
    VerbPage{
        "check", "SCENE... [options] | --light", "Is the scene sound, and does it show what it claims?",
        "First it looks the set over: boards in the picture, a board, the camera or you in the key's way, "
        "food that hangs in the air or is not seen, a window mirrored in soup or glass, sun on foil; each "
        "with what to do. Then every [[claim]] of the scene is measured: status 1 when one does not hold. "
        "--light looks at the program itself: windows, skies, lamps, cards, glass, sun and meter against "
        "published values, each with its source.",
        "fillside check my_table.toml"},
    VerbPage{"meter", "SCENE... [options]", "What meters read, and who sends the light",
             "Five meters stand in the dish's place with the food taken away; the scene's own meters and the "
             "sides of "
             "the food follow. An [anchor] in the scene, one real reading, scales all of it. With --json "
             "several scenes give one array of documents, one scene gives the "
             "document.",
             "fillside meter my_table.toml --set board.fill.distance=15cm"},
    VerbPage{"map", "SCENE [MAP...] [options]",
             "Maps of the table: illuminance, falloff, fill, visibility, gain, softness, cast, tint",
             "Each map becomes SCENE-MAP.png, and SCENE-MAP.csv with a line a cell. Maps: illuminance (lx); "
             "falloff "
             "(stops from the reference meter); fill (how deep a shadow cast there is, in stops); visibility "
             "(share of "
             "the key in view, 0 to 1); gain (stops that each board adds); softness (width of shadow edges, "
             "mm); cast "
             "(mired warmer than the set's white) and tint (green or magenta, thousandths of Duv), with "
             "figures for "
             "the frame and what causes them. Without any: falloff and fill.",
             "fillside map my_table.toml falloff fill -o maps"},
    VerbPage{"render", "SCENE... [options]", "The picture, exposed as the meter says",
             "Makes SCENE.png, developed for a screen, and SCENE.exr with the light of every source and "
             "board in a "
             "layer of its own. --glare, --layers and --clay make pictures beside it.",
             "fillside render my_table.toml --pixels 480 -o pictures"},
    VerbPage{
        "compare", "SCENE... [--variant \"NAME: KEY=VALUE, ...\"]... [options]",
        "What differs between sets, is it seen, and whose light is it?",
        "The first scene is the reference; every other scene, and every --variant of the first, is held "
        "against "
        "it: the change of each meter and each side of the food in stops, of lit:shadow and key:fill, and "
        "the "
        "light that made it. From 1/3 stop on a change is called visible. The --precision is that of the "
        "changes. --map and --pictures write files.",
        "fillside compare my_table.toml --variant \"no board: board.fill.used=false\""},
    VerbPage{
        "series", "SCENE --vary KEY=VALUES [--vary KEY=VALUES] [--shard K/N | --merge] [options]",
        "A table and a curve of what one key, or two, do",
        "Every value is checked before the first is measured. Makes SCENE-series.png, a curve with error "
        "bars "
        "(for two keys SCENE-series-FIGURE.png, a field of figures), and SCENE-series.csv. What is finished "
        "is kept in SCENE-series/: an interrupted run goes on where it stopped. Up to 10,000 sets: --shard "
        "lets "
        "several processes or machines share them, --merge then gives the answer, to the byte that of one "
        "run.",
        "fillside series my_table.toml --vary \"board.fill.distance=15cm,20cm,30cm,45cm\""},
    VerbPage{
        "place", "SCENE --want WISH... --move KEY=VALUES... [options]",
        "Where must the board stand, and how big, to reach the light you want?",
        "Moves what may move until every wish holds: the smallest board of a list, the farthest place, or "
        "the one that forgives most. No board is put into the picture, through a thing or into the key's "
        "way. The answer is read afresh, with how far each key may be off. Figures are those of [[claim]]: "
        "subject.stops, plane.table.evenness, board.NAME.gain.METER, meter.NAME.lx ...; lit:shadow and "
        "key:fill in short. Status 1 when it cannot be reached, with the best there is and what limits it.",
        "fillside place my_table.toml --want \"lit:shadow = 3:1\" --move board.fill.distance=15cm..60cm"},
    VerbPage{
        "sensitivity", "SCENE [--of FIGURE]... [--keys PATTERN]... [options]",
        "Which number to measure with care, and which to stop worrying about",
        "Every number of the set is varied by as much as it may be off: lengths by tape 1 cm or 2 %, angles "
        "3 "
        "deg, clock positions 5 deg, catalogue reflectances as the catalogue says, the sky by a stop. You "
        "are told what a figure changes by per cm, per deg or per 0.1, and, times what it may be off by, how "
        "many stops hang on it, the most first. \"Measure first\" makes nine tenths of the doubt; what moves "
        "less than a tenth of all together you need not think about.",
        "fillside sensitivity my_table.toml --keys board --off-by board.fill.distance=3cm"},
    VerbPage{
        "rules", "[--rule N]... [options]", "Which rules of thumb of the trade hold, and when",
        "Forty rules that people who work by a window go by: twice as far costs two stops, closer is softer, "
        "a "
        "larger card beats a nearer one. Each asks figures to lie between bounds; they are read in small "
        "sets "
        "that the program carries with it (scenes/rules), or worked out where a formula decides. Holds: all "
        "do. Holds when: those that are marked so. What light does not decide is said to be so. The page is "
        "Markdown.",
        "fillside rules --rule 1 --rule 14"},
    VerbPage{
        "calendar", "SCENE [options]", "When is the light good at this table?",
        "The set is measured once and read under every sun of a year, always between an overcast and a clear "
        "sky: hours of good light (the wanted exposure reached, no sun on the dish), exposure values, sun on "
        "the dish. Makes SCENE-calendar.csv with a line a step and SCENE-year.png; with --date "
        "SCENE-day.csv and SCENE-day.png. The scene needs latitude, longitude, and where its first window "
        "looks.",
        "fillside calendar my_table.toml --offset +01:00 --iso 400 --slowest \"1/60 s\""},
    VerbPage{
        "plan", "SCENE [options]", "A card and a drawing to build the set from, and boards to cut",
        "Prints the set card: every measure from a cross under the dish, in the order in which one builds, "
        "with the readings to check it by. Makes SCENE-plan.svg, .pdf and .png: top view and side views to "
        "scale, for one A4 page. The card can be read back: --back takes a card, with what you changed on "
        "it, and prints its scene. --cut makes SCENE-cut.svg, .pdf and .png instead: which sheets to buy, "
        "and where to cut them.",
        "fillside plan my_table.toml -o plans"},
    VerbPage{"report", "SCENE... [--variant \"NAME: KEY=VALUE, ...\"]... [options]",
             "One page to keep: picture, light, maps, camera, set",
             "Everything about a set in one file for the browser: before and after, the picture to relight "
             "(windows "
             "and lamps up, down, off; exposure, white, zebra), whose light it is, falloff and fill to read "
             "off, the "
             "exposure card, softness, glare, the set to turn, the day's light where the place is known, and "
             "how it "
             "was made. It needs no network, opens from the disc and prints on A4; without scripts it shows "
             "the same "
             "as pictures and tables. Figures come out the same every time; pictures go by the clock.",
             "fillside report my_table.toml --variant \"no board: board.fill.used=false\" -o my_table.html"},
    VerbPage{
        "lesson", "LESSON.toml [options]", "Sheets for a class: predict, look, build, meter, compare",
        "A lesson is a scene with one more section, [lesson]: question, vary (as after --vary of series), "
        "figures, predict, build, answer. Makes LESSON-sheet.png, the pictures at one exposure with their "
        "figures burned in; LESSON-blank.png, the same in an order that the seed decides, with letters "
        "alone; LESSON-worksheet, one A4 page to fill in; and apart LESSON-answers, with which letter was "
        "which. The exposure is right for the scene as written. Ten stand in scenes/lessons; their README "
        "is the teacher's page. What is finished is kept in LESSON-kept/.",
        "fillside lesson scenes/lessons/04_one_card_one_ruler.toml -o class"}};

std::string main_page() {
  std::vector<HelpLine> verbs;
  for (const VerbPage& verb : kVerbPages) verbs.push_back({std::string(verb.name), std::string(verb.duty)});
  return "fillside VERB SCENE... [options]\n\n" +
         wrapped(
             "Computes the light on a table by a window: how it falls off, how much of it fills the shadows, "
             "what "
             "a meter reads and how the picture comes out, with the boards, cloths and places you have. "
             "Every "
             "figure has an error bar.") +
         '\n' + help_list("Verbs", verbs) + '\n' + help_list("Words", kTradeWords) +
         "\nStart:  fillside scene my_table.toml, then  fillside meter my_table.toml\n\n" +
         wrapped(
             "fillside VERB --help tells a verb's options. Status: 0 done, 1 the answer is no, 2 bad usage, "
             "3 bad "
             "input, 4 could not write.") +
         '\n' +
         wrapped(
             "fillside calculates light; it does not judge whether a set is safe. Keep foam board, paper and "
             "cloth "
             "off hot lamps and flames, mirrors, foil and glass out of sun patches; secure overhead arms; "
             "follow "
             "the makers' instructions and local codes.");
}

std::string verb_page(std::string_view verb, const std::vector<HelpLine>& options) {
  const VerbPage& page = *std::ranges::find(kVerbPages, verb, &VerbPage::name);
  return "fillside " + std::string(page.name) + ' ' + std::string(page.words) + "\n\n" +
         wrapped(std::string(page.duty) + (page.duty.ends_with('?') ? " " : ". ") + std::string(page.more)) +
         '\n' + help_list("Options", options) + "\nExample:\n  " + std::string(page.example) + '\n';
}

}  // namespace fillside::tools
