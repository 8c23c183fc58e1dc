#include "failing_disk.h"

#include <sqlite3.h>

#include <algorithm>
#include <cassert>
#include <fstream>

namespace tailblock::testing {
namespace {

FailingDisk* present_disk = nullptr;
sqlite3_vfs* real_vfs = nullptr;

/// SQLite's handle on one file; the real one lies behind it in memory.
struct File {
  sqlite3_file head;
  const char* name;
  [[nodiscard]] sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
};

File* ours(sqlite3_file* file) { return reinterpret_cast<File*>(file); }
sqlite3_file* real(sqlite3_file* file) { return ours(file)->real(); }
const sqlite3_io_methods* methods(sqlite3_file* file) { return real(file)->pMethods; }

std::string name_of(sqlite3_file* file) { return ours(file)->name == nullptr ? "" : ours(file)->name; }

/// What a write or a cut is about to take away.
void remember_before(sqlite3_file* file, long long offset, long long length) {
  sqlite3_int64 size = 0;
  methods(file)->xFileSize(real(file), &size);
  std::string before(static_cast<std::size_t>(std::clamp<long long>(size - offset, 0, length)), '\0');
  if (!before.empty()) methods(file)->xRead(real(file), before.data(), static_cast<int>(before.size()), offset);
  FailingDisk::present()->remember(name_of(file), offset, std::move(before), size);
}

int write(sqlite3_file* file, const void* bytes, int length, sqlite3_int64 offset) {
  if (const int code = FailingDisk::present()->step()) return code;
  remember_before(file, offset, length);
  return methods(file)->xWrite(real(file), bytes, length, offset);
}

int truncate(sqlite3_file* file, sqlite3_int64 size) {
  if (const int code = FailingDisk::present()->step()) return code;
  remember_before(file, size, 1LL << 30);
  return methods(file)->xTruncate(real(file), size);
}

/// The real disk is not waited for: only this one's power is ever cut.
int wait(sqlite3_file* file, int) {
  if (const int code = FailingDisk::present()->step()) return code;
  FailingDisk::present()->waited_for(name_of(file));
  return SQLITE_OK;
}

int close(sqlite3_file* file) { return methods(file)->xClose(real(file)); }
int read(sqlite3_file* file, void* bytes, int length, sqlite3_int64 offset) {
  return methods(file)->xRead(real(file), bytes, length, offset);
}
int file_size(sqlite3_file* file, sqlite3_int64* size) { return methods(file)->xFileSize(real(file), size); }
int lock(sqlite3_file* file, int level) { return methods(file)->xLock(real(file), level); }
int unlock(sqlite3_file* file, int level) { return methods(file)->xUnlock(real(file), level); }
int is_reserved(sqlite3_file* file, int* held) { return methods(file)->xCheckReservedLock(real(file), held); }
int control(sqlite3_file* file, int what, void* argument) {
  return methods(file)->xFileControl(real(file), what, argument);
}
int sector_size(sqlite3_file* file) { return methods(file)->xSectorSize(real(file)); }
int traits(sqlite3_file* file) { return methods(file)->xDeviceCharacteristics(real(file)); }
int map(sqlite3_file* file, int page, int size, int extend, void volatile** memory) {
  return methods(file)->xShmMap(real(file), page, size, extend, memory);
}
int lock_map(sqlite3_file* file, int offset, int count, int flags) {
  return methods(file)->xShmLock(real(file), offset, count, flags);
}
void barrier(sqlite3_file* file) { methods(file)->xShmBarrier(real(file)); }
int unmap(sqlite3_file* file, int removed) { return methods(file)->xShmUnmap(real(file), removed); }

const sqlite3_io_methods our_methods{2,        close,   read,        write,   truncate,    wait,   file_size,
                                     lock,     unlock,  is_reserved, control, sector_size, traits, map,
                                     lock_map, barrier, unmap,       nullptr, nullptr};

int open(sqlite3_vfs*, const char* name, sqlite3_file* file, int flags, int* flags_given) {
  ours(file)->name = name;  // SQLite keeps it until the file is closed
  file->pMethods = nullptr;
  const int code = real_vfs->xOpen(real_vfs, name, real(file), flags, flags_given);
  if (real(file)->pMethods != nullptr) file->pMethods = &our_methods;
  return code;
}

int remove(sqlite3_vfs*, const char* name, int wait_for_folder) {
  if (const int code = FailingDisk::present()->step()) return code;
  FailingDisk::present()->waited_for(name);
  return real_vfs->xDelete(real_vfs, name, wait_for_folder);
}

sqlite3_vfs our_vfs;

}  // namespace

FailingDisk::FailingDisk() {
  assert(present_disk == nullptr);
  present_disk = this;
  real_vfs = sqlite3_vfs_find(nullptr);
  our_vfs = *real_vfs;
  our_vfs.zName = "failing disk";
  our_vfs.szOsFile = static_cast<int>(sizeof(File)) + real_vfs->szOsFile;
  our_vfs.xOpen = open;
  our_vfs.xDelete = remove;
  sqlite3_vfs_register(&our_vfs, 1);
}

FailingDisk::~FailingDisk() {
  sqlite3_vfs_unregister(&our_vfs);
  sqlite3_vfs_register(real_vfs, 1);
  present_disk = nullptr;
}

FailingDisk* FailingDisk::present() { return present_disk; }

void FailingDisk::fail_from(int nth, int code) { failing_code_ = code, steps_to_failure_ = nth - 1; }

int FailingDisk::step() {
  if (failing_code_ == 0) return SQLITE_OK;
  if (steps_to_failure_ <= 0) {
    steps_to_failure_ = -1;
    return failing_code_;
  }
  --steps_to_failure_;
  return SQLITE_OK;
}

void FailingDisk::remember(const std::string& file, long long offset, std::string before, long long size_before) {
  unwaited_[file].push_back({offset, std::move(before), size_before});
}

void FailingDisk::lose_unwaited_writes() {
  for (const auto& [name, writes] : unwaited_) {
    if (!std::filesystem::exists(name)) continue;
    for (auto last = writes.rbegin(); last != writes.rend(); ++last) {
      std::filesystem::resize_file(name, static_cast<std::uintmax_t>(last->size_before));
      std::fstream file(name, std::ios::in | std::ios::out | std::ios::binary);
      file.seekp(last->offset);
      file.write(last->before.data(), static_cast<std::streamsize>(last->before.size()));
    }
  }
  unwaited_.clear();
}

}  // namespace tailblock::testing
