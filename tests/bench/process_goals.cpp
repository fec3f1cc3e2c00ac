// The program from start to exit, by the clock on the wall: middle of several runs.
#include <fmt/format.h>

#include <filesystem>
#include <fstream>

#include "libsim/geometry/lathe.h"
#include "tests/bench/goal_table.h"
#include "tests/bench/goals.h"
#include "tests/bench/process_run.h"

namespace fillside::bench {
namespace {

namespace fs = std::filesystem;
using Words = std::vector<std::string>;

const std::string kScenes = FILLSIDE_SOURCE_DIR "/scenes/";

/// A folder that is gone afterwards.
class WorkFolder {
 public:
  WorkFolder() { fs::create_directories(path_); }
  ~WorkFolder() { fs::remove_all(path_); }
  WorkFolder(const WorkFolder&) = delete;
  WorkFolder& operator=(const WorkFolder&) = delete;
  std::string at(const std::string& name) const { return path_ / name; }
  std::string name() const { return path_; }

 private:
  fs::path path_ = fs::temp_directory_path() / fmt::format("fillside-bench-{}", std::clock());
};

void write_lump(const std::string& path, int rings) {
  Profile profile;
  for (int ring = 0; ring <= rings; ++ring) {
    const double t = kPi * ring / rings;
    profile.push_back({ring == 0 || ring == rings ? 0.0 : 0.06 * std::sin(t), 0.04 * (1.0 - std::cos(t))});
  }
  const Mesh mesh = turned(profile, {.segments = 2 * rings});
  std::ofstream file(path);
  for (const Point& c : mesh.corners) file << fmt::format("v {:.7f} {:.7f} {:.7f}\n", c.x(), c.y(), c.z());
  for (const Triangle& t : mesh.triangles) file << fmt::format("f {} {} {}\n", t[0] + 1, t[1] + 1, t[2] + 1);
}

void write_scene(const std::string& path) {
  std::ofstream(path)
      << "[[window]]\nclock = 9\ndistance = \"80 cm\"\n\n[[mesh]]\nname = \"lump\"\nfile = \"lump.obj\"\n"
         "up = \"z\"\n\n[[board]]\nsheet = \"A3\"\nclock = 3\ndistance = \"25 cm\"\n";
}

std::string seconds_or_status(const ProcessRun& run) {
  return run.status == 0 ? fmt::format("{:.2f} s ({:.2f} s of processors)", run.wall_s, run.processor_s)
                         : fmt::format("failed with status {}", run.status);
}

GoalRow timed_row(const std::string& what, double goal_s, int runs, const Words& words) {
  const WorkFolder folder;
  const ProcessRun run = middle_run(runs, words, folder.name());
  Words alone = words;
  alone.insert(alone.end(), {"--threads", "1"});
  const ProcessRun one_thread = middle_run(runs, alone, folder.name());
  return {what,
          fmt::format("<= {} s", goal_s),
          seconds_or_status(run),
          fmt::format("one thread {:.2f} s", one_thread.wall_s),
          fmt::format("{:.2f} x", one_thread.wall_s / run.wall_s),
          met_when(run.status == 0 && run.wall_s <= goal_s)};
}

GoalRow threads_row() {
  const WorkFolder folder;
  const Words words{"meter", kScenes + "citrus_tart.toml", "--precision", "0.01 stops", "--json", "-q"};
  Words one = words, two = words;
  one.insert(one.end(), {"--threads", "1"});
  two.insert(two.end(), {"--threads", "2"});
  const ProcessRun slow = middle_run(3, one, folder.name()), quick = middle_run(3, two, folder.name());
  const double times = slow.wall_s / quick.wall_s;
  const bool same = slow.out == quick.out && slow.status == 0;
  return {"two threads, meters at 0.01 stop",
          ">= 1.9 x; same bytes",
          fmt::format("{:.2f} s; {}", quick.wall_s, same ? "same bytes" : "OTHER BYTES"),
          fmt::format("one thread {:.2f} s", slow.wall_s),
          fmt::format("{:.2f} x", times),
          met_when(times >= 1.9 && same)};
}

GoalRow memory_row() {
  const WorkFolder folder;
  write_lump(folder.at("lump.obj"), 500);  // 500 rings of 1000 segments: a million triangles
  write_scene(folder.at("big.toml"));
  const Words roughly{"--precision", "9 stops", "-q"};
  Words picture{"render", "big.toml", "--pixels", "1224"}, meters{"meter", "big.toml"};
  picture.insert(picture.end(), roughly.begin(), roughly.end());
  meters.insert(meters.end(), roughly.begin(), roughly.end());
  const ProcessRun all = run_fillside(picture, folder.name()), alone = run_fillside(meters, folder.name());
  return {"peak memory: a million triangles from OBJ, a picture of one megapixel, every layer",
          "<= 300 MB",
          all.status == 0 ? fmt::format("{:.0f} MB ({:.1f} s)", all.peak_memory_mb, all.wall_s)
                          : fmt::format("failed with status {}", all.status),
          fmt::format("meters only {:.0f} MB ({:.1f} s)", alone.peak_memory_mb, alone.wall_s),
          fmt::format("{:.1f} x", all.peak_memory_mb / alone.peak_memory_mb),
          met_when(all.status == 0 && all.peak_memory_mb <= 300.0)};
}

}  // namespace

// To be called before anything large is in this process's own memory: a child counts its parent's at birth as
// its peak.
void process_goals() {
  print_goals({timed_row("default meters at 0.05 stop, start to exit", 0.5, 5,
                         {"meter", kScenes + "citrus_tart.toml", "--precision", "0.05 stops", "-q"})});
  print_goals({timed_row("calendar: a year of half-hours, all meters, start to exit", 3.0, 3,
                         {"calendar", kScenes + "north_window.toml", "--step", "30", "-q", "-o", "."})});
  const std::string tart = kScenes + "citrus_tart.toml";
  print_goals({timed_row("placing one board (solve to 0.05 stop), start to exit", 3.0, 3,
                         {"place", tart, "--want", "lit:shadow = 3:1", "--move",
                          "board.near.distance=14cm..70cm", "-q"}),
               timed_row("placing two boards, start to exit", 10.0, 3,
                         {"place", tart, "--set", "board.far.used=true", "--want", "lit:shadow = 2:1",
                          "--move", "board.near.clock=4..5", "--move", "board.near.distance=18cm..40cm",
                          "--move", "board.far.distance=25cm..60cm", "--prefer", "easiest", "-q"})});
  print_goals({threads_row(), memory_row()});
}

}  // namespace fillside::bench
