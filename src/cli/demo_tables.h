#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "book/records.h"
#include "cli/demo_findings.h"
#include "cli/demo_truth.h"

namespace tailblock {

/// The invented shop of `tailblock demo`, as the tables of data/demo/ tell it. Rows name each other by key; dates are
/// told relative to the day the demo opens, so that it is always of this year. Everything here is invented.

struct DemoOwner {
  std::string key;
  Owner record;
};

/// A home and, where a hygrometer is kept there, how long its log is.
struct DemoHome {
  struct Log {
    int first_days_ago;
    int last_days_ago;
  };
  struct Gap {
    int from_days_ago;
    int days;
  };
  std::string key;
  Home record;
  std::optional<Log> log;
  std::vector<Gap> gaps;
};

struct DemoInstrument {
  std::string key, owner, home;
  Instrument record;
};

/// When a visit was: so many days ago, or the newest such day of the year and so many years before it.
struct DemoWhen {
  int days_ago = 0;
  unsigned month = 0;  ///< 0: told by days_ago
  unsigned day = 0;
  int years_back = 0;
};

/// Which third of the range of the home's wood moisture a row's words are for.
enum class DemoAir { any, dry, middling, damp };

struct DemoVisit {
  std::string instrument, key;
  DemoWhen when;
  DemoAir air = DemoAir::any;
  std::string kit;
  std::vector<std::string> found, left;  ///< measures read before and after the work
  std::string reason, note;
};

/// How work is written down.
enum class DemoWorkRecord {
  size,   ///< with its size
  done,   ///< that it was done
  hidden  ///< not at all: something gave way before the visit
};

struct DemoWork {
  std::string instrument, visit;
  DemoWorkRecord recorded = DemoWorkRecord::size;
  std::string kind;
  HeightsMoved moved;
  std::string note;
};

/// A reading written down wrong.
struct DemoSlip {
  std::string instrument, visit, measure, typed;
};

/// A crown as it was written down at a visit.
struct DemoFretReading {
  std::string instrument, visit, measure, typed, gauge;
};

struct DemoDecision {
  std::string instrument, visit, choice;
  Length raise_bass, raise_treble;
  std::string reason;
};

/// How readings of one measure are written.
enum class Notation { sixty_fourths, sixty_fourths_and_thousandths, thousandths, millimetres, plain };

/// With what, how finely and in what notation one measure is read.
struct DemoGauge {
  std::string kit, measure, gauge;
  Notation notation = Notation::millimetres;
  double step = 0;     ///< the finest that is read, in the measure's unit
  double hand_sd = 0;  ///< the hand's own error beside the step, in the measure's unit
};

struct DemoTables {
  std::string shop_name;
  int seed = 0;
  int season_visit_least_days_ago = 0;
  int years_lived = 0;
  std::vector<DemoOwner> owners;
  std::vector<DemoHome> homes;
  std::vector<DemoInstrument> instruments;
  std::vector<HiddenNature> natures;
  std::vector<DemoVisit> visits;
  std::vector<DemoWork> work;
  std::vector<DemoSlip> slips;
  std::vector<DemoFretReading> fret_readings;
  std::vector<DemoDecision> decisions;
  std::vector<DemoFinding> findings;
  std::vector<DemoFindingChange> finding_changes;
  std::vector<DemoGauge> gauges;
};

/// Reads the tables; `text` gives the text of a file by its path from the root, `data/demo/owners.csv`.
/// @throws Refused naming the cell: a key that no row has, a row of visit words that leaves a third of the year out,
/// a length that cannot be read.
[[nodiscard]] DemoTables demo_tables(const std::function<std::string_view(std::string_view path)>& text);

}  // namespace tailblock
