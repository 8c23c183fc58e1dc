#include "setup/fret_words.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>

#include "season/words.h"
#include "setup/words.h"

namespace tailblock {
namespace {

constexpr std::string_view filing_caution =
    "Filing makes metal dust and, where the file slips, wood dust: cover the soundhole and the top, wear eye "
    "protection "
    "and a dust mask, keep the filings off the finish and sweep them up damp. Cut ends are sharp.";

template <class What>
std::vector<int> frets_that(const FretDressResult& result, What what) {
  std::vector<int> frets;
  for (const FretToDress& fret : result.frets) {
    if (std::invoke(what, fret)) frets.push_back(fret.fret);
  }
  return frets;
}

double most_of(const FretToDress& fret) { return std::max(in_mm(fret.remove_bass), in_mm(fret.remove_treble)); }

std::vector<int> frets_filed(const FretDressResult& result, const FretLimits& limits) {
  return frets_that(result, [&](const FretToDress& fret) { return most_of(fret) >= limits.least_cut; });
}

std::string signed_relief(const ReliefInstead& relief) {
  const double least = std::abs(in_mm(relief.change_least)), most = std::abs(in_mm(relief.change_most));
  const std::string range =
      decimals(least, 2) == decimals(most, 2) ? mm_in_words(least) : decimals(least, 2) + " to " + mm_in_words(most);
  return range + (in_mm(relief.change_most) > 0 ? " more relief" : " less relief");
}

std::string wanted_in_words(const FretDressResult& result) {
  return both_ends_in_words(in_mm(result.wanted_action12_bass), in_mm(result.wanted_action12_treble));
}

std::string touching_in_words(int notes) {
  if (notes == 0) return "No note touches";
  return notes == 1 ? "One note touches" : std::to_string(notes) + " notes touch";
}

std::string relief_sentence(const FretDressResult& result, const FretCase& c) {
  const ReliefInstead& relief = *result.relief_instead;
  std::string said = "Not the frets: " + signed_relief(relief) + " makes every note clean with no metal off.";
  if (!result.clean_when_level && !crowns_are_level(c)) {
    said = "Relief first: " + signed_relief(relief) +
           " is needed even with level frets. Turn the rod, then read the crowns again; they are not level either.";
  }
  if (!c.request.adjustable_rod) said += " This neck has no rod that turns: heat or wider tangs would have to do it.";
  return said;
}

std::string joint_sentence(const FretDressResult& result, const FretCase& c) {
  const double hump = in_mm(result.hump->value);
  const int joint = c.request.neck.body_joint_fret;
  std::string said = "A hump at the body joint: the crowns round fret " + std::to_string(joint) + " stand " +
                     mm_in_words(hump) + " above the lines on both sides, together.";
  if (hump <= c.limits.hump_local_most && result.unclean.empty()) {
    return said + " Dressing them there costs crown and hides the cause; it can be done once.";
  }
  return said + " That is the board or the neck, not the frets: filing it away would cost too much crown.";
}

std::string kink_sentence(const FretDressResult& result, const FretCase& c) {
  const double run = c.from_nut.back() - c.from_nut[static_cast<std::size_t>(c.request.neck.body_joint_fret - 1)];
  const double rise = in_mm(result.tongue_rise->value);
  return "Not the frets: the tongue rises from the neck's line, " + mm_in_words(rise) +
         " at the last fret, an angle of " + decimals(in_degrees(radians(std::atan(rise / run))), 2) +
         " degrees at the body joint" + (c.request.neck_angle_changed ? ", as after a neck has been set back" : "") +
         ". Bring the tongue down (a wedge under it, or the board planed at the next refret).";
}

std::string refret_sentence(const FretDressResult& result, const FretCase& c) {
  const auto renew = frets_that(result, &FretToDress::renew);
  const bool worn_alone = !renew.empty() && renew.back() <= c.limits.worn_fret_highest;
  std::string said =
      renew.empty() ? "Refret: these crowns do not hold what must come off." : "Renew " + frets_in_words(renew) + ": ";
  if (!renew.empty()) {
    said += "level with them, some crown would end under " + mm_in_words(in_mm(result.least_crown)) + ".";
  }
  if (worn_alone)
    said += " The others can stay: match the new wire to them and dress it down. The nut may have to follow.";
  if (!result.unclean.empty()) {
    const UncleanNote& worst = result.unclean.front();
    said += " Without it " + note_in_words(c.request.strings, worst.string, worst.stopped_fret) + " stays " +
            mm_in_words(in_mm(worst.short_by)) + " short over fret " + std::to_string(worst.fret) + ".";
  }
  return said;
}

std::string spot_sentence(const FretDressResult& result, const FretCase& c) {
  std::string said;
  for (const int number : frets_filed(result, c.limits)) {
    const FretToDress& fret = result.frets[static_cast<std::size_t>(number - 1)];
    said += (said.empty() ? "Spot-level fret " : ", and fret ") + std::to_string(number) + ": " +
            cut_in_words(most_of(fret)) + " off" + (result.apart ? " at most" : "");
  }
  if (said.empty()) return "What would have to come off is less than a file takes: leave it.";
  return said + ". Leave the others alone.";
}

bool only_to_fall_away(const FretDressResult& result, const FretCase& c) {
  const auto filed = frets_filed(result, c.limits);
  return !filed.empty() && std::ranges::all_of(filed, [&](int fret) {
    return result.frets[static_cast<std::size_t>(fret - 1)].forced_by.empty();
  });
}

std::string level_sentence(const FretDressResult& result, const FretCase& c) {
  const auto filed = frets_filed(result, c.limits);
  if (only_to_fall_away(result, c)) {
    return "Only the fall-away wanted takes metal: " + frets_in_words(filed) + " come down, " +
           cut_in_words(most_of(result.frets.back())) + " at the last. No note asks for it.";
  }
  return "Level the board: " + std::to_string(filed.size()) + " frets must come down, " + frets_in_words(filed) +
         ". Note by note " + mm_in_words(in_mm(result.total_removed)) +
         " comes off in all; with a beam to one line that touches every crown, " +
         mm_in_words(in_mm(result.total_to_level)) + ".";
}

std::string withheld_sentence(const FretDressResult& result, const FretCase& c) {
  return "No verdict: the worst note is " + mm_in_words(in_mm(result.worst_shortfall.value)) +
         " short, which is inside what these readings can tell (" +
         mm_in_words(c.limits.withheld_within_sd * in_mm(result.worst_shortfall.sd)) +
         "). Read again with a finer gauge before any file.";
}

std::string action_sentence(const FretDressResult& result) {
  return "Not the frets: even level ones would touch at " + wanted_in_words(result) +
         ", played like this. The least that can be had is " +
         both_ends_in_words(in_mm(*result.clean_action12_bass), in_mm(*result.clean_action12_treble)) + " at fret 12.";
}

std::string sentence_of(const FretDressResult& result, const FretCase& c) {
  switch (result.verdict) {
    case FretVerdict::clean:
      return "Leave the frets alone: every note is clean at " + wanted_in_words(result) + ", played like this.";
    case FretVerdict::withheld:
      return withheld_sentence(result, c);
    case FretVerdict::loose:
      return "Seat " + frets_in_words(frets_that(result, &FretToDress::loose)) +
             " first: it springs down when pressed. Then read all crowns again; nothing is decided before.";
    case FretVerdict::nut:
      return "Not the frets: open strings would touch over level frets as well. The nut slots are too low by " +
             mm_in_words(in_mm(*result.nut_rise)) + ".";
    case FretVerdict::relief:
      return relief_sentence(result, c);
    case FretVerdict::action:
      return action_sentence(result);
    case FretVerdict::hump:
      return joint_sentence(result, c);
    case FretVerdict::kink:
      return kink_sentence(result, c);
    case FretVerdict::spot:
      return spot_sentence(result, c);
    case FretVerdict::level_all:
      return level_sentence(result, c);
    case FretVerdict::refret:
      return refret_sentence(result, c);
  }
  return "";
}

void put_reasons(FretDressResult& result, const FretCase& c) {
  for (FretToDress& fret : result.frets) {
    const double cut = most_of(fret);
    if (cut < c.limits.least_cut) continue;
    fret.reason = "Fret " + std::to_string(fret.fret) + " comes down " + mm_in_words(cut);
    if (fret.forced_by.empty()) {
      fret.reason += " for the fall-away wanted.";
      continue;
    }
    const ForcingNote& first = fret.forced_by.front();
    fret.reason += " because " + note_in_words(c.request.strings, first.string, first.stopped_fret) + " would touch it";
    if (fret.forced_by.size() > 1) {
      fret.reason += " (and " + std::to_string(fret.forced_by.size() - 1) + " more)";
    }
    fret.reason += ".";
  }
}

void explain(FretDressResult& result, const FretCase& c) {
  auto& said = result.explanation;
  said.push_back(touching_in_words(result.touching_before) + " as found at " + wanted_in_words(result) + ", with " +
                 mm_in_words(c.setting.margin_mm) + " of room asked under each.");
  if (result.cut_is_advised) said.push_back(touching_in_words(result.touching_after) + " after.");
  if (result.verdict != FretVerdict::relief && result.relief_instead) {
    said.push_back(signed_relief(*result.relief_instead) + " would do as well.");
  }
  if (result.hump && in_mm(result.hump->value) > c.limits.hump_usual && result.verdict != FretVerdict::hump) {
    said.push_back("The crowns round the body joint stand " + mm_in_words(in_mm(result.hump->value)) +
                   " above the lines on both sides: over what is usual, look at it again in another season.");
  }
  if (result.tongue_rise && -in_mm(result.tongue_rise->value) > c.limits.tongue_fall_most) {
    said.push_back("The tongue falls " + mm_in_words(-in_mm(result.tongue_rise->value)) +
                   " from the neck's line at the last fret: it buzzes nothing, but says that the top has sunk or the "
                   "neck was set back.");
  }
  if (result.tongue_rise && in_mm(result.tongue_rise->value) > c.limits.tongue_rise_most &&
      result.verdict != FretVerdict::kink) {
    said.push_back("The tongue rises " + mm_in_words(in_mm(result.tongue_rise->value)) +
                   " from the neck's line at the last fret: more than is usual, though it is not what decides here.");
  }
  for (std::size_t i = 0; i < result.frets.size(); ++i) {
    const FretToDress& fret = result.frets[i];
    for (const auto& left : {fret.left_bass, fret.left_treble}) {
      if (!left || in_mm(*left) >= in_mm(result.least_crown) - 1e-6 || fret.renew) continue;
      said.push_back("Fret " + std::to_string(fret.fret) + " has " + mm_in_words(in_mm(*left)) +
                     " over the board, under the " + mm_in_words(in_mm(result.least_crown)) +
                     " to be kept: nothing may come off it.");
      break;
    }
  }
}

bool humidity_out(const FretCase& c) {
  if (!c.request.body_humidity) return false;
  const double humidity = in_fraction(*c.request.body_humidity);
  return humidity < c.limits.body_humidity_least || humidity > c.limits.body_humidity_most;
}

void put_steps(FretDressResult& result, const FretCase& c) {
  auto& steps = result.steps;
  const bool files = result.verdict == FretVerdict::spot || result.verdict == FretVerdict::level_all ||
                     result.verdict == FretVerdict::hump;
  if (humidity_out(c)) {
    steps.emplace_back("Bring the body to 45 to 50 % first and read again: it reads " +
                       decimals(in_percent(*c.request.body_humidity), 0) +
                       " %, and a board over the body moves with the season.");
  }
  if (result.verdict == FretVerdict::loose) {
    steps.emplace_back(
        "Seat the loose crowns (press or tap home, glue if the slot no longer holds), let them set, and "
        "read again. Ask the owner before glue goes into a slot: it blocks later work.");
  }
  if (result.verdict == FretVerdict::relief && c.request.adjustable_rod) {
    steps.emplace_back(
        "Slacken the strings, turn the rod an eighth of a turn, tune, let it settle and read the relief "
        "again. A rod that is tight or at its end is left alone: it breaks.");
  }
  if (!files) return;
  steps.emplace_back(
      "Mark the crowns with a pen, set the neck straight with the rod, and file only where the strip "
      "says; stop when the mark is gone and read again.");
  steps.emplace_back(filing_caution);
  steps.emplace_back(
      "Metal does not grow back. Stop short, string up, play every note, and take the rest only if it "
      "still touches.");
  steps.emplace_back("Round the crowns again, smooth the ends, and set relief and saddle to the action wanted.");
}

void put_cautions(FretDressResult& result, const FretCase& c) {
  auto& said = result.cautions;
  const bool metal_unread = std::ranges::any_of(frets_filed(result, c.limits), [&](int fret) {
    return !result.frets[static_cast<std::size_t>(fret - 1)].left_bass;
  });
  if (metal_unread) {
    said.push_back("Nobody read the crowns over the board everywhere a file is to go: no more than " +
                   mm_in_words(c.limits.unread_metal) +
                   " below the line of the others is allowed there. Read the metal left first.");
  }
  if (c.setting.margin_mm < c.limits.margin && !c.request.margin && result.clean_when_level) {
    said.emplace_back(
        "At this action even level frets have next to no room under the tightest note: a little more "
        "action gives more than a file does.");
  }
  if (c.request.fall_away) {
    const auto short_of = frets_that(result, [&](const FretToDress& fret) {
      const auto i = static_cast<std::size_t>(fret.fret - 1);
      const bool wants = c.found.bass[i] - c.level.bass[i] > c.bounds.most.bass[i] + 1e-6 ||
                         c.found.treble[i] - c.level.treble[i] > c.bounds.most.treble[i] + 1e-6;
      return wants && fret.fret > c.request.fall_away_from.value_or(c.request.neck.body_joint_fret);
    });
    if (!short_of.empty()) {
      said.push_back("The crown does not hold the whole fall-away at " + frets_in_words(short_of) +
                     ": as much as the least crown allows is taken.");
    }
  }
}

}  // namespace

std::string frets_in_words(const std::vector<int>& frets) {
  std::string text;
  for (std::size_t i = 0; i < frets.size(); ++i) {
    text += (i == 0 ? "" : i + 1 == frets.size() ? " and " : ", ") + std::to_string(frets[i]);
  }
  return (frets.size() == 1 ? "fret " : "frets ") + text;
}

std::string string_in_words(const std::vector<GuitarString>& strings, int string) {
  constexpr std::array<std::string_view, 12> letters{"A",      "B flat", "B", "C",       "C sharp", "D",
                                                     "E flat", "E",      "F", "F sharp", "G",       "A flat"};
  const double pitch = strings[static_cast<std::size_t>(string - 1)].pitch_hz;
  const auto steps = static_cast<int>(std::lround(12 * std::log2(pitch / 440)));
  return "string " + std::to_string(string) + " (" +
         std::string(letters[static_cast<std::size_t>(((steps % 12) + 12) % 12)]) + ")";
}

std::string note_in_words(const std::vector<GuitarString>& strings, int string, int stopped_fret) {
  const std::string name = string_in_words(strings, string);
  return stopped_fret == 0 ? "open " + name : name + " stopped at " + std::to_string(stopped_fret);
}

std::string cut_in_words(double millimetres) {
  return mm_in_words(millimetres) + " (" + decimals(in_thousandths(mm(millimetres)), 1) + " thousandths)";
}

void speak(FretDressResult& result, const FretCase& c) {
  put_reasons(result, c);
  result.sentence = sentence_of(result, c);
  if (humidity_out(c) && !result.cut_is_advised && result.total_removed > Length{}) {
    result.sentence += " Not today: the body's air is out of the range in which frets are filed.";
  }
  explain(result, c);
  put_steps(result, c);
  put_cautions(result, c);
}

}  // namespace tailblock
