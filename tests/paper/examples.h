#pragma once

// One of each of the shop's papers. Everything in them is invented.

#include <cmath>

#include "paper/calendar.h"
#include "paper/claim_ticket.h"
#include "paper/estimate_paper.h"
#include "paper/invoice.h"
#include "paper/owners_report.h"
#include "paper/work_sheet.h"

namespace tailblock::testing {

inline Date on(int year, unsigned month, unsigned day) {
  return Date(std::chrono::year(year) / std::chrono::month(month) / std::chrono::day(day));
}

inline PaperHead invented_head(const std::string& reference) {
  return {.shop = {.shop = "Under the Stairs, an invented shop",
                   .lines = {"3 Invented Lane, Anytown", "telephone 000 000 000", "tax number XX 000 000 000"}},
          .day = on(2026, 2, 20),
          .reference = reference};
}

inline Shape shape(ShapeKind kind, std::vector<double> points, Ink ink, double size, const std::string& words = {}) {
  return {.kind = kind, .points_mm = std::move(points), .ink = ink, .size_mm = size, .words = words};
}

/// A top with its soundhole and bridge, a crack and a lifting bridge marked on it.
inline Picture invented_drawing() {
  Picture picture{
      .width_mm = 150, .height_mm = 54, .shapes = {}, .says = "The top, a crack and a lifted bridge marked."};
  Shape outline{.kind = ShapeKind::area, .points_mm = {}, .ink = Ink::wash};
  for (int i = 0; i < 120; ++i) {
    const double turn = 2 * 3.14159265358979 * i / 120, x = std::cos(turn), y = std::sin(turn);
    const double waist = 24 - 5 * std::exp(-14 * (x - 0.15) * (x - 0.15)) - 5 * (x + 1) / 2;
    outline.points_mm.push_back(75 + 46 * x);
    outline.points_mm.push_back(27 + waist * y);
  }
  Shape edge = outline;
  edge.kind = ShapeKind::line;
  edge.ink = Ink::ink;
  edge.points_mm.push_back(edge.points_mm[0]);
  edge.points_mm.push_back(edge.points_mm[1]);
  picture.shapes = {outline, edge};
  picture.shapes.push_back(shape(ShapeKind::ring, {92, 27}, Ink::ink, 13));
  picture.shapes.push_back(shape(ShapeKind::blocks, {52, 18, 57, 36}, Ink::wood, 1));
  Shape crack{.kind = ShapeKind::line, .points_mm = {31, 34, 40, 34.6, 50, 35}, .ink = Ink::accent, .thick_mm = 0.6};
  picture.shapes.push_back(crack);
  picture.shapes.push_back(shape(ShapeKind::words, {37, 39}, Ink::accent, 3, "1"));
  Shape lift{.kind = ShapeKind::line, .points_mm = {51, 18, 51, 36}, .ink = Ink::accent, .thick_mm = 0.8};
  picture.shapes.push_back(lift);
  picture.shapes.push_back(shape(ShapeKind::words, {46, 24}, Ink::accent, 3, "2"));
  return picture;
}

inline YearBand invented_band(const std::string& side, double middle) {
  YearBand band{.side = side,
                .low_mm = {},
                .lower_mm = {},
                .median_mm = {},
                .upper_mm = {},
                .high_mm = {},
                .lowest_clean_mm = middle - 0.42,
                .highest_comfortable_mm = middle + 0.55,
                .today_mm = middle - 0.3};
  for (int day = 0; day < 365; ++day) {
    const double height = middle - 0.33 * std::cos(2 * 3.14159265358979 * (day - 10) / 365.0);
    const double spread = 0.06 + 0.0003 * day;
    band.low_mm.push_back(height - 2.4 * spread);
    band.lower_mm.push_back(height - spread);
    band.median_mm.push_back(height);
    band.upper_mm.push_back(height + spread);
    band.high_mm.push_back(height + 2.4 * spread);
  }
  return band;
}

inline OwnersReport example_report() {
  OwnersReport report{.head = invented_head("2026-014"),
                      .owner = "Zofia Łęcka-Désirée (invented)",
                      .instrument = "Mid-size flat-top, spruce and mahogany, about thirty years old",
                      .arrived = on(2026, 2, 3)};
  report.ready = on(2026, 2, 20);
  report.lives = "a heated flat; 24 % in January, 57 % in July";
  report.wish = "It buzzes since Christmas, and there is a line in the top behind the bridge.";
  report.summary =
      "The guitar had dried out with the heating. Most of the buzz was the season: after nine days at 46 % the strings "
      "stood 0.4 mm higher without any work. What was left of it is a lifted bridge and a crack that has now been "
      "closed "
      "and cleated. No bone was cut.";
  report.findings = {
      {1, "Top, behind the bridge, bass side", "Crack along the grain, 62 mm", "open 0.1 mm at 31 %, closed at 46 %",
       "sure: seen with a light inside", ReportedFinding::Outcome::done,
       "It moved under the thumb and would have grown."},
      {2, "Bridge, back edge", "Lifted, a 0.10 mm feeler goes in 6 mm", "slight", "sure", ReportedFinding::Outcome::done,
       "A bridge that lifts goes on lifting under the strings."},
      {3, "X brace, bass leg", "Loose at its end over 15 mm, perhaps", "slight if it is",
       "doubtful: heard by tapping, no "
       "feeler goes in",
       ReportedFinding::Outcome::can_wait, "To be looked at again at the next visit."},
      {4, "Frets 1 to 3", "Worn 0.2 mm under the plain strings", "usual for its age", "sure",
       ReportedFinding::Outcome::left_alone, "They play clean; a dressing now would spend metal for nothing."},
      {5, "Finish", "Fine checks round the soundhole", "", "sure", ReportedFinding::Outcome::left_alone,
       "The finish is the first one. Touching it would lower what the instrument is worth."}};
  report.drawing = invented_drawing();
  report.drawing_caption = "The top from outside. 1 the crack, 2 the edge of the bridge that had lifted.";
  report.photos = {{7, "1: crack"}, {8, "2: bridge lifting"}, {7, "1: crack, again"}, {9, "3: brace loose"}};
  report.done = {
      "Brought to 46 % relative humidity over nine days before anything was glued or measured.",
      "Crack behind the bridge closed with hot hide glue, and five spruce cleats of 1.8 mm glued across it inside.",
      "Bridge taken off, both faces cleaned, glued with hot hide glue and clamped for 24 hours.",
      "New strings of the same weight, set up, every note played."};
  report.left_alone = {"The frets, the nut and the saddle: nothing was filed.",
                       "The finish: no solvent, no polish, no retouching."};
  report.readings = {
      {"String height over fret 12, bass", "2.05 mm (.081, 5/64 + .003)", "2.42 mm (.095, 6/64 + .002)", ""},
      {"String height over fret 12, treble", "1.60 mm (.063, 4/64)", "1.88 mm (.074, 5/64 - .004)", ""},
      {"Relief at fret 6", "0.10 mm (.004)", "0.18 mm (.007)", "the rod was not turned"},
      {"Saddle over the bridge, middle", "3.1 mm (.122, 1/8 - .003)", "3.1 mm (.122, 1/8 - .003)", "not touched"},
      {"Belly behind the bridge, 300 mm rule", "1.9 mm", "2.6 mm", ""}};
  report.air_before = StatedAir{on(2026, 2, 3), humidity_percent(31), celsius(20)};
  report.air_after = StatedAir{on(2026, 2, 20), humidity_percent(46), celsius(21)};
  report.year =
      YearOnPaper{on(2026, 2, 20), on(2026, 2, 20), {invented_band("bass", 2.55), invented_band("treble", 2.0)}};
  report.year_in_words =
      "In this home the bass string will stand about 0.3 mm lower in February than now, and as much higher in August. "
      "In a "
      "dry February it may buzz when it is played hard.";
  report.keep_from = humidity_percent(42);
  report.keep_to = humidity_percent(55);
  report.care = {
      "In winter keep it in its closed case with a humidifier made for instruments, and look at the hygrometer once a "
      "week.",
      "Never lean it on a radiator, and do not leave it in a car.",
      "If the strings suddenly stand lower than a coin is thick, loosen them by a tone and ring the shop."};
  report.uncertain = {
      "How much the strings move with the air is known from two visits only: the figure may be a third smaller or "
      "larger. A reading of both strings in August, sent to the shop, would halve that.",
      "The brace end was judged by ear. If a rattle comes, come back with it."};
  report.next_visit = "in August, for ten minutes: two readings, no charge.";
  return report;
}

inline EstimatePaper example_estimate() {
  EstimatePaper estimate{.head = invented_head("2026-009"),
                         .owner = "Zofia Łęcka-Désirée (invented)",
                         .instrument = "Mid-size flat-top, spruce and mahogany, about thirty years old"};
  estimate.good_until = on(2026, 3, 20);
  estimate.introduction =
      "The crack and the bridge belong together: both come from the dry air of this winter, and both are better mended "
      "now, while the guitar is at the right humidity.";
  estimate.ready = on(2026, 2, 27);
  estimate.do_now = WayToGo{"448.80 EUR", "6.2 (5.2 – 7.3)", "A top that is whole, and a bridge that stays down.",
                            "Little. Hide glue can be opened again."};
  estimate.can_wait = WayToGo{"994.80 EUR", "15.2 (12.0 – 18.8)", "All of that, and the brace seen to.",
                              "The first finish round the soundhole is gone for good."};
  estimate.leave_alone = WayToGo{.total = "nothing",
                                 .you_get = "Nothing is changed, nothing is spent.",
                                 .you_risk = "It will not play through another winter without damage."};
  estimate.lines = {{.what = "Bring to humidity",
                     .why = "Nothing is glued or measured before the wood is right.",
                     .when = WhenToDo::do_now,
                     .hours_low = 0.25,
                     .hours = 0.25,
                     .hours_high = 0.25,
                     .tax = "20 %",
                     .price = "15.00",
                     .answer = LineAnswer{true, "Z. Łęcka-Désirée", on(2026, 2, 5)}},
                    {.what = "Close the crack behind the bridge and cleat it",
                     .why = "62 mm along the grain; it moves under the thumb.",
                     .when = WhenToDo::do_now,
                     .hours_low = 2,
                     .hours = 2.4,
                     .hours_high = 3,
                     .wait = "about 2 days for glue",
                     .materials = "spruce, hide glue (4.00)",
                     .tax = "20 %",
                     .price = "148.00",
                     .risk = "the line stays visible: the finish is not touched"},
                    {.what = "Take the bridge off and glue it again",
                     .why = "A feeler of 0.10 mm goes in 6 mm.",
                     .when = WhenToDo::do_now,
                     .hours_low = 3,
                     .hours = 3.3,
                     .hours_high = 4,
                     .materials = "hide glue, strings (13.00)",
                     .tax = "20 %",
                     .price = "211.00",
                     .risk = "spruce fibres may come away with it; they are put back"},
                    {.what = "Glue the end of the brace",
                     .why = "Only if it is loose, which is not yet certain.",
                     .when = WhenToDo::can_wait,
                     .hours_low = 0.75,
                     .hours = 1,
                     .hours_high = 1.5,
                     .tax = "20 %",
                     .price = "60.00"},
                    {.what = "Remove the finish round the soundhole and spray again",
                     .why = "Asked for. We advise against it.",
                     .when = WhenToDo::can_wait,
                     .hours_low = 6,
                     .hours = 8,
                     .hours_high = 10,
                     .tax = "20 %",
                     .price = "395.00",
                     .risk = "the first finish is gone for good",
                     .cannot_be_undone = true,
                     .lowers_value = true,
                     .answer = LineAnswer{false, "Z. Łęcka-Désirée", on(2026, 2, 5)}},
                    {.what = "Dress the frets", .why = "They play clean.", .when = WhenToDo::leave_alone}};
  estimate.net = "374.00 EUR";
  estimate.taxes = {{"20 %", "374.00 EUR", "74.80 EUR"}};
  estimate.total = "448.80 EUR";
  estimate.terms = {"When something new is found, work stops and you are asked again.",
                    "A part that is taken out is yours; it goes back in the case."};
  return estimate;
}

inline Invoice example_invoice(int lines = 5) {
  Invoice invoice{.head = invented_head("2026-031"), .total = "515.76 EUR"};
  invoice.bill_to = {"Zofia Łęcka-Désirée (invented)", "8 Nowhere Street", "Anytown"};
  invoice.instrument = "Mid-size flat-top, spruce and mahogany, about thirty years old";
  invoice.supplied = on(2026, 2, 20);
  invoice.due = on(2026, 3, 6);
  invoice.lines = {
      {.what = "Bring to humidity", .quantity = "0.25 h", .unit_price = "60.00", .tax = "20 %", .amount = "15.00"},
      {.what = "Close the crack behind the bridge and cleat it",
       .remark = "five cleats",
       .quantity = "2.50 h",
       .unit_price = "60.00",
       .tax = "20 %",
       .amount = "150.00"},
      {.what = "Take the bridge off and glue it again",
       .quantity = "3.75 h",
       .unit_price = "60.00",
       .tax = "20 %",
       .amount = "225.00"},
      {.what = "Hide glue, spruce", .quantity = "1", .unit_price = "7.30", .tax = "20 %", .amount = "7.30"},
      {.what = "Strings, light", .quantity = "2 sets", .unit_price = "16.25", .tax = "20 %", .amount = "32.50"}};
  for (int i = 5; i < lines; ++i) {
    invoice.lines.push_back({.what = "Invented part number " + std::to_string(i),
                             .remark = i % 3 == 0 ? "with a remark that says a little more about it" : "",
                             .quantity = "1",
                             .unit_price = "0.00",
                             .tax = "20 %",
                             .amount = "0.00"});
  }
  invoice.net = "429.80 EUR";
  invoice.taxes = {{"20 %", "429.80 EUR", "85.96 EUR"}};
  invoice.paid = "100.00 EUR";
  invoice.left_to_pay = "415.76 EUR";
  invoice.how_to_pay = {"By transfer to account 00 0000 0000 (invented), reference 2026-031",
                        "or in the shop, by card or cash"};
  invoice.remarks = {"The work is guaranteed for a year in air between 42 and 55 % relative humidity."};
  return invoice;
}

inline WorkSheet example_work_sheet() {
  WorkSheet sheet{.head = invented_head("2026-014"), .instrument = "Mid-size flat-top, spruce and mahogany"};
  sheet.owner = "Zofia Łęcka-Désirée (invented)";
  sheet.place = "rack 4";
  sheet.promised = on(2026, 2, 27);
  sheet.before_all =
      "The guitar was read at 44 % on 12 Feb, its range is 42 to 50 %. Outside it nothing is glued and no height is "
      "measured. "
      "Strings off before step 1; the neck's rod is left as it is.";
  sheet.get_ready = {"Five spruce cleats 12 x 12 x 1.8 mm, grain across the crack",
                     "Hide glue, soaked an hour, at 60 °C", "Magnets or go-bars, clear of the braces; waxed paper"};
  sheet.steps = {
      {.what = "Glue the crack",
       .how =
           "Work warm glue in from above with a fingertip while the crack is flexed from inside; wipe off with a damp "
           "cloth at once.",
       .minutes = 35,
       .glue = "hot hide glue, open for about a minute",
       .clamps = "two cauls across, go-bars, light",
       .wait = "16 h in clamps",
       .air = "42 to 50 %, 20 °C or warmer",
       .check = "both edges level under a straight edge",
       .cautions = {"The pot is at 60 °C: hot water burns. Keep the cable out of the way of the instrument."},
       .done = true},
      {.what = "Glue five cleats",
       .how = "From the soundhole, the first 8 mm from the end of the crack, then every 13 mm.",
       .minutes = 45,
       .glue = "hot hide glue",
       .clamps = "magnets",
       .wait = "16 h"},
      {.what = "Take the bridge off",
       .how = "Warm the bridge with a silicone blanket, knife from the bass corner inwards, along the grain.",
       .minutes = 90,
       .check = "feeler all round before the knife",
       .cautions = {"Heat softens old finish: shield the top round the bridge.",
                    "A knife that slips cuts the hand that holds the guitar: both hands behind the edge."},
       .cannot_be_undone = true,
       .yes = RecordedYes{"Z. Łęcka-Désirée", "on the estimate", on(2026, 2, 5)}},
      {.what = "Scrape the finish back 1 mm under the bridge's edge",
       .how = "Only where the bridge covers it.",
       .minutes = 30,
       .cautions = {"Old finish may hold lead or celluloid: scrape damp, no sanding, dust mask, nothing that sparks."},
       .cannot_be_undone = true},
      {.what = "Glue the bridge",
       .minutes = 40,
       .glue = "hot hide glue",
       .clamps = "two deep clamps through the soundhole, caul under the plate",
       .wait = "24 h in clamps, strings after 3 days",
       .air = "42 to 50 %"}};
  sheet.remarks = {"Cloths with linseed oil heat themselves: lay them flat outside or drown them, never in a heap."};
  return sheet;
}

inline ClaimTicket example_ticket() {
  ClaimTicket ticket{.head = invented_head("2026-014"),
                     .number = "014",
                     .owner = "Zofia Łęcka-Désirée (invented)",
                     .instrument = "Mid-size flat-top, spruce and mahogany",
                     .left_on = on(2026, 2, 3)};
  ticket.promised = on(2026, 2, 27);
  ticket.came_with = {"hard case", "strap", "capo"};
  ticket.to_be_done = "crack behind the bridge, bridge lifts, look at the frets";
  ticket.code = "https://shop.example/ticket/014?key=7Q2M-XK";
  ticket.terms = {"We keep your instrument insured and at 42 to 50 % relative humidity.",
                  "Without this half we ask for a paper with your name."};
  return ticket;
}

inline Calendar example_calendar() {
  using namespace std::chrono;
  const sys_seconds stamped = sys_days(2026y / 2 / 20) + 8h + 5min;
  Calendar calendar{.name = "Under the Stairs: bench (invented)"};
  calendar.events = {
      {.uid = "promise-14@invented.example",
       .title = "Promised: Mid-size flat-top, Zofia Łęcka-Désirée",
       .about = "Crack, bridge; strings after 3 days.\nHolds with 80 %; ask again, if a step slips \\ waits.",
       .place = "3 Invented Lane, Anytown",
       .category = "Promise",
       .when = AllDay{on(2026, 2, 27), on(2026, 2, 27)},
       .stamped = stamped,
       .changes = 1},
      {.uid = "cure-88@invented.example",
       .title = "Cure ends: bridge of 014 \u2013 clamps off, Ærø ☂ 日本語 a title that is long enough to be folded, "
                "more than once",
       .category = "Cure",
       .when = Timed{sys_days(2026y / 2 / 21) + 7h + 30min, minutes(15)},
       .stamped = stamped},
      {.uid = "cure-89@invented.example",
       .title = "Cure ends: cleats of 011",
       .category = "Cure",
       .when = Timed{sys_days(2026y / 2 / 28) + 23h + 59min},
       .stamped = stamped,
       .changes = 2,
       .called_off = true}};
  return calendar;
}

}  // namespace tailblock::testing
