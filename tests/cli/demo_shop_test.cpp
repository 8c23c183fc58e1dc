#include <algorithm>
#include <cmath>
#include <set>

#include "demo_book.h"
#include "quantity/trade_notation.h"

namespace tailblock {
namespace {

using testing::demo_through_a_year;
using testing::DemoBook;
using testing::kept_file;

const DemoBook& winter() { return *demo_through_a_year()[1]; }

/// Everything in a book that a person could see, as one text.
std::string everything_in(const DemoBook& demo) {
  std::string all;
  const auto add = [&](const std::string& text) { all += text + "\n"; };
  for (const Owner& owner : demo.book.owners()) add(owner.name + owner.contact + owner.note);
  for (const Home& home : demo.book.homes()) {
    add(home.name + home.note);
    for (const LoggedDay& day : demo.log(home.id)) {
      add(iso_date(day.date) + " " + plain_number(day.temperature_c) + " " + plain_number(day.relative_humidity));
    }
  }
  for (const InstrumentStory& story : demo.stories) {
    add(story.instrument.name + story.owner.name + story.home.name);
    for (const VisitStory& told : story.visits) {
      add(iso_date(told.visit.date) + told.visit.reason + told.visit.note);
      for (const Reading& reading : told.readings) add(reading.measure + " " + reading.typed);
      for (const Intervention& work : told.interventions) add(work.kind + work.note);
      for (const SaddleDecision& decision : told.decisions) add(decision.choice + decision.reason);
    }
  }
  return all;
}

template <class Part>
auto kinds_of(Part part) {
  std::set<std::decay_t<decltype(part(winter().stories.front().instrument))>> kinds;
  for (const InstrumentStory& story : winter().stories) kinds.insert(part(story.instrument));
  return kinds;
}

TEST(DemoShop, has_instruments_of_every_kind) {
  EXPECT_GE(winter().stories.size(), 14U);
  EXPECT_EQ(kinds_of([](const Instrument& i) { return i.design.body_size; }).size(), 5U);
  const auto bracings = kinds_of([](const Instrument& i) { return i.design.bracing; });
  EXPECT_TRUE(bracings.contains(Bracing::x_braced) && bracings.contains(Bracing::ladder) &&
              bracings.contains(Bracing::fan));
  EXPECT_EQ(kinds_of([](const Instrument& i) { return i.slot; }).size(), 2U);
  EXPECT_EQ(kinds_of([](const Instrument& i) { return i.adjustable_rod; }).size(), 2U);
  EXPECT_EQ(kinds_of([](const Instrument& i) { return i.design.kept_in_case; }).size(), 2U);
  EXPECT_EQ(kinds_of([](const Instrument& i) { return i.body_joint_fret; }), (std::set<int>{12, 14}));
  EXPECT_EQ(kinds_of([](const Instrument& i) { return i.attack; }).size(), 3U);
  EXPECT_GE(kinds_of([](const Instrument& i) { return i.home_id; }).size(), 5U);
}

TEST(DemoShop, has_one_owner_with_two_guitars_one_instrument_never_measured_and_one_measured_once) {
  std::map<std::string, int> owned;
  std::map<std::size_t, int> with_visits;
  for (const InstrumentStory& story : winter().stories) {
    ++owned[story.owner.name];
    ++with_visits[story.visits.size()];
  }
  EXPECT_TRUE(std::ranges::any_of(owned, [](const auto& owner) { return owner.second >= 2; }));
  EXPECT_EQ(with_visits[0], 1);
  EXPECT_EQ(with_visits[1], 1);
  EXPECT_GE(with_visits.rbegin()->first, 10U) << "no instrument with many visits";
}

TEST(DemoShop, homes_differ_in_air_and_at_least_three_keep_a_log_with_gaps) {
  std::set<int> logs;
  std::vector<double> driest_months, dampest_months;
  for (const Home& home : winter().book.homes()) {
    const auto year = home_days(home.air, winter().today, 365);
    const auto [driest, dampest] = std::ranges::minmax_element(year, {}, &HomeDay::relative_humidity);
    driest_months.push_back(driest->relative_humidity);
    dampest_months.push_back(dampest->relative_humidity);
    const auto log = winter().log(home.id);
    if (log.empty()) continue;
    logs.insert(home.id);
    EXPECT_LT(static_cast<int>(log.size()), days_between(log.front().date, log.back().date) + 1) << home.name;
    EXPECT_LE(days_between(log.back().date, winter().today), 7) << home.name;
  }
  EXPECT_GE(logs.size(), 3U);
  EXPECT_LT(*std::ranges::min_element(dampest_months), 0.51) << "no home is dry or steady the whole year";
  EXPECT_GT(*std::ranges::max_element(dampest_months), 0.65) << "no home is damp";
  EXPECT_LT(*std::ranges::min_element(driest_months), 0.3) << "no home is dry in its driest month";
  EXPECT_GT(*std::ranges::max_element(driest_months), 0.5) << "no home is damp the whole year";
}

TEST(DemoShop, is_marked_invented) {
  EXPECT_EQ(winter().book.setting("invented"), "true");
  EXPECT_NE(winter().book.setting("shop_name").find("Invented"), std::string::npos);
  for (const Owner& owner : winter().book.owners()) EXPECT_TRUE(owner.note.starts_with("Invented")) << owner.name;
  for (const Home& home : winter().book.homes()) EXPECT_TRUE(home.note.starts_with("Invented")) << home.name;
}

TEST(DemoShop, every_reading_as_typed_reads_back_as_its_value) {
  const TradeTables trade = testing::trade_of_the_repository();
  std::set<std::string> gauges;
  int checked = 0;
  for (const InstrumentStory& story : winter().stories) {
    for (const VisitStory& told : story.visits) {
      for (const Reading& reading : told.readings) {
        const Measure* measure = trade.measure(reading.measure);
        ASSERT_NE(measure, nullptr) << reading.measure;
        const double read = measure->unit == "mm" ? in_mm(length_from_text(reading.measure, reading.typed))
                                                  : number_from_text(reading.typed).value();
        EXPECT_EQ(read, reading.value) << reading.typed;
        gauges.insert(reading.gauge);
        ++checked;
      }
    }
  }
  EXPECT_GE(checked, 200);
  EXPECT_GE(gauges.size(), 6U);
}

/// What a hand and a step may stray together is what data/gauges.csv says of that gauge: the model is told no lie.
TEST(DemoShop, no_kit_strays_more_than_its_gauge) {
  const TradeTables trade = testing::trade_of_the_repository();
  for (const DemoGauge& used : demo_tables(kept_file).gauges) {
    const Gauge* gauge = trade.gauge(used.gauge);
    ASSERT_NE(gauge, nullptr) << used.gauge;
    const bool in_64ths = used.notation == Notation::sixty_fourths;
    const bool in_thou =
        used.notation == Notation::thousandths || used.notation == Notation::sixty_fourths_and_thousandths;
    const double step = used.step * in_mm(in_64ths ? sixty_fourths(1) : in_thou ? thousandths(1) : mm(1));
    EXPECT_LE(std::hypot(used.hand_sd, step / std::sqrt(12.0)), gauge->sd) << used.kit << ", " << used.measure;
  }
}

TEST(DemoShop, the_same_day_gives_the_same_book) {
  const std::string once = everything_in(DemoBook(winter().today));
  EXPECT_GT(once.size(), 50000U);
  EXPECT_EQ(once, everything_in(winter()));
  EXPECT_NE(once, everything_in(*demo_through_a_year()[2]));
}

TEST(DemoShop, is_of_this_year_whatever_the_day) {
  for (const auto& demo : demo_through_a_year()) {
    SCOPED_TRACE(iso_date(demo->today));
    int visits = 0;
    Date oldest = demo->today, newest = oldest - std::chrono::days(4000);
    for (const InstrumentStory& story : demo->stories) {
      for (const VisitStory& told : story.visits) {
        const Date day = told.visit.date;
        EXPECT_LE(day, demo->today) << story.instrument.name;
        EXPECT_NE(std::chrono::weekday(day), std::chrono::Sunday) << story.instrument.name;
        EXPECT_FALSE(told.readings.empty()) << story.instrument.name;
        oldest = std::min(oldest, day);
        newest = std::max(newest, day);
        ++visits;
      }
    }
    EXPECT_EQ(visits, 66);
    EXPECT_LE(days_between(newest, demo->today), 6);
    EXPECT_GE(days_between(oldest, demo->today), 2 * 365);
    EXPECT_LE(days_between(oldest, demo->today), 4 * 365);
  }
}

/// Nothing that a repairer of thirty years would call odd: what is read is what a sound guitar shows, save the action
/// and what goes with it on the few that are in for just that.
TEST(DemoShop, readings_are_the_usual_ones_where_nothing_is_the_matter) {
  const TradeTables trade = testing::trade_of_the_repository();
  int outside = 0, all = 0;
  for (const auto& demo : demo_through_a_year()) {
    for (const InstrumentStory& story : demo->stories) {
      for (const VisitStory& told : story.visits) {
        for (const Reading& reading : told.readings) {
          if (reading.measure == "body_humidity") continue;  // a heated flat is dry
          const Measure* measure = trade.measure(reading.measure);
          const bool usual = measure->usual_low.value_or(reading.value) <= reading.value &&
                             reading.value <= measure->usual_high.value_or(reading.value);
          if (reading.measure == "relief" || reading.measure.starts_with("action1_")) {
            EXPECT_TRUE(usual) << story.instrument.name << ": " << reading.measure << " " << reading.typed;
          }
          outside += usual ? 0 : 1;
          ++all;
        }
      }
    }
  }
  EXPECT_GT(outside, 0);
  EXPECT_LT(outside, all / 10) << "of " << all;
}

}  // namespace
}  // namespace tailblock
