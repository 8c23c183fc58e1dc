#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "repair/bench_materials.h"
#include "repair/work_skills.h"

namespace tailblock {

/// In which part of a visit an operation lies.
enum class WorkFamily { arrive, work, finish_up };
inline constexpr std::array<std::string_view, 3> work_family_names{"arrive", "work", "finish_up"};

/// What work does to the air of the room.
enum class WorkAir { clean, dust, vapour, spray, steam };
inline constexpr std::array<std::string_view, 5> work_air_names{"clean", "dust", "vapour", "spray", "steam"};

/// What a collector thinks of it.
enum class ValueEffect { raises, neutral, lowers };
inline constexpr std::array<std::string_view, 3> value_effect_names{"raises", "neutral", "lowers"};

/// What hands-on minutes grow with: minutes = typical (fixed_share + (1 - fixed_share) count/usual).
struct GrowsWith {
  std::string amount;
  double usual = 1;
  double fixed_share = 1;
};

/// A range that may be open on either side.
struct OpenRange {
  std::optional<double> low, high;
};

/// One operation at the bench: data/operations.csv.
struct OperationKind {
  std::string id, name;
  WorkFamily family = WorkFamily::work;
  Spread hands_on;  ///< minutes, for the usual amount
  Spread wait;      ///< minutes by the clock, after it
  std::string wait_for, hands_on_station, wait_station;
  double station_wait = 0;             ///< minutes of the wait that hold wait_station
  bool wait_station_hands_on = false;  ///< and the hands-on work before it holds it too
  std::string skill;                   ///< the sort of work it is; empty: anyone does it
  AllOfAny needs;                      ///< done before, or on record
  AllOfAny after;                      ///< an order only, where both are in the job
  std::vector<std::string> counts_as;
  std::string where, materials;
  std::vector<std::string> adhesives, finishes, hazards;
  WorkAir air = WorkAir::clean;
  bool needs_dust_free = false;
  OpenRange humidity, temperature;     ///< percent and C of the shop
  std::optional<double> greatest_gap;  ///< minutes, to one of greatest_gap_to
  std::vector<std::string> greatest_gap_to;
  std::optional<GrowsWith> grows;
  bool humidity_gate = false;
  bool offered = true;  ///< false: only when asked for
  Reversible reversible = Reversible::yes;
  bool asks_owner = false;
  ValueEffect value = ValueEffect::neutral;
  std::string gentler, caution, source, note;
};

struct OperationTables {
  std::vector<Hazard> hazards;
  std::vector<AdhesiveClass> adhesives;
  std::vector<FinishClass> finishes;
  std::vector<ShopStation> stations;
  std::vector<WorkSkill> skills;
};

/// @throws Refused naming the row: minutes out of order, an id that is in no table, a station or skill that
/// is in no table, a step that asks the owner and does not say what may be done instead.
[[nodiscard]] std::vector<OperationKind> operation_kinds(std::string_view csv, const OperationTables& tables);

/// Hands-on minutes for `count` of what they grow with; as they stand where they grow with nothing.
[[nodiscard]] Spread hands_on_for(const OperationKind& kind, std::optional<double> count);

/// Whether the operation, or one that counts as it, is among `done`.
[[nodiscard]] bool counts_as_done(std::string_view id, const std::vector<OperationKind>& kinds,
                                  const std::vector<std::string>& done);

}  // namespace tailblock
