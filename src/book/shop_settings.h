#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bench/request.h"
#include "bench/weights.h"
#include "book/book.h"
#include "repair/work_skills.h"

namespace tailblock {

/// How the shop works and charges: whose hands, when, at which places, and for how much.
struct ShopSettings {
  std::string name{};
  std::string address{};  ///< as it stands on the shop's papers, lines and all
  std::vector<BenchPerson> people{};
  std::vector<Station> stations{};
  std::string currency = "EUR";       ///< ISO 4217; whatever the shop charges in
  std::string hourly_rate = "60.00";  ///< an exact decimal; a figure to start from, not a price anybody charges
  std::string tax_percent = "0";      ///< an exact decimal, where a line says nothing else
  std::string terms{};                ///< under estimates and on tickets, line by line
  std::string how_to_pay{};           ///< on invoices, line by line
  double promise_chance = 0.8;        ///< a promised day is given with this chance of being kept
  std::optional<BenchWeights> weights{};  ///< what the plan weighs against what; absent: as data/bench_weights.csv
};
void describe(FieldVisitor&, ShopSettings&);

/// As kept in the book; of a shop that has said nothing yet: one person, nine to half past five on weekdays with half
/// an hour's break, and the usual places.
[[nodiscard]] ShopSettings shop_settings(const Book& book, const std::vector<Station>& usual_places);

/// @throws Refused naming the field: two people or places of one name, hours that overlap, a sort of work that is not
/// among `skills` or that everyone leaves to others, money that is no exact decimal.
void keep_shop_settings(Book& book, const ShopSettings& settings, const std::vector<WorkSkill>& skills);

}  // namespace tailblock
