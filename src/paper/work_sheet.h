#pragma once

#include <optional>

#include "paper/letterhead.h"

namespace tailblock {

/// The owner's yes to what cannot be undone, as it was recorded.
struct RecordedYes {
  std::string by, how;
  Date day;
};
void describe(FieldVisitor&, RecordedYes&);

/// What can hurt at a step. Its text stands on the sheet once, under a letter that each step names.
struct WorkHazard {
  std::string name, text;
};
void describe(FieldVisitor&, WorkHazard&);

struct WorkStep {
  std::string what;
  std::string how{};
  int minutes = 0;  ///< of hands-on work
  std::string glue{}, clamps{};
  std::string wait{};   ///< `16 h in clamps, then 3 days to full strength`
  std::string air{};    ///< what the air must be
  std::string check{};  ///< what to measure before going on
  std::vector<std::string> cautions{};
  std::vector<WorkHazard> hazards{};
  bool cannot_be_undone = false;
  std::optional<RecordedYes> yes{};
  bool done = false;
};
void describe(FieldVisitor&, WorkStep&);

/// The bench's own paper: what to do next, with what is needed to do it safely beside each step. A step that is done again
/// names its hazards again, and leaves its other words to the first time; of a finished one only the name stands.
struct WorkSheet {
  PaperHead head;
  std::string instrument, owner{};
  std::string place{};  ///< rack, case number
  std::optional<Date> promised{};
  std::string before_all{};  ///< the humidity gate, the strings' state
  std::vector<std::string> get_ready{};
  std::vector<WorkStep> steps{};
  std::vector<std::string> remarks{};
};
void describe(FieldVisitor&, WorkSheet&);

/// A step that cannot be undone and has no recorded yes says STOP.
/// @throws Refused naming what is out of range, or empty and must not be.
[[nodiscard]] Document work_sheet(const WorkSheet& sheet);

}  // namespace tailblock
