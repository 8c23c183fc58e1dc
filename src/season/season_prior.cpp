#include "season/season_prior.h"

#include <algorithm>
#include <array>
#include <string>

#include "quantity/csv_table.h"

namespace tailblock {
namespace {

struct Entry {
  std::string_view name;
  double SeasonPrior::*value;
  Range range;
};

constexpr Range log_sds{0.01, 2, ""};
constexpr Range sds_mm{0.001, 10, "mm"};
constexpr Range lags{0.1, 365, "days"};
constexpr Range shares{0, 1, ""};

constexpr std::array entries{
    Entry{"structure_response", &SeasonPrior::structure_response, {0.001, 2, "mm per percent"}},
    Entry{"reference_width", &SeasonPrior::reference_width, {200, 600, "mm"}},
    Entry{"transmission", &SeasonPrior::transmission, {0.05, 2, ""}},
    Entry{"kind_log_sd", &SeasonPrior::kind_log_sd, log_sds},
    Entry{"instrument_log_sd", &SeasonPrior::instrument_log_sd, log_sds},
    Entry{"other_bracing_log_sd", &SeasonPrior::other_bracing_log_sd, {0, 2, ""}},
    Entry{"guessed_wood_log_sd", &SeasonPrior::guessed_wood_log_sd, {0, 2, ""}},
    Entry{"lag_median", &SeasonPrior::lag_median, lags},
    Entry{"lag_median_in_case", &SeasonPrior::lag_median_in_case, lags},
    Entry{"lag_log_sd", &SeasonPrior::lag_log_sd, log_sds},
    Entry{"treble_ratio", &SeasonPrior::treble_ratio, {0.1, 3, ""}},
    Entry{"treble_ratio_sd", &SeasonPrior::treble_ratio_sd, {0.001, 1, ""}},
    Entry{"level_bass", &SeasonPrior::level_bass, {0, 10, "mm"}},
    Entry{"level_treble", &SeasonPrior::level_treble, {0, 10, "mm"}},
    Entry{"level_sd", &SeasonPrior::level_sd, sds_mm},
    Entry{"level_side_sd", &SeasonPrior::level_side_sd, sds_mm},
    Entry{"drift", &SeasonPrior::drift, {-2, 2, "mm per year"}},
    Entry{"drift_sd", &SeasonPrior::drift_sd, {0.0001, 5, "mm per year"}},
    Entry{"set_sd", &SeasonPrior::set_sd, {0, 1, "mm"}},
    Entry{"unknown_change_sd", &SeasonPrior::unknown_change_sd, sds_mm},
    Entry{"logged_floor", &SeasonPrior::logged_floor, {0.001, 5, "percent"}},
    Entry{"step_sd", &SeasonPrior::step_sd, sds_mm},
    Entry{"step_correlation", &SeasonPrior::step_correlation, {0, 0.999, ""}},
    Entry{"step_probability", &SeasonPrior::step_probability, shares},
    Entry{"step_threshold", &SeasonPrior::step_threshold, shares},
    Entry{"misreading_sd", &SeasonPrior::misreading_sd, sds_mm},
    Entry{"misreading_probability", &SeasonPrior::misreading_probability, shares},
    Entry{"misreading_threshold", &SeasonPrior::misreading_threshold, shares},
    Entry{"relief_level", &SeasonPrior::relief_level, {-2, 2, "mm"}},
    Entry{"relief_level_sd", &SeasonPrior::relief_level_sd, sds_mm},
    Entry{"relief_response_sd", &SeasonPrior::relief_response_sd, {0.0001, 1, "mm per percent"}},
    Entry{"relief_change_sd", &SeasonPrior::relief_change_sd, sds_mm},
};

}  // namespace

SeasonPrior season_prior(std::string_view csv) {
  const CsvTable table("season_prior.csv", csv);
  SeasonPrior prior{};
  std::array<bool, entries.size()> seen{};
  for (const CsvRow& row : table.rows()) {
    const std::string_view name = row.name("name");
    const auto entry = std::find_if(entries.begin(), entries.end(), [&](const Entry& e) { return e.name == name; });
    if (entry == entries.end()) {
      throw Refused(row.where("name") + ": \"" + std::string(name) + "\" is not a value of the season model");
    }
    bool& taken = seen[static_cast<std::size_t>(entry - entries.begin())];
    if (taken) throw Refused(row.where("name") + ": \"" + std::string(name) + "\" comes twice");
    taken = true;
    prior.*(entry->value) = row.number("value", entry->range);
    (void)row.name("source");
  }
  for (std::size_t i = 0; i < seen.size(); ++i) {
    if (!seen[i]) throw Refused("season_prior.csv: " + std::string(entries[i].name) + " is missing");
  }
  return prior;
}

}  // namespace tailblock
