#include "paper/fret_strip.h"

#include <gtest/gtest.h>

#include <fstream>

#include "printed.h"
#include "published.h"
#include "setup/fret_limits.h"
#include "strings/string_tables.h"

namespace tailblock {
namespace {

using namespace std::chrono;
using testing::Folder;
using testing::run;
using testing::text_of;

FretStrip strip_of(double scale_mm, int joint, int frets) {
  FretDressRequest request;
  request.neck.scale_length = mm(scale_mm);
  request.neck.body_joint_fret = joint;
  request.neck.fret_count = frets;
  request.neck.relief = mm(0.15);
  request.action = {.action12_bass = mm(2.4), .action12_treble = mm(1.9)};
  request.strings = tuned(string_set_named(string_sets(testing::repository_file("data/string_sets.csv")), "light"),
                          tuning_named(tunings(testing::repository_file("data/tunings.csv")), "standard"));
  request.attack = attack_named(attack_levels(testing::repository_file("data/attacks.csv")), "medium");
  for (int fret = 1; fret <= frets; ++fret) {
    request.readings.push_back({.fret = fret, .value = mm(fret == 9 ? 0.15 : fret == 5 ? 0.12 : 0)});
    request.readings.push_back({.kind = FretReadingKind::over_board, .fret = fret, .value = mm(1)});
  }
  return {.instrument = "the invented one",
          .day = Date(2026y / February / 20),
          .scale_length = mm(scale_mm),
          .body_joint_fret = joint,
          .result = fret_dress(request, unit_envelopes(envelope_request(request)),
                               fret_limits(testing::repository_file("data/fret_limits.csv")))};
}

/// One page of a PDF in shades of grey, as someone else's program draws it.
struct Picture {
  int width = 0, height = 0;
  std::string grey;
  double per_mm = 0;

  [[nodiscard]] bool dark(int x, int y) const {
    return static_cast<unsigned char>(grey[static_cast<std::size_t>(y * width + x)]) < 128;
  }
  /// Middles of the dark stretches along one height, in mm from the left.
  [[nodiscard]] std::vector<double> marks_at(double y_mm) const {
    const int y = static_cast<int>(y_mm * per_mm);
    std::vector<double> marks;
    for (int x = 0; x < width; ++x) {
      if (!dark(x, y)) continue;
      const int begin = x;
      while (x < width && dark(x, y)) ++x;
      marks.push_back((begin + x) / 2.0 / per_mm);
    }
    return marks;
  }
};

Picture page_of(const Folder& folder, const std::string& pdf, int page) {
  constexpr double dots_per_inch = 508;  // 20 a millimetre
  std::ofstream(folder / "strip.pdf", std::ios::binary) << pdf;
  run("pdftoppm -gray -r 508 -f " + std::to_string(page) + " -l " + std::to_string(page) + " -singlefile '" +
      (folder / "strip.pdf").string() + "' '" + (folder / "page").string() + "'");
  std::ifstream file(folder / "page.pgm", std::ios::binary);
  Picture picture;
  std::string kind;
  int most = 0;
  file >> kind >> picture.width >> picture.height >> most;
  file.get();
  picture.grey.assign(std::istreambuf_iterator<char>(file), {});
  picture.per_mm = dots_per_inch / 25.4;
  if (kind != "P5" ||
      picture.grey.size() != static_cast<std::size_t>(picture.width) * static_cast<std::size_t>(picture.height)) {
    throw std::runtime_error("pdftoppm gave something else");
  }
  return picture;
}

void lies_true(double scale_mm, int joint, int frets) {
  const Folder folder;
  const FretStrip strip = strip_of(scale_mm, joint, frets);
  const std::string pdf = fret_strip_pdf(strip);
  double at = 0;  // measured on paper, from the nut
  std::vector<double> measured{0};
  for (const StripRow& row : strip_rows(strip)) {
    const Picture page = page_of(folder, pdf, row.page + 1);
    const std::vector<double> marks = page.marks_at(row.top_mm + 6);
    ASSERT_EQ(marks.size(), static_cast<std::size_t>(row.last_fret - row.first_fret + 1))
        << "row from " << row.first_fret;
    for (std::size_t i = 1; i < marks.size(); ++i) measured.push_back(at + marks[i] - marks[0]);
    at = measured.back();
  }
  ASSERT_EQ(measured.size(), static_cast<std::size_t>(frets) + 1);
  EXPECT_NEAR(measured[12], scale_mm / 2, 0.2);
  for (int fret = 1; fret <= frets; ++fret) {
    EXPECT_NEAR(measured[static_cast<std::size_t>(fret)], scale_mm * (1 - std::pow(2.0, -fret / 12.0)), 0.2) << fret;
  }
}

TEST(FretStrip, lays_every_fret_where_it_is_on_a_long_scale) { lies_true(648, 14, 20); }
TEST(FretStrip, lays_every_fret_where_it_is_on_a_short_scale_of_many_frets) { lies_true(610, 14, 24); }

TEST(FretStrip, has_a_line_of_a_hundred_millimetres) {
  const Folder folder;
  const Picture page = page_of(folder, fret_strip_pdf(strip_of(645, 14, 20)), 1);
  const std::vector<double> marks = page.marks_at(196 - 0.8);  // through the small marks, one a centimetre
  ASSERT_GE(marks.size(), 11U);
  EXPECT_NEAR(marks[10] - marks[0], 100, 0.1);
}

TEST(FretStrip, says_what_comes_off_in_both_units_and_that_it_does_not_grow_back) {
  const Folder folder;
  const FretStrip strip = strip_of(645, 14, 20);
  ASSERT_TRUE(strip.result.cut_is_advised);
  std::ofstream(folder / "strip.pdf", std::ios::binary) << fret_strip_pdf(strip);
  run("pdftotext -layout '" + (folder / "strip.pdf").string() + "' '" + (folder / "strip.txt").string() + "'");
  const std::string text = text_of(folder / "strip.txt");
  char hundredths[16], thou[16];
  const double cut = in_mm(strip.result.frets[8].remove_bass);
  std::snprintf(hundredths, sizeof hundredths, "%.2f", cut);
  std::snprintf(thou, sizeof thou, "%.1f", cut / 0.0254);
  for (const std::string& wanted :
       {std::string(hundredths), std::string(thou), std::string("nut"), std::string("20"), std::string("100 mm long"),
        std::string("does not grow back"), std::string("eye protection")}) {
    EXPECT_NE(text.find(wanted), std::string::npos) << wanted << "\n" << text;
  }
  run("pdffonts '" + (folder / "strip.pdf").string() + "' | grep -q 'Inter.* yes yes'");
}

TEST(FretStrip, gives_no_figures_when_nothing_is_to_be_filed) {
  FretStrip strip = strip_of(645, 14, 20);
  strip.result.cut_is_advised = false;
  const Folder folder;
  std::ofstream(folder / "strip.pdf", std::ios::binary) << fret_strip_pdf(strip);
  run("pdftotext -layout '" + (folder / "strip.pdf").string() + "' '" + (folder / "strip.txt").string() + "'");
  const std::string text = text_of(folder / "strip.txt");
  EXPECT_NE(text.find("Nothing is to be filed"), std::string::npos);
  EXPECT_EQ(text.find("thou\n"), std::string::npos);
}

TEST(FretStrip, is_the_same_file_every_time) {
  const FretStrip strip = strip_of(645, 14, 20);
  const std::string once = fret_strip_pdf(strip);
  EXPECT_EQ(once, fret_strip_pdf(strip));
  EXPECT_NE(once.find("2026"), std::string::npos);  // made on the day the crowns were read, not on the clock's
  EXPECT_EQ(once.substr(0, 5), "%PDF-");
}

}  // namespace
}  // namespace tailblock
