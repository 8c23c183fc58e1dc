#include <algorithm>
#include <cmath>

#include "paper/findings_picture.h"
#include "paper/visit_papers.h"
#include "quantity/trade_notation.h"
#include "season/words.h"

namespace tailblock {
namespace {

constexpr double drawing_wide = 170;  // mm: the width of A4's text
constexpr std::size_t most_photos = 18, most_photos_of_one = 3;

std::string length_in_words(Length length) {
  const TradeLength said = as_trade(length);
  if (said.sixty_fourths == said.thousandths) return said.millimetres + " (" + said.thousandths + ")";
  return said.millimetres + " (" + said.sixty_fourths + ", " + said.thousandths + ")";
}

/// What a ruler says of a fault: fine where it is small, no finer than a millimetre where it is long.
std::string extent_in_words(Length length) {
  constexpr double long_mm = 10;
  const double value = in_mm(length);
  if (value < long_mm) return length_in_words(length);
  return decimals(value, 0) + " mm (" + decimals(value / 25.4, 2) + " in)";
}

std::string with_capital(std::string words) {
  if (!words.empty()) words[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(words[0])));
  return words;
}

std::string as_read(const Measure& measure, double value) {
  if (measure.unit == "mm") return length_in_words(mm(value));
  return plain_number(std::round(value * 10) / 10) + " " + measure.unit;
}

std::optional<double> standing(const VisitStory& visit, const std::string& measure, ReadingState state) {
  const auto reading = reading_at(visit, measure, state);
  return reading ? std::optional(reading->value) : std::nullopt;
}

std::vector<BeforeAndAfter> readings_of(const VisitStory& visit, const TradeTables& trade) {
  std::vector<BeforeAndAfter> rows;
  for (const Measure& measure : trade.measures) {
    if (measure.id == "body_humidity" || measure.id == "room_humidity" || measure.id == "temperature") continue;
    const auto before = standing(visit, measure.id, ReadingState::as_found);
    const auto after = standing(visit, measure.id, ReadingState::as_left);
    if (!before && !after) continue;
    rows.push_back({.what = with_capital(measure.name),
                    .before = before ? as_read(measure, *before) : "",
                    .after = after ? as_read(measure, *after) : ""});
  }
  return rows;
}

/// Humidity in the body where it was read, else that of the room, with the temperature beside it.
std::optional<StatedAir> air_of(const VisitStory& visit, ReadingState state) {
  auto humidity = standing(visit, "body_humidity", state);
  if (!humidity) humidity = standing(visit, "room_humidity", state);
  if (!humidity) return std::nullopt;
  StatedAir air{.day = visit.visit.date, .relative_humidity = humidity_percent(*humidity)};
  if (const auto warm = standing(visit, "temperature", state)) air.temperature = celsius(*warm);
  return air;
}

YearBand band_of(const std::string& side, const ActionBand& band, Length lowest, Length highest,
                 std::optional<double> today) {
  return {.side = side,
          .low_mm = band.low_mm,
          .lower_mm = band.lower_mm,
          .median_mm = band.median_mm,
          .upper_mm = band.upper_mm,
          .high_mm = band.high_mm,
          .lowest_clean_mm = in_mm(lowest),
          .highest_comfortable_mm = in_mm(highest),
          .today_mm = today};
}

YearOnPaper year_of(const SeasonAnswer& season, const VisitStory& visit) {
  const auto read = [&](const std::string& measure) {
    const auto left = standing(visit, measure, ReadingState::as_left);
    return left ? left : standing(visit, measure, ReadingState::as_found);
  };
  const ActionLimits& limits = season.limits;
  return {.first = season.year.first,
          .today = season.today,
          .sides = {band_of("bass", season.year.bass, limits.lowest_bass, limits.highest_bass, read("action12_bass")),
                    band_of("treble", season.year.treble, limits.lowest_treble, limits.highest_treble,
                            read("action12_treble"))}};
}

std::string year_in_words(const SeasonAnswer& season) {
  const std::vector<double>& middle = season.year.bass.median_mm;
  if (middle.empty()) return "";
  const auto [low, high] = std::ranges::minmax_element(middle);
  const auto day = [&](auto it) { return day_in_words(season.year.first + std::chrono::days(it - middle.begin())); };
  std::string words = "In the air of its home expect the thickest string over fret 12 to stand lowest about ";
  words += day(low) + ", near " + decimals(*low, 1) + " mm, and highest about " + day(high) + ", near ";
  words += decimals(*high, 1) + " mm. The wood moves with the air, so that is no fault.";
  if (*low < in_mm(season.limits.lowest_bass)) {
    words += " Below " + decimals(in_mm(season.limits.lowest_bass), 1) + " mm it may buzz when it is played hard.";
  }
  if (*high > in_mm(season.limits.highest_bass)) {
    words += " Above " + decimals(in_mm(season.limits.highest_bass), 1) + " mm the left hand has to work.";
  }
  return words;
}

/// What has happened to the strings since the visit before, and how much of it is the season.
std::string since_last_time(const ChangeShare& change) {
  constexpr double worth_a_word = 0.05;  // mm
  const double moved = change.measured_bass_mm.median;
  const std::string since = "Since " + day_in_words(change.from) + " the thickest string over fret 12 ";
  if (std::abs(moved) < worth_a_word) return since + "has stayed where it was.";
  std::string words = since + (moved < 0 ? "has come down by " : "has gone up by ") + decimals(std::abs(moved), 2);
  words += " mm. ";
  const double season = change.season_bass_mm.median;
  if (season * moved > 0 && std::abs(season) >= worth_a_word) {
    words += "About " + decimals(std::min(std::abs(season), std::abs(moved)), 2) + " mm of that is the season.";
  } else {
    words += "The season does not explain it.";
  }
  if (change.something_else) words += " Something else has probably moved as well, and is worth finding.";
  return words;
}

bool is_agreed(const JobPlan& job) { return job.owner == OwnerStands::yes; }

bool is_over(const JobPlan& job) {
  return !job.steps.empty() && std::ranges::all_of(job.steps, [](const JobStep& step) {
    return step.state == StepState::done || step.state == StepState::waiting || step.step.family != WorkFamily::work;
  });
}

/// Empty: it is not decided yet.
std::string why_left(const JobPlan& job) {
  if (job.owner == OwnerStands::no) return "you said no to it";
  switch (job.story.job.advice) {
    case JobAdvice::can_wait:
      return "it can wait";
    case JobAdvice::leave_alone:
      return "it is better left alone";
    case JobAdvice::do_now:
      break;
  }
  return "";
}

void add_work(const VisitForPaper& visit, const TradeTables& trade, OwnersReport& report) {
  for (const JobPlan& job : visit.jobs) {
    if (job.story.job.withdrawn) continue;
    const std::string& line = job.plan.name;
    if (is_agreed(job)) {
      report.done.push_back(is_over(job) ? line : line + " (agreed, not finished yet)");
    } else if (const std::string why = why_left(job); !why.empty()) {
      report.left_alone.push_back(line + " (" + why + ")");
    } else {
      report.still_open.push_back(line);
    }
  }
  for (const Intervention& one : visit.visit.interventions) {
    const InterventionKind* kind = trade.intervention(one.kind);
    const std::string line = with_capital(kind == nullptr ? one.kind : kind->name);
    report.done.push_back(one.note.empty() ? line : line + ": " + one.note);
  }
}

std::string extents_in_words(const std::vector<FindingExtent>& extents, const TradeTables& trade) {
  std::string words;
  for (const FindingExtent& extent : extents) {
    const Measure* measure = trade.finding_measure(extent.measure);
    if (!words.empty()) words += ", ";
    words += (measure == nullptr ? extent.measure : measure->name) + " " + extent_in_words(extent.value);
  }
  return words;
}

std::string how_bad(const FindingStory& story) {
  std::string words(severity_names[static_cast<std::size_t>(story.finding.severity)]);
  if (story.finding.opening != Opening::not_said) {
    words += ", " + std::string(opening_names[static_cast<std::size_t>(story.finding.opening)]);
  }
  if (story.finding.moving != Moving::not_said) {
    words += story.finding.moving == Moving::moves ? ", moves" : ", does not move";
  }
  if (!story.changes.empty() && story.changes.back().change.state == FindingState::grown) {
    words += ", grown since " + day_in_words(story.found_on);
  }
  return words;
}

std::string how_sure(Certainty certainty) {
  switch (certainty) {
    case Certainty::suspected:
      return "suspected only";
    case Certainty::likely:
      return "likely, not certain";
    case Certainty::sure:
      break;
  }
  return "";
}

/// What has become of it: of several repairs for it the one that is furthest.
void say_outcome(const FindingStory& story, const VisitForPaper& visit, ReportedFinding& reported) {
  using Outcome = ReportedFinding::Outcome;
  reported.outcome = Outcome::open;
  const auto take = [&](Outcome outcome, std::string because) {
    if (static_cast<int>(outcome) >= static_cast<int>(reported.outcome)) return;
    reported.outcome = outcome;
    reported.because = std::move(because);
  };
  for (const JobPlan& job : visit.jobs) {
    if (job.story.job.withdrawn || !is_of(story, job.story.job.finding_id, visit.survey)) continue;
    if (is_agreed(job)) {
      take(is_over(job) ? Outcome::done : Outcome::in_hand, job.plan.name + ".");
    } else if (job.owner == OwnerStands::no || job.story.job.advice == JobAdvice::leave_alone) {
      take(Outcome::left_alone, job.plan.name + ": " + why_left(job) + ".");
    } else if (job.story.job.advice == JobAdvice::can_wait) {
      take(Outcome::can_wait, job.plan.name + ".");
    }
  }
  if (story.changes.empty()) return;
  const FindingState state = story.changes.back().change.state;
  if (state == FindingState::repaired) take(Outcome::done, "Repaired.");
  if (state == FindingState::gone) take(Outcome::left_alone, "It is gone without a repair.");
}

ReportedFinding reported(const FindingStory& story, const VisitForPaper& visit, const TradeTables& trade) {
  const Finding& finding = story.finding;
  const FindingKind* kind = trade.finding(finding.kind);
  ReportedFinding one{.number = story.number,
                      .where = std::string(view_in_words(finding.view)),
                      .what = with_capital(kind == nullptr ? finding.kind : kind->words),
                      .how_bad = how_bad(story),
                      .how_sure = how_sure(finding.certainty)};
  const std::string& place = finding.part.empty() ? finding.place : finding.part;
  if (!place.empty()) one.where += ": " + place;
  const auto& latest = story.changes.empty() || story.changes.back().change.extents.empty()
                           ? finding.extents
                           : story.changes.back().change.extents;
  const std::string read = extents_in_words(latest, trade);
  if (!read.empty()) one.what += ": " + read;
  if (!finding.note.empty()) one.what += ". " + finding.note;
  say_outcome(story, visit, one);
  return one;
}

void add_photos_of(const FindingStory& story, const std::string& what, OwnersReport& report) {
  std::vector<FindingPhoto> photos = story.finding.photos;
  for (const DatedChange& one : story.changes) {
    photos.insert(photos.end(), one.change.photos.begin(), one.change.photos.end());
  }
  const std::size_t first = photos.size() > most_photos_of_one ? photos.size() - most_photos_of_one : 0;
  for (std::size_t i = first; i < photos.size() && report.photos.size() < most_photos; ++i) {
    report.photos.push_back({.photo_id = photos[i].photo_id, .caption = std::to_string(story.number) + ": " + what});
  }
}

void say_certainty(const std::vector<std::string>& numbers, Certainty certainty, OwnersReport& report) {
  if (numbers.empty()) return;
  std::string words = numbers.size() == 1 ? "Finding " : "Findings ";
  for (std::size_t i = 0; i < numbers.size(); ++i) {
    if (i > 0) words += i + 1 == numbers.size() ? " and " : ", ";
    words += numbers[i];
  }
  report.uncertain.push_back(words + (numbers.size() == 1 ? " is " : " are ") + how_sure(certainty) + ".");
}

void add_findings(const VisitForPaper& visit, const InstrumentDrawing& drawing, const TradeTables& trade,
                  OwnersReport& report) {
  std::vector<const FindingStory*> stories;
  for (const auto* list : {&visit.survey.found_before, &visit.survey.found_now}) {
    for (const FindingStory& story : *list) stories.push_back(&story);
  }
  std::vector<MarkedFinding> marks;
  for (const FindingStory* story : stories) {
    report.findings.push_back(reported(*story, visit, trade));
    const FindingKind* kind = trade.finding(story->finding.kind);
    add_photos_of(*story, kind == nullptr ? story->finding.kind : kind->words, report);
    marks.push_back({.number = story->number,
                     .view = story->finding.view,
                     .shape = story->finding.shape,
                     .points = story->finding.points});
  }
  for (const Certainty certainty : {Certainty::suspected, Certainty::likely}) {
    std::vector<std::string> numbers;
    for (const FindingStory* story : stories) {
      if (story->finding.certainty == certainty) numbers.push_back(std::to_string(story->number));
    }
    say_certainty(numbers, certainty, report);
  }
  Picture picture = findings_picture(drawing, marks, drawing_wide);
  if (picture.shapes.empty()) return;
  report.drawing = std::move(picture);
  report.drawing_caption = "Numbers as in the list. Drawn from the size and bracing of your guitar, not to measure.";
}

std::string in_100(double chance) {
  if (chance < 0.005) return "under 1 in 100";
  return decimals(100 * chance, 0) + " in 100";
}

/// The humidity at which a steel-string flat-top is kept, and what to do: common practice, no source. Where the model
/// of cracking asks for more than that, its figure stands.
void add_care(const std::optional<CrackAnswer>& crack, OwnersReport& report) {
  constexpr double usual_from = 40, usual_to = 55;
  double from = usual_from;
  if (crack && crack->known && crack->result.keep_relative_humidity) {
    const double asked = std::ceil(100 * *crack->result.keep_relative_humidity);
    if (usual_from < asked && asked < usual_to) from = asked;
  }
  report.keep_from = humidity_percent(from);
  report.keep_to = humidity_percent(usual_to);
  report.care = {"In the heating season use a humidifier, in the room or in the closed case.",
                 "Never leave it in a hot car, beside a radiator or in the sun.",
                 "Bring it back when the strings stand outside the bands of the year's picture, or when anything "
                 "buzzes, lifts or opens."};
  if (!crack || !crack->known) return;
  const CrackRiskResult& risk = crack->result;
  report.care.insert(report.care.begin(), "In its home the driest week is expected to come to " +
                                              decimals(100 * risk.lowest_week_relative_humidity, 0) +
                                              " % humidity. In such a year the chance of a new crack in the top is " +
                                              in_100(risk.here.chance) + ".");
  if (risk.here.chance_high > std::max(0.02, 4 * risk.here.chance_low)) {
    report.uncertain.push_back("The chance of a crack is poorly known: anything from " + in_100(risk.here.chance_low) +
                               " to " + in_100(risk.here.chance_high) + ".");
  }
}

std::string how_sure_of_season(const ResponseResult& response) {
  constexpr double mostly_a_guess = 0.5;  // of the first guess's variance is left
  const std::string read = counted(static_cast<std::size_t>(response.readings_used), "reading");
  if (response.prior_weight > mostly_a_guess) {
    return "How far this guitar moves with the air is still mostly a first guess, good to a factor of about two: " +
           read +
           " so far, and readings in other seasons will sharpen it. The bands of the year's picture show how sure that "
           "is.";
  }
  return "How this guitar follows the seasons is learnt from " + read +
         " so far; the bands of the year's picture show how sure that is.";
}

void add_year(const SeasonAnswer& season, const VisitForPaper& visit, OwnersReport& report) {
  report.year = year_of(season, visit.visit);
  report.year_in_words = year_in_words(season);
  for (const ChangeShare& change : season.response.last_change) {
    if (change.to == visit.visit.visit.date) report.summary = since_last_time(change);
  }
  report.uncertain.push_back(how_sure_of_season(season.response));
  if (!season.assumed.empty()) {
    report.uncertain.emplace_back("What was not measured on it was taken as usual for its kind.");
  }
}

}  // namespace

OwnersReport report_of(const VisitForPaper& visit, const YearForPaper& year, const TradeTables& trade) {
  OwnersReport report{.head = head_of(visit),
                      .owner = visit.story.owner.name,
                      .instrument = visit.story.instrument.name,
                      .lives = visit.story.home.name,
                      .arrived = visit.visit.visit.date,
                      .wish = visit.visit.visit.reason,
                      .readings = readings_of(visit.visit, trade),
                      .air_before = air_of(visit.visit, ReadingState::as_found),
                      .air_after = air_of(visit.visit, ReadingState::as_left)};
  if (!visit.work.handovers.empty()) report.ready = visit.work.handovers.back().day;
  add_findings(visit, year.drawing, trade, report);
  add_work(visit, trade, report);
  if (year.season) add_year(*year.season, visit, report);
  add_care(year.crack, report);
  return report;
}

}  // namespace tailblock
