#include "libsim/writers/atomic_file.h"

#include <fcntl.h>
#include <fmt/format.h>
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

// A new file in the folder of `path`. Where the system can, it has no name until it is whole, so that nothing
// of it is left even when the process is killed; else a hidden name nobody else has. Closed and gone unless
// it was kept.
class TemporaryFile {
 public:
  explicit TemporaryFile(const fs::path& path) : goal_(path) {
    const fs::path folder = path.parent_path().empty() ? fs::path(".") : path.parent_path();
    if (fs::exists(kOpenFiles)) descriptor_ = ::open(folder.c_str(), O_WRONLY | O_TMPFILE | O_CLOEXEC, 0666);
    if (descriptor_ >= 0) return;
    take_hidden_name([this](const fs::path& name) {
      descriptor_ = ::open(name.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
      return descriptor_ >= 0;
    });
  }
  ~TemporaryFile() {
    if (descriptor_ >= 0) ::close(descriptor_);
    if (!name_.empty()) ::unlink(name_.c_str());
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
    if (name_.empty() && linked_to(goal_)) return;
    // Something has the name: only a rename puts one file in another's place, so this one needs a name first.
    if (name_.empty()) take_hidden_name([this](const fs::path& name) { return linked_to(name); });
    if (::close(std::exchange(descriptor_, -1)) != 0) refuse("write", goal_, errno);
    if (::rename(name_.c_str(), goal_.c_str()) != 0) refuse("write", goal_, errno);
    name_.clear();
  }

 private:
  static constexpr const char* kOpenFiles = "/proc/self/fd";

  template <class Try>
  void take_hidden_name(const Try& taken) {
    for (int attempt = 0; name_.empty(); ++attempt) {
      const std::string name = fmt::format(".{}.{}-{}.part", goal_.filename().string(), ::getpid(), attempt);
      const fs::path place = goal_.parent_path() / name;
      if (taken(place))
        name_ = place;
      else if (errno != EEXIST || attempt == 1000)
        refuse("write", goal_, errno);
    }
  }
  bool linked_to(const fs::path& name) const {
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
