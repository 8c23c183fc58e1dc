#include "strings/intonation.h"

#include <algorithm>
#include <cmath>

#include "quantity/trade_notation.h"

namespace tailblock {
namespace {

struct Firmness {
  double low, best, high;
};

/// What one string is asked with.
struct Asked {
  const IntonationRequest& request;
  const IntonationLimits& limits;
  const StoppedString& string;
  Finger finger;
};

void require_matching(const IntonationRequest& request) {
  const auto strings = static_cast<std::size_t>(request.neck.string_count);
  const std::string has = " items, the neck has " + std::to_string(strings) + " strings";
  if (request.strings.size() != strings) throw Refused("strings: " + std::to_string(request.strings.size()) + has);
  if (!request.setbacks_mm.empty() && request.setbacks_mm.size() != strings) {
    throw Refused("setbacks_mm: " + std::to_string(request.setbacks_mm.size()) + has);
  }
  if (request.last_fret > request.neck.fret_count) {
    throw Refused("last_fret: " + std::to_string(request.last_fret) + " is outside 2.." +
                  std::to_string(request.neck.fret_count));
  }
  std::vector<bool> read(strings, false);
  for (std::size_t i = 0; i < request.octave_errors.size(); ++i) {
    const std::string path = "octave_errors[" + std::to_string(i) + "].string";
    const int string = request.octave_errors[i].string;
    require_within(path, string, {1, static_cast<double>(strings), ""});
    const auto index = static_cast<std::size_t>(string - 1);
    if (read[index]) throw Refused(path + ": string " + std::to_string(string) + " comes twice");
    read[index] = true;
  }
}

const OctaveError* octave_error_of(const IntonationRequest& request, int string) {
  for (const OctaveError& error : request.octave_errors) {
    if (error.string == string) return &error;
  }
  return nullptr;
}

Firmness firmness(const Asked& asked, const OctaveError* read, Length setback) {
  const IntonationLimits& limits = asked.limits;
  if (read == nullptr) {
    return {limits.firm_ends_least, (limits.firm_ends_least + limits.firm_ends_most) / 2, limits.firm_ends_most};
  }
  const auto at = [&](double cents) { return firmness_of(asked.string, setback, cents, asked.finger); };
  const double off = limits.spreads * read->sd_cents;
  return {at(read->cents - off), at(read->cents), at(read->cents + off)};
}

std::vector<double> cents_of(const Asked& asked, Length setback, double firm_ends) {
  std::vector<double> cents;
  for (int fret = 1; fret <= asked.request.neck.fret_count; ++fret) {
    cents.push_back(cents_sharp(asked.string, fret, {.setback = setback}, {firm_ends, firm_ends}, asked.finger));
  }
  return cents;
}

void take_wanted(const Asked& asked, const OctaveError* read, const Firmness& firm, StringIntonation& result) {
  const auto setback = [&](double firm_ends) {
    return octave_setback(asked.string, {.ends = {firm_ends, firm_ends}, .finger = asked.finger});
  };
  StoppedString flexible = asked.string;
  flexible.bending_n_m2 = 0;
  result.wanted_for_stretch = octave_setback(flexible, {.finger = asked.finger});
  result.wanted = setback(firm.best);
  if (read == nullptr) {
    result.wanted_low = setback(firm.low);
    result.wanted_high = setback(firm.high);
    return;
  }
  const Length by_tuner = mm(read->sd_cents / std::abs(result.cents_per_mm));
  const double sd_mm = std::hypot(in_mm(by_tuner), in_mm(asked.request.setback_sd));
  result.wanted_low = result.wanted - mm(asked.limits.spreads * sd_mm);
  result.wanted_high = result.wanted + mm(asked.limits.spreads * sd_mm);
}

StringIntonation string_intonation(const Asked& asked, int number, Length setback) {
  StringIntonation result;
  result.string = number;
  result.setback = setback;
  result.setback_a_firm_end = Length::from_base(std::sqrt(asked.string.bending_n_m2 / asked.string.pull_n));
  const OctaveError* read = octave_error_of(asked.request, number);
  if (read != nullptr) result.octave_error_cents = read->cents;
  const Firmness firm = firmness(asked, read, setback);
  result.firm_ends_low = firm.low;
  result.firm_ends = firm.best;
  result.firm_ends_high = firm.high;
  result.believable = firm.low <= asked.limits.firm_ends_most && firm.high >= asked.limits.firm_ends_least;
  const Stopping stopping{.ends = {firm.best, firm.best}, .finger = asked.finger, .last_fret = asked.request.last_fret};
  result.cents_per_mm = cents_per_mm_of_setback(asked.string, setback, stopping);
  take_wanted(asked, read, firm, result);

  StoppedString flexible = asked.string;
  flexible.bending_n_m2 = 0;
  result.stretch_cents = cents_of({asked.request, asked.limits, flexible, asked.finger}, setback, 0);
  result.low_cents = cents_of(asked, setback, firm.low);
  result.high_cents = cents_of(asked, setback, firm.high);
  result.after_low_cents = cents_of(asked, result.wanted, firm.low);
  result.after_cents = cents_of(asked, result.wanted, firm.best);
  result.after_high_cents = cents_of(asked, result.wanted, firm.high);

  const BothEnds both = nut_and_saddle(asked.string, stopping);
  result.both_setback = both.place.setback;
  result.both_nut_shift = both.place.nut_shift;
  result.both_rms_cents = both.rms_cents;
  result.both_worst_cents = both.worst_cents;
  result.finger_force_1 = least_finger_force(asked.string, 1, setback);
  result.finger_force_12 = least_finger_force(asked.string, 12, setback);
  return result;
}

std::string cents_in_words(double cents) {
  return plain_number(std::round(std::abs(cents) * 10) / 10) + " cents " + (cents < 0 ? "flat" : "sharp");
}

std::string wanted_in_words(const StringIntonation& string) {
  const auto shown = [](Length length) { return as_trade(length).millimetres; };
  if (string.octave_error_cents) return "about " + shown(string.wanted);
  return shown(string.wanted_low) + " to " + shown(string.wanted_high);
}

std::string verdict(const IntonationResult& result, const IntonationLimits& limits) {
  bool all_read_in_tune = true;
  for (const StringIntonation& string : result.strings) {
    if (!string.believable) {
      return "String " + std::to_string(string.string) + " reads " + cents_in_words(*string.octave_error_cents) +
             " at fret 12, which no saddle end explains: look at the string, the fret and where the crest was read "
             "first.";
    }
    all_read_in_tune =
        all_read_in_tune && string.octave_error_cents && std::abs(*string.octave_error_cents) <= limits.in_tune_cents;
  }
  if (all_read_in_tune) {
    return "Every string reads within " + plain_number(limits.in_tune_cents) +
           " cents at fret 12: leave the saddle where it is.";
  }
  if (result.slot) return result.slot->words;
  const StringIntonation& first = result.strings.front();
  const StringIntonation& last = result.strings.back();
  return "The crests are wanted " + wanted_in_words(first) + " behind the scale length at string 1 and " +
         wanted_in_words(last) + " at string " + std::to_string(last.string) +
         "; measure from fret 12 to the front wall of the slot to learn whether they fit.";
}

std::vector<std::string> cautions(const IntonationRequest& request) {
  std::vector<std::string> said;
  if (!(in_mm(request.press_depth) > 0)) {
    said.push_back("A finger that presses harder than it must only makes notes sharper: these are the least.");
  }
  if (request.octave_errors.empty()) {
    said.push_back(
        "How firmly nut, fret and saddle hold a string is not known without a reading: the part that stiffness adds is "
        "a range. One octave error read at fret 12 settles it for that string.");
  }
  bool wrapped = false;
  for (const GuitarString& string : request.strings) wrapped = wrapped || string.core_diameter.has_value();
  if (wrapped) said.push_back("Of wrapped strings only the core is counted as stiff; the wrap adds a little.");
  said.push_back("Read with new strings: worn and dirty ones are not even along their length and read sharp or flat.");
  return said;
}

}  // namespace

IntonationResult intonation(const IntonationRequest& request, const IntonationLimits& limits) {
  require_valid(request);
  require_matching(request);
  const std::vector<StringEnds> ends = string_ends(request.neck, request.action);
  IntonationResult result;
  std::vector<WantedCrest> crests;
  for (std::size_t i = 0; i < request.strings.size(); ++i) {
    const int number = static_cast<int>(i) + 1;
    const StoppedString speaking = stopped_string(request.neck, ends[i], request.strings[i], request.dead_length);
    const Asked asked{request, limits, speaking, {.press_depth = request.press_depth}};
    const Length setback =
        request.setbacks_mm.empty() ? ends[i].saddle_from_nut - request.neck.scale_length : mm(request.setbacks_mm[i]);
    result.strings.push_back(string_intonation(asked, number, setback));
    const StringIntonation& of = result.strings.back();
    crests.push_back({.string = number,
                      .share = share_from_treble(request.neck, number),
                      .setback = of.wanted,
                      .low = of.wanted_low,
                      .high = of.wanted_high,
                      .read = of.octave_error_cents.has_value()});
  }
  if (request.saddle) result.slot = slot_fit(*request.saddle, crests, limits);
  result.verdict = verdict(result, limits);
  result.cautions = cautions(request);
  return result;
}

}  // namespace tailblock
