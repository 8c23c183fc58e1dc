// Fuzz target: any bytes are taken as an archive, a manifest, or a row, or refused in one line.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <cstring>
#include <sstream>
#include <string>

#include "book/archive_contents.h"
#include "book/archive_line.h"
#include "book/archive_manifest.h"
#include "book/archive_tar.h"
#include "book/book.h"

using namespace tailblock;

namespace {

const ArchiveTable table{.name = "owners",
                         .columns = {{"i", ArchiveKind::whole},
                                     {"n", ArchiveKind::number},
                                     {"t", ArchiveKind::text},
                                     {"p", ArchiveKind::picture}},
                         .key = {"i"},
                         .made_by = ""};

std::string tar_with(const std::string& name, const std::string& bytes) {
  std::ostringstream out;
  TarWriter tar(out);
  tar.add(name, [&](const TarWriter::Write& write) { write(bytes); });
  tar.finish();
  return out.str();
}

void read_archive(const std::string& bytes) {
  std::istringstream in(bytes);
  const ArchiveContents contents(in);
}

void read_row(const std::string& line) { (void)row_of_json_line(table, line); }

/// Any row is read as it was written, unless JSON cannot say it.
void write_and_read_row(const std::string& input) {
  std::int64_t whole = 0;
  double number = 0;
  std::memcpy(&whole, input.data(), std::min(input.size(), sizeof whole));
  std::memcpy(&number, input.data() + input.size() / 2, std::min(input.size() / 2, sizeof number));
  const ArchiveRow row{whole, number, input, {}};
  std::string line;
  try {
    line = json_line(table, row);
  } catch (const StorageFault&) {
    return;
  }
  if (line.find('\n') != std::string::npos || row_of_json_line(table, line) != row) std::abort();
}

/// A good archive with a byte of it replaced, which and by what taken from the input, and the header's checksum made
/// right again.
void read_damaged_tar(const std::string& input) {
  std::string tar = tar_with("manifest.json", "{}");
  if (input.size() < 3) return;
  const auto first = static_cast<unsigned char>(input[0]), second = static_cast<unsigned char>(input[1]);
  tar[(37U * first + 11U * second) % tar.size()] = input[2];
  std::fill_n(tar.begin() + 148, 8, ' ');
  unsigned sum = 0;
  for (std::size_t i = 0; i < 512; ++i) sum += static_cast<unsigned char>(tar[i]);
  for (std::size_t i = 154; i-- > 148; sum /= 8) tar[i] = static_cast<char>('0' + sum % 8);
  read_archive(tar);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t count) {
  if (count == 0) return 0;
  const std::string input(reinterpret_cast<const char*>(bytes) + 1, count - 1);
  try {
    switch (bytes[0] % 5) {
      case 0:
        read_archive(input);
        break;
      case 1:
        read_archive(tar_with("manifest.json", input));
        break;
      case 2:
        read_row(input);
        break;
      case 3:
        write_and_read_row(input);
        break;
      default:
        read_damaged_tar(input);
    }
  } catch (const Refused& refused) {
    if (std::string(refused.what()).find('\n') != std::string::npos) std::abort();
  }
  return 0;
}
