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

// A new file beside `path` under a hidden name nobody else has; closed and removed unless it was renamed.
class TemporaryFile {
 public:
  explicit TemporaryFile(const fs::path& path) : goal_(path) {
    for (int attempt = 0; descriptor_ < 0; ++attempt) {
      const std::string name = fmt::format(".{}.{}-{}.part", path.filename().string(), ::getpid(), attempt);
      place_ = path.parent_path() / name;
      descriptor_ = ::open(place_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
      if (descriptor_ < 0 && (errno != EEXIST || attempt == 1000)) refuse("write", goal_, errno);
    }
  }
  ~TemporaryFile() {
    if (descriptor_ >= 0) ::close(descriptor_);
    if (!kept_) ::unlink(place_.c_str());
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
    if (::close(std::exchange(descriptor_, -1)) != 0) refuse("write", goal_, errno);
    if (::rename(place_.c_str(), goal_.c_str()) != 0) refuse("write", goal_, errno);
    kept_ = true;
  }

 private:
  fs::path goal_, place_;
  int descriptor_ = -1;
  bool kept_ = false;
};

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
  TemporaryFile file(path);
  file.write(bytes);
  file.keep();
  settle_folder(path.parent_path());
}

}  // namespace fillside
