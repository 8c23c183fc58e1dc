#include <gtest/gtest.h>

#include "book/migrations.h"
#include "book/sha256.h"
#include "shop_for_tests.h"

namespace tailblock {
namespace {

using testing::day;
using testing::expect_refused;

/// A book with one instrument seen in August and again in February.
struct TwiceSeen : testing::TestBook {
  RecordId later = book.keep(Visit{.instrument_id = instrument, .date = day(2026, 2, 10)});

  [[nodiscard]] Finding crack(RecordId at_visit = 0) const {
    return {.visit_id = at_visit == 0 ? visit : at_visit,
            .kind = "crack",
            .view = DrawingView::front,
            .shape = FindingShape::line,
            .points = {{mm(300), mm(-60)}, {mm(362.5), mm(-61)}},
            .place = "lower bout, bass side",
            .opening = Opening::open,
            .severity = Severity::serious,
            .extents = {{.measure = "crack_length", .typed = "62 mm", .value = mm(62)}}};
  }
  [[nodiscard]] Finding loose_brace() const {
    return {.visit_id = visit,
            .kind = "brace_loose",
            .view = DrawingView::top_inside,
            .shape = FindingShape::line,
            .points = {{mm(362), mm(-149)}, {mm(380), mm(-120)}},
            .part = "lower tone bar",
            .part_from = mm(0),
            .part_to = mm(40)};
  }
  [[nodiscard]] FindingChange word(RecordId finding, FindingState state) const {
    return {.visit_id = later, .finding_id = finding, .state = state};
  }
};

TEST(Findings, come_back_as_they_were_kept) {
  TwiceSeen test;
  const auto photo = test.book.keep_photo({.whole = "whole", .thumbnail = "small", .width_px = 4, .height_px = 3});
  Finding kept = test.crack();
  kept.photos = {{photo.id}};
  kept.note = "runs from the corner of the bridge";
  kept.id = test.book.add(kept);
  const Survey survey = test.book.survey(test.visit);
  ASSERT_EQ(survey.found_now.size(), 1U);
  EXPECT_EQ(testing::fields_of(survey.found_now[0].finding, ""), testing::fields_of(kept, ""));
  EXPECT_EQ(survey.found_now[0].number, 1);
  EXPECT_EQ(survey.found_now[0].found_on, day(2025, 8, 20));
  EXPECT_TRUE(survey.found_before.empty());
  EXPECT_FALSE(survey.visit_before);
  EXPECT_TRUE(survey.what_changed.empty());
}

TEST(Findings, a_correction_supersedes_keeps_the_old_one_and_its_number) {
  TwiceSeen test;
  test.book.add(test.loose_brace());
  Finding crack = test.crack();
  crack.id = test.book.add(crack);
  Finding correction = test.crack();
  correction.supersedes = crack.id;
  correction.severity = Severity::slight;
  correction.id = test.book.add(correction);
  const Survey survey = test.book.survey(test.visit);
  ASSERT_EQ(survey.found_now.size(), 2U);
  EXPECT_EQ(survey.found_now[1].number, 2);
  EXPECT_EQ(survey.found_now[1].finding.severity, Severity::slight);
  ASSERT_EQ(survey.superseded.size(), 1U);
  EXPECT_EQ(survey.superseded[0].severity, Severity::serious);
  EXPECT_EQ(survey.superseded[0].superseded_by, correction.id);
  expect_refused([&] { test.book.add(correction); }, "supersedes: finding " + std::to_string(crack.id) +
                                                         " is already superseded by " + std::to_string(correction.id));
}

TEST(Findings, one_withdrawn_is_gone_from_the_list_and_its_number_is_not_given_again) {
  TwiceSeen test;
  Finding slip = test.crack();
  slip.supersedes = test.book.add(test.crack());
  slip.withdrawn = true;
  test.book.add(slip);
  test.book.add(test.loose_brace());
  const Survey survey = test.book.survey(test.visit);
  ASSERT_EQ(survey.found_now.size(), 1U);
  EXPECT_EQ(survey.found_now[0].number, 2);
  EXPECT_EQ(survey.superseded.size(), 1U);
}

TEST(Findings, a_later_visit_says_what_became_of_them) {
  TwiceSeen test;
  const RecordId crack = test.book.add(test.crack()), brace = test.book.add(test.loose_brace());
  const RecordId third = test.book.add(test.loose_brace());
  FindingChange grown = test.word(crack, FindingState::grown);
  grown.extents = {{.measure = "crack_length", .typed = "80 mm", .value = mm(80)}};
  test.book.add(grown);
  test.book.add(test.word(brace, FindingState::repaired));
  Finding fresh = test.crack(test.later);
  test.book.add(fresh);
  (void)third;

  const Survey survey = test.book.survey(test.later);
  EXPECT_EQ(survey.visit_before, day(2025, 8, 20));
  ASSERT_EQ(survey.found_before.size(), 3U);
  EXPECT_EQ(survey.found_before[0].changes.at(0).change.state, FindingState::grown);
  EXPECT_TRUE(survey.found_before[0].open);
  EXPECT_FALSE(survey.found_before[1].open);
  EXPECT_EQ(survey.what_changed,
            (std::vector<std::string>{
                "Finding 1, crack (lower bout, bass side) has grown, crack length 80.00 mm after 62.00 mm.",
                "Finding 2, brace loose (lower tone bar) is repaired.", "Finding 3 has not been looked at again yet.",
                "Finding 4 is new."}));
  const Survey first = test.book.survey(test.visit);
  EXPECT_EQ(first.found_now.size(), 3U) << "the earlier visit is told as it was";
  EXPECT_TRUE(first.found_now[1].open);
}

TEST(Findings, what_was_repaired_is_not_asked_about_again) {
  TwiceSeen test;
  const RecordId crack = test.book.add(test.crack());
  const RecordId brace = test.book.add(test.loose_brace());
  test.book.add(test.word(crack, FindingState::repaired));
  test.book.add(test.word(brace, FindingState::unchanged));
  const RecordId last = test.book.keep(Visit{.instrument_id = test.instrument, .date = day(2026, 9, 1)});
  const Survey survey = test.book.survey(last);
  ASSERT_EQ(survey.found_before.size(), 1U);
  EXPECT_EQ(survey.found_before[0].finding.id, brace);
}

TEST(Findings, a_visit_may_think_again_about_what_became_of_one) {
  TwiceSeen test;
  const RecordId crack = test.book.add(test.crack());
  FindingChange first = test.word(crack, FindingState::unchanged);
  first.id = test.book.add(first);
  expect_refused([&] { test.book.add(test.word(crack, FindingState::grown)); },
                 "finding_id: this visit has said what became of finding " + std::to_string(crack) + "; supersede " +
                     std::to_string(first.id) + " to say otherwise");
  FindingChange second = test.word(crack, FindingState::grown);
  second.supersedes = first.id;
  test.book.add(second);
  const Survey survey = test.book.survey(test.later);
  ASSERT_EQ(survey.found_before[0].changes.size(), 1U);
  EXPECT_EQ(survey.found_before[0].changes[0].change.state, FindingState::grown);
}

TEST(Findings, what_makes_no_sense_is_refused_in_one_line) {
  TwiceSeen test;
  Finding finding = test.crack();
  finding.kind = "wormhole";
  expect_refused([&] { test.book.add(finding); }, "kind: \"wormhole\" is not in data/finding_kinds.csv");
  finding = test.loose_brace();
  finding.view = DrawingView::front;
  expect_refused([&] { test.book.add(finding); }, "view: \"brace loose\" is not found on front");
  finding = test.crack();
  finding.points.pop_back();
  expect_refused([&] { test.book.add(finding); }, "points: 1 do not make a line: it has two or more");
  finding = test.crack();
  finding.points[1].y = mm(3000);
  expect_refused([&] { test.book.add(finding); }, "points[1].y_mm: 3000 mm is outside -2000..2000 mm");
  finding = test.crack();
  finding.extents[0].measure = "action12_bass";
  expect_refused([&] { test.book.add(finding); },
                 "extents[0].measure: \"action12_bass\" is not in data/finding_measures.csv");
  finding = test.crack();
  finding.photos = {{99}};
  expect_refused([&] { test.book.add(finding); }, "photo_id: 99 is not in the book");
  finding = test.crack();
  finding.withdrawn = true;
  expect_refused([&] { test.book.add(finding); }, "withdrawn: only a correction withdraws a finding");
  finding = test.crack(99);
  expect_refused([&] { test.book.add(finding); }, "visit_id: 99 is not in the book");
  EXPECT_TRUE(test.book.survey(test.visit).found_now.empty()) << "a refused one left something behind";
}

TEST(Findings, a_word_about_a_finding_that_is_not_earlier_is_refused) {
  TwiceSeen test;
  const RecordId fresh = test.book.add(test.crack(test.later));
  const std::string finding = "finding_id: finding " + std::to_string(fresh);
  expect_refused([&] { test.book.add(test.word(fresh, FindingState::grown)); },
                 finding + " is not of an earlier visit");
  const RecordId other = test.book.keep(Instrument{.owner_id = test.owner, .home_id = test.home, .name = "another"});
  const RecordId elsewhere = test.book.keep(Visit{.instrument_id = other, .date = day(2026, 3, 1)});
  FindingChange wrong = test.word(fresh, FindingState::grown);
  wrong.visit_id = elsewhere;
  expect_refused([&] { test.book.add(wrong); }, finding + " is of another instrument");
}

TEST(Findings, can_be_changed_or_removed_by_nobody) {
  TwiceSeen test;
  const RecordId crack = test.book.add(test.crack());
  test.book.add(test.word(crack, FindingState::grown));
  test.book.keep_photo({.whole = "w", .thumbnail = "t", .width_px = 1, .height_px = 1});
  Session session(test.file, Session::May::write);
  for (const char* change :
       {"UPDATE findings SET kind = 'dent'", "DELETE FROM findings", "UPDATE finding_points SET x_mm = 0",
        "DELETE FROM finding_points", "UPDATE finding_extents SET value_mm = 0", "DELETE FROM finding_extents",
        "UPDATE finding_changes SET state = 'gone'", "DELETE FROM finding_changes", "UPDATE photos SET width_px = 2"}) {
    EXPECT_THROW(session.script(change), std::runtime_error) << change;
  }
}

TEST(Photos, are_kept_once_and_come_back_byte_for_byte) {
  testing::TestBook test;
  std::string bytes(300'000, '\0');
  for (std::size_t k = 0; k < bytes.size(); ++k) bytes[k] = static_cast<char>(k * 7 % 251);
  const Book::PhotoToKeep photo{
      .whole = bytes, .thumbnail = std::string("\0small\0", 7), .width_px = 640, .height_px = 480};
  const KeptPhoto once = test.book.keep_photo(photo), again = test.book.keep_photo(photo);
  EXPECT_EQ(once.id, again.id);
  EXPECT_EQ(test.book.photo_bytes(once.id, Book::PhotoSize::whole), photo.whole);
  EXPECT_EQ(test.book.photo_bytes(once.id, Book::PhotoSize::thumbnail), photo.thumbnail);
  EXPECT_EQ(test.book.photo(once.id).width_px, 640);
  EXPECT_THROW((void)test.book.photo_bytes(99, Book::PhotoSize::whole), NotInBook);
  EXPECT_EQ(test.book.troubles(), std::vector<std::string>{});
}

TEST(Photos, go_into_the_copy_of_the_book) {
  testing::TestBook test;
  const KeptPhoto kept =
      test.book.keep_photo({.whole = std::string(50'000, 'w'), .thumbnail = "t", .width_px = 2, .height_px = 2});
  test.book.back_up_to(test.folder / "copy.book");
  const Book copy(test.folder / "copy.book", test.tables);
  EXPECT_EQ(copy.photo_bytes(kept.id, Book::PhotoSize::whole), std::string(50'000, 'w'));
}

TEST(Photos, one_whose_bytes_have_changed_is_told) {
  testing::TestBook test;
  const KeptPhoto kept = test.book.keep_photo({.whole = "whole", .thumbnail = "t", .width_px = 2, .height_px = 2});
  Session(test.file, Session::May::write).write_bytes("photos", "whole", kept.id, "wh0le");
  EXPECT_EQ(test.book.troubles(),
            std::vector<std::string>{"photo " + std::to_string(kept.id) + ": its bytes are not those that were kept"});
}

TEST(Photos, are_told_apart_by_their_sha_256) {
  // NIST, SHA-256 examples (FIPS 180-4), the one block message "abc". From memory; any sha256sum prints the same.
  EXPECT_EQ(sha256("abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
}

}  // namespace
}  // namespace tailblock
