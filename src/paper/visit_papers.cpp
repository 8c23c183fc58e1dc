#include "paper/visit_papers.h"

#include <algorithm>

#include "repair/wait_in_words.h"

namespace tailblock {
namespace {

/// As much of it as a line of paper takes, cut between words.
std::string shortened(const std::string& text, std::size_t bytes) {
  if (text.size() <= bytes) return text;
  const std::size_t end = text.find_last_of(" \n", bytes - 4);
  if (end == std::string::npos) return "";
  return text.substr(0, end) + " …";
}

bool is_agreed(const JobPlan& job) { return job.owner == OwnerStands::yes && !job.story.job.withdrawn; }

std::string joined(const std::vector<std::string>& parts) {
  std::string text;
  for (const std::string& part : parts) text += (text.empty() ? "" : "; ") + part;
  return text;
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
                   .cautions = {},
                   .cannot_be_undone = shown.asks_owner,
                   .done = step.state == StepState::done};
  for (const std::string& caution : shown.cautions) {
    const auto name = std::ranges::find_if(
        shown.hazards, [&](const std::string& hazard) { return caution.starts_with(hazard + ": "); });
    if (name != shown.hazards.end()) {
      written.hazards.push_back({.name = *name, .text = caution});
    } else if (caution != defers_to) {
      written.cautions.push_back(caution);
    }
  }
  if (shown.wait_minutes.typical > 0) {
    written.wait = wait_in_words(shown.wait_minutes.typical);
    if (!shown.wait_for.empty()) written.wait += ": " + shown.wait_for;
  }
  if (shown.asks_owner && shown.yes_recorded) written.yes = yes_to(job, shown.operation);
  return written;
}

}  // namespace

PaperHead head_of(const VisitForPaper& visit) {
  if (visit.shop.name.empty()) {
    throw Refused("name: the shop has no name yet; say it on the Shop page, then its papers can be printed");
  }
  return {.shop = {.shop = visit.shop.name, .lines = lines_of(visit.shop.address)},
          .day = visit.today,
          .reference = "visit " + std::to_string(visit.visit.visit.id)};
}

std::string finding_in_words(const FindingStory& story, const TradeTables& trade) {
  const FindingKind* kind = trade.finding(story.finding.kind);
  std::string words = "Finding " + std::to_string(story.number) + ": ";
  words += kind == nullptr ? story.finding.kind : kind->words;
  const std::string& place = story.finding.part.empty() ? story.finding.place : story.finding.part;
  if (!place.empty()) words += ", " + place;
  return words + "; " + std::string(severity_names[static_cast<std::size_t>(story.finding.severity)]);
}

bool is_of(const FindingStory& story, RecordId finding, const Survey& survey) {
  RecordId id = story.finding.id, before = story.finding.supersedes;
  while (finding != 0 && id != finding && before != 0) {
    id = before;
    const auto old = std::ranges::find(survey.superseded, id, &Finding::id);
    before = old == survey.superseded.end() ? 0 : old->supersedes;
  }
  return finding != 0 && id == finding;
}

WorkSheet work_sheet_of(const VisitForPaper& visit) {
  if (std::ranges::none_of(visit.jobs, is_agreed)) {
    throw Refused("steps: the owner has said yes to no repair of this visit yet");
  }
  WorkSheet sheet{.head = head_of(visit), .instrument = visit.story.instrument.name, .owner = visit.story.owner.name};
  if (!visit.work.promises.empty()) sheet.promised = visit.work.promises.back().ready_on;
  for (const JobPlan& job : visit.jobs) {
    if (!is_agreed(job)) continue;
    if (sheet.before_all.empty()) {
      const HumidityGate& gate = job.plan.humidity;
      sheet.before_all = gate.words;
      if (!gate.overridden.empty()) sheet.before_all += " Work goes on all the same, by " + gate.overridden;
    }
    if (!job.plan.never.empty()) sheet.remarks.push_back(job.plan.name + ", never: " + job.plan.never);
    for (const JobStep& step : job.steps) {
      sheet.steps.push_back(sheet_step(job, step));
      if (step.state == StepState::done || step.step.materials.empty()) continue;
      const std::string wanted = step.step.name + ": " + step.step.materials;
      if (std::ranges::find(sheet.get_ready, wanted) == sheet.get_ready.end()) sheet.get_ready.push_back(wanted);
    }
  }
  return sheet;
}

ClaimTicket ticket_of(const VisitForPaper& visit, const std::string& code) {
  ClaimTicket ticket{.head = head_of(visit),
                     .number = std::to_string(visit.visit.visit.id),
                     .owner = visit.story.owner.name,
                     .instrument = visit.story.instrument.name,
                     .left_on = visit.visit.visit.date,
                     .to_be_done = shortened(visit.visit.visit.reason, 300),
                     .code = code};
  if (!visit.work.promises.empty()) ticket.promised = visit.work.promises.back().ready_on;
  return ticket;
}

}  // namespace tailblock
