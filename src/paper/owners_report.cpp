#include "paper/owners_report.h"

#include <algorithm>
#include <array>

#include "paper/photo.h"
#include "season/words.h"

namespace tailblock {
namespace {

constexpr std::array<std::string_view, 5> outcomes{"done", "in_hand", "can_wait", "left_alone", "open"};
constexpr std::array<std::string_view, 5> outcome_words{"Done", "Agreed, not finished yet", "Can wait", "Left alone",
                                                        "Not decided yet"};

std::string in_words(const StatedAir& air) {
  return decimals(in_percent(air.relative_humidity), 0) + " % RH, " + decimals(in_celsius(air.temperature), 0) +
         " °C, " + day_in_words(air.day);
}

void add_list(Document& document, const std::string& heading, const std::vector<std::string>& items) {
  if (items.empty()) return;
  document.blocks.push_back(Heading{2, heading});
  Bullets bullets;
  for (const std::string& item : items) bullets.items.push_back({item});
  document.blocks.push_back(std::move(bullets));
}

void add_findings(Document& document, const OwnersReport& report) {
  if (report.findings.empty() && !report.drawing) return;
  document.blocks.push_back(Heading{2, "What was found"});
  if (report.drawing) document.blocks.push_back(Figure{*report.drawing, report.drawing_caption});
  if (report.findings.empty()) return;
  Table table{.caption = "",
              .columns = {{"No.", 0.32}, {"Where", 1.0}, {"Finding", 2.0}, {"What came of it", 1.9}},
              .first_names_row = true};
  for (const ReportedFinding& finding : report.findings) {
    TableCell found = cell_of(finding.what);
    std::string how = finding.how_bad;
    if (!how.empty() && !finding.how_sure.empty()) how += "; ";
    how += finding.how_sure;
    if (!how.empty()) found.words.push_back({how, "", Voice::soft});
    TableCell came;
    came.words.push_back(
        {finding.because, std::string(outcome_words[static_cast<std::size_t>(finding.outcome)]) + "."});
    const std::string number = finding.number == 0 ? "" : std::to_string(finding.number);
    table.rows.push_back({.cells = {cell_of(number, Voice::strong), cell_of(finding.where), found, came}});
  }
  document.blocks.push_back(std::move(table));
}

void add_photos(Document& document, const OwnersReport& report, const PhotoOfNumber& photo) {
  if (report.photos.empty()) return;
  PhotoRow row;
  for (const ReportedPhoto& one : report.photos) {
    PhotoRow::Shot shot{.jpeg = photo(one.photo_id), .caption = one.caption};
    const JpegSize size = jpeg_size(shot.jpeg);
    shot.width_px = size.width_px;
    shot.height_px = size.height_px;
    row.shots.push_back(std::move(shot));
  }
  document.blocks.push_back(std::move(row));
}

void add_readings(Document& document, const OwnersReport& report) {
  if (report.readings.empty()) return;
  const auto any = [&](std::string BeforeAndAfter::*said) {
    return std::ranges::any_of(report.readings, [&](const BeforeAndAfter& one) { return !(one.*said).empty(); });
  };
  const bool after = any(&BeforeAndAfter::after), remarks = any(&BeforeAndAfter::remark);
  document.blocks.push_back(Heading{2, after ? "Before and after" : "What was read"});
  Table table{.caption = "",
              .columns = {{"Measure", 1.45}, {after ? "Before" : "As found", 1.5}},
              .first_names_row = true};
  if (after) table.columns.push_back({"After", 1.5});
  if (remarks) table.columns.push_back({"Remark", 0.95});
  const auto add = [&](const std::string& what, const std::string& found, const std::string& left,
                       const std::string& remark) {
    TableRow row{.cells = {cell_of(what), cell_of(found.empty() ? "not read" : found)}};
    if (after) row.cells.push_back(cell_of(left.empty() ? "not read" : left));
    if (remarks) row.cells.push_back(cell_of(remark, Voice::soft));
    table.rows.push_back(std::move(row));
  };
  for (const BeforeAndAfter& one : report.readings) add(one.what, one.before, one.after, one.remark);
  const auto air = [](const std::optional<StatedAir>& of) { return of ? in_words(*of) : std::string(); };
  add("Air", air(report.air_before), air(report.air_after), "");
  document.blocks.push_back(std::move(table));
  if (report.air_before && (report.air_after || !after)) return;
  document.blocks.push_back(
      Paragraph{{"Wood moves with the air. Where the air was not read, part of a difference may be the season's.", "",
                 Voice::soft}});
}

void add_year(Document& document, const OwnersReport& report) {
  if (!report.year) return;
  document.blocks.push_back(Heading{2, "The year ahead"});
  if (!report.year_in_words.empty()) document.blocks.push_back(Paragraph{{report.year_in_words}});
  std::string caption =
      "The line is the middle of what to expect of the string height over fret 12; the darker band holds it on 1 day "
      "in "
      "2, the lighter on 9 in 10.";
  bool read_today = false, limited = false;
  for (const YearBand& side : report.year->sides) {
    read_today = read_today || side.today_mm;
    limited = limited || side.lowest_clean_mm > 0 || side.highest_comfortable_mm > 0;
  }
  if (read_today) caption += " The ring is the height as read last.";
  if (limited) caption += " Broken lines are the limits for this player.";
  document.blocks.push_back(Figure{year_picture(*report.year), caption});
}

void add_care(Document& document, const OwnersReport& report) {
  if (!report.keep_from && report.care.empty()) return;
  document.blocks.push_back(Heading{2, "Keeping it well"});
  if (report.keep_from) {
    const std::string from = decimals(in_percent(*report.keep_from), 0), to = decimals(in_percent(*report.keep_to), 0);
    document.blocks.push_back(Notice{
        .kind = Notice::Kind::plain,
        .title = "Keep the air round it between " + from + " and " + to + " % relative humidity.",
        .words = {
            {"Measure it where the instrument lives: a small hygrometer in the case or the room, not a forecast."}}});
  }
  Bullets bullets;
  for (const std::string& item : report.care) bullets.items.push_back({item});
  if (!bullets.items.empty()) document.blocks.push_back(std::move(bullets));
}

void require_sensible(const OwnersReport& report) {
  require_valid(report);
  require_said("owner", report.owner);
  require_said("instrument", report.instrument);
  if (report.keep_from.has_value() != report.keep_to.has_value()) {
    throw Refused("keep_from, keep_to: one is given without the other");
  }
  if (report.keep_from && in_fraction(*report.keep_from) >= in_fraction(*report.keep_to)) {
    throw Refused("keep_from: " + plain_number(in_percent(*report.keep_from)) + " % is not under keep_to, " +
                  plain_number(in_percent(*report.keep_to)) + " %");
  }
}

}  // namespace

void describe(FieldVisitor& visit, StatedAir& air) {
  visit.date({"day", "the air was read"}, air.day);
  relative_humidity(visit, {"relative_humidity", "0..1"}, air.relative_humidity);
  temperature(visit, {"temperature_c", "of the air"}, air.temperature, {-30, 60, "C"});
}

void describe(FieldVisitor& visit, ReportedFinding& finding) {
  visit.integer({"number", "as on the drawing; 0: it has none", Need::has_default}, finding.number, {0, 100000, ""});
  visit.text({"where", "place on the instrument"}, finding.where, 300);
  visit.text({"what", "the fault"}, finding.what, 2000);
  visit.text({"how_bad", "extent and severity in words", Need::has_default}, finding.how_bad, 600);
  visit.text({"how_sure", "certainty in words", Need::has_default}, finding.how_sure, 200);
  choice(visit, {"outcome", "what came of it"}, finding.outcome, outcomes);
  visit.text({"because", "why", Need::has_default}, finding.because, 21000);
}

void describe(FieldVisitor& visit, ReportedPhoto& photo) {
  visit.integer({"photo_id", "in the shop's book"}, photo.photo_id, {1, 2147483647, ""});
  visit.text({"caption", "what it shows", Need::has_default}, photo.caption, 300);
}

void describe(FieldVisitor& visit, BeforeAndAfter& reading) {
  visit.text({"what", "the measure"}, reading.what, 120);
  visit.text({"before", "as found", Need::has_default}, reading.before, 80);
  visit.text({"after", "as left", Need::has_default}, reading.after, 80);
  visit.text({"remark", "on the measure", Need::has_default}, reading.remark, 200);
}

void describe(FieldVisitor& visit, OwnersReport& report) {
  object(visit, {"head", "of the paper"}, report.head);
  visit.text({"owner", "whose instrument it is"}, report.owner, 200);
  visit.text({"instrument", "what it is"}, report.instrument, 300);
  visit.text({"lives", "where the instrument lives", Need::has_default}, report.lives, 200);
  visit.date({"arrived", "day it came in"}, report.arrived);
  maybe(visit, {"ready", "day it was ready"}, report.ready,
        [&](const Field& field, Date& value) { visit.date(field, value); });
  visit.text({"wish", "what the owner asked for", Need::has_default}, report.wish, 20000);
  visit.text({"summary", "the visit in a few sentences", Need::has_default}, report.summary, 2000);
  list(visit, {"findings", "faults found"}, report.findings, {0, 200});
  const auto nested = [&](const Field& field, auto& value) { object(visit, field, value); };
  maybe(visit, {"drawing", "the instrument with its findings marked"}, report.drawing, nested);
  visit.text({"drawing_caption", "under the drawing", Need::has_default}, report.drawing_caption, 400);
  list(visit, {"photos", "of what was found"}, report.photos, {0, 60});
  visit.texts({"done", "work done", Need::has_default}, report.done, 21000, {0, 100});
  visit.texts({"left_alone", "what was left, and why", Need::has_default}, report.left_alone, 21000, {0, 100});
  visit.texts({"still_open", "not decided yet", Need::has_default}, report.still_open, 21000, {0, 100});
  list(visit, {"readings", "before and after"}, report.readings, {0, 200});
  maybe(visit, {"air_before", "air of the readings as found"}, report.air_before, nested);
  maybe(visit, {"air_after", "air of the readings as left"}, report.air_after, nested);
  maybe(visit, {"year", "the year ahead"}, report.year, nested);
  visit.text({"year_in_words", "what the year will do", Need::has_default}, report.year_in_words, 1000);
  const auto humidity = [&](const Field& field, RelativeHumidity& value) { relative_humidity(visit, field, value); };
  maybe(visit, {"keep_from", "driest air it should live in, 0..1"}, report.keep_from, humidity);
  maybe(visit, {"keep_to", "dampest air it should live in, 0..1"}, report.keep_to, humidity);
  visit.texts({"care", "in plain words", Need::has_default}, report.care, 800, {0, 50});
  visit.texts({"uncertain", "what is not known well", Need::has_default}, report.uncertain, 800, {0, 50});
  visit.text({"next_visit", "when to bring it again", Need::has_default}, report.next_visit, 400);
}

Document owners_report(const OwnersReport& report, const PhotoOfNumber& photo) {
  require_sensible(report);
  Document document = document_of(report.head, "Report on your instrument", report.instrument,
                                  "Report " + report.head.reference + ", " + day_in_words(report.head.day));
  Facts facts;
  add_fact(facts, "Owner", report.owner);
  add_fact(facts, "Arrived", day_in_words(report.arrived));
  add_fact(facts, "Lives", report.lives);
  add_fact(facts, "Ready", report.ready ? day_in_words(*report.ready) : "");
  document.blocks.push_back(std::move(facts));
  if (!report.wish.empty()) document.blocks.push_back(Paragraph{{report.wish, "You asked:"}});
  if (!report.summary.empty()) document.blocks.push_back(Paragraph{{report.summary}});
  add_findings(document, report);
  add_photos(document, report, photo);
  add_list(document, "What was done", report.done);
  add_list(document, "What was left alone", report.left_alone);
  add_list(document, "What is not decided yet", report.still_open);
  add_readings(document, report);
  add_year(document, report);
  add_care(document, report);
  if (!report.uncertain.empty()) {
    document.blocks.push_back(Heading{2, "What is not certain"});
    Notice notice;
    for (const std::string& item : report.uncertain) notice.words.push_back({item});
    document.blocks.push_back(std::move(notice));
  }
  if (!report.next_visit.empty()) document.blocks.push_back(Paragraph{{report.next_visit, "Next visit:"}});
  return document;
}

}  // namespace tailblock
