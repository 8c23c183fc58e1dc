#include "http/ask_fields.h"
#include "http/endpoints.h"
#include "quantity/trade_notation.h"

namespace tailblock {
namespace {

constexpr std::size_t words = 1000;
constexpr Range any_number{-1e9, 1e9, ""};
constexpr Count rows{0, 10000};

/// One line a form may offer.
struct Offered {
  std::string id;
  std::string name;
  std::string note;
};
void describe(FieldVisitor& visit, Offered& offered) {
  visit.text({"id", "as records name it"}, offered.id, words);
  visit.text({"name", "as a form shows it"}, offered.name, words);
  visit.text({"note", "what to know before choosing it"}, offered.note, words);
}

struct FormTables {
  std::vector<Measure> measures;
  std::vector<Gauge> gauges;
  std::vector<InterventionKind> interventions;
  std::vector<Offered> string_sets, tunings, attacks, species, body_designs, work_skills;
};
void describe(FieldVisitor& visit, FormTables& tables) {
  list(visit, {"measures", "what can be read"}, tables.measures, rows);
  list(visit, {"gauges", "with what"}, tables.gauges, rows);
  list(visit, {"interventions", "work that moves the strings"}, tables.interventions, rows);
  list(visit, {"string_sets", "sets by gauge"}, tables.string_sets, rows);
  list(visit, {"tunings", "tunings"}, tables.tunings, rows);
  list(visit, {"attacks", "how hard a player plays"}, tables.attacks, rows);
  list(visit, {"species", "woods of tops"}, tables.species, rows);
  list(visit, {"body_designs", "body sizes"}, tables.body_designs, rows);
  list(visit, {"work_skills", "sorts of work that one may leave to others"}, tables.work_skills, rows);
}

/// `mid_size` as a person reads it.
std::string in_words(std::string_view id) {
  std::string text(id);
  for (char& letter : text) {
    if (letter == '_') letter = ' ';
  }
  return text;
}

std::string gauges_of(const StringSet& set) {
  std::string text;
  for (const GuitarString& string : set.strings) {
    text += (text.empty() ? "" : " ") + as_trade(string.diameter.value_or(mm(0))).thousandths;
  }
  return text;
}

FormTables form_tables(const Shop& shop) {
  FormTables tables{.measures = shop.trade.measures,
                    .gauges = shop.trade.gauges,
                    .interventions = shop.trade.interventions,
                    .string_sets = {},
                    .tunings = {},
                    .attacks = {},
                    .species = {},
                    .body_designs = {},
                    .work_skills = {}};
  for (const auto& set : shop.tables.string_sets) tables.string_sets.push_back({set.name, set.name, gauges_of(set)});
  for (const auto& tuning : shop.tables.tunings) tables.tunings.push_back({tuning.name, tuning.name, ""});
  for (const auto& level : shop.tables.attacks) {
    tables.attacks.push_back({level.name, level.name,
                              as_trade(level.attack.amplitude_bass).millimetres + " bass, " +
                                  as_trade(level.attack.amplitude_treble).millimetres + " treble, toward the board"});
  }
  for (const auto& wood : shop.tables.species.species) {
    tables.species.push_back({wood.name, wood.name, wood.provisional ? "some figures from memory or by analogy" : ""});
  }
  for (const auto& skill : shop.tables.repairs.materials.skills) {
    tables.work_skills.push_back({skill.id, skill.name, skill.covers});
  }
  for (std::size_t i = 0; i < body_size_names.size(); ++i) {
    tables.body_designs.push_back(
        {std::string(body_size_names[i]), in_words(body_size_names[i]),
         as_trade(shop.tables.designs.lower_bout_width[i]).millimetres + " across the lower bout"});
  }
  return tables;
}

struct ShopCard {
  std::string name;
  bool invented = false;
  Date today;
  int instruments = 0;
  int schema_number = 0;
};
void describe(FieldVisitor& visit, ShopCard& card) {
  visit.text({"name", "what the shop calls itself"}, card.name, words);
  visit.flag({"invented", "true in the demonstration: nobody in it exists"}, card.invented);
  visit.date({"today", "the shop's calendar"}, card.today);
  visit.integer({"instruments", "how many are in the book"}, card.instruments, {0, 2147483647, ""});
  visit.integer({"schema_number", "of the book's file"}, card.schema_number, {0, 2147483647, ""});
}

struct LengthRead {
  Length length;
  std::string sixty_fourths, thousandths, mm_text;
};
void describe(FieldVisitor& visit, LengthRead& read) {
  visit.length({"mm", "in millimetres"}, read.length, {-1e5, 1e5, "mm"});
  visit.text({"sixty_fourths", "5/64 + .003"}, read.sixty_fourths, words);
  visit.text({"thousandths", ".081"}, read.thousandths, words);
  visit.text({"mm_text", "2.06 mm"}, read.mm_text, words);
}

constexpr std::array<std::string_view, 4> unit_names{"mm", "64ths", "thousandths", "inches"};

LengthRead length_read(const Ask& ask) {
  const auto unit = static_cast<DefaultUnit>(query_choice(ask, "unit", unit_names).value_or(0));
  const Length length = length_from_text("text", query_text(ask, "text").value_or(""), unit);
  const TradeLength printed = as_trade(length);
  return {length, printed.sixty_fourths, printed.thousandths, printed.millimetres};
}

}  // namespace

void describe(FieldVisitor& visit, Measure& measure) {
  visit.text({"id", "as records name it"}, measure.id, words);
  visit.text({"name", "as a form shows it"}, measure.name, words);
  visit.text({"unit", "mm, deg, percent, C or g"}, measure.unit, words);
  visit.text({"where", "from what to what"}, measure.where, words);
  visit.text({"how", "in which state"}, measure.how, words);
  const auto number = [&](const Field& field, double& value) { visit.number(field, value, any_number); };
  maybe(visit, {"usual_low", "below: ask before keeping"}, measure.usual_low, number);
  maybe(visit, {"usual_high", "above: ask before keeping"}, measure.usual_high, number);
  visit.number({"hard_low", "below: refused"}, measure.hard_low, any_number);
  visit.number({"hard_high", "above: refused"}, measure.hard_high, any_number);
  visit.text({"gauge", "usually read with"}, measure.gauge, words);
  visit.text({"source", "where the ranges come from"}, measure.source, words);
  visit.text({"note", "what to mind"}, measure.note, words);
}

void describe(FieldVisitor& visit, Gauge& gauge) {
  visit.text({"id", "as records name it"}, gauge.id, words);
  visit.text({"name", "as a form shows it"}, gauge.name, words);
  visit.text({"unit", "of the spread"}, gauge.unit, words);
  visit.number({"sd", "one standard deviation of a reading with it"}, gauge.sd, any_number);
  visit.text({"source", "where the spread comes from"}, gauge.source, words);
  visit.text({"note", "what to mind"}, gauge.note, words);
}

void describe(FieldVisitor& visit, InterventionKind& kind) {
  visit.text({"id", "as records name it"}, kind.id, words);
  visit.text({"name", "as a form shows it"}, kind.name, words);
  visit.flag({"always_moves", "false: it may leave the strings where they were"}, kind.always_moves);
  visit.flag({"moves_relief", "it may leave the neck with another relief"}, kind.moves_relief);
  visit.text({"size_known_by", "how its size at fret 12 is known"}, kind.size_known_by, words);
  visit.number({"change_sd_mm", "one standard deviation of a size so known"}, kind.change_sd_mm, any_number);
  visit.text({"source", "where the spread comes from"}, kind.source, words);
  visit.text({"note", "what to mind"}, kind.note, words);
}

std::vector<Endpoint> shop_endpoints(const Shop& shop) {
  return {{"GET", "/api/shop", "The shop itself", {}, "", schema_of_result<ShopCard>(),
           [shop](const Ask&) {
             return json_answer(ShopCard{.name = shop.book.setting("shop_name"),
                                         .invented = shop.book.setting("invented") == "true",
                                         .today = shop.today(),
                                         .instruments = shop.book.instruments({.per_page = 1}).total,
                                         .schema_number = shop.book.schema_number()});
           }},
          {"GET", "/api/tables", "What the forms offer", {}, "", schema_of_result<FormTables>(),
           [shop](const Ask&) { return json_answer(form_tables(shop)); }},
          {"GET",
           "/api/read-length",
           "Read a length as the trade writes it, and print it three ways",
           {{"text", "5/64, .078, 2 mm, 2"}, {"unit", "what a bare number means: mm, 64ths, thousandths, inches"}},
           "",
           schema_of_result<LengthRead>(),
           [](const Ask& ask) { return json_answer(length_read(ask)); }}};
}

}  // namespace tailblock
