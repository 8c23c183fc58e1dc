#include "book/shop_settings.h"

#include <algorithm>
#include <set>

#include "models/json.h"
#include "repair/table_cells.h"

namespace tailblock {
namespace {

constexpr auto setting_name = "shop";
constexpr std::size_t name_bytes = 200;
constexpr std::size_t id_bytes = 64;

ShopSettings to_begin_with(const std::vector<Station>& usual_places) {
  BenchPerson person{.name = "me", .hours = {}, .days_off = {}, .leaves_to_others = {}};
  for (int weekday = 1; weekday <= 5; ++weekday) {
    person.hours.push_back({.weekday = weekday, .from_minute = 9 * 60, .to_minute = 12 * 60 + 30});
    person.hours.push_back({.weekday = weekday, .from_minute = 13 * 60, .to_minute = 17 * 60 + 30});
  }
  return {.people = {person}, .stations = usual_places};
}

/// Digits, and after a point more of them.
bool is_decimal(const std::string& text) {
  const auto digits = [](std::string_view part) {
    return !part.empty() && part.find_first_not_of("0123456789") == std::string_view::npos;
  };
  const auto point = text.find('.');
  if (point == std::string::npos) return digits(text);
  return digits(std::string_view(text).substr(0, point)) && digits(std::string_view(text).substr(point + 1));
}

void require_decimal(std::string_view field, const std::string& text) {
  if (!is_decimal(text)) throw Refused(std::string(field) + ": \"" + text + "\" is not a plain decimal such as 60.00");
}

template <class Named>
void require_different_names(std::string_view field, const std::vector<Named>& named) {
  std::set<std::string> names;
  for (const Named& one : named) {
    if (one.name.empty()) throw Refused(std::string(field) + ": a name is empty");
    if (!names.insert(one.name).second) throw Refused(std::string(field) + ": \"" + one.name + "\" comes twice");
  }
}

void require_hours_apart(const BenchPerson& person) {
  std::vector<ShopHours> hours = person.hours;
  std::ranges::sort(hours, {}, [](const ShopHours& one) { return std::pair(one.weekday, one.from_minute); });
  for (std::size_t i = 0; i < hours.size(); ++i) {
    if (hours[i].from_minute >= hours[i].to_minute)
      throw Refused("hours: of " + person.name + " end before they begin");
    if (i > 0 && hours[i].weekday == hours[i - 1].weekday && hours[i].from_minute < hours[i - 1].to_minute) {
      throw Refused("hours: of " + person.name + " overlap on weekday " + std::to_string(hours[i].weekday));
    }
  }
}

void require_somebody_for_each(const std::vector<WorkSkill>& skills, const std::vector<BenchPerson>& people) {
  for (const BenchPerson& person : people) {
    for (const std::string& skill : person.leaves_to_others) {
      if (row_of_id(skills, skill) != nullptr) continue;
      throw Refused("leaves_to_others: of " + person.name + ": \"" + skill + "\" is not in data/work_skills.csv");
    }
  }
  for (const WorkSkill& skill : skills) {
    const auto leaves = [&](const BenchPerson& person) { return leaves_to_others(person, skill.id); };
    if (std::ranges::all_of(people, leaves)) {
      throw Refused("leaves_to_others: " + skill.name + " is left to others by everyone");
    }
  }
}

}  // namespace

void describe(FieldVisitor& visit, ShopSettings& settings) {
  constexpr Need free = Need::has_default;
  visit.text({"name", "what the shop calls itself", free}, settings.name, name_bytes);
  visit.text({"address", "as on its papers, line by line", free}, settings.address, 1000);
  list(visit, {"people", "whose hands do the work"}, settings.people, {1, 4});
  list(visit, {"stations", "places and fixtures, and how many", free}, settings.stations, {0, 40});
  visit.text({"currency", "ISO 4217", free}, settings.currency, id_bytes);
  visit.text({"hourly_rate", "an exact decimal in that currency", free}, settings.hourly_rate, id_bytes);
  visit.text({"tax_percent", "where a line says nothing else", free}, settings.tax_percent, id_bytes);
  visit.text({"terms", "under estimates and on tickets, line by line", free}, settings.terms, 2000);
  visit.text({"how_to_pay", "on invoices, line by line", free}, settings.how_to_pay, 1000);
  visit.number({"promise_chance", "with which a promised day is to hold", free}, settings.promise_chance,
               {0.5, 0.99, ""});
  maybe(visit, {"weights", "what the plan weighs against what, in days of one instrument's time in the shop"},
        settings.weights, [&](const Field& field, BenchWeights& weights) { object(visit, field, weights); });
}

ShopSettings shop_settings(const Book& book, const std::vector<Station>& usual_places) {
  const std::string kept = book.setting(setting_name);
  ShopSettings settings = kept.empty() ? to_begin_with(usual_places) : from_json<ShopSettings>(kept);
  if (settings.name.empty()) settings.name = book.setting("shop_name");
  return settings;
}

void keep_shop_settings(Book& book, const ShopSettings& settings, const std::vector<WorkSkill>& skills) {
  require_valid(settings);
  require_different_names("people", settings.people);
  require_different_names("stations", settings.stations);
  for (const BenchPerson& person : settings.people) require_hours_apart(person);
  require_somebody_for_each(skills, settings.people);
  require_decimal("hourly_rate", settings.hourly_rate);
  require_decimal("tax_percent", settings.tax_percent);
  const auto letters = [](char letter) { return letter >= 'A' && letter <= 'Z'; };
  if (settings.currency.size() != 3 || !std::ranges::all_of(settings.currency, letters)) {
    throw Refused("currency: \"" + settings.currency + "\" is not three capital letters such as EUR");
  }
  book.keep_setting(setting_name, to_json(settings));
  book.keep_setting("shop_name", settings.name);
}

}  // namespace tailblock
