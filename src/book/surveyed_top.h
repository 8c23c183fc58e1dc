#pragma once

#include <optional>
#include <string>
#include <vector>

#include "body/top_damage.h"
#include "body/top_findings.h"
#include "book/book.h"
#include "models/data_tables.h"

/// What the surveys of an instrument say of its top, as the plate model takes it.
namespace tailblock {

/// What the book holds of an instrument's findings up to a day.
struct TopRecords {
  std::optional<Survey> survey;     ///< of the last visit; absent: it has not been here
  std::vector<FindingStory> ended;  ///< that a visit found repaired or gone
  std::vector<JobStory> jobs;       ///< of all visits
};
[[nodiscard]] TopRecords top_records(const Book& book, const InstrumentStory& story, Date today);

/// A finding that the calculation counts, and where it is drawn.
struct TakenFinding {
  int number = 0;  ///< on its instrument
  TakenAs taken_as = TakenAs::not_modelled;
  std::string words;                 ///< what it is and how it is taken
  std::vector<DrawingPoint> points;  ///< one, a line's from end to end, or an area's round its edge, on the axes of the top
  FindingShape shape = FindingShape::point;
};
void describe(FieldVisitor&, TakenFinding&);

/// The state of a top as its surveys have it.
struct SurveyedTop {
  std::optional<Date> seen_on;        ///< the visit that last saw it
  std::vector<TakenFinding> taken;    ///< in the order of their numbers
  std::vector<std::string> not_used;  ///< a line for each finding of the top that the model cannot take
  std::optional<Date> last_mended;    ///< when a crack or a brace of the top was last mended
  TopDamage damage;
  std::vector<int> crack_numbers;  ///< of damage.cracks, in their order
};
/// Without what the calculation is given.
void describe(FieldVisitor&, SurveyedTop&);

/// What is open on the top on a day: cracks along their drawn line, with the cleats glued across them and old repairs
/// over them; loose and missing braces; a lifted bridge; a worn bridge plate; places where the top was found thin. A
/// repair finished since, or a later visit's word, takes a finding away; grown readings replace the first ones.
[[nodiscard]] SurveyedTop surveyed_top(const TopRecords& records, const TopDesign& design, const DataTables& tables);

/// The same top with everything mended: the same lines in its mesh, so that both can be held against each other.
[[nodiscard]] TopDamage mended(const TopDamage& damage);

}  // namespace tailblock
