#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "book/search_text.h"
#include "shop_for_tests.h"

namespace tailblock {
namespace {

using testing::day;
using testing::expect_refused;
using testing::TestBook;
using Names = std::vector<std::string>;

/// A book with a few instruments of two owners and two homes.
struct SmallShop : TestBook {
  RecordId farmer = book.keep(Owner{.name = "Zoë Farmer"});
  RecordId cabin = book.keep(Home{.name = "cabin"});
  RecordId parlour = add("black parlour", BodySize::parlour, SaddleSlot::closed, farmer, cabin);
  RecordId square = add("plain square", BodySize::square_large, SaddleSlot::open_ended, owner, cabin);
  RecordId small = add("Änderling", BodySize::small, SaddleSlot::closed, farmer, home);

  RecordId add(const std::string& name, BodySize size, SaddleSlot slot, RecordId whose, RecordId where) {
    Instrument another{.owner_id = whose, .home_id = where, .name = name, .slot = slot};
    another.design.body_size = size;
    return book.keep(another);
  }
  [[nodiscard]] Names names(const InstrumentQuery& query) const {
    Names found;
    for (const InstrumentLine& line : book.instruments(query).lines) found.push_back(line.name);
    return found;
  }
};

TEST(InstrumentList, newest_visit_comes_first_then_the_never_seen_by_name) {
  SmallShop shop;
  EXPECT_EQ(shop.names({}), (Names{"the old one", "Änderling", "black parlour", "plain square"}));
  shop.book.keep(Visit{.instrument_id = shop.square, .date = day(2026, 1, 2)});
  shop.book.keep(Visit{.instrument_id = shop.parlour, .date = day(2026, 1, 2)});
  EXPECT_EQ(shop.names({}), (Names{"black parlour", "plain square", "the old one", "Änderling"}));
}

TEST(InstrumentList, a_visit_whose_day_is_corrected_moves_its_instrument) {
  SmallShop shop;
  const RecordId visit = shop.book.keep(Visit{.instrument_id = shop.square, .date = day(2026, 1, 2)});
  EXPECT_EQ(shop.names({}).front(), "plain square");
  shop.book.keep(Visit{.id = visit, .instrument_id = shop.parlour, .date = day(2026, 1, 2)});
  EXPECT_EQ(shop.names({}).front(), "black parlour");
  EXPECT_EQ(shop.names({}).back(), "plain square");
}

TEST(InstrumentList, filters_hold_together) {
  SmallShop shop;
  EXPECT_EQ(shop.names({.body_size = BodySize::parlour}), (Names{"black parlour"}));
  EXPECT_EQ(shop.names({.slot = SaddleSlot::open_ended}), (Names{"plain square"}));
  EXPECT_EQ(shop.names({.home_id = shop.cabin}), (Names{"black parlour", "plain square"}));
  EXPECT_EQ(shop.names({.slot = SaddleSlot::closed, .home_id = shop.cabin}), (Names{"black parlour"}));
  EXPECT_EQ(shop.names({.search = "farmer", .body_size = BodySize::small}), (Names{"Änderling"}));
}

TEST(InstrumentList, every_word_must_begin_a_word_of_name_maker_owner_or_home) {
  SmallShop shop;
  EXPECT_EQ(shop.names({.search = "zoe cab"}), (Names{"black parlour"}));
  EXPECT_EQ(shop.names({.search = "PLAYER old"}), (Names{"the old one"}));
  EXPECT_EQ(shop.names({.search = "arlour"}), Names{});
  EXPECT_EQ(shop.names({.search = " , "}).size(), 4U);
}

TEST(InstrumentList, a_new_name_of_owner_or_home_is_found_and_the_old_one_is_not) {
  SmallShop shop;
  EXPECT_EQ(shop.names({.search = "farmer"}).size(), 2U);
  shop.book.keep(Owner{.id = shop.farmer, .name = "Zoë Miller"});
  shop.book.keep(Home{.id = shop.cabin, .name = "boathouse"});
  EXPECT_EQ(shop.names({.search = "farmer"}), Names{});
  EXPECT_EQ(shop.names({.search = "miller boat"}), (Names{"black parlour"}));
}

TEST(InstrumentList, what_another_program_changed_is_found_too) {
  SmallShop shop;
  EXPECT_EQ(shop.names({.search = "stranger"}), Names{});
  Book other(shop.file);
  other.keep(Instrument{.owner_id = shop.owner, .home_id = shop.home, .name = "a stranger"});
  EXPECT_EQ(shop.names({.search = "stranger"}), (Names{"a stranger"}));
}

TEST(InstrumentList, a_line_tells_visits_and_the_newest_standing_action) {
  SmallShop shop;
  const auto line = [&] { return shop.book.instruments({.search = "old one"}).lines.at(0); };
  EXPECT_EQ(line().owner, "A. Player");
  EXPECT_EQ(line().home, "the house");
  EXPECT_FALSE(line().last_action12_bass_mm.has_value());
  Reading left = shop.reading("action12_bass", 2.2);
  left.state = ReadingState::as_left;
  const RecordId id = shop.book.add(std::vector{left, shop.reading("action12_bass", 2.9)}).at(0);
  EXPECT_EQ(line().last_action12_bass_mm, 2.2);
  Reading correction = left;
  correction.value = 2.3;
  correction.supersedes = id;
  const RecordId corrected = shop.book.add(std::vector{correction}).at(0);
  EXPECT_EQ(line().last_action12_bass_mm, 2.3);
  Reading found_rather = left;
  found_rather.state = ReadingState::as_found;
  found_rather.value = 2.6;
  found_rather.supersedes = corrected;
  shop.book.add(std::vector{found_rather});
  EXPECT_EQ(line().last_action12_bass_mm, 2.6) << "a superseded reading as left still counts";
  const RecordId later = shop.book.keep(Visit{.instrument_id = shop.instrument, .date = day(2026, 2, 1)});
  EXPECT_EQ(line().last_action12_bass_mm, 2.6);
  shop.book.add(std::vector{shop.reading("action12_treble", 1.7, later)});
  EXPECT_EQ(line().visits, 2);
  EXPECT_EQ(line().last_visit, day(2026, 2, 1));
  EXPECT_EQ(line().last_action12_bass_mm, 2.6);
  EXPECT_EQ(line().last_action12_treble_mm, 1.7);
}

TEST(NameList, a_few_letters_find_an_owner_or_a_home_by_name) {
  SmallShop shop;
  const auto owners = [&](const std::string& search, int most) {
    Names found;
    for (const Owner& it : shop.book.owners_named(search, most)) found.push_back(it.name);
    return found;
  };
  EXPECT_EQ(owners("", 200), (Names{"A. Player", "Zoë Farmer"}));
  EXPECT_EQ(owners("", 1), (Names{"A. Player"}));
  EXPECT_EQ(owners("ZOE", 200), (Names{"Zoë Farmer"}));
  shop.book.keep(Owner{.id = shop.farmer, .name = "Ada Farmer"});
  shop.book.keep(Owner{.name = "Ada Zimmer"});
  EXPECT_EQ(owners("ada", 200), (Names{"Ada Farmer", "Ada Zimmer"}));
  EXPECT_EQ(owners("zoe", 200), Names{});
  ASSERT_EQ(shop.book.homes_named("cab", 10).size(), 1U);
  EXPECT_EQ(shop.book.homes_named("cab", 10).front().id, shop.cabin);
  EXPECT_EQ(shop.book.homes_named("cab", 10).front().air.temperature_c.size(), 12U);
  expect_refused([&] { (void)shop.book.owners_named("", 201); }, "most: 201 is outside 1..200");
}

TEST(InstrumentList, refuses_a_page_or_a_search_out_of_range) {
  SmallShop shop;
  expect_refused([&] { (void)shop.book.instruments({.per_page = 0}); }, "per_page: 0 is outside 1..200");
  expect_refused([&] { (void)shop.book.instruments({.page = -1}); }, "page: -1 is outside 0..1000000");
  expect_refused([&] { (void)shop.book.instruments({.search = std::string(201, 'x')}); },
                 "search: 201 bytes is more than 200");
}

/// The slow and obvious way: every instrument asked for one by one, sorted and cut into pages.
Names obvious_names(const Book& book, int instruments, const InstrumentQuery& query) {
  struct Entry {
    Date last_visit;
    std::string words, name;
    int id;
  };
  std::vector<Entry> entries;
  for (int id = 1; id <= instruments; ++id) {
    const InstrumentStory story = book.story(id);
    const Instrument& it = story.instrument;
    const std::string words = search_text({it.name, it.made, story.owner.name, story.home.name});
    if (query.body_size && it.design.body_size != *query.body_size) continue;
    if (query.slot && it.slot != *query.slot) continue;
    if (query.home_id != 0 && it.home_id != query.home_id) continue;
    if (!has_words(words, search_words(query.search))) continue;
    entries.push_back({story.visits.empty() ? Date(std::chrono::days(-1000000)) : story.visits.back().visit.date, words,
                       it.name, id});
  }
  std::sort(entries.begin(), entries.end(), [](const Entry& a, const Entry& b) {
    return std::tie(b.last_visit, a.words, a.id) < std::tie(a.last_visit, b.words, b.id);
  });
  Names names;
  for (std::size_t i = 0; i < entries.size(); ++i) {
    if (static_cast<int>(i) / query.per_page == query.page) names.push_back(entries[i].name);
  }
  return names;
}

TEST(InstrumentList, agrees_with_the_slow_and_obvious_way_while_the_book_changes) {
  SmallShop shop;
  std::mt19937 dice(2026);
  const auto roll = [&](int faces) { return static_cast<int>(dice() % static_cast<unsigned>(faces)); };
  const std::vector<std::string> words{"ab", "abc", "b", "ca", "cab", "zoe", "farmer", "old", "x"};
  const auto word = [&] { return words[static_cast<std::size_t>(roll(static_cast<int>(words.size())))]; };
  int instruments = 4;
  for (int round = 0; round < 60; ++round) {
    if (roll(2) == 0) {
      shop.add(word() + " " + word(), static_cast<BodySize>(roll(5)), static_cast<SaddleSlot>(roll(2)),
               roll(2) == 0 ? shop.owner : shop.farmer, roll(2) == 0 ? shop.home : shop.cabin);
      ++instruments;
    } else {
      shop.book.keep(
          Visit{.instrument_id = 1 + roll(instruments), .date = day(2026, 1, 1 + static_cast<unsigned>(roll(9)))});
    }
    InstrumentQuery query{.page = roll(3), .per_page = 1 + roll(7)};
    if (roll(2) == 0) query.search = word();
    if (roll(3) == 0) query.search += " " + word();
    if (roll(3) == 0) query.body_size = static_cast<BodySize>(roll(5));
    if (roll(3) == 0) query.slot = static_cast<SaddleSlot>(roll(2));
    if (roll(3) == 0) query.home_id = roll(2) == 0 ? shop.home : shop.cabin;
    const Names expected = obvious_names(shop.book, instruments, query);
    ASSERT_EQ(shop.names(query), expected) << "round " << round << ", search \"" << query.search << '"';
    const InstrumentPage page = shop.book.instruments(query);
    InstrumentQuery all = query;
    all.page = 0, all.per_page = 200;
    EXPECT_EQ(page.total, static_cast<int>(obvious_names(shop.book, instruments, all).size()));
    EXPECT_EQ(page.more, page.total > (query.page + 1) * query.per_page);
  }
}

}  // namespace
}  // namespace tailblock
