#include "paper/fret_strip.h"

#include <algorithm>
#include <cmath>

#include "paper/sheet.h"
#include "season/words.h"

namespace tailblock {
namespace {

// In mm on the sheet. A row fits the narrower of A4 and letter paper, both landscape, within what printers reach.
constexpr double left = 16, row_wide = 248, first_row_top = 62, row_pitch = 52, last_row_top = 140;
constexpr double tick = 12, label_at = 17, cut_at = 24, thou_at = 28.5, level_at = 33.5;

double from_nut(const FretStrip& strip, int fret) { return in_mm(fret_from_nut(strip.scale_length, fret)); }

std::string hundredths(double millimetres) { return decimals(millimetres, 2); }
std::string thou(double millimetres) { return decimals(in_thousandths(mm(millimetres)), 1); }

/// `0.11`, or `0.11/0.08` for bass and treble.
std::string pair_of(double bass, double treble, bool apart, std::string (*write)(double)) {
  return apart ? write(bass) + "/" + write(treble) : write(bass);
}

void draw_fret(Sheet& sheet, const FretStrip& strip, const FretToDress& fret, double x, double y) {
  const bool apart = strip.result.apart;
  const double bass = in_mm(fret.remove_bass), treble = in_mm(fret.remove_treble);
  const bool cut = strip.result.cut_is_advised && !fret.reason.empty();  // less than a file takes has no reason
  const Sheet::Text figure{.size_mm = apart ? 2.3 : 3.2,
                           .weight = cut ? Sheet::Weight::bold : Sheet::Weight::light,
                           .anchor = Sheet::Anchor::middle};
  const Sheet::Text small{.size_mm = apart ? 2.0 : 2.6, .anchor = Sheet::Anchor::middle};
  if (cut) sheet.box(x - 5, y + label_at + 2, 10, thou_at - label_at, 0.88);
  sheet.line(x, y, x, y + tick, cut ? 0.7 : 0.25);
  sheet.text(x, y + label_at, std::to_string(fret.fret),
             {.size_mm = 3.6, .weight = Sheet::Weight::bold, .anchor = Sheet::Anchor::middle});
  if (!strip.result.cut_is_advised) return;
  sheet.text(x, y + cut_at, cut ? pair_of(bass, treble, apart, hundredths) : "-", figure);
  sheet.text(x, y + thou_at, cut ? pair_of(bass, treble, apart, thou) : "", small);
  if (strip.result.verdict != FretVerdict::level_all) return;
  sheet.text(x, y + level_at, pair_of(in_mm(fret.level_bass), in_mm(fret.level_treble), apart, hundredths), small);
}

void draw_row(Sheet& sheet, const FretStrip& strip, const StripRow& row) {
  const double start = from_nut(strip, row.first_fret);
  const double end = row.left_mm + from_nut(strip, row.last_fret) - start;
  sheet.line(row.left_mm, row.top_mm, end, row.top_mm, 0.25);
  for (int fret = row.first_fret; fret <= row.last_fret; ++fret) {
    const double x = row.left_mm + from_nut(strip, fret) - start;
    if (fret == 0) {
      sheet.line(x, row.top_mm, x, row.top_mm + tick, 0.5);
      sheet.text(x, row.top_mm + label_at, "nut", {.size_mm = 3.2, .anchor = Sheet::Anchor::middle});
    } else {
      draw_fret(sheet, strip, strip.result.frets[static_cast<std::size_t>(fret - 1)], x, row.top_mm);
    }
  }
  if (!strip.result.cut_is_advised) return;
  const Sheet::Text name{.size_mm = 2.2, .anchor = Sheet::Anchor::start};
  const double beside = end + 7;
  sheet.text(beside, row.top_mm + cut_at, strip.result.apart ? "mm, bass/treble" : "mm", name);
  sheet.text(beside, row.top_mm + thou_at, "thou", name);
  if (strip.result.verdict == FretVerdict::level_all) sheet.text(beside, row.top_mm + level_at, "to one line", name);
}

void draw_head(Sheet& sheet, const FretStrip& strip) {
  sheet.text(left, 16, "Frets of " + strip.instrument,
             {.size_mm = 5, .weight = Sheet::Weight::bold, .anchor = Sheet::Anchor::start});
  sheet.text(left, 22,
             "Crowns read " + day_in_words(strip.day) + ", scale " + decimals(in_mm(strip.scale_length), 1) +
                 " mm, body joint at fret " + std::to_string(strip.body_joint_fret),
             {.size_mm = 3.2});
  double y = sheet.paragraph(left, 30, 262, strip.result.sentence, {.size_mm = 4, .weight = Sheet::Weight::bold});
  if (strip.result.cut_is_advised) {
    y = sheet.paragraph(
        left, y + 1, 262,
        "Lay the line along the edge of the board, the nut at the front of the nut. Take off what stands "
        "in bold under a fret; leave the others. Metal does not grow back: stop short, string up, play "
        "every note, then take the rest.",
        {.size_mm = 3});
    sheet.paragraph(left, y, 262,
                    "Cover soundhole and top, wear eye protection and a dust mask, sweep filings up damp. Cut ends are "
                    "sharp.",
                    {.size_mm = 3});
  } else {
    sheet.paragraph(left, y + 1, 262, "Nothing is to be filed on the word of this sheet.", {.size_mm = 3});
  }
}

void draw_check_line(Sheet& sheet) {
  constexpr double y = 196, from = left, wide = 100;
  sheet.line(from, y, from + wide, y, 0.3);
  for (int cm = 0; cm <= 10; ++cm) {
    const double x = from + 10.0 * cm;
    sheet.line(x, y - (cm % 5 == 0 ? 3 : 1.5), x, y, 0.3);
  }
  sheet.text(from + wide + 5, y,
             "This line is 100 mm long. If a rule says otherwise, print again at 100 %, not fitted to the page.",
             {.size_mm = 3});
}

}  // namespace

std::vector<StripRow> strip_rows(const FretStrip& strip) {
  std::vector<StripRow> rows;
  const auto last = static_cast<int>(strip.result.frets.size());
  double top = first_row_top;
  int page = 0;
  for (int first = 0; first < last;) {
    int end = first + 1;
    while (end < last && from_nut(strip, end + 1) - from_nut(strip, first) <= row_wide) ++end;
    if (top > last_row_top) top = first_row_top, ++page;
    rows.push_back({.page = page, .first_fret = first, .last_fret = end, .left_mm = left, .top_mm = top});
    top += row_pitch;
    first = end;
  }
  return rows;
}

std::string fret_strip_pdf(const FretStrip& strip) {
  Sheet sheet("Frets of " + strip.instrument, strip.day);
  draw_head(sheet, strip);
  draw_check_line(sheet);
  int page = 0;
  for (const StripRow& row : strip_rows(strip)) {
    if (row.page != page) {
      sheet.next_page();
      page = row.page;
      draw_check_line(sheet);
    }
    draw_row(sheet, strip, row);
  }
  return sheet.bytes();
}

}  // namespace tailblock
