#pragma once

#include <filesystem>

namespace tailblock {

/// A file being made beside its place: it takes its name only when it is finished and on the disk, and is removed
/// otherwise.
class UnfinishedFile {
 public:
  explicit UnfinishedFile(std::filesystem::path place);
  ~UnfinishedFile();
  UnfinishedFile(const UnfinishedFile&) = delete;
  UnfinishedFile& operator=(const UnfinishedFile&) = delete;
  [[nodiscard]] const std::filesystem::path& path() const { return unfinished_; }
  /// @throws StorageFault when the disk refuses.
  void finish();

 private:
  std::filesystem::path place_, unfinished_;
  bool finished_ = false;
};

}  // namespace tailblock
