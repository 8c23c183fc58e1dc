#pragma once

#include <optional>
#include <string>
#include <vector>

#include "book/records.h"
#include "models/data_tables.h"
#include "models/envelope_memo.h"
#include "setup/fret_dress.h"

namespace tailblock {

/// What the repairer wants otherwise than the records say, when asking for the frets.
struct FretWishes {
  std::optional<Date> today{};
  std::optional<Length> wanted_bass{}, wanted_treble{};
  std::optional<Length> least_crown{}, margin{}, fall_away{};
  std::optional<int> fall_away_from{};
  /// As they are being typed; instead of those kept. Empty: those kept.
  std::vector<FretReading> readings{};
};
void describe(FieldVisitor&, FretWishes&);

struct FretAnswer {
  std::optional<Date> read_on{};            ///< the visit whose readings these are; absent when they were sent along
  std::vector<FretReading> readings{};      ///< what the answer rests on
  std::optional<FretDressResult> result{};  ///< absent while no crown has been read
  Length relief{};
  Length scale_length{};
  int body_joint_fret = 14;
  int fret_count = 20;
  std::vector<std::string> assumed{};
};
void describe(FieldVisitor&, FretAnswer&);

/// Which crowns of an instrument in the book come down, by how little and why; or why none does. What counts are the
/// readings since the frets were last levelled or renewed, or since a visit that read most of them; a fret read again
/// replaces what was read before.
[[nodiscard]] FretAnswer fret_answer(const InstrumentStory& story, const DataTables& tables, EnvelopeMemo& memo,
                                     const FretWishes& wishes, Date today);

}  // namespace tailblock
