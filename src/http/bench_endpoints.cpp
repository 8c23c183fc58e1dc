#include <sodium.h>

#include <algorithm>
#include <array>
#include <map>
#include <memory>
#include <mutex>

#include "bench/bench.h"
#include "bench/what_fits.h"
#include "bench/work_of_steps.h"
#include "bench/work_order.h"
#include "book/bench_question.h"
#include "http/ask_fields.h"
#include "http/endpoints.h"
#include "paper/bench_calendar.h"

namespace tailblock {
namespace {

constexpr Count any_count{0, 100000};

/// How many times the plans of a first answer are judged for a better one.
constexpr int times_the_plans = 20;
constexpr int most_plans = 200'000;

/// The order of the plan before, so that the next one starts from it. Not a record: without it a plan is only less like
/// the one before.
class KeptOrder {
 public:
  struct Order {
    std::vector<OrderEntry> entries;
    int number = 0;  ///< of the answer it is from
  };
  [[nodiscard]] Order order() const {
    const std::lock_guard one(mutex_);
    return order_;
  }
  void keep(const std::vector<OrderEntry>& entries) {
    const std::lock_guard one(mutex_);
    order_ = {.entries = entries, .number = order_.number + 1};
  }
  /// A better order, found since an answer was given; dropped where another answer has been given in the meantime.
  void keep_better(const std::vector<OrderEntry>& entries, int than_number) {
    const std::lock_guard one(mutex_);
    if (order_.number == than_number) order_.entries = entries;
  }

 private:
  mutable std::mutex mutex_;
  Order order_;
};

struct BenchAnswer {
  Moment now;
  std::vector<BenchPerson> people;
  std::vector<Station> stations;
  std::optional<BenchResult> plan;
  std::string trouble;
  std::vector<PinLetGo> pins_let_go;
  std::vector<BenchWork> work;
  std::vector<OnTheBench> instruments;
  std::vector<NotPlanned> left_out;
  std::vector<HeldByAir> held_by_air;
  std::vector<ShopAir> air;
};
void describe(FieldVisitor& visit, BenchAnswer& answer) {
  object(visit, {"now", "by the shop's clock"}, answer.now);
  list(visit, {"people", "whose hands do the work"}, answer.people, any_count);
  list(visit, {"stations", "places and fixtures"}, answer.stations, any_count);
  maybe(visit, {"plan", "absent where there is nothing to do, or no plan can be made"}, answer.plan,
        [&](const Field& field, BenchResult& plan) { object(visit, field, plan); });
  visit.text({"trouble", "why no plan can be made; empty: nothing is in the way"}, answer.trouble, 4000);
  list(visit, {"pins_let_go", "pins that cannot be kept beside the older ones, and why"}, answer.pins_let_go,
       any_count);
  list(visit, {"work", "what each operation of the plan is in the book"}, answer.work, any_count);
  list(visit, {"instruments", "what was said of each instrument of the plan"}, answer.instruments, any_count);
  list(visit, {"left_out", "instruments in the shop that are not planned, and why"}, answer.left_out, any_count);
  list(visit, {"held_by_air", "spraying that the air of a day forbids"}, answer.held_by_air, any_count);
  list(visit, {"air", "of the shop from today on, read or forecast, the newest of each day"}, answer.air, any_count);
}

std::vector<ShopAir> newest_of_each_day(const std::vector<ShopAir>& air) {
  std::map<Date, ShopAir> by_day;
  for (const ShopAir& one : air) by_day[one.day] = one;
  std::vector<ShopAir> newest;
  for (const auto& [day, one] : by_day) newest.push_back(one);
  return newest;
}

/// The plan, or that of what fits where not all of it does.
void plan_into(BenchAnswer& answer, const BenchQuestion& question, const BenchWeights& weights) {
  try {
    answer.plan = bench(question.request, weights);
    return;
  } catch (const Refused&) {
    // what_fits() finds out which part of it is refused
  }
  const WhatFits fits = what_fits(question.request, question.pins_by_age, weights);
  for (const FitsNoDay& one : fits.left_out) {
    const auto about = std::ranges::find(answer.instruments, one.instrument, &OnTheBench::instrument);
    answer.left_out.push_back({.visit_id = about->visit_id, .instrument = one.instrument, .why = one.why});
    answer.instruments.erase(about);
    std::erase_if(answer.work, [&](const BenchWork& work) { return work.instrument == one.instrument; });
  }
  answer.pins_let_go = fits.pins_let_go;
  if (fits.request.instruments.empty()) return;
  try {
    answer.plan = bench(fits.request, weights);
  } catch (const Refused& refused) {
    answer.trouble = refused.what();
  }
}

/// How the shop works, with the usual places and weights where it has said nothing of them.
ShopSettings settings_of(const Shop& shop) {
  ShopSettings settings = shop_settings(shop.book, usual_stations(shop.tables.repairs.materials.stations));
  if (!settings.weights) settings.weights = shop.tables.bench_weights;
  return settings;
}

struct PlanWish {
  RecordId with_visit = 0;
  bool improved = false;
};

BenchAnswer bench_answer(const Shop& shop, KeptOrder& kept, const PlanWish& wish) {
  const Moment now = now_in(shop);
  const ShopSettings settings = settings_of(shop);
  BenchQuestion question = bench_question(shop.book, settings, shop.tables.repairs, now, wish.with_visit);
  BenchAnswer answer{.now = now,
                     .people = settings.people,
                     .stations = settings.stations,
                     .plan = {},
                     .trouble = {},
                     .pins_let_go = {},
                     .work = std::move(question.work),
                     .instruments = std::move(question.instruments),
                     .left_out = std::move(question.left_out),
                     .held_by_air = std::move(question.held_by_air),
                     .air = newest_of_each_day(shop.book.shop_air(now.day))};
  if (question.request.instruments.empty()) return answer;
  const KeptOrder::Order before = kept.order();
  question.request.kept_order = order_of_those_here(before.entries, question.request);
  if (wish.improved) {
    const auto operations = static_cast<int>(answer.work.size());
    question.request.plans = std::min(most_plans, times_the_plans * plans_that_suit(operations));
  }
  plan_into(answer, question, *settings.weights);
  if (!answer.plan || wish.with_visit != 0) return answer;
  if (wish.improved) {
    kept.keep_better(answer.plan->order, before.number);
  } else {
    kept.keep(answer.plan->order);
  }
  return answer;
}

/// What can be promised.
PromiseResult promised_days(const Shop& shop, RecordId with_visit) {
  const ShopSettings settings = settings_of(shop);
  const BenchQuestion question = bench_question(shop.book, settings, shop.tables.repairs, now_in(shop), with_visit);
  if (question.request.instruments.empty()) throw Refused("bench: there is nothing to do, so nothing to promise");
  const auto promises = [&](BenchRequest request) {
    return promise({.bench = std::move(request),
                    .finished = finished_work(shop.book, shop.tables.repairs),
                    .chance = settings.promise_chance},
                   *settings.weights, shop.tables.duration_prior);
  };
  try {
    return promises(question.request);
  } catch (const Refused&) {
    WhatFits fits = what_fits(question.request, question.pins_by_age, *settings.weights);
    if (fits.request.instruments.empty()) throw Refused("bench: nothing of it fits any day, so nothing to promise");
    return promises(std::move(fits.request));
  }
}

/// What tells this book's events from those of other books in one diary: made once and kept with the book.
std::string calendar_identity(Book& book) {
  constexpr auto setting = "calendar_identity";
  static std::mutex one_at_a_time;
  const std::lock_guard one(one_at_a_time);
  std::string identity = book.setting(setting);
  if (!identity.empty()) return identity;
  std::array<unsigned char, 8> bytes{};
  randombytes_buf(bytes.data(), bytes.size());
  std::array<char, 2 * bytes.size() + 1> digits{};
  identity = sodium_bin2hex(digits.data(), digits.size(), bytes.data(), bytes.size());
  identity += ".tailblock.invalid";
  book.keep_setting(setting, identity);
  return identity;
}

Answer calendar_answer(const Shop& shop) {
  const std::string shop_name = shop.book.setting("shop_name");
  const std::string name = shop_name.empty() ? "The bench" : shop_name + ": the bench";
  const Calendar calendar =
      bench_calendar(shop.book, shop.tables.repairs, now_in(shop), name, calendar_identity(shop.book));
  return {.status = 200, .body = calendar_file(calendar), .content_type = "text/calendar; charset=utf-8"};
}

RecordId visit_asked(const Ask& ask) { return query_integer(ask, "with_visit", {0, 2147483647, ""}).value_or(0); }

}  // namespace

std::vector<Endpoint> bench_endpoints(const Shop& shop) {
  const auto kept = std::make_shared<KeptOrder>();
  const QueryField with_visit{"with_visit",
                              "plan this visit's jobs too, whatever the owner has said: to see whom it delays"};
  return {{"GET",
           "/api/bench",
           "What hands do next, and when each instrument is ready",
           {with_visit},
           "",
           schema_of_result<BenchAnswer>(),
           [shop, kept](const Ask& ask) {
             return json_answer(bench_answer(shop, *kept, {.with_visit = visit_asked(ask)}));
           }},
          {.method = "GET",
           .path = "/api/bench/improved",
           .summary = "The same after a longer search, which starts from the newest plan",
           .query = {},
           .request_schema = "",
           .result_schema = schema_of_result<BenchAnswer>(),
           .handle = [shop, kept](const Ask&) { return json_answer(bench_answer(shop, *kept, {.improved = true})); },
           .takes_long = true},
          {"GET",
           "/api/bench/promises",
           "The day that can be promised for each instrument",
           {with_visit},
           "",
           schema_of_result<PromiseResult>(),
           [shop](const Ask& ask) { return json_answer(promised_days(shop, visit_asked(ask))); }},
          {.method = "GET",
           .path = "/api/bench/calendar.ics",
           .summary = "Promises and cures that run, as a feed or a file for a diary (iCalendar)",
           .query = {},
           .request_schema = "",
           .result_schema = "",
           .handle = [shop](const Ask&) { return calendar_answer(shop); },
           .result_type = "text/calendar"},
          {"GET",
           "/api/shop/settings",
           "How the shop works and charges",
           {},
           "",
           schema_of_result<ShopSettings>(),
           [shop](const Ask&) { return json_answer(settings_of(shop)); }},
          {"PUT",
           "/api/shop/settings",
           "Change how the shop works and charges",
           {},
           schema_of_request<ShopSettings>(),
           schema_of_result<ShopSettings>(),
           [shop](const Ask& ask) {
             keep_shop_settings(shop.book, from_json<ShopSettings>(ask.body), shop.tables.repairs.materials.skills);
             return json_answer(settings_of(shop));
           }}};
}

}  // namespace tailblock
