#include "strings/clearance.h"

#include <algorithm>
#include <limits>

#include "quantity/csv_table.h"
#include "strings/note_geometry.h"

namespace tailblock {
namespace {

NoteClearance note_clearance(const Geometry& g, const Note& note, const UnitEnvelope& envelope, double saddle_y) {
  NoteClearance result{.string = envelope.string, .stopped_fret = envelope.stopped_fret};
  result.ratio = std::numeric_limits<double>::infinity();
  const double slope = (saddle_y - note.start_y) / (note.saddle_x - note.start_x);
  for (std::size_t i = 0; i < envelope.away.size(); ++i) {
    const auto n = static_cast<std::size_t>(envelope.stopped_fret) + 1 + i;
    const double gap = note.start_y + slope * (g.fret_x[n] - note.start_x) - g.crown[n];
    const bool away = envelope.away[i] >= envelope.toward[i];
    const double reach = note.amplitude * (away ? envelope.away[i] : envelope.toward[i]);
    if (gap >= result.ratio * reach) continue;
    result.ratio = gap / reach;
    result.margin = Length::from_base(gap - reach);
    result.limiting_fret = static_cast<int>(n);
    result.away = away;
  }
  return result;
}

std::string fret_name(int stopped) { return stopped == 0 ? "open" : "at fret " + std::to_string(stopped); }

std::string sentence(const ClearanceResult& result) {
  const NoteClearance& worst = result.notes[static_cast<std::size_t>(result.worst_note)];
  const std::string where = "string " + std::to_string(worst.string) + " " + fret_name(worst.stopped_fret) +
                            ", over fret " + std::to_string(worst.limiting_fret);
  if (result.touching > 0) {
    return std::to_string(result.touching) + " of " + std::to_string(result.notes.size()) +
           " notes touch a fret at this attack; the worst is " + where + ".";
  }
  if (result.doubtful > 0) {
    return "No note touches, but " + std::to_string(result.doubtful) + " of " + std::to_string(result.notes.size()) +
           " come too near to call; the nearest is " + where + ".";
  }
  return "Every note is clear at this attack; the nearest is " + where + ".";
}

}  // namespace

ClearanceVerdict clearance_verdict(double ratio, const ClearanceVerdicts& limits) {
  if (ratio < limits.touches_below_ratio) return ClearanceVerdict::touches;
  return ratio < limits.clear_from_ratio ? ClearanceVerdict::doubtful : ClearanceVerdict::clear;
}

ClearanceVerdicts clearance_verdicts(std::string_view csv) {
  const CsvTable table("clearance_verdicts.csv", csv);
  ClearanceVerdicts limits;
  for (const CsvRow& row : table.rows()) {
    (void)row.name("source");
    const std::string_view limit = row.name("limit");
    const double ratio = row.number("ratio", {0.5, 3, ""});
    if (limit == "touches_below") {
      limits.touches_below_ratio = ratio;
      limits.touches_because = row.name("reason");
    } else if (limit == "clear_from") {
      limits.clear_from_ratio = ratio;
      limits.clear_because = row.name("reason");
    } else {
      throw Refused(row.where("limit") + ": \"" + std::string(limit) + "\" is not touches_below or clear_from");
    }
  }
  if (!(0 < limits.touches_below_ratio && limits.touches_below_ratio <= limits.clear_from_ratio)) {
    throw Refused("clearance_verdicts.csv: needs touches_below and, no lower, clear_from");
  }
  return limits;
}

EnvelopeRequest envelope_request(const ClearanceRequest& request) {
  require_valid(request);
  const NeckLine& neck = request.neck;
  EnvelopeRequest envelope{.scale_length = neck.scale_length,
                           .fret_count = neck.fret_count,
                           .strings = {},
                           .pluck_from_saddle = request.attack.pluck_from_saddle,
                           .pluck_width = request.attack.pluck_width};
  for (std::size_t i = 0; i < request.strings.size(); ++i) {
    const double share = share_from_treble(neck, static_cast<int>(i) + 1);
    MovingString string;
    string.setback = neck.setback_treble + share * (neck.setback_bass - neck.setback_treble);
    string.kg_per_metre = mass_per_metre(request.strings[i]);
    string.tension = tension({.speaking_length = neck.scale_length + string.setback,
                              .kg_per_metre = string.kg_per_metre,
                              .pitch_hz = request.strings[i].pitch_hz});
    string.bending_stiffness_n_m2 = bending_stiffness_n_m2(request.strings[i]);
    envelope.strings.push_back(string);
  }
  return envelope;
}

ClearanceResult clearance(const ClearanceRequest& request, const UnitEnvelopes& envelopes,
                          const ClearanceVerdicts& limits) {
  require_valid(request);
  require_matching(request, envelopes);
  const Geometry g = geometry(request.neck, request.action);
  ClearanceResult result;
  result.notes.reserve(envelopes.notes.size());
  for (const UnitEnvelope& envelope : envelopes.notes) {
    const Note note = note_of(g, request.attack, envelope.string, envelope.stopped_fret);
    const StringEnds& ends = g.ends[static_cast<std::size_t>(envelope.string - 1)];
    NoteClearance clear = note_clearance(g, note, envelope, ends.saddle_over_frets.in_base());
    clear.verdict = clearance_verdict(clear.ratio, limits);
    result.clear += clear.verdict == ClearanceVerdict::clear;
    result.doubtful += clear.verdict == ClearanceVerdict::doubtful;
    result.touching += clear.verdict == ClearanceVerdict::touches;
    result.notes.push_back(clear);
  }
  const auto worst = std::min_element(result.notes.begin(), result.notes.end(),
                                      [](const auto& a, const auto& b) { return a.ratio < b.ratio; });
  result.worst_note = static_cast<int>(worst - result.notes.begin());
  result.verdict = sentence(result);
  return result;
}

ClearanceResult clearance(const ClearanceRequest& request, const ClearanceVerdicts& limits) {
  return clearance(request, unit_envelopes(envelope_request(request)), limits);
}

}  // namespace tailblock
