#include "paper/document_pdf.h"

#include <algorithm>
#include <set>

#include "paper/document_text.h"
#include "paper/finish_pdf.h"
#include "paper/set_blocks.h"
#include "paper/sheet.h"

namespace tailblock {
namespace {

struct PageMeasures {
  double wide, high;
  double left = 20, top = 24, under_letterhead = 0, bottom = 20;

  [[nodiscard]] double text_wide() const { return wide - 2 * left; }
};

PageMeasures measures_of(PaperSize size) {
  if (size == PaperSize::a4) return {.wide = 210, .high = 297};
  return {.wide = 215.9, .high = 279.4};
}

constexpr double shop_size = 5.4, rule_under_letterhead = 3, head_top = 15;

struct SetLetterhead {
  SetStack shop, lines;
  [[nodiscard]] double high() const { return std::max(height_of(shop), height_of(lines)); }
};

SetLetterhead set_letterhead(const Letterhead& letterhead, double wide_mm) {
  SetLetterhead set;
  const auto name = std::make_shared<const SetText>(letterhead.shop, SetText::Style{.size_mm = shop_size, .bold = true},
                                                    0.58 * wide_mm);
  for (int i = 0; i < name->lines(); ++i) set.shop.push_back({.text = name, .line = i, .high_mm = name->pitch_mm()});
  std::vector<Words> lines;
  for (const std::string& line : letterhead.lines) lines.push_back({line, "", Voice::soft});
  set.lines = stack_of(lines, 0.4 * wide_mm, Hold::end);
  for (SetLine& line : set.lines) line.before_mm = 0;
  return set;
}

void small(Sheet& sheet, const std::string& words, double x, double wide, double baseline, Hold hold) {
  const SetText text(words, {.size_mm = type_size::small, .ink = Ink::soft, .hold = hold, .one_line = true}, wide);
  if (text.lines() > 0) sheet.draw(text, 0, x, baseline);
}

/// What stands above and under the text of every page.
void draw_margins(Sheet& sheet, const Document& document, const PageMeasures& page, const SetLetterhead& letterhead,
                  std::size_t number, std::size_t count) {
  const double x = page.left, wide = page.text_wide();
  if (number == 1) {
    draw_stack(sheet, letterhead.shop, x, head_top);
    draw_stack(sheet, letterhead.lines, x + 0.6 * wide, head_top + 1);
    const double rule = head_top + letterhead.high() + rule_under_letterhead;
    sheet.line(x, rule, x + wide, rule, 0.5, Ink::accent);
  } else {
    small(sheet, document.shop.shop, x, 0.48 * wide, head_top + 1, Hold::start);
    small(sheet, document.title, x + 0.5 * wide, 0.5 * wide, head_top + 1, Hold::end);
    sheet.line(x, head_top + 3, x + wide, head_top + 3, 0.2, Ink::rule);
  }
  const double foot = page.high - 11;
  sheet.line(x, foot - 4.5, x + wide, foot - 4.5, 0.2, Ink::rule);
  small(sheet, document.reference, x, 0.75 * wide, foot, Hold::start);
  small(sheet, "page " + std::to_string(number) + " of " + std::to_string(count), x + 0.75 * wide, 0.25 * wide, foot,
        Hold::end);
}

/// Opens and closes the elements of the tree so that exactly `wanted` are open.
class OpenTags {
 public:
  explicit OpenTags(Sheet& sheet) : sheet_(sheet) {}
  void become(const std::vector<TagStep>& wanted) {
    std::size_t same = 0;
    while (same < std::min(open_.size(), wanted.size()) && open_[same] == wanted[same]) ++same;
    while (open_.size() > same) {
      sheet_.end(open_.back().name.c_str());
      open_.pop_back();
    }
    for (; same < wanted.size(); ++same) {
      sheet_.begin(wanted[same].name.c_str());
      open_.push_back(wanted[same]);
    }
  }

 private:
  Sheet& sheet_;
  std::vector<TagStep> open_;
};

/// What each element of the kind Figure shows, in their order.
std::vector<std::string> words_of_pictures(const Document& document) {
  std::vector<std::string> all;
  for (const Block& block : document.blocks) {
    if (const auto* figure = std::get_if<Figure>(&block)) all.push_back(figure->picture.says);
    const auto* photos = std::get_if<PhotoRow>(&block);
    if (photos == nullptr) continue;
    for (std::size_t i = 0; i < photos->shots.size(); ++i) {
      if (i % photos_across == 0) all.emplace_back("Photos:");
      all.back() += " " + photos->shots[i].caption + ".";
    }
  }
  return all;
}

}  // namespace

std::string document_pdf(const Document& document, PaperSize size) {
  require_writable(document);
  const PageMeasures page = measures_of(size);
  const SetLetterhead letterhead = set_letterhead(document.shop, page.text_wide());
  const double first_top = head_top + letterhead.high() + rule_under_letterhead + 6;
  const double page_mm = page.high - page.top - page.bottom;
  const Flow flow = flow_of(document, page.text_wide(), page_mm);
  const std::vector<PlacedPage> pages = pages_of(flow, page.high - first_top - page.bottom, page_mm);
  Sheet sheet({.title = document.title, .author = document.shop.shop, .day = document.day}, page.wide, page.high);
  OpenTags tags(sheet);
  for (std::size_t i = 0; i < pages.size(); ++i) {
    if (i > 0) sheet.next_page();
    draw_margins(sheet, document, page, letterhead, i + 1, pages.size());
    for (const PlacedPiece& placed : pages[i]) {
      tags.become(placed.piece->tags);
      const double top = (i == 0 ? first_top : page.top) + placed.top_mm;
      if (placed.high_mm < placed.piece->high_mm) {
        placed.piece->draw_smaller(sheet, page.left, top, placed.high_mm);
      } else {
        placed.piece->draw(sheet, page.left, top);
      }
    }
    tags.become({});
  }
  return finish_pdf(sheet.bytes(), document.language, words_of_pictures(document));
}

std::string characters_without_font(const Document& document) {
  require_writable(document);
  std::set<std::string> seen;
  std::string missing;
  each_text(document, [&](std::string_view place, const std::string& text) {
    if (place == "language") return;
    const std::string lacking = SetText(text, {}, 5000).missing();
    for (std::size_t i = 0; i < lacking.size();) {
      std::size_t end = i + 1;
      while (end < lacking.size() && (static_cast<unsigned char>(lacking[end]) & 0xC0U) == 0x80U) ++end;
      const std::string character = lacking.substr(i, end - i);
      if (seen.insert(character).second) missing += character;
      i = end;
    }
  });
  return missing;
}

}  // namespace tailblock
