#include "paper/work_sheet.h"

#include <algorithm>

#include "season/words.h"

namespace tailblock {
namespace {

void add(TableCell& cell, const std::string& lead, const std::string& text, Voice voice = Voice::plain) {
  if (!text.empty()) cell.words.push_back({text, lead, voice});
}

std::string consent(const WorkStep& step) {
  if (!step.yes) return "No yes is recorded. Do not begin this step; ask the owner first.";
  return "Yes from " + step.yes->by + ", " + day_in_words(step.yes->day) +
         (step.yes->how.empty() ? "" : ", " + step.yes->how) + ".";
}

/// The hazards of the steps that are left, each once, in the order in which they are met.
std::vector<WorkHazard> hazards_of(const WorkSheet& sheet) {
  std::vector<WorkHazard> hazards;
  for (const WorkStep& step : sheet.steps) {
    if (step.done) continue;
    for (const WorkHazard& one : step.hazards) {
      if (std::ranges::find(hazards, one.name, &WorkHazard::name) == hazards.end()) hazards.push_back(one);
    }
  }
  return hazards;
}

/// `A` to `Z`, then `A2`.
std::string letter_of(std::size_t place) {
  std::string letter(1, static_cast<char>('A' + place % 26));
  if (place >= 26) letter += std::to_string(place / 26 + 1);
  return letter;
}

std::string hazards_in_words(const WorkStep& step, const std::vector<WorkHazard>& all) {
  std::string words;
  for (const WorkHazard& one : step.hazards) {
    const auto at = std::ranges::find(all, one.name, &WorkHazard::name);
    words += words.empty() ? "" : "; ";
    words += letter_of(static_cast<std::size_t>(at - all.begin())) + " " + one.name;
  }
  return words;
}

/// The number of an earlier step that says the same; 0: there is none.
std::size_t said_before(const WorkSheet& sheet, std::size_t place) {
  const WorkStep& step = sheet.steps[place];
  for (std::size_t i = 0; i < place; ++i) {
    const WorkStep& before = sheet.steps[i];
    if (!before.done && before.what == step.what && before.how == step.how && before.cautions == step.cautions &&
        before.glue == step.glue && before.clamps == step.clamps && before.air == step.air) {
      return i + 1;
    }
  }
  return 0;
}

TableRow row_of(const WorkSheet& sheet, std::size_t place, const std::vector<WorkHazard>& hazards) {
  const WorkStep& step = sheet.steps[place];
  TableCell tick;
  tick.boxes = {{std::to_string(place + 1), step.done}};
  TableCell what = cell_of(step.what, Voice::strong);
  const std::string minutes = step.minutes > 0 ? std::to_string(step.minutes) : "";
  if (step.done) return {.cells = {tick, what, cell_of(minutes), {}}};
  if (step.cannot_be_undone) {
    add(what, step.yes ? "Cannot be undone." : "STOP. Cannot be undone.", consent(step), Voice::caution);
  }
  add(what, "Can hurt:", hazards_in_words(step, hazards), Voice::caution);
  if (const std::size_t before = said_before(sheet, place); before > 0) {
    add(what, "", "Cautions and all else as at step " + std::to_string(before) + ".");
  } else {
    for (const std::string& caution : step.cautions) add(what, "Caution:", caution, Voice::caution);
    add(what, "", step.how);
    add(what, "Glue:", step.glue);
    add(what, "Kept in:", step.clamps);
    add(what, "Air:", step.air);
  }
  add(what, "Wait:", step.wait);
  add(what, "Check:", step.check);
  return {.cells = {tick, what, cell_of(minutes), {}}};
}

void add_list(Document& document, const std::string& heading, const std::vector<std::string>& items) {
  if (items.empty()) return;
  document.blocks.push_back(Heading{2, heading});
  Bullets bullets;
  for (const std::string& item : items) bullets.items.push_back({item});
  document.blocks.push_back(std::move(bullets));
}

void add_hazards(Document& document, const std::vector<WorkHazard>& hazards) {
  if (hazards.empty()) return;
  document.blocks.push_back(Heading{2, "What can hurt"});
  document.blocks.push_back(
      Paragraph{{"Read before the first step; each step names its letters. The data sheet of the product in the hand, "
                 "local rules and licensed people come before this sheet.",
                 "", Voice::caution}});
  Table table{.caption = "", .columns = {{"", 0.3}, {"Hazard, and what keeps from it", 8}}};
  for (std::size_t i = 0; i < hazards.size(); ++i) {
    table.rows.push_back({.cells = {cell_of(letter_of(i), Voice::strong), cell_of(hazards[i].text)}});
  }
  document.blocks.push_back(std::move(table));
}

void require_sensible(const WorkSheet& sheet) {
  require_valid(sheet);
  require_said("instrument", sheet.instrument);
  for (std::size_t i = 0; i < sheet.steps.size(); ++i) {
    const std::string where = "steps[" + std::to_string(i) + "].";
    require_said(where + "what", sheet.steps[i].what);
    if (sheet.steps[i].yes) require_said(where + "yes.by", sheet.steps[i].yes->by);
  }
}

}  // namespace

void describe(FieldVisitor& visit, RecordedYes& yes) {
  visit.text({"by", "who said yes"}, yes.by, 200);
  visit.text({"how", "on paper, by telephone", Need::has_default}, yes.how, 120);
  visit.date({"day", "it was said"}, yes.day);
}

void describe(FieldVisitor& visit, WorkHazard& hazard) {
  visit.text({"name", "as a step says it"}, hazard.name, 200);
  visit.text({"text", "harm, what keeps from it, limits"}, hazard.text, 2000);
}

void describe(FieldVisitor& visit, WorkStep& step) {
  visit.text({"what", "the step"}, step.what, 200);
  visit.text({"how", "the way of doing it", Need::has_default}, step.how, 1500);
  visit.integer({"minutes", "of hands-on work", Need::has_default}, step.minutes, {0, 100000, "min"});
  visit.text({"glue", "which, and how it is made ready", Need::has_default}, step.glue, 300);
  visit.text({"clamps", "which and how many", Need::has_default}, step.clamps, 300);
  visit.text({"wait", "after the hands-on part", Need::has_default}, step.wait, 300);
  visit.text({"air", "what the air must be", Need::has_default}, step.air, 300);
  visit.text({"check", "what to measure before going on", Need::has_default}, step.check, 300);
  visit.texts({"cautions", "read before the step", Need::has_default}, step.cautions, 800, {0, 12});
  list(visit, {"hazards", "what can hurt at it", Need::has_default}, step.hazards, {0, 30});
  visit.flag({"cannot_be_undone", "asks for a recorded yes", Need::has_default}, step.cannot_be_undone);
  maybe(visit, {"yes", "as it was recorded"}, step.yes,
        [&](const Field& field, RecordedYes& value) { object(visit, field, value); });
  visit.flag({"done", "already", Need::has_default}, step.done);
}

void describe(FieldVisitor& visit, WorkSheet& sheet) {
  object(visit, {"head", "of the paper"}, sheet.head);
  visit.text({"instrument", "what it is"}, sheet.instrument, 300);
  visit.text({"owner", "whose", Need::has_default}, sheet.owner, 200);
  visit.text({"place", "where it stands", Need::has_default}, sheet.place, 120);
  maybe(visit, {"promised", "for when"}, sheet.promised,
        [&](const Field& field, Date& value) { visit.date(field, value); });
  visit.text({"before_all", "to be known before any step", Need::has_default}, sheet.before_all, 1000);
  visit.texts({"get_ready", "parts, materials, fixtures", Need::has_default}, sheet.get_ready, 300, {0, 60});
  list(visit, {"steps", "in their order"}, sheet.steps, {1, 200});
  visit.texts({"remarks", "at the end", Need::has_default}, sheet.remarks, 800, {0, 20});
}

Document work_sheet(const WorkSheet& sheet) {
  require_sensible(sheet);
  Document document = document_of(sheet.head, "Work sheet", sheet.instrument,
                                  "Work sheet " + sheet.head.reference + ", " + day_in_words(sheet.head.day));
  Facts facts;
  add_fact(facts, "Owner", sheet.owner);
  add_fact(facts, "Promised", sheet.promised ? day_in_words(*sheet.promised) : "");
  add_fact(facts, "Stands", sheet.place);
  add_fact(facts, "Printed", day_in_words(sheet.head.day));
  document.blocks.push_back(std::move(facts));
  if (!sheet.before_all.empty()) {
    document.blocks.push_back(
        Notice{.kind = Notice::Kind::caution, .title = "Before anything", .words = {{sheet.before_all}}});
  }
  add_list(document, "Get ready", sheet.get_ready);
  const std::vector<WorkHazard> hazards = hazards_of(sheet);
  add_hazards(document, hazards);
  document.blocks.push_back(Heading{2, "Steps"});
  Table table{.caption = "", .columns = {{"Done", 0.62}, {"Step", 7.2}, {"Min", 0.6, Hold::end}, {"Took, remarks", 1.1}}};
  for (std::size_t i = 0; i < sheet.steps.size(); ++i) table.rows.push_back(row_of(sheet, i, hazards));
  document.blocks.push_back(std::move(table));
  add_list(document, "Remarks", sheet.remarks);
  document.blocks.push_back(
      Paragraph{{"The data sheet of the product in the hand, local rules and licensed people come before this sheet.",
                 "", Voice::soft}});
  return document;
}

}  // namespace tailblock
