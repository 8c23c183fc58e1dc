#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "body/instrument_drawing.h"
#include "book/records.h"
#include "repair/finding_kinds.h"

namespace tailblock {

/// One length read at a finding. What was typed is kept beside what it means.
struct FindingExtent {
  std::string measure{};  ///< an id in data/finding_measures.csv: crack_width, bridge_lift_depth
  std::string typed{};    ///< as entered: ".004", "2 mm"
  Length value{};
};
void describe(FieldVisitor&, FindingExtent&);

struct FindingPhoto {
  RecordId photo_id = 0;
};
void describe(FieldVisitor&, FindingPhoto&);

enum class Opening { not_said, tight, open };
inline constexpr std::array<std::string_view, 3> opening_names{"not_said", "tight", "open"};
enum class Moving { not_said, still, moves };
inline constexpr std::array<std::string_view, 3> moving_names{"not_said", "still", "moves"};
enum class Severity { slight, moderate, serious };
inline constexpr std::array<std::string_view, 3> severity_names{"slight", "moderate", "serious"};
enum class Certainty { suspected, likely, sure };
inline constexpr std::array<std::string_view, 3> certainty_names{"suspected", "likely", "sure"};

/// One thing found on an instrument, on a view of its drawing. Never overwritten: a correction is a new finding whose
/// `supersedes` names the old one; one that was no finding at all is superseded by one that is `withdrawn`.
struct Finding {
  RecordId id = 0;
  RecordId visit_id = 0;
  std::string kind{};  ///< a name in data/finding_kinds.csv
  DrawingView view = DrawingView::front;
  FindingShape shape = FindingShape::point;
  std::vector<DrawingPoint> points{};  ///< one; a line's from end to end; an area's round its edge. On the view's axes
  std::string place{};                 ///< in words: "lower bout, bass side"
  std::string part{};                  ///< the drawn part it is of, where it is of one: "lower tone bar", "fret 3"
  std::optional<Length> part_from{};   ///< along that part from its first end
  std::optional<Length> part_to{};
  Opening opening = Opening::not_said;
  Moving moving = Moving::not_said;
  Severity severity = Severity::moderate;
  Certainty certainty = Certainty::sure;
  std::vector<FindingExtent> extents{};
  std::vector<FindingPhoto> photos{};
  bool withdrawn = false;
  RecordId supersedes = 0;
  RecordId superseded_by = 0;
  std::string note{};
};
void describe(FieldVisitor&, Finding&);

enum class FindingState { unchanged, grown, repaired, gone };
inline constexpr std::array<std::string_view, 4> finding_state_names{"unchanged", "grown", "repaired", "gone"};

/// What a later visit says of an earlier finding, and what was read at it then.
struct FindingChange {
  RecordId id = 0;
  RecordId visit_id = 0;
  RecordId finding_id = 0;
  FindingState state = FindingState::unchanged;
  std::vector<FindingExtent> extents{};
  std::vector<FindingPhoto> photos{};
  RecordId supersedes = 0;
  RecordId superseded_by = 0;
  std::string note{};
};
void describe(FieldVisitor&, FindingChange&);

/// A photo in the book. Its pictures are asked for by themselves.
struct KeptPhoto {
  RecordId id = 0;
  std::string sha256{};  ///< of the whole picture's bytes
  int width_px = 0, height_px = 0;
};
void describe(FieldVisitor&, KeptPhoto&);

/// A change with the day of the visit that says it.
struct DatedChange {
  Date date{};
  FindingChange change{};
};
void describe(FieldVisitor&, DatedChange&);

/// A finding as it stands at one visit: its last correction, and what visits since have said of it.
struct FindingStory {
  int number = 0;  ///< on its instrument, from 1; a correction keeps the number of what it corrects
  Date found_on{};
  Finding finding{};
  std::vector<DatedChange> changes{};  ///< oldest first, without the superseded ones
  bool open = true;                    ///< neither repaired nor gone
};
void describe(FieldVisitor&, FindingStory&);

/// What one visit has to look at: what it found itself, and what earlier visits found that was still open when it
/// began.
struct Survey {
  RecordId visit_id = 0;
  RecordId instrument_id = 0;
  Date date{};
  std::optional<Date> visit_before{};        ///< the day of the instrument's visit before
  std::vector<FindingStory> found_now{};     ///< at this visit, as they stand
  std::vector<FindingStory> found_before{};  ///< open when this visit began; its own word is the last change of each
  std::vector<Finding> superseded{};         ///< what this visit's corrections replaced, or withdrew, oldest first
  std::vector<std::string> what_changed{};   ///< since the visits before, a sentence each, the gravest first
};
void describe(FieldVisitor&, Survey&);

}  // namespace tailblock
