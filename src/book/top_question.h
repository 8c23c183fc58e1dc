#pragma once

#include <optional>
#include <string>
#include <vector>

#include "body/top_view.h"
#include "book/records.h"
#include "book/surveyed_top.h"
#include "models/data_tables.h"
#include "models/plate_memo.h"

namespace tailblock {

/// What is looked at on a top: its air, and what is otherwise than the records say.
struct TopWishes {
  std::optional<Date> today{};
  std::optional<std::string> bracing{};                 ///< a pattern of data/top_braces.csv, nearest to this top's own
  std::optional<RelativeHumidity> relative_humidity{};  ///< the wood settled in this air; absent: its driest month
  std::optional<Length> thickness{};                    ///< of the top, sanded or another
  std::optional<std::string> string_set{}, tuning{};
  std::vector<LooseBrace> loose_braces{};
  double bridge_plate_worn = 0;
  Length bridge_lifted{};
  bool mended = false;  ///< without what the surveys found
};
void describe(FieldVisitor&, TopWishes&);

/// The air that the wood is looked at in, and the air it is compared with: the mean of its home's typical year.
struct TopAir {
  double settled_humidity = 0, settled_moisture_percent = 0;
  double humidity = 0, moisture_percent = 0;
  double driest_month_humidity = 0, dampest_month_humidity = 0;  ///< of its home
};
void describe(FieldVisitor&, TopAir&);

/// A top as the book knows it, and as it would be with what is wished otherwise, in the same air.
struct TopAnswer {
  std::vector<std::string> patterns{};  ///< of bracing, that can be asked for
  std::string pattern{};                ///< the one taken; empty: none is recorded, and nothing was calculated
  TopAir air{};
  Length thickness{};                  ///< as the book knows it
  Force pull{}, pull_changed{};        ///< of the strings
  Length string_height_over_top{};     ///< at the saddle
  SurveyedTop survey{};                ///< what was found on it and how it is taken
  std::optional<TopShape> shape{};     ///< absent without a pattern
  std::optional<TopState> recorded{};  ///< absent without a pattern
  std::optional<TopState> changed{};   ///< absent while nothing is wished otherwise
  std::string tilt_verdict{};          ///< the bridge's tilt as read, against what such a top comes to; empty: not read
  std::vector<std::string> assumed{};
};
void describe(FieldVisitor&, TopAnswer&);

/// The top of an instrument as its records have it, and as usual for its size where they say nothing, which is added to
/// `said`. Absent where its bracing is recorded as none of those known.
[[nodiscard]] std::optional<WhichTop> known_top(const InstrumentStory& story, const DataTables& tables, Date today,
                                                std::vector<std::string>& said);

/// How the top of an instrument in the book stands under its strings and in an air, and what a change does to it.
/// Outline, bridge and string height are as it was measured, thickness and damage as last found; the rest is usual for
/// its body size. Both states lie on one mesh, so that they differ place by place.
/// @throws Refused as the plate model does.
[[nodiscard]] TopAnswer top_answer(const InstrumentStory& story, const TopRecords& records, const DataTables& tables,
                                   PlateMemo& memo, const TopWishes& wishes, Date today);

}  // namespace tailblock
