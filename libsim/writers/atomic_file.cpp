#include "libsim/writers/atomic_file.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <string>
#include <system_error>
#include <utility>

#include "libsim/base/problem.h"

namespace fillside {
namespace {

namespace fs = std::filesystem;

std::string_view remedy_for(int fault) {
  switch (fault) {
    case EACCES:
    case EPERM:
    case EROFS:
      return "choose a folder you may write to";
    case ENOTDIR:
    case EEXIST:
      return "a file is in the way of the folder: move it, or choose another folder";
    case EISDIR:
      return "a folder has that name: move it, or choose another file name";
    case ENOSPC:
    case EDQUOT:
      return "free some space, or choose a folder on another disc";
    case ELOOP:
      return "links lead in a circle: remove one, or choose another file name";
    case EFBIG:
      return "allow larger files (ulimit -f), or choose fewer pixels or cells";
    case ENAMETOOLONG:
      return "choose a shorter name";
    default:
      return "choose another folder";
  }
}

[[noreturn]] void refuse(std::string_view what, const fs::path& path, int fault) {
  throw WriteError(fmt::format("cannot {} '{}': {}; {}", what, path.string(),
                               std::generic_category().message(fault), remedy_for(fault)));
}

bool is_at(int descriptor, const fs::path& name) {
  struct stat held {
  }, named{};
  return ::fstat(descriptor, &held) == 0 && ::lstat(name.c_str(), &named) == 0 &&
         held.st_dev == named.st_dev && held.st_ino == named.st_ino;
}

// Whoever writes under a hidden name holds a lock on the file, which ends with the process. So one that can
// be locked was left by a process that was killed, and its name is free again.
void clear_if_abandoned(const fs::path& name) {
  const int descriptor = ::open(name.c_str(), O_RDONLY | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC);
  if (descriptor < 0) return;
  // Between the two steps another may have cleared it, and put its own there.
  if (::flock(descriptor, LOCK_EX | LOCK_NB) == 0 && is_at(descriptor, name)) ::unlink(name.c_str());
  ::close(descriptor);
}

// A new file in the folder of `goal`. Where the system can, it has no name while it is written, so that
// nothing of it is left when the process is killed; else, and for the instant in which it takes an older
// file's place, a hidden name that nobody else has. Closed and gone unless it was kept.
class TemporaryFile {
 public:
  explicit TemporaryFile(const fs::path& goal) : goal_(goal) {
    clear_if_abandoned(hidden_name(0));
    const fs::path folder = goal.parent_path().empty() ? fs::path(".") : goal.parent_path();
    if (fs::exists(kOpenFiles)) descriptor_ = ::open(folder.c_str(), O_WRONLY | O_TMPFILE | O_CLOEXEC, 0666);
    if (descriptor_ >= 0) {
      ::flock(descriptor_, LOCK_EX | LOCK_NB);
      return;
    }
    take_hidden_name([this](const fs::path& name) { return is_made_at(name); });
  }
  ~TemporaryFile() {
    if (!name_.empty()) ::unlink(name_.c_str());
    if (descriptor_ >= 0) ::close(descriptor_);
  }
  TemporaryFile(const TemporaryFile&) = delete;
  TemporaryFile& operator=(const TemporaryFile&) = delete;

  void write(std::string_view bytes) {
    while (!bytes.empty()) {
      const ssize_t written = ::write(descriptor_, bytes.data(), bytes.size());
      if (written < 0 && errno == EINTR) continue;
      if (written < 0) refuse("write", goal_, errno);
      bytes.remove_prefix(static_cast<std::size_t>(written));
    }
  }

  void keep() {
    if (::fsync(descriptor_) != 0) refuse("write", goal_, errno);
    if (name_.empty() && is_linked_to(goal_)) return;
    // Something has the name: only a rename puts one file in another's place, so this one needs a name first.
    if (name_.empty()) take_hidden_name([this](const fs::path& name) { return is_linked_to(name); });
    if (::rename(name_.c_str(), goal_.c_str()) != 0) refuse("write", goal_, errno);
    name_.clear();
  }

 private:
  static constexpr const char* kOpenFiles = "/proc/self/fd";

  // The same for every process, so that what one left that was killed is cleared by the next who writes the
  // file.
  fs::path hidden_name(int attempt) const {
    return goal_.parent_path() / fmt::format(".{}.{}.part", goal_.filename().string(), attempt);
  }
  template <class Try>
  void take_hidden_name(const Try& is_taken_by_us) {
    for (int attempt = 0; name_.empty(); ++attempt) {
      const fs::path place = hidden_name(attempt);
      clear_if_abandoned(place);
      if (is_taken_by_us(place))
        name_ = place;
      else if (errno != EEXIST || attempt == 1000)
        refuse("write", goal_, errno);
    }
  }
  bool is_made_at(const fs::path& name) {
    descriptor_ = ::open(name.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
    if (descriptor_ < 0) return false;
    ::flock(descriptor_, LOCK_EX);  // waits for one who looks whether it is abandoned
    if (is_at(descriptor_, name)) return true;
    ::close(std::exchange(descriptor_, -1));  // taken for abandoned before it was locked
    errno = EEXIST;
    return false;
  }
  bool is_linked_to(const fs::path& name) const {
    const std::string self = fmt::format("{}/{}", kOpenFiles, descriptor_);
    return ::linkat(AT_FDCWD, self.c_str(), AT_FDCWD, name.c_str(), AT_SYMLINK_FOLLOW) == 0;
  }

  fs::path goal_, name_;
  int descriptor_ = -1;
};

// A link stays a link: what it leads to is replaced.
fs::path behind_links(const fs::path& path) {
  std::error_code fault;
  if (!fs::is_symlink(path, fault)) return path;
  const fs::path behind = fs::weakly_canonical(path, fault);
  if (fault) refuse("write", path, fault.value());
  return behind;
}

// So that the new name itself survives a power cut. Some file systems cannot do it for folders: then it is
// left.
void settle_folder(const fs::path& folder) {
  const int descriptor = ::open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (descriptor < 0) return;
  ::fsync(descriptor);
  ::close(descriptor);
}

}  // namespace

void make_folder(const std::filesystem::path& folder) {
  if (folder.empty()) return;
  std::error_code fault;
  fs::create_directories(folder, fault);
  if (fault) refuse("make the folder", folder, fault.value());
  if (!fs::is_directory(folder)) refuse("make the folder", folder, ENOTDIR);
}

void write_file(const std::filesystem::path& path, std::string_view bytes) {
  make_folder(path.parent_path());
  const fs::path place = behind_links(path);
  TemporaryFile file(place);
  file.write(bytes);
  file.keep();
  settle_folder(place.parent_path());
}

}  // namespace fillside
