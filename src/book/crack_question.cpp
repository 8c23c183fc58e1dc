#include "book/crack_question.h"

#include <algorithm>
#include <cmath>

#include "book/top_question.h"

namespace tailblock {
namespace {

constexpr int usual_years = 10, days_a_year = 365;

/// Winters since the top was last mended; what it lived through before proves nothing of the new joint.
int years_taken(const SurveyedTop& survey, std::optional<int> told, Date today, std::vector<std::string>& said) {
  if (told) return *told;
  if (!survey.last_mended) return usual_years;
  const int years = std::min(usual_years, static_cast<int>((today - *survey.last_mended).count()) / days_a_year);
  said.push_back("Mended on " + iso_date(*survey.last_mended) + ": the years before prove nothing, and " +
                 plain_number(years) + " since are taken");
  return years;
}

/// Cracks along the grain, which the model judges; one across it is said to be left out.
void take_cracks(TopDamage& damage, const SurveyedTop& survey, CrackAnswer& answer) {
  constexpr double steepest = 0.35;  // 20 degrees from the grain
  const std::vector<Crack> all = std::move(damage.cracks);
  damage.cracks.clear();
  for (std::size_t c = 0; c < all.size(); ++c) {
    const auto taken = std::ranges::find(survey.taken, survey.crack_numbers[c], &TakenFinding::number);
    const double along = in_mm(all[c].to_x - all[c].from_x), across = in_mm(all[c].to_y - all[c].from_y);
    if (std::abs(across) > steepest * std::abs(along)) {
      answer.not_used.push_back("Finding " + plain_number(taken->number) +
                                ": not taken, it runs across the grain, which this model does not judge");
      continue;
    }
    damage.cracks.push_back(all[c]);
    answer.cracks.push_back(*taken);
  }
}

}  // namespace

CrackAnswer crack_answer(const InstrumentStory& story, const TopRecords& records, std::vector<LoggedDay> log,
                         const DataTables& tables, PlateMemo& memo, std::optional<int> years_lived, Date today) {
  CrackAnswer answer;
  const auto top = known_top(story, tables, today, answer.assumed);
  if (!top) return answer;
  const SurveyedTop survey = surveyed_top(records, *top->drawn, tables);
  answer.not_used = survey.not_used;
  answer.years_lived = years_taken(survey, years_lived, today, answer.assumed);
  CrackRiskRequest request;
  request.top = *top;
  request.damage = survey.damage;
  take_cracks(request.damage, survey, answer);
  request.home = story.home.air;
  request.home->log = std::move(log);
  request.first = today;
  request.years_lived = answer.years_lived;
  answer.known = true;
  answer.result = crack_risk(request, *memo.of(plate_for_cracks(request), tables.plate()), tables.cracks());
  return answer;
}

void describe(FieldVisitor& visit, CrackAnswer& answer) {
  visit.flag({"known", "false: its bracing is none of those known, and nothing was calculated"}, answer.known);
  object(visit, {"result", "of the model; empty where nothing was calculated"}, answer.result);
  visit.integer({"years_lived", "winters it is taken to have lived uncracked in such air"}, answer.years_lived,
                {0, 200, ""});
  list(visit, {"cracks", "found on it, in the order of result.cracks"}, answer.cracks, {0, 1000});
  visit.texts({"not_used", "findings of the top that it cannot take, a line each"}, answer.not_used, 1000, {0, 1000});
  visit.texts({"assumed", "what no record says and was taken for granted"}, answer.assumed, 1000, {0, 100});
}

}  // namespace tailblock
