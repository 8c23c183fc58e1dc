#include <gtest/gtest.h>

#include "book/session.h"
#include "shop_for_tests.h"

namespace tailblock {
namespace {

using testing::day;
using testing::expect_refused;
using testing::fields_of;

/// Two instruments that colours are tried for.
struct TwoGuitars : testing::TestBook {
  RecordId other = book.keep(Instrument{.owner_id = owner, .home_id = home, .name = "the Sunday guitar"});
  RecordId other_visit = book.keep(Visit{.instrument_id = other, .date = day(2025, 9, 1)});

  [[nodiscard]] FinishTrial amber() const {
    return {.visit_id = visit,
            .kind = TrialKind::tint,
            .aim = "the amber of the lower bout",
            .carrier = "nc_lacquer",
            .mix = "amber 6 drops, red-brown 1 drop in 30 ml",
            .dilution = "1 : 1 with thinner",
            .substrate = "spruce offcut, one coat of shellac",
            .application = "three light passes",
            .day = day(2025, 8, 20),
            .who = "Ada"};
  }
  [[nodiscard]] std::vector<RecordId> found(const FinishTrialQuery& query) const {
    std::vector<RecordId> ids;
    for (const FinishTrialStory& story : book.finish_trials(query).trials) ids.push_back(story.trial.id);
    return ids;
  }
};

TEST(FinishTrials, come_back_as_they_were_kept_with_their_instrument) {
  TwoGuitars test;
  const auto photo = test.book.keep_photo({.whole = "whole", .thumbnail = "small", .width_px = 4, .height_px = 3});
  FinishTrial kept = test.amber();
  kept.photos = {{photo.id}};
  kept.id = test.book.add(kept);
  const FinishTrialPage page = test.book.finish_trials({});
  ASSERT_EQ(page.trials.size(), 1U);
  EXPECT_EQ(fields_of(page.trials[0].trial, ""), fields_of(kept, ""));
  EXPECT_EQ(page.trials[0].trial.photos.at(0).photo_id, photo.id);
  EXPECT_EQ(page.trials[0].instrument, "the old one");
  EXPECT_EQ(page.trials[0].instrument_id, test.instrument);
  EXPECT_TRUE(page.trials[0].earlier.empty());
}

TEST(FinishTrials, how_it_dried_supersedes_the_wet_one_and_keeps_it) {
  TwoGuitars test;
  const RecordId wet = test.book.add(test.amber());
  FinishTrial dry = test.amber();
  dry.supersedes = wet;
  dry.result = "a shade too red by daylight";
  dry.verdict = TrialVerdict::sand_off;
  dry.day = day(2025, 8, 22);
  const RecordId second = test.book.add(dry);
  const FinishTrialPage page = test.book.finish_trials({});
  ASSERT_EQ(page.total, 1);
  EXPECT_EQ(page.trials[0].trial.id, second);
  EXPECT_EQ(page.trials[0].trial.verdict, TrialVerdict::sand_off);
  ASSERT_EQ(page.trials[0].earlier.size(), 1U);
  EXPECT_EQ(page.trials[0].earlier[0].id, wet);
  EXPECT_EQ(page.trials[0].earlier[0].superseded_by, second);
  EXPECT_EQ(page.trials[0].earlier[0].result, "");
}

TEST(FinishTrials, are_found_by_words_by_instrument_and_by_what_became_of_them) {
  TwoGuitars test;
  const RecordId amber = test.book.add(test.amber());
  FinishTrial walnut = test.amber();
  walnut.visit_id = test.other_visit;
  walnut.kind = TrialKind::stain;
  walnut.mix = "walnut dye 2 g in 100 ml";
  walnut.aim = "the sides";
  walnut.day = day(2025, 9, 1);
  walnut.verdict = TrialVerdict::keep;
  const RecordId second = test.book.add(walnut);
  using Ids = std::vector<RecordId>;
  EXPECT_EQ(test.found({}), (Ids{second, amber}));
  EXPECT_EQ(test.found({.instrument_id = test.instrument}), Ids{amber});
  EXPECT_EQ(test.found({.search = "red bro"}), Ids{amber});
  EXPECT_EQ(test.found({.search = "WALNUT sunday"}), Ids{second});
  EXPECT_EQ(test.found({.search = "stain"}), Ids{second});
  EXPECT_EQ(test.found({.search = "ebony"}), Ids{});
  EXPECT_EQ(test.found({.verdict = TrialVerdict::keep}), Ids{second});
  EXPECT_EQ(test.found({.page = 1, .per_page = 1}), Ids{amber});
  EXPECT_TRUE(test.book.finish_trials({.per_page = 1}).more);
  EXPECT_FALSE(test.book.finish_trials({.page = 1, .per_page = 1}).more);
}

TEST(FinishTrials, one_that_was_none_is_withdrawn_and_no_longer_listed) {
  TwoGuitars test;
  FinishTrial wrong = test.amber();
  wrong.supersedes = test.book.add(test.amber());
  wrong.withdrawn = true;
  test.book.add(wrong);
  EXPECT_EQ(test.book.finish_trials({}).total, 0);
}

TEST(FinishTrials, bad_ones_are_refused_by_field_and_leave_nothing_behind) {
  TwoGuitars test;
  const auto refuse = [&](const std::function<void(FinishTrial&)>& spoil, const std::string& line) {
    FinishTrial trial = test.amber();
    spoil(trial);
    expect_refused([&] { test.book.add(trial); }, line);
  };
  refuse([](FinishTrial& one) { one.mix.clear(); }, "mix: is empty");
  refuse([](FinishTrial& one) { one.substrate.clear(); }, "substrate: is empty");
  refuse([](FinishTrial& one) { one.withdrawn = true; }, "withdrawn: only a correction withdraws a trial");
  refuse([](FinishTrial& one) { one.visit_id = 99; }, "visit_id: 99 is not in the book");
  refuse([](FinishTrial& one) { one.photos = {{99}}; }, "photo_id: 99 is not in the book");
  refuse([](FinishTrial& one) { one.supersedes = 99; }, "supersedes: 99 is not in the book");
  EXPECT_EQ(test.book.finish_trials({}).total, 0);
  FinishTrial again = test.amber();
  again.supersedes = test.book.add(test.amber());
  const RecordId second = test.book.add(again);
  expect_refused([&] { test.book.add(again); },
                 "supersedes: trial " + std::to_string(again.supersedes) + " is already superseded by " +
                     std::to_string(second));
  again.supersedes = second;
  again.visit_id = test.other_visit;
  expect_refused([&] { test.book.add(again); },
                 "supersedes: trial " + std::to_string(second) + " is of another visit");
  expect_refused([&] { (void)test.book.finish_trials({.instrument_id = 99}); }, "instrument_id: 99 is not in the book");
  EXPECT_EQ(test.book.troubles(), std::vector<std::string>{});
}

TEST(FinishTrials, and_photos_of_visits_can_be_changed_or_removed_by_nobody) {
  TwoGuitars test;
  const auto photo = test.book.keep_photo({.whole = "w", .thumbnail = "t", .width_px = 1, .height_px = 1});
  FinishTrial trial = test.amber();
  trial.photos = {{photo.id}};
  test.book.add(trial);
  test.book.add(VisitPhoto{.visit_id = test.visit, .photo_id = photo.id});
  Session session(test.file, Session::May::write);
  for (const char* change :
       {"UPDATE finish_trials SET mix = 'x'", "DELETE FROM finish_trials", "UPDATE finish_trial_photos SET number = 7",
        "DELETE FROM finish_trial_photos", "UPDATE visit_photos SET words = 'x'", "DELETE FROM visit_photos"}) {
    EXPECT_THROW(session.script(change), std::runtime_error) << change;
  }
}

/// A visit with two photos of its own.
struct Photographed : testing::TestBook {
  RecordId front = keep("front"), case_ = keep("case");
  RecordId keep(const std::string& bytes) {
    const auto kept = book.keep_photo({.whole = bytes, .thumbnail = "t", .width_px = 1, .height_px = 1});
    book.add(VisitPhoto{.visit_id = visit, .photo_id = kept.id});
    return kept.id;
  }
  [[nodiscard]] std::vector<std::string> shown() const {
    std::vector<std::string> words;
    for (const VisitPhoto& photo : book.visit_photos(visit)) {
      words.push_back(std::to_string(photo.photo_id) + " " + photo.words);
    }
    return words;
  }
};

TEST(VisitPhotos, are_shown_by_their_latest_word_in_the_order_they_came) {
  Photographed test;
  const std::string front = std::to_string(test.front), case_ = std::to_string(test.case_);
  EXPECT_EQ(test.shown(), (std::vector<std::string>{front + " ", case_ + " "}));
  test.book.add(VisitPhoto{.visit_id = test.visit, .photo_id = test.front, .words = "as it came"});
  EXPECT_EQ(test.shown(), (std::vector<std::string>{front + " as it came", case_ + " "}));
  test.book.add(VisitPhoto{.visit_id = test.visit, .photo_id = test.case_, .left_out = true});
  EXPECT_EQ(test.shown(), (std::vector<std::string>{front + " as it came"}));
  test.book.add(VisitPhoto{.visit_id = test.visit, .photo_id = test.case_, .words = "its case"});
  EXPECT_EQ(test.shown(), (std::vector<std::string>{front + " as it came", case_ + " its case"}));
  EXPECT_EQ(test.book.photo_bytes(test.case_, Book::PhotoSize::whole), "case");
}

TEST(VisitPhotos, of_nothing_in_the_book_are_refused) {
  Photographed test;
  expect_refused([&] { test.book.add(VisitPhoto{.visit_id = test.visit, .photo_id = 99}); },
                 "photo_id: 99 is not in the book");
  expect_refused([&] { test.book.add(VisitPhoto{.visit_id = 99, .photo_id = test.front}); },
                 "visit_id: 99 is not in the book");
  expect_refused([&] { (void)test.book.visit_photos(99); }, "visit_id: 99 is not in the book");
}

TEST(VisitPhotos, are_at_most_sixty_at_once) {
  Photographed test;
  for (int k = 2; k < most_visit_photos; ++k) test.keep("photo " + std::to_string(k));
  expect_refused([&] { test.keep("one more"); },
                 "photo_id: a visit shows at most 60 photos of its own; leave one out first");
  test.book.add(VisitPhoto{.visit_id = test.visit, .photo_id = test.case_, .left_out = true});
  test.keep("one more");
  EXPECT_EQ(test.shown().size(), 60U);
}

}  // namespace
}  // namespace tailblock
