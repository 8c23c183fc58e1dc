// Fuzz target: any bytes are taken as an archive, a manifest, a row or a table's file, or refused in one line.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <sstream>
#include <string>

#include "book/archive_contents.h"
#include "book/archive_line.h"
#include "book/archive_manifest.h"
#include "book/archive_tar.h"
#include "quantity/refused.h"

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

/// What was read is written and read again as the same.
void read_row(const std::string& line) {
  const ArchiveRow row = row_of_json_line(table, line);
  if (row_of_json_line(table, json_line(table, row)) != row) std::abort();
}

/// A good archive with some of its bytes replaced: the place is taken from the input.
void read_damaged_tar(const std::string& input) {
  std::string tar = tar_with("manifest.json", "{}");
  for (std::size_t i = 0; i + 2 < input.size(); i += 3) {
    const std::size_t at = static_cast<unsigned char>(input[i]) * 256U + static_cast<unsigned char>(input[i + 1]);
    tar[at % tar.size()] = input[i + 2];
  }
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
        read_row("{\"i\":" + input + ",\"n\":1,\"t\":\"" + input + "\",\"p\":null}");
        break;
      default:
        read_damaged_tar(input);
    }
  } catch (const Refused& refused) {
    if (std::string(refused.what()).find('\n') != std::string::npos) std::abort();
  }
  return 0;
}
