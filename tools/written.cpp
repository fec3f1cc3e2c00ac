#include "tools/written.h"

#include <mutex>

namespace fillside::tools {
namespace {

struct Record {
  std::mutex guard;
  Written written;
};

// Of the process, as its signals are.
Record& record() {
  static Record the_record;
  return the_record;
}

}  // namespace

void write_file(const std::filesystem::path& path, std::string_view bytes) {
  const std::scoped_lock hold(record().guard);
  fillside::write_file(path, bytes);
  record().written.files.push_back(path);
}

void keep_file(const std::filesystem::path& path, std::string_view bytes) {
  const std::scoped_lock hold(record().guard);
  fillside::write_file(path, bytes);
  ++record().written.kept;
}

void tell_written(const std::function<void(const Written&)>& tell) {
  const std::scoped_lock hold(record().guard);
  tell(record().written);
}

}  // namespace fillside::tools
