#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "quantity/fields.h"
#include "repair/known_readings.h"
#include "repair/repair_figures.h"

/// What the questions of this room are given: readings, answers, and what a person has said yes to.
namespace tailblock {

/// One reading, in the unit its table gives it.
struct GivenReading {
  std::string measure;
  double value = 0;
  std::optional<double> sd;       ///< one standard deviation; absent: that of the usual gauge
  std::optional<double> earlier;  ///< in the first or last trusted set
  std::optional<double> earlier_sd;
};
void describe(FieldVisitor&, GivenReading&);

/// That work goes on although the guitar is out of its range.
struct GateOverride {
  std::string by;
  Date on{};
  std::string why;
};
void describe(FieldVisitor&, GateOverride&);

/// A reading with its repeatability, in its unit.
struct KnownValue {
  double value = 0;
  double sd = 0;
};

/// The readings of a request, looked up by what they are.
class ReadValues {
 public:
  /// @throws Refused naming the reading that no table knows, that comes twice or that no gauge could show.
  ReadValues(const std::vector<GivenReading>& given, const std::vector<KnownReading>& known);
  [[nodiscard]] std::optional<KnownValue> now(std::string_view measure) const;
  /// Now less then, with both repeatabilities.
  [[nodiscard]] std::optional<KnownValue> change(std::string_view measure) const;

 private:
  [[nodiscard]] const GivenReading* find(std::string_view measure) const;
  std::vector<GivenReading> given_;
  const std::vector<KnownReading>* known_;
};

/// Whether neck, fret, saddle and crack-gluing work may go on.
enum class GateState { open, near_limit, dry, damp, not_read };

inline constexpr std::string_view gate_measure = "body_humidity";

/// The gate that the humidity in the body keeps.
struct HumidityGate {
  GateState state = GateState::not_read;
  bool holds = false;  ///< gated work waits
  std::string words;
  std::string overridden;  ///< by whom, when and why; empty: it is not
};
void describe(FieldVisitor&, HumidityGate&);

/// Closed outside gate_humidity_low..high, and where the humidity was not read. Inside but nearer the limit than the
/// hygrometer's own error it is open, and says so.
[[nodiscard]] HumidityGate humidity_gate(const std::optional<KnownValue>& body_humidity,
                                         const std::optional<GateOverride>& override_by, const RepairFigures& figures);

}  // namespace tailblock
