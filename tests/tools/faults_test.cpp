// What a machine may do to a run: nothing may be lost, nothing half-written, and the answer is one clear
// line.
#include <gmock/gmock.h>
#include <linux/capability.h>
#include <sched.h>
#include <sys/mount.h>
#include <sys/prctl.h>
#include <sys/resource.h>
#include <unistd.h>

#include <csignal>
#include <cstdlib>
#include <set>

#include "tests/tools/program.h"

namespace fillside {
namespace {

namespace fs = std::filesystem;
using testing::AnyOf;
using testing::ElementsAre;
using testing::HasSubstr;

class Faults : public ProgramTest {
 protected:
  Faults() { write("small.toml", kSmallSet); }
  static Surroundings prepared(std::function<void()> prepare) {
    Surroundings around;
    around.prepare = std::move(prepare);
    return around;
  }
  const std::vector<std::string> map_ =
      std::vector<std::string>{"map", "small.toml", "fill", "--cells", "6"} + kRoughly;
  const std::vector<std::string> meter_ =
      std::vector<std::string>{"meter", "small.toml", "--json"} + kRoughly;
};

TEST_F(Faults, a_full_disc_leaves_the_older_files_and_no_piece) {
  fs::create_directories(at("disc"));
  const bool mounted = ::mount("tmpfs", at("disc").c_str(), "tmpfs", 0, "size=4k") == 0;
  write("disc/small-fill.csv", "old");
  // Only root may mount a disc; others meet a limit on files instead.
  const auto tight = [] {
    ::signal(SIGXFSZ, SIG_IGN);
    const rlimit limit{3000, 3000};
    ::setrlimit(RLIMIT_FSIZE, &limit);
  };
  const Outcome outcome =
      run(map_ + std::vector<std::string>{"-o", "disc"}, mounted ? Surroundings{} : prepared(tight));
  const std::string left = bytes_of(at("disc/small-fill.csv"));
  const std::vector<std::string> names = files();
  if (mounted) ::umount(at("disc").c_str());
  EXPECT_EQ(outcome.status, 4);
  EXPECT_EQ(outcome.out, "");
  EXPECT_TRUE(is_one_line(outcome.err));
  EXPECT_THAT(outcome.err,
              HasSubstr(mounted ? "No space left on device; free some space" : "File too large; allow"));
  EXPECT_EQ(left, "old");
  EXPECT_THAT(names, ElementsAre("disc", "disc/small-fill.csv", "small.toml"));
}

// Root may write anywhere; without this capability it is held to permissions as others are.
void be_like_others() { ::prctl(PR_CAPBSET_DROP, CAP_DAC_OVERRIDE, 0, 0, 0); }

TEST_F(Faults, without_permission_to_write_or_read_the_remedy_is_told) {
  fs::create_directories(at("theirs"));
  fs::permissions(at("theirs"), fs::perms::owner_read | fs::perms::owner_exec);
  write("secret.toml", kSmallSet);
  fs::permissions(at("secret.toml"), fs::perms::none);
  const Outcome writing = run(map_ + std::vector<std::string>{"-o", "theirs"}, prepared(be_like_others));
  EXPECT_EQ(writing.status, 4);
  EXPECT_TRUE(is_one_line(writing.err));
  EXPECT_THAT(writing.err, HasSubstr("Permission denied; choose a folder you may write to"));
  const Outcome reading = run({"check", "secret.toml"}, prepared([] {
                                be_like_others();
                                ::prctl(PR_CAPBSET_DROP, CAP_DAC_READ_SEARCH, 0, 0, 0);
                              }));
  EXPECT_EQ(reading.status, 3);
  EXPECT_TRUE(is_one_line(reading.err));
  EXPECT_THAT(reading.err, HasSubstr("secret.toml"));
}

TEST_F(Faults, two_hundred_megabytes_of_memory_end_with_one_line_and_no_file) {
  const auto tight = [] {
    const rlimit limit{200'000'000, 200'000'000};
    ::setrlimit(RLIMIT_AS, &limit);
  };
  const Outcome outcome =
      run({"render", "small.toml", "--pixels", "4000", "--layers", "-o", "out"}, prepared(tight));
  EXPECT_EQ(outcome.status, 3);
  EXPECT_EQ(outcome.out, "");
  EXPECT_TRUE(is_one_line(outcome.err));
  EXPECT_THAT(outcome.err, HasSubstr("not enough memory"));
  EXPECT_THAT(files(), ElementsAre("out", "small.toml"));
}

TEST_F(Faults, one_processor_gives_the_same_bytes) {
  const auto on_one = [] {
    cpu_set_t one;
    CPU_ZERO(&one);
    CPU_SET(0, &one);
    ::sched_setaffinity(0, sizeof one, &one);
  };
  EXPECT_EQ(run(meter_, prepared(on_one)).out, run(meter_).out);
}

TEST_F(Faults, a_german_machine_in_a_far_time_zone_gives_the_same_bytes) {
  const std::string make =
      "localedef -i de_DE -f UTF-8 '" + at("locale").string() + "/de_DE.UTF-8' >/dev/null 2>&1";
  fs::create_directories(at("locale"));
  ASSERT_EQ(std::system(make.c_str()), 0) << "localedef and its sources are Debian's package locales";
  Surroundings german;
  german.variables = {{"LOCPATH", at("locale")},
                      {"LC_ALL", "de_DE.UTF-8"},
                      {"LANG", "de_DE.UTF-8"},
                      {"TZ", "Pacific/Kiritimati"}};
  const std::vector<std::string> calendar{"calendar", FILLSIDE_SOURCE_DIR "/scenes/north_window.toml",
                                          "--json"};
  for (const auto& words : {meter_, map_, calendar + kRoughly}) {
    const Outcome here = run(words), there = run(words, german);
    EXPECT_EQ(here.status, 0) << here.err;
    EXPECT_EQ(here.out, there.out);
  }
}

TEST_F(Faults, paths_with_spaces_letters_of_all_kinds_and_line_breaks_work) {
  const std::string folder = "Küche & 台所/a \"b\"\n c";
  fs::create_directories(at(folder));
  write(folder + "/soup 's\nbowl.toml", kSmallSet);
  const Outcome outcome = run(std::vector<std::string>{"map", folder + "/soup 's\nbowl.toml", "fill",
                                                       "--cells", "6", "-o", folder + "/out"} +
                              kRoughly);
  EXPECT_EQ(outcome.status, 0) << outcome.err;
  EXPECT_TRUE(fs::exists(at(folder + "/out/soup_'s\nbowl-fill.png")));
  EXPECT_THAT(run({"check", "\x1b[31m.toml"}).err, testing::StartsWith("\\x1b[31m.toml: error"))
      << "a terminal obeys it";
}

TEST_F(Faults, links_are_followed_however_deep_and_circles_are_told) {
  fs::create_directories(at("real"));
  fs::create_directory_symlink("real", at("link0"));
  for (int i = 1; i < 20; ++i)
    fs::create_directory_symlink("link" + std::to_string(i - 1), at("link" + std::to_string(i)));
  write("elsewhere.csv", "old");
  fs::create_symlink("../elsewhere.csv", at("real/small-fill.csv"));
  EXPECT_EQ(run(map_ + std::vector<std::string>{"-o", "link19"}).status, 0);
  EXPECT_TRUE(fs::is_symlink(at("real/small-fill.csv"))) << "a link stays a link";
  EXPECT_NE(bytes_of(at("elsewhere.csv")), "old");

  fs::create_symlink("b", at("a"));
  fs::create_symlink("a", at("b"));
  const Outcome circle = run(map_ + std::vector<std::string>{"-o", "a"});
  EXPECT_EQ(circle.status, 4);
  EXPECT_TRUE(is_one_line(circle.err));
}

TEST_F(Faults, runs_that_write_to_one_folder_do_not_mix) {
  const auto words = [&](int seed) {
    return std::vector<std::string>{"render", "small.toml",         "--pixels", "16",
                                    "--seed", std::to_string(seed), "-o",       "shared"} +
           kRoughly;
  };
  std::set<std::string> pictures;
  for (int seed = 1; seed <= 4; ++seed) {
    ASSERT_EQ(run(words(seed)).status, 0);
    pictures.insert(bytes_of(at("shared/small.png")));
    fs::remove_all(at("shared"));
  }
  ASSERT_EQ(pictures.size(), 4u);
  std::vector<Running> together;
  for (int seed = 1; seed <= 4; ++seed) together.push_back(start(words(seed)));
  for (Running& each : together) EXPECT_EQ(each.outcome().status, 0);
  EXPECT_TRUE(pictures.contains(bytes_of(at("shared/small.png")))) << "whichever came last, whole";
  EXPECT_THAT(files(), ElementsAre("shared", "shared/small.exr", "shared/small.png", "small.toml"));
}

TEST_F(Faults, a_scene_that_changes_while_it_is_measured_is_measured_as_it_was_or_as_it_is) {
  std::string other = kSmallSet;
  other.replace(other.find("15 cm"), 5, "25 cm");
  write("other.toml", other);
  const std::string old_answer = run(meter_).out;
  fs::copy(at("small.toml"), at("old.toml"));
  fs::copy(at("other.toml"), at("small.toml"), fs::copy_options::overwrite_existing);
  const std::string new_answer = run(meter_).out;
  ASSERT_NE(old_answer, new_answer);
  for (int turn = 0; turn < 8; ++turn) {
    Running running = start(meter_);
    while (!running.ended()) {
      for (const char* name : {"old.toml", "other.toml"}) {
        fs::copy(at(name), at("new.toml"), fs::copy_options::overwrite_existing);
        fs::rename(at("new.toml"), at("small.toml"));
      }
    }
    EXPECT_THAT(running.outcome().out, AnyOf(old_answer, new_answer));
  }
}

}  // namespace
}  // namespace fillside
