#pragma once

#include <optional>
#include <string>
#include <vector>

#include "air/home.h"
#include "body/plate.h"

namespace tailblock {

struct CrackFigures;
struct PreparedTop;
struct SeasonPrior;

/// A top and the air it lives in. Exactly one of `home`, `relative_humidity` and `moisture_percent` is given.
struct CrackRiskRequest {
  WhichTop top;
  TopDamage damage;  ///< cracks here are asked whether they run on
  std::optional<HomeAir> home{};
  std::optional<Date> first{};              ///< the first of 365 days in the home
  std::vector<double> relative_humidity{};  ///< daily means of the room, 0..1
  Temperature temperature = celsius(20);    ///< with `relative_humidity` or `moisture_percent`
  std::vector<double> moisture_percent{};   ///< of the wood itself, daily
  Days lag = days(9);                       ///< in which the wood follows the room; not used with `moisture_percent`
  RelativeHumidity built_at = humidity_fraction(0.45);  ///< the air in which top and braces were glued
  int years_lived = 10;                                 ///< in these same days, uncracked, before them; 0 for a new top
  std::optional<RelativeHumidity> lowest_survived{};    ///< a drier week that it is known to have lived through
};
void describe(FieldVisitor&, CrackRiskRequest&);

/// The chance when the driest week comes to this humidity.
struct ChanceAt {
  double lowest_week_relative_humidity = 0;
  double chance = 0;
  double chance_low = 0, chance_high = 0;  ///< as the wood relaxes much or little (90 %)
};
void describe(FieldVisitor&, ChanceAt&);

/// A crack that is there already.
struct CrackThatIsThere {
  Length length;
  Length longest_free;  ///< between cleats, glued braces, bridge and bridge plate
  Length opens;         ///< in the driest week, at the middle of that
  double chance_runs_on = 0;
  std::string sentence;
};
void describe(FieldVisitor&, CrackThatIsThere&);

struct CrackRiskResult {
  double lowest_week_relative_humidity = 0;  ///< mean of the driest seven days, in the room
  double lowest_week_moisture_percent = 0;   ///< of the wood
  ChanceAt here;                             ///< a new crack in these days
  double chance_if_nothing_relaxed = 0;
  std::vector<ChanceAt> curve;                     ///< by rising humidity
  std::optional<double> keep_relative_humidity{};  ///< the lowest that keeps the chance acceptable; absent: none does
  double stress_per_percent_mpa = 0;  ///< across the grain, one percent lost at once; 95 % of the top stays below
  double highest_week_stress_mpa = 0;
  double highest_week_stress_if_nothing_relaxed_mpa = 0;
  double held_strength_mpa = 0;  ///< median, held for a week
  std::vector<CrackThatIsThere> cracks;
  std::string verdict;
  std::vector<std::string> assumptions;
  std::vector<std::string> cautions;  ///< where the model cannot tell
};
void describe(FieldVisitor&, CrackRiskResult&);

struct CrackTables {
  PlateTables plate;
  const SeasonPrior* season;
  const CrackFigures* figures;
};

/// The chance that a braced top cracks along its grain in a year of this air, and the humidity to keep.
///
///     stress = S q(t)        S the plate model's stress across the grain for one percent, q of RelaxingStress
///     chance = P(highest weekly stress > strength | it held in the years before)
///
/// Strength across the grain is log-normal about the table's, reduced for a week's hold; what is not known of stress
/// and relaxation is in the chance. Years lived are a proof: only what has weakened since, or a drier week, breaks a
/// top that held. A crack that is there is judged by fracture toughness over its longest free stretch. Left out: drying
/// of one face before the other, the strings' own stress, blows, hidden checks, bad joints. docs/models/crack-risk.md.
/// @throws Refused unless exactly one history is given, naming a top whose strength across the grain is not known.
[[nodiscard]] CrackRiskResult crack_risk(const CrackRiskRequest& request, const CrackTables& tables);

/// The plate that has to be calculated for it: the same top without its cracks.
[[nodiscard]] PlateRequest plate_for_cracks(const CrackRiskRequest& request);

/// The same on a top that is at hand.
[[nodiscard]] CrackRiskResult crack_risk(const CrackRiskRequest& request, const PreparedTop& sound,
                                         const CrackTables& tables);

}  // namespace tailblock
