#include <array>
#include <charconv>
#include <fstream>
#include <system_error>

#include "book/archive_export.h"
#include "book/archive_rows.h"
#include "book/book.h"
#include "book/migrations.h"

namespace tailblock {
namespace {

namespace fs = std::filesystem;

std::string in_quotes(const std::string& text) {
  std::string field = "\"";
  for (const char c : text) field += c == '"' ? "\"\"" : std::string(1, c);
  return field + '"';
}

/// An empty text is `""`, and nothing said is nothing.
std::string field_of(const ArchiveValue& value) {
  if (const auto* text = std::get_if<std::string>(&value)) return in_quotes(*text);
  if (const auto* whole = std::get_if<std::int64_t>(&value)) return std::to_string(*whole);
  if (const auto* number = std::get_if<double>(&value)) {
    std::array<char, 32> digits{};
    return {digits.data(), std::to_chars(digits.data(), digits.data() + digits.size(), *number).ptr};
  }
  return {};
}

void write_csv(Session& session, const ArchiveTable& table, const fs::path& file) {
  std::ofstream out(file, std::ios::binary);
  std::string separator;
  for (const ArchiveColumn& column : table.columns) out << std::exchange(separator, ",") << column.name;
  out << "\r\n";
  each_archive_row(session, table, [&](const ArchiveRow& row) {
    separator.clear();
    for (const ArchiveValue& value : row) out << std::exchange(separator, ",") << field_of(value);
    out << "\r\n";
  });
  out.flush();
  if (!out) throw StorageFault(file.string() + ": could not be written; is the disk full?");
}

/// A folder being made beside its place, removed with all it holds unless it took its name.
class UnfinishedFolder {
 public:
  explicit UnfinishedFolder(fs::path place) : place_(std::move(place)), unfinished_(place_.string() + ".unfinished") {
    std::error_code fault;
    fs::remove_all(unfinished_, fault);
    if (!fs::create_directory(unfinished_, fault)) throw StorageFault(place_.string() + ": " + fault.message());
  }
  ~UnfinishedFolder() {
    std::error_code ignored;
    fs::remove_all(unfinished_, ignored);
  }
  UnfinishedFolder(const UnfinishedFolder&) = delete;
  UnfinishedFolder& operator=(const UnfinishedFolder&) = delete;
  [[nodiscard]] const fs::path& path() const { return unfinished_; }
  void finish() {
    std::error_code fault;
    fs::rename(unfinished_, place_, fault);
    if (fault) throw StorageFault(place_.string() + ": " + fault.message());
  }

 private:
  fs::path place_, unfinished_;
};

}  // namespace

void export_csv(const fs::path& book, const fs::path& folder) {
  if (fs::exists(folder)) throw Refused("FOLDER: " + folder.string() + " is there already; it is not written into");
  UnfinishedFolder unfinished(folder);
  Session session(book, Session::May::read);
  Transaction one_state(session, Transaction::To::look);
  if (applied_number(session) == 0) throw Refused("book: the file is not a book of this program");
  for (const ArchiveTable& table : archive_tables(session)) {
    write_csv(session, table, unfinished.path() / (table.name + ".csv"));
  }
  one_state.commit();
  unfinished.finish();
}

}  // namespace tailblock
