#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "repair/finding_kinds.h"

namespace tailblock {

/// Something that can be measured on an instrument or its air, a row of data/measures.csv. Values are in `unit`.
struct Measure {
  std::string id;
  std::string name;
  std::string unit;                             ///< mm, deg, percent, C, g or cent
  std::string where;                            ///< from what to what, in a few words
  std::string how;                              ///< with what, in which state
  std::optional<double> usual_low, usual_high;  ///< outside: the page asks before it is kept
  double hard_low = 0, hard_high = 0;           ///< outside: refused
  std::string gauge;                            ///< the id of the gauge it is usually read with
  std::string source;
  std::string note;
};

/// Something to measure with, a row of data/gauges.csv.
struct Gauge {
  std::string id;
  std::string name;
  std::string unit;
  double sd = 0;  ///< one standard deviation of a reading with it, in `unit`
  std::string source;
  std::string note;
};

/// A kind of work that moves the strings, or may: a row of data/interventions.csv.
struct InterventionKind {
  std::string id;
  std::string name;
  bool always_moves = true;   ///< false: it may leave the strings where they were
  bool moves_relief = true;   ///< it may leave the neck with another relief
  bool moves_bridge = false;  ///< it may leave the bridge at another height over the rim
  std::string size_known_by;  ///< how the repairer knows by how much at fret 12, in words
  double change_sd_mm = 0;    ///< one standard deviation of a size so known
  std::string source;
  std::string note;
};

/// `file` is what refusals call it.
[[nodiscard]] std::vector<Measure> measures_from_csv(std::string_view csv, const std::string& file = "measures.csv");
[[nodiscard]] std::vector<Gauge> gauges_from_csv(std::string_view csv);
[[nodiscard]] std::vector<InterventionKind> interventions_from_csv(std::string_view csv);

/// What the book knows of the trade: the readings it takes, and what they are taken with.
struct TradeTables {
  std::vector<Measure> measures;
  std::vector<Gauge> gauges;
  std::vector<InterventionKind> interventions;
  std::vector<FindingKind> findings;
  std::vector<Measure> finding_measures;  ///< what is read at one finding

  /// The row with this id; null when there is none. A measure read at frets is found by the id of one reading of it,
  /// `fret_crown@7b` (book/fret_place.h), and not without its fret.
  [[nodiscard]] const Measure* measure(std::string_view id) const;
  [[nodiscard]] const Gauge* gauge(std::string_view id) const;
  [[nodiscard]] const InterventionKind* intervention(std::string_view id) const;
  [[nodiscard]] const FindingKind* finding(std::string_view name) const { return finding_kind(findings, name); }
  [[nodiscard]] const Measure* finding_measure(std::string_view id) const;
};

/// The texts of data/measures.csv, data/gauges.csv, data/interventions.csv and data/finding_measures.csv. A book that
/// takes no findings needs no table of what is read at one.
struct TradeTexts {
  std::string_view measures, gauges, interventions;
  std::string_view finding_measures = {};
};

/// @throws Refused naming the cell, an id that comes twice, or a measure whose gauge does not exist or has another
/// unit; a finding that asks for a measure that does not exist.
[[nodiscard]] TradeTables trade_tables(const TradeTexts& texts, std::vector<FindingKind> findings = {});

}  // namespace tailblock
