#include <algorithm>
#include <cmath>
#include <utility>

#include "season/words.h"
#include "setup/saddle_options.h"
#include "setup/words.h"

namespace tailblock {
namespace {

double cost_of(const SaddleCase& asked, const Fitted& part) {
  SaddleQuestion ends = asked.question;
  ends.bass.exposure_mm += part.neck_steps * asked.limits.cut_precision;
  ends.treble.exposure_mm += part.neck_steps * asked.limits.cut_precision;
  const SaddleInPart& saddle = part.saddle;
  return saddle_cost(saddle.actions, ends, saddle.steps, asked.limits);
}

Raised raised_by(const SaddleCase& asked, const SaddleInPart& saddle) {
  return {saddle.stretch, raised_mm(asked.question.bass, saddle.steps.bass, asked.limits),
          raised_mm(asked.question.treble, saddle.steps.treble, asked.limits)};
}

double outside(const PooledAction& action, const EndQuestion& end, double raised_mm) {
  return action.days_under(end.floor_mm - raised_mm) + action.days_over(end.ceiling_mm - raised_mm);
}

/// Expected days outside, too low and too high, both ends added up, with the action set wrong by so much.
double days_when_misread(const SaddleCase& asked, const std::vector<Fitted>& parts, double error_mm) {
  double days = 0;
  for (const Fitted& part : parts) {
    const Raised raised = raised_by(asked, part.saddle);
    days += outside(part.saddle.actions.bass, asked.question.bass, raised.bass_mm + error_mm) +
            outside(part.saddle.actions.treble, asked.question.treble, raised.treble_mm + error_mm);
  }
  return days;
}

/// Action at one end today with the saddle in, and how far the raise that would be right is known.
struct EndToday {
  double set_mm, set_sd_mm, raise_sd_mm;
};

EndToday end_today(const SaddleCase& asked, const YearPaths& year, bool bass, Stretch stretch, double raised_mm) {
  const WithSpread mean = mean_action(year, bass, stretch);
  const WithSpread today = today_over_mean(year, bass, stretch, asked.year.today);
  return {mean.value + today.value + raised_mm, today.sd, mean.sd / asked.question.bass.action_per_saddle};
}

/// Whether a saddle that is in for this stretch is in on that day, in whatever year.
bool is_in(Stretch stretch, const YearPaths& year, Date day) {
  const int t = (days_between(year.first, day) % year.count + year.count) % year.count;
  return stretch.from < stretch.until ? stretch.from <= t && t < stretch.until : t >= stretch.from || t < stretch.until;
}

void caution(SaddleOption& option, std::string text) {
  if (std::find(option.cautions.begin(), option.cautions.end(), text) != option.cautions.end()) return;
  option.cautions.push_back(std::move(text));
}

void caution_readings(const SaddleCase& asked, const SaddleToMake& saddle, SaddleOption& option) {
  const double cut_mm = std::max(std::abs(in_mm(saddle.raise_bass)), std::abs(in_mm(saddle.raise_treble)));
  if (cut_mm == 0) return;
  const double reading_mm = asked.year.reading_sd_mm / asked.question.bass.action_per_saddle;
  if (cut_mm < reading_mm) {
    caution(option, "The reading matters more than the cut: an error of " + mm_in_words(asked.year.reading_sd_mm) +
                        " at fret 12 is " + mm_in_words(reading_mm) + " at the saddle, and the cut is " +
                        mm_in_words(cut_mm) + ". Read again with feelers before bone is removed.");
  }
  const double open_mm = std::max(in_mm(saddle.raise_bass_sd), in_mm(saddle.raise_treble_sd));
  if (cut_mm < open_mm) {
    caution(option, "The cut of " + mm_in_words(cut_mm) + " is less than what readings and season leave open (" +
                        mm_in_words(open_mm) + " at the saddle): a reading in another season would narrow it.");
  }
}

std::string usual_range(const ExposureBounds& bounds) {
  return decimals(bounds.usual_least_mm, 2) + ".." + mm_in_words(bounds.usual_most_mm);
}

/// What stands outside its usual range, though inside its limits, and what breaks a limit.
void caution_limits(const SaddleCase& asked, SaddleOption& option) {
  const bool open_ended = asked.request.bridge.slot == SaddleSlot::open_ended;
  for (const LimitCheck& check : option.checks) {
    const bool of_exposure = check.limit.starts_with("exposure");
    const bool of_bass = check.limit.starts_with("exposure, bass");
    const ExposureBounds& bounds = of_bass ? asked.question.bass.bounds : asked.question.treble.bounds;
    if (check.usual) continue;
    if (!check.kept) {
      caution(option, "A limit is broken: " + check.limit + ", " + check.figure + ".");
    } else if (of_exposure && open_ended) {
      caution(option, "Outside the usual " + usual_range(bounds) + " of an open-ended slot (" + check.limit + ", " +
                          check.figure + "): a tall saddle leans and can split the bridge in front of it.");
    } else if (of_exposure) {
      caution(option, "Outside the usual " + usual_range(bounds) + ": " + check.limit + ", " + check.figure + ".");
    } else {
      caution(option, "Outside what is usual: " + check.limit + ", " + check.figure + ".");
    }
  }
}

void caution_near_limit(const SaddleCase& asked, const SaddleToMake& saddle, SaddleOption& option) {
  const double sd_mm = in_mm(asked.request.bridge.exposure_sd);
  const auto near = [&](Length exposure, const ExposureBounds& bounds) {
    const double room_mm = std::min(in_mm(exposure) - bounds.least_mm, bounds.most_mm - in_mm(exposure));
    return 0 <= room_mm && room_mm < sd_mm;
  };
  if (!near(saddle.exposure_bass, asked.question.bass.bounds) &&
      !near(saddle.exposure_treble, asked.question.treble.bounds)) {
    return;
  }
  caution(option, "Nearer to a limit of the exposure than the exposure was read (" + mm_in_words(sd_mm) +
                      "): measure it again before cutting.");
}

void add_new_checks(const std::vector<LimitCheck>& more, const std::string& season, bool name_season,
                    SaddleOption& option) {
  for (LimitCheck check : more) {
    const bool of_height =
        check.limit.starts_with("exposure") || check.limit.starts_with("height") || check.limit.starts_with("break");
    if (name_season && of_height) check.limit += ", " + season;
    const auto same = [&](const LimitCheck& have) { return have.limit == check.limit; };
    if (std::none_of(option.checks.begin(), option.checks.end(), same)) option.checks.push_back(check);
  }
}

}  // namespace

void fit_saddles(const SaddleCase& asked, const YearPaths& year, const std::vector<Fitted>& saddles,
                 SaddleOption& option) {
  const double precision_mm = asked.limits.cut_precision;
  std::vector<Raised> raised;
  for (const Fitted& part : saddles) {
    const EndSteps& steps = part.saddle.steps;
    const Stretch stretch = part.saddle.stretch;
    raised.push_back(raised_by(asked, part.saddle));
    option.cost += cost_of(asked, part);
    const EndToday bass = end_today(asked, year, true, stretch, raised.back().bass_mm);
    const EndToday treble = end_today(asked, year, false, stretch, raised.back().treble_mm);
    SaddleToMake made =
        saddle_to_make(asked.request.bridge, asked.limits, (steps.bass + part.neck_steps) * precision_mm,
                       (steps.treble + part.neck_steps) * precision_mm);
    made.season = part.season;
    made.raise_bass_sd = mm(bass.raise_sd_mm);
    made.raise_treble_sd = mm(treble.raise_sd_mm);
    made.set_bass_today = mm(bass.set_mm);
    made.set_treble_today = mm(treble.set_mm);
    add_new_checks(limit_checks(asked.request.bridge, asked.limits, in_mm(made.raise_bass), in_mm(made.raise_treble)),
                   part.season, saddles.size() > 1, option);
    caution_readings(asked, made, option);
    caution_near_limit(asked, made, option);
    if (saddles.size() == 1 || is_in(stretch, year, asked.request.instrument.today)) {
      option.set_bass_today = made.set_bass_today;
      option.set_treble_today = made.set_treble_today;
      option.set_today_sd = mm(std::max(bass.set_sd_mm, treble.set_sd_mm));
    }
    option.saddles.push_back(made);
  }
  caution_limits(asked, option);
  option.days = days_outside(year, raised, asked.request.limits);
  option.days_more_if_misread = std::max(days_when_misread(asked, saddles, asked.year.reading_sd_mm),
                                         days_when_misread(asked, saddles, -asked.year.reading_sd_mm)) -
                                days_when_misread(asked, saddles, 0);
}

}  // namespace tailblock
