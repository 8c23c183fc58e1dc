#include "paper/visit_papers.h"

#include <algorithm>
#include <cmath>

#include "quantity/trade_notation.h"

namespace tailblock {
namespace {

PaperHead head_of(const VisitForPaper& visit) {
  PaperHead head{.shop = {.shop = visit.shop.name}, .day = visit.today, .reference = {}};
  std::string line;
  for (const char letter : visit.shop.address + "\n") {
    if (letter != '\n') {
      line += letter;
    } else if (!line.empty()) {
      head.shop.lines.push_back(std::exchange(line, {}));
    }
  }
  head.reference = iso_date(visit.visit.visit.date).substr(0, 4) + "-" + std::to_string(visit.visit.visit.id);
  return head;
}

std::string as_read(const Measure& measure, double value) {
  if (measure.unit != "mm") return plain_number(std::round(value * 10) / 10) + " " + measure.unit;
  const TradeLength said = as_trade(mm(value));
  return said.millimetres + " (" + said.sixty_fourths + ", " + said.thousandths + ")";
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
    rows.push_back({.what = measure.name,
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
  if (const auto temperature = standing(visit, "temperature", state)) air.temperature = celsius(*temperature);
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

bool is_over(const JobPlan& job) {
  return !job.steps.empty() && std::ranges::all_of(job.steps, [](const JobStep& step) {
    return step.state == StepState::done || step.state == StepState::waiting || step.step.family != WorkFamily::work;
  });
}

bool is_agreed(const JobPlan& job) { return job.owner == OwnerStands::yes && !job.story.job.withdrawn; }

std::string why_left(const JobPlan& job) {
  if (job.owner == OwnerStands::no) return "the owner said no";
  switch (job.story.job.advice) {
    case JobAdvice::can_wait:
      return "it can wait";
    case JobAdvice::leave_alone:
      return "better left alone";
    case JobAdvice::do_now:
      break;
  }
  return "not agreed yet";
}

void add_jobs(const VisitForPaper& visit, OwnersReport& report) {
  for (const JobPlan& job : visit.jobs) {
    if (job.story.job.withdrawn) continue;
    std::string line = job.plan.name;
    if (!job.story.job.note.empty()) line += ": " + job.story.job.note;
    if (is_agreed(job)) {
      report.done.push_back(is_over(job) ? line : line + " (not finished yet)");
    } else {
      report.left_alone.push_back(line + " (" + why_left(job) + ")");
    }
  }
}

/// The humidity at which a steel-string flat-top is kept, and what to do: common practice, no source.
void add_care(OwnersReport& report) {
  report.keep_from = humidity_percent(40);
  report.keep_to = humidity_percent(55);
  report.care = {
      "Keep it in a room or case at 40 to 55 % humidity all year, with a hygrometer beside it.",
      "In the heating season a humidifier in the room or the case does more for it than any repair.",
      "Never leave it in a hot car, beside a radiator or in the sun.",
      "Bring it back when the strings have moved by more than the year picture shows, or when anything buzzes, "
      "lifts or opens."};
}

std::string joined(const std::vector<std::string>& parts) {
  std::string text;
  for (const std::string& part : parts) text += (text.empty() ? "" : "; ") + part;
  return text;
}

std::string in_hours(double minutes) {
  if (minutes < 120) return plain_number(std::round(minutes)) + " min";
  if (minutes < 48 * 60) return plain_number(std::round(minutes / 60)) + " h";
  return plain_number(std::round(minutes / (24 * 60))) + " days";
}

std::string air_wanted(const StepShown& step) {
  const auto range = [](const OpenRange& of, const std::string& unit) -> std::string {
    if (of.low && of.high) return plain_number(*of.low) + " to " + plain_number(*of.high) + " " + unit;
    if (of.high) return "at most " + plain_number(*of.high) + " " + unit;
    if (of.low) return "at least " + plain_number(*of.low) + " " + unit;
    return "";
  };
  std::string text = range(step.humidity_percent, "% humidity");
  const std::string warm = range(step.temperature_c, "°C");
  if (!warm.empty()) text += (text.empty() ? "" : ", ") + warm;
  if (step.needs_dust_free) text += text.empty() ? "free of dust" : ", free of dust";
  return text;
}

std::optional<RecordedYes> yes_to(const JobPlan& job, const std::string& operation) {
  std::optional<RecordedYes> yes;
  for (const OwnerWord& word : job.story.words) {
    if (word.says == OwnerSays::no) continue;
    if (word.operation == operation) yes = RecordedYes{.by = word.who, .how = "to this step", .day = word.day};
    if (word.operation.empty() && !yes) yes = RecordedYes{.by = word.who, .how = "to the estimate", .day = word.day};
  }
  return yes;
}

WorkStep sheet_step(const JobPlan& job, const JobStep& step) {
  const StepShown& shown = step.step;
  WorkStep written{.what = shown.name,
                   .how = shown.materials,
                   .minutes = static_cast<int>(std::lround(shown.hands_on_minutes.typical)),
                   .glue = joined(shown.adhesives),
                   .clamps = joined(shown.clamps),
                   .air = air_wanted(shown),
                   .cautions = shown.cautions,
                   .cannot_be_undone = shown.asks_owner,
                   .done = step.state == StepState::done};
  if (shown.wait_minutes.typical > 0) {
    written.wait = in_hours(shown.wait_minutes.typical);
    if (!shown.wait_for.empty()) written.wait += ": " + shown.wait_for;
  }
  if (shown.asks_owner && shown.yes_recorded) written.yes = yes_to(job, shown.operation);
  return written;
}

}  // namespace

OwnersReport report_of(const VisitForPaper& visit, const TradeTables& trade) {
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
  add_jobs(visit, report);
  if (visit.season) {
    report.year = year_of(*visit.season, visit.visit);
    report.year_in_words = visit.season->year.verdict;
    for (const std::string& line : visit.season->assumed)
      report.uncertain.push_back("Taken for granted: " + line + ".");
    if (!visit.season->response.last_change.empty()) report.summary = visit.season->response.last_change[0].verdict;
  }
  if (visit.saddle) report.year_in_words += " " + visit.saddle->result.advice;
  add_care(report);
  return report;
}

WorkSheet work_sheet_of(const VisitForPaper& visit) {
  WorkSheet sheet{.head = head_of(visit), .instrument = visit.story.instrument.name, .owner = visit.story.owner.name};
  if (!visit.work.promises.empty()) sheet.promised = visit.work.promises.back().ready_on;
  for (const JobPlan& job : visit.jobs) {
    if (!is_agreed(job)) continue;
    if (sheet.before_all.empty()) sheet.before_all = job.plan.humidity.words;
    for (const std::string& material : job.plan.materials) sheet.get_ready.push_back(material);
    if (!job.plan.never.empty()) sheet.remarks.push_back(job.plan.name + ", never: " + job.plan.never);
    for (const JobStep& step : job.steps) sheet.steps.push_back(sheet_step(job, step));
  }
  return sheet;
}

ClaimTicket ticket_of(const VisitForPaper& visit, const std::string& address) {
  ClaimTicket ticket{.head = head_of(visit),
                     .number = std::to_string(visit.visit.visit.id),
                     .owner = visit.story.owner.name,
                     .instrument = visit.story.instrument.name,
                     .left_on = visit.visit.visit.date,
                     .to_be_done = visit.visit.visit.reason,
                     .code = address};
  if (!visit.work.promises.empty()) ticket.promised = visit.work.promises.back().ready_on;
  return ticket;
}

}  // namespace tailblock
