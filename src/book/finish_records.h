#pragma once

#include <array>
#include <string>
#include <vector>

#include "book/finding_records.h"
#include "book/records.h"

namespace tailblock {

/// What a trial tries.
enum class TrialKind { tint, burst, stain, clear };
inline constexpr std::array<std::string_view, 4> trial_kind_names{"tint", "burst", "stain", "clear"};

/// What becomes of it.
enum class TrialVerdict { not_yet, keep, sand_off };
inline constexpr std::array<std::string_view, 3> trial_verdict_names{"not_yet", "keep", "sand_off"};

/// A colour tried on an offcut, a panel or a hidden place, so that the mix can be made again. Never overwritten: how it
/// dried is a new record whose `supersedes` names the old one; one entered by mistake is superseded by one `withdrawn`.
struct FinishTrial {
  RecordId id = 0;
  RecordId visit_id = 0;
  TrialKind kind = TrialKind::tint;
  std::string aim{};          ///< what it is to match, and where: "the amber of the lower bout"
  std::string carrier{};      ///< what the colour is in: an id in data/finishes.csv, or plain words
  std::string mix{};          ///< colours and how much of each
  std::string dilution{};     ///< with what, how far
  std::string substrate{};    ///< what it was put on, and what lies under it
  std::string application{};  ///< how, and how many passes
  std::string result{};       ///< dry, and in which light
  TrialVerdict verdict = TrialVerdict::not_yet;
  std::vector<FindingPhoto> photos{};
  Date day{};
  std::string who{};
  bool withdrawn = false;
  RecordId supersedes = 0;
  RecordId superseded_by = 0;
  std::string note{};
};
void describe(FieldVisitor&, FinishTrial&);

/// A trial as it stands, with what was said of it before.
struct FinishTrialStory {
  FinishTrial trial{};
  RecordId instrument_id = 0;
  std::string instrument{};            ///< its name
  std::vector<FinishTrial> earlier{};  ///< what it supersedes, newest first
};
void describe(FieldVisitor&, FinishTrialStory&);

/// Which trials to list.
struct FinishTrialQuery {
  RecordId instrument_id = 0;             ///< 0: of any
  std::string search{};                   ///< words; each must begin a word of the trial or of its instrument's name
  std::optional<TrialVerdict> verdict{};  ///< absent: any
  int page = 0;                           ///< 0-based
  int per_page = 20;                      ///< 1..200
};

struct FinishTrialPage {
  std::vector<FinishTrialStory> trials;  ///< those that stand, the newest first
  int page = 0;
  bool more = false;
  int total = 0;
};
void describe(FieldVisitor&, FinishTrialPage&);

/// A photo of a visit as a whole: the instrument as it came, its case. Of one photo the latest word stands.
struct VisitPhoto {
  RecordId id = 0;
  RecordId visit_id = 0;
  RecordId photo_id = 0;
  std::string words{};    ///< what it shows
  bool left_out = false;  ///< it is shown no longer; the book keeps it
};
void describe(FieldVisitor&, VisitPhoto&);

/// How many photos a visit shows at once.
inline constexpr int most_visit_photos = 60;

}  // namespace tailblock
