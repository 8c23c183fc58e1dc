#include <memory>
#include <mutex>

#include "bench/bench.h"
#include "book/bench_question.h"
#include "http/ask_fields.h"
#include "http/endpoints.h"
#include "http/usual_places.h"

namespace tailblock {
namespace {

constexpr Count any_count{0, 100000};

/// The order of the plan before, so that the next one starts from it. Not a record: without it a plan is only less like
/// the one before.
class KeptOrder {
 public:
  [[nodiscard]] std::vector<OrderEntry> order() const {
    const std::lock_guard one(mutex_);
    return order_;
  }
  void keep(const std::vector<OrderEntry>& order) {
    const std::lock_guard one(mutex_);
    order_ = order;
  }

 private:
  mutable std::mutex mutex_;
  std::vector<OrderEntry> order_;
};

struct BenchAnswer {
  Moment now;
  std::vector<BenchPerson> people;
  std::vector<Station> stations;
  std::optional<BenchResult> plan;
  std::vector<BenchWork> work;
  std::vector<NotPlanned> left_out;
  std::optional<ShopAir> air;
};
void describe(FieldVisitor& visit, BenchAnswer& answer) {
  object(visit, {"now", "by the shop's clock"}, answer.now);
  list(visit, {"people", "whose hands do the work"}, answer.people, any_count);
  list(visit, {"stations", "places and fixtures"}, answer.stations, any_count);
  maybe(visit, {"plan", "absent where there is nothing to do"}, answer.plan,
        [&](const Field& field, BenchResult& plan) { object(visit, field, plan); });
  list(visit, {"work", "what each operation of the plan is in the book"}, answer.work, any_count);
  list(visit, {"left_out", "instruments in the shop that are not planned, and why"}, answer.left_out, any_count);
  maybe(visit, {"air", "of the shop today, where it was read or forecast"}, answer.air,
        [&](const Field& field, ShopAir& air) { object(visit, field, air); });
}

BenchAnswer bench_answer(const Shop& shop, KeptOrder& kept, RecordId with_visit) {
  const Moment now = now_in(shop);
  const ShopSettings settings = shop_settings(shop.book, usual_places(shop.tables.repairs));
  BenchQuestion question = bench_question(shop.book, settings, shop.tables.repairs, now, with_visit);
  BenchAnswer answer{.now = now,
                     .people = settings.people,
                     .stations = settings.stations,
                     .plan = {},
                     .work = std::move(question.work),
                     .left_out = std::move(question.left_out),
                     .air = {}};
  for (const ShopAir& air : shop.book.shop_air(now.day)) {
    if (air.day == now.day) answer.air = air;
  }
  if (question.request.instruments.empty()) return answer;
  question.request.kept_order = order_of_those_here(kept.order(), question.request);
  answer.plan = bench(question.request, shop.tables.bench_weights);
  if (with_visit == 0) kept.keep(answer.plan->order);
  return answer;
}

/// What can be promised.
PromiseResult promised_days(const Shop& shop, RecordId with_visit) {
  const ShopSettings settings = shop_settings(shop.book, usual_places(shop.tables.repairs));
  BenchQuestion question = bench_question(shop.book, settings, shop.tables.repairs, now_in(shop), with_visit);
  if (question.request.instruments.empty()) throw Refused("bench: there is nothing to do, so nothing to promise");
  return promise({.bench = std::move(question.request),
                  .finished = finished_work(shop.book, shop.tables.repairs),
                  .chance = settings.promise_chance},
                 shop.tables.bench_weights, shop.tables.duration_prior);
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
           [shop, kept](const Ask& ask) { return json_answer(bench_answer(shop, *kept, visit_asked(ask))); }},
          {"GET",
           "/api/bench/promises",
           "The day that can be promised for each instrument",
           {with_visit},
           "",
           schema_of_result<PromiseResult>(),
           [shop](const Ask& ask) { return json_answer(promised_days(shop, visit_asked(ask))); }},
          {"GET",
           "/api/shop/settings",
           "How the shop works and charges",
           {},
           "",
           schema_of_result<ShopSettings>(),
           [shop](const Ask&) { return json_answer(shop_settings(shop.book, usual_places(shop.tables.repairs))); }},
          {"PUT",
           "/api/shop/settings",
           "Change how the shop works and charges",
           {},
           schema_of_request<ShopSettings>(),
           schema_of_result<ShopSettings>(),
           [shop](const Ask& ask) {
             keep_shop_settings(shop.book, from_json<ShopSettings>(ask.body));
             return json_answer(shop_settings(shop.book, {}));
           }}};
}

}  // namespace tailblock
