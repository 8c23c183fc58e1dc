#include "book/file_safety.h"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <system_error>

#include "book/book.h"

namespace tailblock {
namespace {

/// Waits until the file, or the names in the folder, are on the disk.
void wait_for_disk(const std::filesystem::path& path) {
  const int descriptor = open(path.c_str(), O_RDONLY | O_CLOEXEC);
  const bool kept = descriptor >= 0 && fsync(descriptor) == 0;
  const int fault = errno;
  if (descriptor >= 0) close(descriptor);
  if (!kept) throw StorageFault(path.string() + ": " + std::system_category().message(fault));
}

std::filesystem::path folder_of(const std::filesystem::path& file) {
  return file.has_parent_path() ? file.parent_path() : std::filesystem::path(".");
}

}  // namespace

UnfinishedFile::UnfinishedFile(std::filesystem::path place) : place_(std::move(place)), unfinished_(place_) {
  unfinished_ += ".unfinished";
  std::error_code ignored;
  std::filesystem::remove(unfinished_, ignored);
}

UnfinishedFile::~UnfinishedFile() {
  if (finished_) return;
  std::error_code ignored;
  std::filesystem::remove(unfinished_, ignored);
}

void UnfinishedFile::finish() {
  wait_for_disk(unfinished_);
  std::error_code fault;
  std::filesystem::rename(unfinished_, place_, fault);
  if (fault) throw StorageFault(place_.string() + ": " + fault.message());
  finished_ = true;
  wait_for_disk(folder_of(place_));
}

}  // namespace tailblock
