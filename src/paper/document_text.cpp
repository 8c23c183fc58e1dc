#include "paper/document_text.h"

#include <cstdint>

namespace tailblock {
namespace {

using Use = std::function<void(std::string_view, const std::string&)>;

struct Walk {
  const Use& use;

  void words(std::string_view place, const std::vector<Words>& all) const {
    for (const Words& part : all) use(place, part.lead), use(place, part.text);
  }
  void operator()(const Heading& heading) const { use("heading", heading.text); }
  void operator()(const Paragraph& paragraph) const { words("paragraph", {paragraph.words}); }
  void operator()(const Bullets& bullets) const { words("list", bullets.items); }
  void operator()(const Notice& notice) const {
    use("notice", notice.title);
    words("notice", notice.words);
  }
  void operator()(const Facts& facts) const {
    for (const Facts::Fact& fact : facts.facts) use("fact", fact.name), use("fact", fact.value);
  }
  void operator()(const Table& table) const {
    use("table", table.caption);
    for (const TableColumn& column : table.columns) use("table", column.head);
    for (const TableRow& row : table.rows) {
      for (const TableCell& cell : row.cells) {
        words("table", cell.words);
        for (const TickBox& box : cell.boxes) use("table", box.label);
      }
    }
  }
  void operator()(const Figure& figure) const {
    use("caption", figure.caption);
    use("picture", figure.picture.says);
    for (const Shape& shape : figure.picture.shapes) use("picture", shape.words);
    words("caption", figure.beside);
  }
  void operator()(const PhotoRow& row) const {
    for (const PhotoRow::Shot& shot : row.shots) use("photo", shot.caption);
  }
  void operator()(const ToSign& sign) const {
    for (const std::string& name : sign.names) use("line to sign", name);
  }
  void operator()(const CutLine&) const {}
};

/// How many bytes the character at the front takes; 0 when it is not UTF-8 (overlong, surrogate, beyond 10FFFF, cut
/// off).
std::size_t character_length(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<std::uint8_t>(text[i]); };
  const std::size_t length = byte(0) < 0x80 ? 1 : byte(0) >= 0xF0 ? 4 : byte(0) >= 0xE0 ? 3 : 2;
  if (length == 1) return 1;
  if (byte(0) < 0xC2 || byte(0) > 0xF4 || text.size() < length) return 0;
  for (std::size_t i = 1; i < length; ++i) {
    if ((byte(i) & 0xC0) != 0x80) return 0;
  }
  if (byte(0) == 0xE0 && byte(1) < 0xA0) return 0;
  if (byte(0) == 0xED && byte(1) > 0x9F) return 0;
  if (byte(0) == 0xF0 && byte(1) < 0x90) return 0;
  if (byte(0) == 0xF4 && byte(1) > 0x8F) return 0;
  return length;
}

}  // namespace

void require_text(std::string_view place, const std::string& text) {
  const std::string where = std::string(place) + ": ";
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t length = character_length(std::string_view(text).substr(i));
    const std::string at = "byte " + std::to_string(i + 1);
    if (length == 0) throw Refused(where + at + " is not UTF-8 text");
    const auto code = static_cast<unsigned char>(text[i]);
    if ((code < 0x20 && text[i] != '\n' && text[i] != '\r' && text[i] != '\t') || code == 0x7F) {
      throw Refused(where + at + " is a control character");
    }
    i += length;
  }
}

void each_text(const Document& document, const Use& use) {
  use("title", document.title);
  use("subtitle", document.subtitle);
  use("reference", document.reference);
  use("language", document.language);
  use("shop", document.shop.shop);
  for (const std::string& line : document.shop.lines) use("shop", line);
  for (const Block& block : document.blocks) std::visit(Walk{use}, block);
}

void require_writable(const Document& document) {
  each_text(document, require_text);
  for (const Block& block : document.blocks) {
    if (const auto* figure = std::get_if<Figure>(&block)) require_drawable(figure->picture);
    const auto* table = std::get_if<Table>(&block);
    if (table == nullptr) continue;
    for (const TableRow& row : table->rows) {
      const std::size_t wanted = row.kind == TableRow::Kind::group ? 1 : table->columns.size();
      if (row.cells.size() == wanted) continue;
      throw Refused("table: a row of " + std::to_string(row.cells.size()) + " cells where " + std::to_string(wanted) +
                    " belong");
    }
  }
}

}  // namespace tailblock
