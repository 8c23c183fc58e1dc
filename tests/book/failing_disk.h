#pragma once

#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace tailblock::testing {

/// A disk for tests, put between SQLite and the real one while it lives: it can fill up, and it can lose its power,
/// whereupon everything that was written but not yet waited for is gone, as it may be on a real disk. One at a time.
class FailingDisk {
 public:
  FailingDisk();
  ~FailingDisk();
  FailingDisk(const FailingDisk&) = delete;
  FailingDisk& operator=(const FailingDisk&) = delete;

  /// The `nth` write or wait from now on fails with SQLite's `code`, and so does every one after it.
  void fail_from(int nth, int code);
  void work_again() { failing_code_ = 0, steps_to_failure_ = -1; }
  [[nodiscard]] bool has_failed() const { return failing_code_ != 0 && steps_to_failure_ < 0; }

  /// Takes back what was written since each file was last waited for. Call it when no book is open.
  void lose_unwaited_writes();

  // What SQLite's side calls:
  /// The code to answer a write or wait with; 0: go ahead.
  int step();
  void remember(const std::string& file, long long offset, std::string before, long long size_before);
  void waited_for(const std::string& file) { unwaited_.erase(file); }
  [[nodiscard]] static FailingDisk* present();

 private:
  struct Overwritten {
    long long offset;
    std::string before;
    long long size_before;
  };
  int failing_code_ = 0;
  int steps_to_failure_ = -1;
  std::map<std::string, std::vector<Overwritten>> unwaited_;
};

}  // namespace tailblock::testing
