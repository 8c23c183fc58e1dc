#pragma once

#include <optional>
#include <string>
#include <vector>

#include "book/job_question.h"
#include "book/shop_settings.h"
#include "repair/finish_day.h"

namespace tailblock {

/// What a person says otherwise than the records, or beside them.
struct FinishWishes {
  std::optional<std::string> finish{};  ///< an id in data/finishes.csv
  std::optional<int> coats_wanted{}, coats_done{};
  std::optional<double> hours_since_last_coat{};
  std::optional<Temperature> work_temperature{};
};

/// A finish that can be asked about.
struct FinishOffered {
  std::string id, name;
  std::string goes_over, not_over, reversibility;
  bool planned = false;  ///< a step of one of the visit's jobs is done with it
};
void describe(FieldVisitor&, FinishOffered&);

struct FinishAnswer {
  std::vector<FinishOffered> finishes{};
  std::optional<ShopAir> air{};  ///< the shop's latest reading of today; absent: not read yet, and nothing is worked out
  int air_age_minutes = 0;
  FinishDayRequest request{};
  std::optional<FinishDayResult> result{};
  std::vector<ThicknessBudget> thickness{};  ///< needs no air
  std::vector<std::string> assumed{};
};
void describe(FieldVisitor&, FinishAnswer&);

/// The finishing day of a visit: the air as the shop read it last today, coats and the last of them from the work done,
/// plate thicknesses from the readings and the findings, the hours left from the shop's own.
/// A forecast is no reading. Readings of the plate as left count against those as found.
/// @throws Refused as `finish_day`.
[[nodiscard]] FinishAnswer finish_answer(const std::vector<JobPlan>& jobs, const InstrumentStory& story,
                                         const VisitStory& visit, const Survey& survey,
                                         const std::vector<ShopAir>& air, const ShopSettings& settings,
                                         const RepairTables& tables, const FinishWishes& wishes, const Moment& now);

}  // namespace tailblock
