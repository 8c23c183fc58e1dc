#include "book/crack_question.h"

#include "book/top_question.h"

namespace tailblock {

CrackAnswer crack_answer(const InstrumentStory& story, std::vector<LoggedDay> log, const DataTables& tables,
                         PlateMemo& memo, int years_lived, Date today) {
  CrackAnswer answer;
  answer.years_lived = years_lived;
  const auto top = known_top(story, tables, today, answer.assumed);
  if (!top) return answer;
  CrackRiskRequest request;
  request.top = *top;
  request.home = story.home.air;
  request.home->log = std::move(log);
  request.first = today;
  request.years_lived = years_lived;
  answer.known = true;
  answer.result = crack_risk(request, *memo.of(plate_for_cracks(request), tables.plate()), tables.cracks());
  answer.assumed.emplace_back("Cracks on its drawing are not in these figures: ask again with 0 years after a repair");
  return answer;
}

void describe(FieldVisitor& visit, CrackAnswer& answer) {
  visit.flag({"known", "false: its bracing is none of those known, and nothing was calculated"}, answer.known);
  object(visit, {"result", "of the model; empty where nothing was calculated"}, answer.result);
  visit.integer({"years_lived", "winters it is taken to have lived uncracked in such air"}, answer.years_lived,
                {0, 200, ""});
  visit.texts({"assumed", "what no record says and was taken for granted"}, answer.assumed, 1000, {0, 100});
}

}  // namespace tailblock
