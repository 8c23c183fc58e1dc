#include "book/shop_settings.h"

#include <gtest/gtest.h>

#include "shop_for_tests.h"

namespace tailblock {
namespace {

using testing::expect_refused;

const std::vector<WorkSkill> skills = work_skills(testing::repository_file("data/work_skills.csv"));

TEST(ShopSettings, begin_with_one_person_and_the_usual_places_and_are_kept_whole) {
  testing::TestBook shop;
  ShopSettings settings = shop_settings(shop.book, {{.name = "clamps", .count = 3}});
  ASSERT_EQ(settings.people.size(), 1U);
  EXPECT_EQ(settings.people[0].hours.size(), 10U);
  EXPECT_EQ(settings.stations.at(0).count, 3);

  settings.name = "The Bench";
  settings.hourly_rate = "72.5";
  settings.people[0].name = "Ada";
  EXPECT_FALSE(settings.weights) << "the table's stand until the shop says its own";
  settings.weights = BenchWeights{.late_day = 4,
                                  .shop_day = 1,
                                  .change_of_instrument = 0.2,
                                  .promise_later = 8,
                                  .promise_later_day = 3,
                                  .promise_earlier_day = 0.6,
                                  .begun_overdue = 20,
                                  .begun_overdue_day = 10};
  settings.people[0].days_off = {{testing::day(2026, 3, 2)}};
  settings.people.push_back(settings.people[0]);
  settings.people[1].name = "Ben";
  settings.people[1].leaves_to_others = {"fretwork", "spraying"};
  keep_shop_settings(shop.book, settings, skills);
  const ShopSettings kept = shop_settings(shop.book, {});
  EXPECT_EQ(kept.name, "The Bench");
  EXPECT_EQ(kept.hourly_rate, "72.5");
  EXPECT_EQ(kept.people.at(0).days_off.at(0).day, testing::day(2026, 3, 2));
  EXPECT_TRUE(kept.people.at(0).leaves_to_others.empty());
  EXPECT_EQ(kept.people.at(1).leaves_to_others, (std::vector<std::string>{"fretwork", "spraying"}));
  EXPECT_EQ(kept.stations.size(), 1U);
  ASSERT_TRUE(kept.weights);
  EXPECT_EQ(kept.weights->late_day, 4);
  EXPECT_EQ(kept.weights->promise_later, 8);
  EXPECT_EQ(shop.book.setting("shop_name"), "The Bench");
}

TEST(ShopSettings, that_cannot_be_are_refused_in_one_line) {
  testing::TestBook shop;
  const ShopSettings good = shop_settings(shop.book, {});
  const auto refuses = [&](auto change, const std::string& line) {
    ShopSettings settings = good;
    change(settings);
    expect_refused([&] { keep_shop_settings(shop.book, settings, skills); }, line);
  };
  refuses([](ShopSettings& s) { s.hourly_rate = "6O"; }, "hourly_rate: \"6O\" is not a plain decimal such as 60.00");
  refuses([](ShopSettings& s) { s.tax_percent = "-1"; }, "tax_percent: \"-1\" is not a plain decimal such as 60.00");
  refuses([](ShopSettings& s) { s.currency = "eur"; }, "currency: \"eur\" is not three capital letters such as EUR");
  refuses([](ShopSettings& s) { s.people.push_back(s.people[0]); }, "people: \"me\" comes twice");
  refuses([](ShopSettings& s) { s.people[0].hours[1].from_minute = 700; }, "hours: of me overlap on weekday 1");
  refuses([](ShopSettings& s) { s.people[0].hours[0].to_minute = 500; }, "hours: of me end before they begin");
  refuses([](ShopSettings& s) { s.people[0].leaves_to_others = {"inlay"}; },
          "leaves_to_others: of me: \"inlay\" is not in data/work_skills.csv");
  refuses([](ShopSettings& s) { s.people[0].leaves_to_others = {"spraying"}; },
          "leaves_to_others: spraying is left to others by everyone");
  refuses(
      [](ShopSettings& s) {
        s.people[0].leaves_to_others = {"fretwork", "neck_joint_work"};
        s.people.push_back(s.people[0]);
        s.people[1].name = "Ben";
        s.people[1].leaves_to_others = {"spraying", "neck_joint_work"};
      },
      "leaves_to_others: neck joint work is left to others by everyone");
  EXPECT_EQ(shop.book.setting("shop"), "");
}

}  // namespace
}  // namespace tailblock
