// Every paper of the shop, written by both writers and read back by other people's programs.

#include <gtest/gtest.h>
#include <turbojpeg.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <memory>
#include <set>
#include <sstream>

#include "examples.h"
#include "models/json.h"
#include "paper/calendar.h"
#include "paper/document_html.h"
#include "paper/document_pdf.h"
#include "paper/document_text.h"
#include "printed.h"

namespace tailblock {
namespace {

using testing::said_of;

struct Example {
  std::string name;
  Document document;
};

/// A JPEG that looks a little different by its number.
std::string invented_photo(int number) {
  const int width = 320, height = number == 8 ? 240 : 213;
  std::string pixels(static_cast<std::size_t>(width) * height * 3, '\0');
  for (std::size_t i = 0; i < pixels.size(); ++i) pixels[i] = static_cast<char>((i / 3 % 320 + 40 * number) & 0xffU);
  const std::unique_ptr<void, decltype(&tjDestroy)> encoder(tjInitCompress(), &tjDestroy);
  unsigned char* made = nullptr;
  unsigned long size = 0;  // NOLINT(google-runtime-int): the library's own
  tjCompress2(encoder.get(), reinterpret_cast<const unsigned char*>(pixels.data()), width, 0, height, TJPF_RGB, &made,
              &size, TJSAMP_420, 80, 0);
  std::string jpeg(reinterpret_cast<const char*>(made), size);
  tjFree(made);
  return jpeg;
}

Document report_document(const OwnersReport& report) { return owners_report(report, invented_photo); }

std::vector<Example> examples() {
  return {{"report", report_document(testing::example_report())},
          {"estimate", estimate_paper(testing::example_estimate())},
          {"invoice", invoice(testing::example_invoice())},
          {"long-invoice", invoice(testing::example_invoice(90))},
          {"work-sheet", work_sheet(testing::example_work_sheet())},
          {"ticket", claim_ticket(testing::example_ticket())}};
}

TEST(Documents, are_written_where_the_environment_asks_for_them) {
  const char* folder = std::getenv("TAILBLOCK_SHOW_PAPER");
  if (folder == nullptr) GTEST_SKIP() << "set TAILBLOCK_SHOW_PAPER to a folder to look at the papers";
  std::filesystem::create_directories(folder);
  for (const Example& example : examples()) {
    const std::string stem = std::string(folder) + "/" + example.name;
    std::ofstream(stem + "-a4.pdf", std::ios::binary) << document_pdf(example.document, PaperSize::a4);
    std::ofstream(stem + "-letter.pdf", std::ios::binary) << document_pdf(example.document, PaperSize::letter);
    std::ofstream(stem + ".html", std::ios::binary) << document_html(example.document);
  }
  std::ofstream(std::string(folder) + "/bench.ics", std::ios::binary) << calendar_file(testing::example_calendar());
}

std::string text_of(const std::string& pdf) { return said_of(pdf, "pdftotext -layout FILE -"); }

int pages_of(const std::string& pdf) {
  const std::string said = said_of(pdf, "pdfinfo FILE");
  return std::stoi(said.substr(said.find("Pages:") + 6));
}

int times(const std::string& text, const std::string& what) {
  int count = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++count;
  return count;
}

void says(const std::string& text, const std::vector<std::string>& wanted) {
  for (const std::string& words : wanted) EXPECT_NE(text.find(words), std::string::npos) << words << "\n" << text;
}

/// The page without its tags and spaces.
std::string letters_of(const std::string& html) {
  std::string letters;
  bool in_tag = false;
  for (const char c : html.substr(html.find("<body>"))) {
    if (c == '<') in_tag = true;
    if (!in_tag && c != ' ' && c != '\n') letters += c;
    if (c == '>') in_tag = false;
  }
  for (const auto& [written, meant] : {std::pair{"&#39;", "'"}, std::pair{"&quot;", "\""}, std::pair{"&amp;", "&"}}) {
    for (std::size_t at = 0; (at = letters.find(written)) != std::string::npos;) {
      letters.replace(at, std::string(written).size(), meant);
    }
  }
  return letters;
}

template <class Make>
std::string refusal(Make make) {
  try {
    (void)make();
  } catch (const Refused& refused) {
    return refused.what();
  }
  return "";
}

template <class Check>
void on_every_sheet(Check check) {
  for (const Example& example : examples()) {
    for (const PaperSize size : {PaperSize::a4, PaperSize::letter}) {
      SCOPED_TRACE(example.name + (size == PaperSize::a4 ? " on A4" : " on letter"));
      check(example, document_pdf(example.document, size), size);
    }
  }
}

TEST(Documents, are_whole_files_to_an_independent_reader) {
  on_every_sheet([](const Example&, const std::string& pdf, PaperSize) {
    const std::string said = said_of(pdf, "qpdf --check FILE");
    EXPECT_NE(said.find("No syntax or stream encoding errors found"), std::string::npos) << said;
  });
}

TEST(Documents, carry_the_used_part_of_every_font) {
  on_every_sheet([](const Example&, const std::string& pdf, PaperSize) {
    std::istringstream lines(said_of(pdf, "pdffonts FILE | tail -n +3"));
    int fonts = 0;
    for (std::string line; std::getline(lines, line); ++fonts) {
      EXPECT_NE(line.find("yes yes yes"), std::string::npos) << line;  // embedded, subset, with its characters named
      EXPECT_NE(line.find("+Inter"), std::string::npos) << line;
    }
    EXPECT_GE(fonts, 2);
  });
}

TEST(Documents, say_their_title_shop_language_day_and_size) {
  on_every_sheet([](const Example& example, const std::string& pdf, PaperSize size) {
    const std::string said = said_of(pdf, "TZ=UTC pdfinfo -isodates FILE");
    says(said, {"Title:           " + example.document.title, "Author:          Under the Stairs",
                "CreationDate:    2026-02-20T00:00:00Z", "Tagged:          yes",
                size == PaperSize::a4 ? "595.276 x 841.89 pts (A4)" : "612 x 792 pts (letter)"});
    EXPECT_EQ(said.find("ModDate"), std::string::npos) << said;
    says(said_of(pdf, "qpdf --qdf --object-streams=disable FILE -"), {"/Lang (en-GB)", "/DisplayDocTitle true"});
  });
}

TEST(Documents, number_every_page_of_how_many) {
  on_every_sheet([](const Example& example, const std::string& pdf, PaperSize) {
    const std::string text = text_of(pdf);
    const int count = pages_of(pdf);
    for (int page = 1; page <= count; ++page) {
      says(text, {"page " + std::to_string(page) + " of " + std::to_string(count)});
    }
    EXPECT_EQ(times(text, example.document.reference), count);
  });
}

/// Every word where an independent reader finds it, inside the margins of the text, its head and its foot.
void stays_within(const std::string& pdf, PaperSize size) {
  const double wide = size == PaperSize::a4 ? 595.276 : 612, high = size == PaperSize::a4 ? 841.89 : 792;
  std::istringstream lines(said_of(pdf, "pdftotext -bbox FILE -"));
  int words = 0;
  for (std::string line; std::getline(lines, line);) {
    double left = 0, top = 0, right = 0, bottom = 0;
    const std::size_t at = line.find("<word");
    if (at == std::string::npos) continue;
    ASSERT_EQ(std::sscanf(line.c_str() + at, "<word xMin=\"%lf\" yMin=\"%lf\" xMax=\"%lf\" yMax=\"%lf\"", &left, &top,
                          &right, &bottom),
              4);
    EXPECT_TRUE(left >= 56 && right <= wide - 56 && top >= 34 && bottom <= high - 25) << line;
    ++words;
  }
  EXPECT_GT(words, 30);
}

TEST(Documents, stay_within_their_margins) {
  on_every_sheet([](const Example&, const std::string& pdf, PaperSize size) { stays_within(pdf, size); });
}

/// Words that can be counted again: `w1 w2 w3 ...`, as many as fit.
std::string counted_words(std::size_t bytes, const std::string& stem) {
  std::string text;
  for (int i = 1; text.size() + stem.size() + 6 < bytes; ++i) text += stem + std::to_string(i) + "x ";
  return text;
}

TEST(Documents, divide_the_longest_texts_and_lose_none) {
  WorkSheet sheet = testing::example_work_sheet();
  sheet.head.shop.shop = std::string(120, 'M');
  sheet.head.shop.lines.assign(8, std::string(120, 'm'));
  sheet.head.reference = std::string(60, 'W');
  sheet.instrument = counted_words(300, "instrument");
  sheet.before_all = counted_words(1000, "before");
  sheet.steps[1].how = counted_words(1500, "how");
  sheet.steps[1].cautions.assign(12, counted_words(800, "caution"));
  sheet.steps[1].wait.clear();
  for (int i = 0; i < 150; ++i) sheet.steps[1].wait += "ż";  // one word, wider than its column
  for (const PaperSize size : {PaperSize::a4, PaperSize::letter}) {
    const std::string pdf = document_pdf(work_sheet(sheet), size), text = text_of(pdf);
    stays_within(pdf, size);
    EXPECT_EQ(times(text, "how100x"), 1);
    EXPECT_EQ(times(text, "before50x"), 1);
    EXPECT_EQ(times(text, "caution40x"), 12);
    EXPECT_EQ(times(text, "instrument5x"), 1);
    EXPECT_EQ(times(text, "ż"), 150);
    says(text, {"Glue the bridge", "never in a heap"});
  }
}

TEST(Documents, a_work_sheet_says_each_hazard_once_in_full_and_by_name_at_every_step) {
  WorkSheet sheet = testing::example_work_sheet();
  const std::string dust = "wood dust: irritates the nose. Extraction at the work.";
  const std::string pot = "hot glue pot: burns at 60 C. Lid on.";
  WorkStep sand{.what = "Scrape level", .how = "By hand.", .cautions = {"Stop at the first even colour."}};
  sand.hazards = {{"wood dust", dust}};
  WorkStep glue{.what = "Glue it"};
  glue.hazards = {{"hot glue pot", pot}, {"wood dust", dust}};
  sheet.steps = {glue, sand, sand};
  const std::string text = text_of(document_pdf(work_sheet(sheet), PaperSize::a4));
  EXPECT_EQ(times(text, "irritates the nose"), 1);
  EXPECT_EQ(times(text, "burns at 60 C"), 1);
  EXPECT_LT(text.find("irritates the nose"), text.find("Scrape level")) << "before the first step";
  EXPECT_EQ(times(text, "Can hurt: A hot glue pot; B wood dust"), 1);
  EXPECT_EQ(times(text, "Can hurt: B wood dust"), 2) << "named again where the step is done again";
  EXPECT_EQ(times(text, "first even colour"), 1);
  EXPECT_EQ(times(text, "Cautions and all else as at step 2."), 1);
  EXPECT_EQ(times(text, "licensed people come before this sheet"), 2);
}

TEST(Documents, are_the_same_bytes_twice_and_from_elsewhere) {
  const testing::Folder folder;
  const std::string here = std::filesystem::read_symlink("/proc/self/exe").string();
  const auto write_in = [&](const std::string& name, const std::string& settings) {
    const std::string place = (folder / name).string();
    std::filesystem::create_directories(place + "/run");
    testing::run("cd '" + place + "/run' && " + settings + " TAILBLOCK_SHOW_PAPER='" + place + "/out' '" + here +
                 "' --gtest_filter=Documents.are_written_where_the_environment_asks_for_them");
    return place + "/out";
  };
  const std::string one = write_in("one", "TZ=UTC LC_ALL=C");
  const std::string two = write_in("another folder", "TZ=Asia/Tokyo LC_ALL=C.UTF-8 LANGUAGE=ja");
  int files = 0;
  for (const auto& entry : std::filesystem::directory_iterator(one)) {
    const std::string name = entry.path().filename().string();
    EXPECT_EQ(testing::text_of(entry.path()), testing::text_of(two + "/" + name)) << name;
    ++files;
  }
  EXPECT_EQ(files, 19);
}

TEST(Documents, say_a_tables_head_again_on_every_page_it_reaches) {
  for (const PaperSize size : {PaperSize::a4, PaperSize::letter}) {
    const std::string pdf = document_pdf(invoice(testing::example_invoice(90)), size);
    const std::string text = text_of(pdf);
    EXPECT_GE(pages_of(pdf), 3);
    EXPECT_EQ(times(text, "Work and materials"), pages_of(pdf));
    for (int part = 5; part < 90; ++part) {
      const std::string name = "Invented part number " + std::to_string(part);
      EXPECT_EQ(times(text, name + " ") + times(text, name + "\n"), 1) << name;
    }
  }
}

TEST(Documents, keep_the_sums_together_on_one_page) {
  int on_the_last = 0;
  for (int lines = 20; lines < 36; ++lines) {  // the sums come to the end of a page at some of them
    std::istringstream pages(text_of(document_pdf(invoice(testing::example_invoice(lines)), PaperSize::a4)));
    int holding = 0;
    for (std::string page; std::getline(pages, page, '\f');) {
      const bool begins = page.find("Without tax") != std::string::npos;
      EXPECT_EQ(begins, page.find("Tax 20 %") != std::string::npos) << lines;
      EXPECT_EQ(begins, page.find("Left to pay") != std::string::npos) << lines;
      if (begins) ++holding;
      if (begins && page.find("Invented part") == std::string::npos) ++on_the_last;
    }
    EXPECT_EQ(holding, 1) << lines;
  }
  EXPECT_GT(on_the_last, 0) << "no case brought the sums to the end of a page";
}

TEST(Documents, set_names_of_other_tongues_and_say_what_has_no_font) {
  OwnersReport report = testing::example_report();
  report.owner = "Zofia Łęcka-Désirée, Žofie Ňůňová, Ñandú Ærø Þór";
  const Document latin = report_document(report);
  says(text_of(document_pdf(latin, PaperSize::a4)), {"Zofia Łęcka-Désirée, Žofie Ňůňová"});
  EXPECT_EQ(characters_without_font(latin), "");

  report.owner =
      "Unassigned \xF4\x8F\xBF\xBD and \xF3\xB0\x80\x80, twice \xF4\x8F\xBF\xBD";  // private use: no font has them
  const Document strange = report_document(report);
  EXPECT_EQ(characters_without_font(strange), "\xF4\x8F\xBF\xBD\xF3\xB0\x80\x80");
  EXPECT_NE(said_of(document_pdf(strange, PaperSize::a4), "qpdf --check FILE").find("No syntax"), std::string::npos);

  report.owner = "日本";
  const Document japanese = report_document(report);
  const bool has_font = !said_of("", "fc-list :lang=ja family; : FILE").empty();
  EXPECT_EQ(characters_without_font(japanese), has_font ? "" : "日本");
  if (has_font) says(text_of(document_pdf(japanese, PaperSize::a4)), {"日本"});
  EXPECT_NE(document_html(japanese).find("日本"), std::string::npos);
}

TEST(Documents, say_the_same_on_the_page_as_on_paper) {
  for (const Example& example : examples()) {
    SCOPED_TRACE(example.name);
    std::istringstream printed(text_of(document_pdf(example.document, PaperSize::a4)));
    const std::string page = letters_of(document_html(example.document)) + "page of";  // paper alone numbers its pages
    int words = 0;
    for (std::string word; printed >> word; ++words) {
      EXPECT_NE(page.find(word), std::string::npos) << "only on paper: " << word;
    }
    EXPECT_GT(words, 50);
  }
}

TEST(Documents, show_what_cannot_be_undone_with_its_yes_or_a_stop) {
  const std::string text = text_of(document_pdf(work_sheet(testing::example_work_sheet()), PaperSize::a4));
  says(text, {"Cannot be undone. Yes from Z. Łęcka-Désirée, 5 Feb 2026", "STOP. Cannot be undone. No yes is recorded"});
}

TEST(Documents, have_a_yes_and_a_no_to_tick_at_every_line_that_asks) {
  const Document document = estimate_paper(testing::example_estimate());  // five lines ask, two are answered
  const std::string page = document_html(document);
  EXPECT_EQ(times(page, "to tick: "), 8);
  EXPECT_EQ(times(page, ">ticked: "), 2);
  std::istringstream printed(text_of(document_pdf(document, PaperSize::a4)));
  int answers = 0;
  for (std::string line; std::getline(printed, line);) {
    const std::size_t yes = line.find(" yes ");
    if (yes != std::string::npos && line.ends_with(" no")) ++answers;
  }
  EXPECT_EQ(answers, 5);
}

TEST(Documents, carry_each_photo_once_and_not_decoded) {
  const std::string pdf = document_pdf(report_document(testing::example_report()), PaperSize::a4);
  std::istringstream lines(said_of(pdf, "pdfimages -list FILE | tail -n +3"));
  int drawn = 0;
  std::set<std::string> objects;
  for (std::string line; std::getline(lines, line); ++drawn) {
    std::istringstream words(line);
    std::vector<std::string> cells;
    for (std::string word; words >> word;) cells.push_back(word);
    ASSERT_GT(cells.size(), 11U) << line;
    EXPECT_EQ(cells[8], "jpeg") << line;
    EXPECT_EQ(cells[3], "320") << line;
    objects.insert(cells[10]);
  }
  EXPECT_EQ(drawn, 4);
  EXPECT_EQ(objects.size(), 3U) << "photo 7 is shown twice and lies in the file once";
  says(text_of(pdf), {"1: crack, again", "3: brace loose"});
  const std::string page = document_html(report_document(testing::example_report()));
  EXPECT_EQ(times(page, "data:image/jpeg;base64,/9j/"), 4);
}

TEST(Documents, say_when_a_height_was_read_in_air_that_nobody_read) {
  OwnersReport report = testing::example_report();
  report.air_after.reset();
  const std::string text = text_of(document_pdf(report_document(report), PaperSize::a4));
  says(text, {"not read", "may be the season's"});
}

TEST(Documents, say_that_a_draft_is_one) {
  Invoice draft = testing::example_invoice();
  draft.head.draft = true;
  says(text_of(document_pdf(invoice(draft), PaperSize::a4)), {"A draft, to look at.", "has no number yet"});
  EXPECT_EQ(text_of(document_pdf(invoice(testing::example_invoice()), PaperSize::a4)).find("draft"), std::string::npos);
}

/// Accepted in a paper or, if not, the refusal.
std::string as_text(const std::string& text) {
  return refusal([&] { return require_text("wish", text), 0; });
}

TEST(Documents, take_text_that_is_utf_8_and_no_other) {
  for (const char* text : {"", "a", "\n\t\r\n", "é", "\xC2\x80", "\xDF\xBF", "\xE0\xA0\x80", "\xED\x9F\xBF",
                           "\xEE\x80\x80", "\xF0\x90\x80\x80", "\xF4\x8F\xBF\xBF"}) {
    EXPECT_EQ(as_text(text), "");
  }
  for (const char* text : {"\x80", "\xBF", "\xC0\xAF", "\xC1\xBF", "\xC2", "\xC2\x41", "\xE0\x80\x80", "\xE0\x9F\xBF",
                           "\xE2\x82", "\xED\xA0\x80", "\xF0\x80\x80\x80", "\xF0\x8F\xBF\xBF", "\xF0\x9F\x98",
                           "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\xFF"}) {
    EXPECT_EQ(as_text(text), "wish: byte 1 is not UTF-8 text");
  }
  EXPECT_EQ(as_text("a\x7F"), "wish: byte 2 is a control character");
  EXPECT_EQ(as_text("a\x1B"), "wish: byte 2 is a control character");
}

TEST(Documents, print_money_as_it_was_given) {
  Invoice odd = testing::example_invoice();
  odd.lines[0].amount = "0.10";
  odd.total = "1 000 000 000 000.07 EUR";
  says(text_of(document_pdf(invoice(odd), PaperSize::a4)), {"0.10", "1 000 000 000 000.07 EUR"});
}

TEST(Documents, keep_the_owners_address_and_the_shops_off_the_instruments_half_of_a_ticket) {
  const std::string text = text_of(document_pdf(claim_ticket(testing::example_ticket()), PaperSize::a4));
  const std::string tied = text.substr(text.find("The instrument's half"));
  says(tied, {"Under the Stairs", "27 Feb 2026"});
  EXPECT_EQ(tied.find("Zofia"), std::string::npos);
  EXPECT_EQ(tied.find("Invented Lane"), std::string::npos);
}

TEST(Documents, never_let_a_name_become_a_tag) {
  OwnersReport report = testing::example_report();
  report.owner = "<script>alert('1')</script> & \"sons\"";
  const std::string page = document_html(report_document(report));
  EXPECT_EQ(page.find("<script"), std::string::npos);
  says(page, {"&lt;script&gt;alert(&#39;1&#39;)&lt;/script&gt; &amp; &quot;sons&quot;"});
}

/// Through JSON and back a paper stays the same, byte for byte: no field is forgotten, none misnamed.
template <class Paper>
void survives_json(const Paper& paper, Document (*make)(const Paper&)) {
  const std::string json = to_json(paper);
  const Paper again = from_json<Paper>(json);
  EXPECT_EQ(to_json(again), json);
  EXPECT_EQ(document_html(make(again)), document_html(make(paper)));
  EXPECT_EQ(document_pdf(make(again), PaperSize::a4), document_pdf(make(paper), PaperSize::a4));
}

TEST(Documents, come_as_json) {
  survives_json(testing::example_report(), &report_document);
  survives_json(testing::example_estimate(), &estimate_paper);
  survives_json(testing::example_invoice(), &invoice);
  survives_json(testing::example_work_sheet(), &work_sheet);
  survives_json(testing::example_ticket(), &claim_ticket);
}

TEST(Documents, refuse_what_makes_no_sense_in_one_line) {
  const auto report = [](auto change) {
    OwnersReport changed = testing::example_report();
    change(changed);
    return refusal([&] { return document_pdf(report_document(changed), PaperSize::a4); });
  };
  EXPECT_EQ(report([](OwnersReport& r) { r.owner = "  "; }), "owner: is empty");
  EXPECT_EQ(report([](OwnersReport& r) { r.head.shop.shop = ""; }), "head.shop.shop: is empty");
  EXPECT_EQ(report([](OwnersReport& r) { r.head.language = "en GB"; }),
            "head.language: 'en GB' is not a language tag such as en-GB");
  EXPECT_EQ(report([](OwnersReport& r) { r.air_after->relative_humidity = humidity_percent(130); }),
            "air_after.relative_humidity: 1.3 is outside 0..1");
  EXPECT_EQ(report([](OwnersReport& r) { r.keep_to.reset(); }), "keep_from, keep_to: one is given without the other");
  EXPECT_EQ(report([](OwnersReport& r) { r.keep_to = humidity_percent(40); }),
            "keep_from: 42 % is not under keep_to, 40 %");
  EXPECT_EQ(report([](OwnersReport& r) { r.year->sides[1].low_mm.pop_back(); }),
            "year.sides[1].low_mm: 364 days where median_mm has 365");
  EXPECT_EQ(report([](OwnersReport& r) { r.drawing->shapes[0].points_mm.pop_back(); }),
            "shapes[0].points_mm: 239 numbers is not a multiple of 2");
  EXPECT_EQ(report([](OwnersReport& r) { r.drawing->shapes[0].points_mm.resize(4); }),
            "shapes[0].points_mm: 4 numbers is fewer than the 6 of kind area");
  EXPECT_EQ(report([](OwnersReport& r) { r.wish = "caf\xE9"; }), "paragraph: byte 4 is not UTF-8 text");
  EXPECT_EQ(report([](OwnersReport& r) { r.wish = std::string("a\0b", 3); }),
            "paragraph: byte 2 is a control character");
  EXPECT_EQ(report([](OwnersReport& r) { r.wish = std::string(20001, 'a'); }), "wish: 20001 bytes is more than 20000");

  const auto estimate = [](auto change) {
    EstimatePaper changed = testing::example_estimate();
    change(changed);
    return refusal([&] { return document_html(estimate_paper(changed)); });
  };
  EXPECT_EQ(estimate([](EstimatePaper& e) { e.lines[1].hours_low = 4; }),
            "lines[1].hours_low: 4 h is above hours, 2.4 h");
  EXPECT_EQ(estimate([](EstimatePaper& e) { e.lines[1].hours = 5; }), "lines[1].hours: 5 h is above hours_high, 3 h");
  EXPECT_EQ(estimate([](EstimatePaper& e) { e.lines[0].answer->by = ""; }), "lines[0].answer.by: is empty");
  EXPECT_EQ(estimate([](EstimatePaper& e) { e.lines.clear(); }), "lines: 0 items is outside 1..200");

  const auto bill = [](auto change) {
    Invoice changed = testing::example_invoice();
    change(changed);
    return refusal([&] { return invoice(changed); });
  };
  EXPECT_EQ(bill([](Invoice& i) { i.lines[2].amount = ""; }), "lines[2].amount: is empty");
  EXPECT_EQ(bill([](Invoice& i) { i.due = testing::on(2026, 2, 19); }),
            "due: 2026-02-19 is before the invoice's day, 2026-02-20");

  const auto sheet = [](auto change) {
    WorkSheet changed = testing::example_work_sheet();
    change(changed);
    return refusal([&] { return work_sheet(changed); });
  };
  EXPECT_EQ(sheet([](WorkSheet& w) { w.steps[0].what = ""; }), "steps[0].what: is empty");
  EXPECT_EQ(sheet([](WorkSheet& w) { w.steps[2].yes->by = ""; }), "steps[2].yes.by: is empty");

  const auto ticket = [](auto change) {
    ClaimTicket changed = testing::example_ticket();
    change(changed);
    return refusal([&] { return claim_ticket(changed); });
  };
  EXPECT_EQ(ticket([](ClaimTicket& t) { t.number = ""; }), "number: is empty");
  EXPECT_EQ(ticket([](ClaimTicket& t) { t.code = std::string(601, 'a'); }), "code: 601 bytes is more than 600");
}

}  // namespace
}  // namespace tailblock
