#include "libsim/writers/atomic_file.h"

#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/file.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <fstream>
#include <functional>
#include <random>
#include <stdexcept>
#include <vector>

#include "libsim/base/problem.h"
#include "tests/writers/temporary_folder.h"

namespace fillside {
namespace {

std::string refusal_of(const std::filesystem::path& path) {
  try {
    write_file(path, "new");
  } catch (const WriteError& error) {
    return error.what();
  }
  return "";
}

TEST(AtomicFile, WritesAllBytesAndMakesTheFolder) {
  const TemporaryFolder folder;
  const std::string bytes = std::string("a\0b\r\n\xff", 6) + std::string(3'000'000, 'x');
  write_file(folder / "deep/er/tart.png", bytes);
  EXPECT_EQ(bytes_of(folder / "deep/er/tart.png"), bytes);
}

TEST(AtomicFile, ReplacesAnOlderFileAndLeavesNothingElse) {
  const TemporaryFolder folder;
  write_file(folder / "soup.csv", "old and longer");
  write_file(folder / "soup.csv", "new");
  EXPECT_EQ(bytes_of(folder / "soup.csv"), "new");
  EXPECT_EQ(folder.file_count(), 1);
}

TEST(AtomicFile, AFileInPlaceOfTheFolderIsRefusedWithAReasonAndARemedy) {
  const TemporaryFolder folder;
  write_file(folder / "out", "I am a file");
  const std::string text = refusal_of(folder / "out/tart.png");
  EXPECT_NE(text.find("Not a directory"), std::string::npos) << text;
  EXPECT_NE(text.find("a file is in the way of the folder"), std::string::npos) << text;
  EXPECT_EQ(bytes_of(folder / "out"), "I am a file");
}

TEST(AtomicFile, AFolderInPlaceOfTheFileIsRefusedAndNoTemporaryFileStays) {
  const TemporaryFolder folder;
  make_folder(folder / "tart.png");
  const std::string text = refusal_of(folder / "tart.png");
  EXPECT_NE(text.find("tart.png': Is a directory; a folder has that name"), std::string::npos) << text;
  EXPECT_EQ(folder.file_count(), 1);
}

TEST(AtomicFile, AnImpossibleNameLeavesTheOldStateAlone) {
  const TemporaryFolder folder;
  EXPECT_NE(refusal_of(folder / std::string(300, 'n')).find("choose a shorter name"), std::string::npos);
  EXPECT_EQ(folder.file_count(), 0);
}

TEST(AtomicFile, AWriteThatFailsHalfWayLeavesTheOldFileAndNoPiece) {
  const TemporaryFolder folder;
  write_file(folder / "loaf.exr", "old");
  struct rlimit usual {};
  ASSERT_EQ(::getrlimit(RLIMIT_FSIZE, &usual), 0);
  const auto handler = ::signal(SIGXFSZ, SIG_IGN);  // the write then fails with "File too large" instead
  const struct rlimit tight { 1000, usual.rlim_max };
  ASSERT_EQ(::setrlimit(RLIMIT_FSIZE, &tight), 0);
  EXPECT_THROW(write_file(folder / "loaf.exr", std::string(5000, 'x')), WriteError);
  ::setrlimit(RLIMIT_FSIZE, &usual);
  ::signal(SIGXFSZ, handler);
  EXPECT_EQ(bytes_of(folder / "loaf.exr"), "old");
  EXPECT_EQ(folder.file_count(), 1);
}

TEST(AtomicFile, TheFileHasTheUsualPermissions) {
  const TemporaryFolder folder;
  const mode_t mask = ::umask(0022);
  write_file(folder / "jar.json", "{}");
  ::umask(mask);
  struct stat status {};
  ASSERT_EQ(::stat((folder / "jar.json").c_str(), &status), 0);
  EXPECT_EQ(status.st_mode & 0777, 0644u);
}

int hidden_files_of(const TemporaryFolder& folder) {
  int count = 0;
  for (const auto& entry : std::filesystem::directory_iterator(folder / ""))
    count += entry.path().filename().string().starts_with(".") ? 1 : 0;
  return count;
}

TEST(AtomicFile, WhatAKilledProcessLeftIsClearedAndWhatALivingOneHoldsIsNot) {
  const TemporaryFolder folder;
  const auto leave = [&](int attempt) {
    std::ofstream(folder / (".soup.csv." + std::to_string(attempt) + ".part")) << "left";
  };
  write_file(folder / "soup.csv", "old");
  leave(0), leave(1);
  const int held = ::open((folder / ".soup.csv.0.part").c_str(), O_RDONLY | O_CLOEXEC);
  ASSERT_EQ(::flock(held, LOCK_EX), 0);
  write_file(folder / "soup.csv", "new");
  EXPECT_EQ(bytes_of(folder / "soup.csv"), "new");
  EXPECT_EQ(bytes_of(folder / ".soup.csv.0.part"), "left") << "somebody is at work on it";
  EXPECT_EQ(folder.file_count(), 2);
  ::close(held);
  write_file(folder / "soup.csv", "newer");
  EXPECT_EQ(bytes_of(folder / "soup.csv"), "newer");
  EXPECT_EQ(folder.file_count(), 1);
}

TEST(AtomicFile, ManyWritersOfOneFileLeaveOneWholeFile) {
  const TemporaryFolder folder;
  std::vector<pid_t> writers;
  for (char letter = 'a'; letter < 'i'; ++letter) {
    writers.push_back(::fork());
    if (writers.back() != 0) continue;
    int status = 0;
    try {
      for (int time = 0; time < 100; ++time) write_file(folder / "soup.csv", std::string(20'000, letter));
    } catch (const WriteError&) {
      status = 1;
    }
    ::_exit(status);
  }
  for (const pid_t writer : writers) {
    int status = -1;
    ::waitpid(writer, &status, 0);
    EXPECT_EQ(status, 0);
  }
  const std::string found = bytes_of(folder / "soup.csv");
  ASSERT_EQ(found.size(), 20'000u);
  EXPECT_EQ(found, std::string(20'000, found[0]));
  EXPECT_EQ(folder.file_count(), 1);
}

/// A new process that writes one file after another without end, and tells at the `n`-th that it begins it:
/// so the rest of the machine's work has no say in how far it has come.
pid_t start_writer(const std::function<void(int)>& write_one, int n) {
  int told[2];
  if (::pipe(told) != 0) throw std::runtime_error("no pipe");
  const pid_t child = ::fork();
  for (int i = 0; child == 0; ++i) {
    if (i == n && ::write(told[1], "", 1) != 1) ::_exit(1);
    write_one(i);
  }
  ::close(told[1]);
  char letter = 0;
  EXPECT_EQ(::read(told[0], &letter, 1), 1);
  ::close(told[0]);
  return child;
}

// 200 times a process that does nothing but write is killed somewhere in it. To take an older file's place a
// new one needs a name for an instant: one that is killed in it leaves a whole hidden file, and the next
// writer clears it.
TEST(AtomicFile, KilledAtAnyMomentEveryFileIsWholeAndNothingElseStays) {
  const TemporaryFolder folder;
  const std::string old_bytes(400'000, 'o'), new_bytes(300'000, 'n');
  const auto name = [&](int i) { return folder / ("file" + std::to_string(i)); };
  const auto write_one = [&](int i) { write_file(name(i % 4), i % 8 < 4 ? new_bytes : old_bytes); };
  std::mt19937 numbers(7);
  int changed = 0;
  for (int turn = 0; turn < 200; ++turn) {
    write_file(name(0), old_bytes);
    for (int i = 1; i < 4; ++i) std::filesystem::remove(name(i));
    const pid_t child = start_writer(write_one, turn % 8);
    ::usleep(std::uniform_int_distribution<useconds_t>(0, 2'000)(numbers));
    ::kill(child, SIGKILL);
    ::waitpid(child, nullptr, 0);
    for (int i = 0; i < 4; ++i) {
      const std::string found = bytes_of(name(i));
      EXPECT_TRUE(found == old_bytes || found == new_bytes || (i > 0 && !std::filesystem::exists(name(i))))
          << turn;
      changed += found == new_bytes ? 1 : 0;
    }
    EXPECT_LE(hidden_files_of(folder), 1) << turn;
    for (int i = 0; i < 4; ++i)
      for (int time = 0; time < 2; ++time)
        write_file(name(i), old_bytes);  // the second takes the first's place
    EXPECT_EQ(folder.file_count(), 4) << turn;
  }
  EXPECT_GT(changed, 200) << "or the kills came too early to show anything";
}

TEST(AtomicFile, ALinkStaysALinkAndACircleIsRefused) {
  const TemporaryFolder folder;
  write_file(folder / "there/soup.csv", "old");
  std::filesystem::create_symlink("there/soup.csv", folder / "soup.csv");
  write_file(folder / "soup.csv", "new");
  EXPECT_TRUE(std::filesystem::is_symlink(folder / "soup.csv"));
  EXPECT_EQ(bytes_of(folder / "there/soup.csv"), "new");
  std::filesystem::create_symlink("b", folder / "a");
  std::filesystem::create_symlink("a", folder / "b");
  EXPECT_NE(refusal_of(folder / "a").find("links lead in a circle"), std::string::npos)
      << refusal_of(folder / "a");
}

}  // namespace
}  // namespace fillside
