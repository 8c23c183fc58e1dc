#include "paper/document_html.h"

#include <algorithm>
#include <cstdint>

#include "paper/document_text.h"
#include "paper/picture_svg.h"

namespace tailblock {
namespace {

/// A wider picture is pushed aside under the thumb there, not made too small to read.
constexpr double widest_on_a_phone_mm = 120;

constexpr std::string_view style = R"(
:root { --ink: #241f18; --soft: #5c5345; --rule: #ddd1bc; --accent: #a3341c; --wash: #f6e0d6; --group: #f5f0e6; }
* { box-sizing: border-box; }
html { background: #f7f1e6; color: var(--ink); font: 1rem/1.45 "Source Sans 3 Variable", Inter, system-ui, sans-serif;
  font-variant-numeric: tabular-nums; }
body { max-width: 52rem; margin: 0 auto; padding: 2rem 1.25rem; background: #fff; overflow-wrap: break-word; }
header { display: flex; flex-wrap: wrap; gap: .5rem 2rem; justify-content: space-between; align-items: flex-start;
  border-bottom: 2px solid var(--accent); padding-bottom: .75rem; }
header .shop { font-size: 1.5rem; font-weight: 700; margin: 0; }
header .lines { color: var(--soft); font-size: .875rem; text-align: right; margin: 0; }
h1 { font-size: 1.8rem; line-height: 1.2; margin: 1.5rem 0 .25rem; }
h2 { font-size: 1.25rem; margin: 1.75rem 0 .5rem; }
h2.big { font-size: 1.8rem; margin-top: 1rem; }
h2.huge { font-size: 4rem; line-height: 1; margin: 1rem 0 0; }
h3 { font-size: 1.05rem; margin: 1.25rem 0 .25rem; }
p, ul, dl, table, figure { margin: .6rem 0; }
p, li, td, dd, .words { white-space: pre-line; }
.soft { color: var(--soft); font-size: .875rem; }
.strong { font-weight: 700; }
.caution { color: var(--accent); }
dl { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(100%, 18rem), 1fr)); gap: .25rem 1.5rem; }
dl div { display: grid; grid-template-columns: 8rem 1fr; gap: .5rem; }
dt { color: var(--soft); }
dd { margin: 0; }
section.notice { border-left: 4px solid #cdbc9d; padding: .5rem .9rem; margin: .9rem 0; break-inside: avoid; }
section.notice.warn { border-color: var(--accent); background: var(--wash); }
section.notice p { margin: .2rem 0; }
.wide { overflow-x: auto; position: relative; }
table { border-collapse: collapse; width: 100%; }
caption { text-align: left; font-weight: 700; padding: .25rem 0; }
th, td { text-align: left; vertical-align: top; padding: .35rem .5rem; border-bottom: 1px solid var(--rule); }
thead th { color: var(--soft); font-size: .875rem; vertical-align: bottom; border-bottom: 2px solid var(--ink); }
tbody th { font-weight: inherit; }
tr.group th { background: var(--group); font-weight: 700; }
tr.total td, tr.total th { font-weight: 700; border-top: 2px solid var(--ink); border-bottom: 0; }
td p, th p { margin: 0 0 .15rem; }
.number { text-align: right; white-space: nowrap; }
thead .number { white-space: normal; }
.box { display: inline-block; width: .85em; height: .85em; border: 1px solid var(--ink); margin: 0 .35em 0 0;
  line-height: .75em; vertical-align: -.05em; text-align: center; }
.boxes span.pair { margin-right: 1rem; white-space: nowrap; }
figure svg { max-width: 100%; height: auto; display: block; }
figure svg text { font-family: inherit; }
figure.wide { overflow-x: auto; }
@media screen and (max-width: 40rem) { figure.wide svg { max-width: none; width: 40rem; } }
figure.beside { display: flex; flex-wrap: wrap; gap: 1.5rem; }
figure.beside svg { flex: none; }
.photos { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(100%, 14rem), 1fr)); gap: .5rem 1.25rem;
  align-items: end; }
.photos figure { margin: .3rem 0; align-self: start; }
.photos img { display: block; max-width: 100%; height: auto; max-height: 16rem; width: auto; }
figcaption { color: var(--soft); font-size: .875rem; margin-top: .35rem; }
.sign { display: flex; gap: 1.5rem; margin-top: 3rem; break-inside: avoid; }
.sign p { flex: 1; border-top: 1px solid var(--ink); color: var(--soft); font-size: .875rem; margin: 0; padding-top: .2rem; }
hr.cut { border: 0; border-top: 1px dashed var(--soft); margin: 2rem 0; }
footer { color: var(--soft); font-size: .875rem; border-top: 1px solid var(--rule); margin-top: 2rem; padding-top: .5rem; }
.unseen { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
@media screen and (max-width: 40rem) {
  header .lines { text-align: left; }
  table.stacks thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
  table.stacks, table.stacks tbody, table.stacks tr { display: block; }
  table.stacks tr { padding: .4rem 0; border-bottom: 1px solid var(--rule); }
  table.stacks th, table.stacks td { display: flex; justify-content: space-between; gap: 1rem; padding: .1rem .5rem;
    border: 0; text-align: left; }
  table.stacks tbody th { display: block; }
  table.stacks td:empty { display: none; }
  table.stacks td[data-head]::before { content: attr(data-head); color: var(--soft); font-size: .875rem; flex: none;
    min-width: 6.5rem; }
  table.stacks td:not(.number) { justify-content: flex-start; }
}
@media print {
  @page { margin: 15mm 18mm; }
  html, body { background: #fff; }
  html { font-size: 9.5pt; }
  body { max-width: none; padding: 0; }
  h1, h2, h3, caption { break-after: avoid; }
  tr, figure { break-inside: avoid; }
  thead { display: table-header-group; }
  p, li { orphans: 2; widows: 2; }
  .wide { overflow: visible; }
}
)";

std::string tag(std::string_view name, const std::string& inside, const std::string& attributes = {}) {
  const std::string plain(name);
  return "<" + plain + attributes + ">" + inside + "</" + plain + ">";
}

std::string base64(std::string_view bytes) {
  constexpr std::string_view letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
  std::string text;
  text.reserve((bytes.size() + 2) / 3 * 4);
  for (std::size_t i = 0; i < bytes.size(); i += 3) {
    const std::size_t here = std::min<std::size_t>(3, bytes.size() - i);
    std::uint32_t bits = 0;
    for (std::size_t k = 0; k < 3; ++k) bits = bits << 8U | (k < here ? static_cast<unsigned char>(bytes[i + k]) : 0U);
    for (std::size_t k = 0; k < 4; ++k) text += k <= here ? letters[bits >> (18 - 6 * k) & 63U] : '=';
  }
  return text;
}

std::string class_of(Voice voice) {
  switch (voice) {
    case Voice::plain:
      return "";
    case Voice::strong:
      return " class=\"strong\"";
    case Voice::soft:
      return " class=\"soft\"";
    case Voice::caution:
      return " class=\"caution\"";
  }
  return "";
}

std::string inside(const Words& words) {
  std::string text = html_text(words.text);
  if (words.lead.empty()) return text;
  return tag("b", html_text(words.lead)) + (text.empty() ? "" : " ") + text;
}

std::string paragraphs(const std::vector<Words>& all) {
  std::string text;
  for (const Words& words : all) text += tag("p", inside(words), class_of(words.voice));
  return text;
}

std::string boxes(const std::vector<TickBox>& all) {
  if (all.empty()) return "";
  std::string text;
  for (const TickBox& box : all) {
    const std::string drawn = tag("span", box.ticked ? "✓" : "", " class=\"box\" aria-hidden=\"true\"");
    const std::string state = tag("span", box.ticked ? "ticked: " : "to tick: ", " class=\"unseen\"");
    text += tag("span", drawn + state + html_text(box.label), " class=\"pair\"") + " ";
  }
  return tag("p", text, " class=\"boxes\"");
}

std::string cell(const TableCell& cell) {
  if (cell.boxes.empty() && cell.words.size() == 1) {
    const Words& words = cell.words[0];
    return words.voice == Voice::plain ? inside(words) : tag("span", inside(words), class_of(words.voice));
  }
  return cell.words.empty() && cell.boxes.empty() ? "" : tag("div", boxes(cell.boxes) + paragraphs(cell.words));
}

class Writer {
 public:
  std::string operator()(const Heading& heading) const {
    const std::string look = heading.level == 0 ? " class=\"huge\"" : heading.level == 1 ? " class=\"big\"" : "";
    return tag(heading.level <= 2 ? "h2" : "h3", html_text(heading.text), look);
  }
  std::string operator()(const Paragraph& paragraph) const { return paragraphs({paragraph.words}); }
  std::string operator()(const Bullets& bullets) const {
    std::string items;
    for (const Words& item : bullets.items) items += tag("li", inside(item), class_of(item.voice));
    return tag("ul", items);
  }
  std::string operator()(const Notice& notice) const {
    const bool warn = notice.kind == Notice::Kind::caution;
    const std::string title = notice.title.empty() ? ""
                                                   : tag("p", html_text(notice.title),
                                                         warn ? " class=\"strong caution\"" : " class=\"strong\"");
    return tag("section", title + paragraphs(notice.words), warn ? " class=\"notice warn\"" : " class=\"notice\"");
  }
  std::string operator()(const Facts& facts) const {
    std::string rows;
    for (const Facts::Fact& fact : facts.facts) {
      rows += tag("div", tag("dt", html_text(fact.name)) + tag("dd", html_text(fact.value)));
    }
    return tag("dl", rows);
  }
  std::string operator()(const Table& table) {
    std::string heads, rows;
    for (const TableColumn& column : table.columns) {
      const std::string look = column.hold == Hold::end ? " class=\"number\"" : "";
      heads += column.head.empty() ? tag("td", "", " role=\"cell\"")
                                   : tag("th", html_text(column.head), " role=\"columnheader\" scope=\"col\"" + look);
    }
    for (const TableRow& row : table.rows) rows += row_of(table, row);
    const std::string caption = table.caption.empty() ? "" : tag("caption", html_text(table.caption));
    const std::string head = tag("thead", tag("tr", heads, " role=\"row\""), " role=\"rowgroup\"");
    const std::string body = tag("tbody", rows, " role=\"rowgroup\"");
    // On a telephone a wide table becomes one block a row; the roles keep it a table for who hears it.
    const std::string look = table.columns.size() > 3 ? " class=\"stacks\" role=\"table\"" : " role=\"table\"";
    // Reached by keyboard, since on a narrow screen a table may scroll sideways.
    std::string name = "Table " + std::to_string(++tables_);
    if (!table.caption.empty()) name += ": " + html_text(table.caption);
    return tag("div", tag("table", caption + head + body, look),
               " class=\"wide\" role=\"region\" tabindex=\"0\" aria-label=\"" + name + "\"");
  }
  std::string operator()(const Figure& figure) const {
    const std::string caption = figure.caption.empty() ? "" : tag("figcaption", html_text(figure.caption));
    const bool wide = figure.picture.width_mm > widest_on_a_phone_mm;
    if (figure.beside.empty()) {
      return tag("figure", svg(figure.picture) + caption, wide ? " class=\"wide\" tabindex=\"0\"" : "");
    }
    return tag("figure", svg(figure.picture) + tag("div", paragraphs(figure.beside)) + caption, " class=\"beside\"");
  }
  std::string operator()(const PhotoRow& row) const {
    std::string shots;
    for (const PhotoRow::Shot& shot : row.shots) {
      const std::string words = html_text(shot.caption);
      shots += tag("figure", "<img alt=\"\" src=\"data:image/jpeg;base64," + base64(shot.jpeg) + "\" width=\"" +
                                 std::to_string(shot.width_px) + "\" height=\"" + std::to_string(shot.height_px) +
                                 "\">" + tag("figcaption", words));
    }
    return tag("div", shots, " class=\"photos\"");
  }
  std::string operator()(const ToSign& sign) const {
    std::string lines;
    for (const std::string& name : sign.names) lines += tag("p", html_text(name));
    return tag("div", lines, " class=\"sign\"");
  }
  std::string operator()(const CutLine&) const { return "<hr class=\"cut\">"; }

 private:
  int tables_ = 0;
  static std::string row_of(const Table& table, const TableRow& row) {
    if (row.kind == TableRow::Kind::group) {
      const std::string over = std::to_string(table.columns.size());
      const std::string attributes = " role=\"rowheader\" scope=\"colgroup\" colspan=\"" + over + "\"";
      return tag("tr", tag("th", cell(row.cells[0]), attributes), " role=\"row\" class=\"group\"");
    }
    std::string cells;
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      const TableColumn& column = table.columns[i];
      std::string attributes = column.hold == Hold::end ? " class=\"number\"" : "";
      if (i == 0 && table.first_names_row && !row.cells[i].words.empty()) {
        cells += tag("th", cell(row.cells[i]), " role=\"rowheader\" scope=\"row\"" + attributes);
        continue;
      }
      if (!column.head.empty()) attributes += " data-head=\"" + html_text(column.head) + "\"";
      cells += tag("td", cell(row.cells[i]), " role=\"cell\"" + attributes);
    }
    return tag("tr", cells, row.kind == TableRow::Kind::total ? " role=\"row\" class=\"total\"" : " role=\"row\"");
  }
};

}  // namespace

std::string html_text(const std::string& text) {
  std::string safe;
  for (const char c : text) {
    switch (c) {
      case '&':
        safe += "&amp;";
        break;
      case '<':
        safe += "&lt;";
        break;
      case '>':
        safe += "&gt;";
        break;
      case '"':
        safe += "&quot;";
        break;
      case '\'':
        safe += "&#39;";
        break;
      default:
        safe += c;
    }
  }
  return safe;
}

std::string document_html(const Document& document) {
  require_writable(document);
  std::string lines;
  for (const std::string& line : document.shop.lines) lines += (lines.empty() ? "" : "<br>") + html_text(line);
  const std::string head = tag("p", html_text(document.shop.shop), " class=\"shop\"") +
                           (lines.empty() ? "" : tag("p", lines, " class=\"lines\""));
  std::string main = tag("h1", html_text(document.title));
  if (!document.subtitle.empty()) main += tag("p", html_text(document.subtitle), " class=\"soft\"");
  Writer writer;
  for (const Block& block : document.blocks) main += std::visit(writer, block) + "\n";
  std::string page = "<!DOCTYPE html>\n<html lang=\"" + html_text(document.language) + "\">\n<head>\n";
  page += "<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n";
  page += "<meta name=\"author\" content=\"" + html_text(document.shop.shop) + "\">\n";
  page += tag("title", html_text(document.title)) + "\n" + tag("style", std::string(style)) + "\n</head>\n<body>\n";
  page += tag("header", head) + "\n" + tag("main", main) + "\n";
  page += tag("footer", html_text(document.reference)) + "\n</body>\n</html>\n";
  return page;
}

}  // namespace tailblock
