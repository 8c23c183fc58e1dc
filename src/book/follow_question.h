#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "book/questions.h"

namespace tailblock {

/// How a reading fell against what was foretold for its day.
enum class Foretold { as_foretold, lower, higher };
inline constexpr std::array<std::string_view, 3> foretold_names{"as_foretold", "lower", "higher"};

/// One side's action at fret 12: what the visits before foretold for this visit's day, and what was read.
struct ForetoldHeight {
  std::string measure;  ///< action12_bass or action12_treble
  Estimate foretold_mm;
  Length read;
  Length gauge_sd;
  double off_sd = 0;  ///< read less foretold, in standard deviations of both together
  Foretold fell = Foretold::as_foretold;
};
void describe(FieldVisitor&, ForetoldHeight&);

struct FollowAnswer {
  std::vector<ForetoldHeight> heights;  ///< as found at this visit; empty where nothing could be foretold
  int visits_before = 0;
  Date last_visit{};  ///< the last of those with a reading at fret 12
  std::string verdict;
};
void describe(FieldVisitor&, FollowAnswer&);

/// What was foretold for the day of a visit by the season model from the visits before it alone, against what was read
/// as found.
///
///     off = (read - median)/sqrt(s^2 + g^2),   s = (q95 - q5)/(2 x 1.6449),  g the gauge's standard deviation
///
/// As foretold where |off| is up to 1.6449: one in ten of readings that follow the model falls outside. The foretold
/// distribution is taken as normal, which its mixture nearly is.
/// Source: derived here.
[[nodiscard]] FollowAnswer follow_answer(const InstrumentStory& story, RecordId visit, std::vector<LoggedDay> log,
                                         const DataTables& tables);

}  // namespace tailblock
