#include "book/survey_words.h"

#include <algorithm>

#include "quantity/trade_notation.h"

namespace tailblock {
namespace {

using Stories = std::vector<const FindingStory*>;

/// What this visit says of it; null when it says nothing.
const FindingChange* word_of(const Survey& survey, const FindingStory& story) {
  if (story.changes.empty() || story.changes.back().change.visit_id != survey.visit_id) return nullptr;
  return &story.changes.back().change;
}

Stories those_said(const Survey& survey, FindingState state) {
  Stories stories;
  for (const FindingStory& story : survey.found_before) {
    const FindingChange* word = word_of(survey, story);
    if (word != nullptr && word->state == state) stories.push_back(&story);
  }
  return stories;
}

/// `Finding 2, brace loose (lower tone bar)`.
std::string named(const FindingStory& story, const TradeTables& tables) {
  const FindingKind* kind = tables.finding(story.finding.kind);
  std::string text = "Finding " + std::to_string(story.number) + ", ";
  text += kind == nullptr ? story.finding.kind : kind->words;
  const std::string& where = story.finding.part.empty() ? story.finding.place : story.finding.part;
  if (!where.empty()) text += " (" + where + ")";
  return text;
}

/// `1`, `1 and 3`, `1, 3 and 4`.
std::string numbers_of(const Stories& stories) {
  std::string text;
  for (std::size_t k = 0; k < stories.size(); ++k) {
    if (k > 0) text += k + 1 == stories.size() ? " and " : ", ";
    text += std::to_string(stories[k]->number);
  }
  return text;
}

std::string findings(const Stories& stories) {
  const std::string noun = stories.size() == 1 ? "Finding " : "Findings ";
  return noun + numbers_of(stories);
}

const FindingExtent* reading_of(const std::vector<FindingExtent>& extents, const std::string& measure) {
  const auto found = std::ranges::find(extents, measure, &FindingExtent::measure);
  return found == extents.end() ? nullptr : &*found;
}

/// The newest reading of a measure before this visit's own.
const FindingExtent* earlier_reading(const FindingStory& story, const std::string& measure) {
  for (std::size_t k = story.changes.size() - 1; k-- > 0;) {
    const FindingExtent* read = reading_of(story.changes[k].change.extents, measure);
    if (read != nullptr) return read;
  }
  return reading_of(story.finding.extents, measure);
}

std::string grown(const FindingStory& story, const FindingChange& word, const TradeTables& tables) {
  std::string text = named(story, tables) + " has grown";
  for (const FindingExtent& extent : word.extents) {
    const Measure* measure = tables.finding_measure(extent.measure);
    text += ", ";
    text += measure == nullptr ? extent.measure : measure->name;
    text += " " + as_trade(extent.value).millimetres;
    const FindingExtent* before = earlier_reading(story, extent.measure);
    if (before != nullptr) text += " after " + as_trade(before->value).millimetres;
  }
  return text + ".";
}

}  // namespace

std::vector<std::string> what_changed(const Survey& survey, const TradeTables& tables) {
  std::vector<std::string> sentences;
  for (const FindingStory* story : those_said(survey, FindingState::grown)) {
    sentences.push_back(grown(*story, *word_of(survey, *story), tables));
  }
  for (const FindingStory* story : those_said(survey, FindingState::repaired)) {
    sentences.push_back(named(*story, tables) + " is repaired.");
  }
  for (const FindingStory* story : those_said(survey, FindingState::gone)) {
    sentences.push_back(named(*story, tables) + " is gone without a repair.");
  }
  const Stories same = those_said(survey, FindingState::unchanged);
  if (!same.empty()) sentences.push_back(findings(same) + (same.size() == 1 ? " is as it was." : " are as they were."));
  Stories unseen;
  for (const FindingStory& story : survey.found_before) {
    if (word_of(survey, story) == nullptr) unseen.push_back(&story);
  }
  if (!unseen.empty()) {
    sentences.push_back(findings(unseen) + (unseen.size() == 1 ? " has" : " have") + " not been looked at again yet.");
  }
  Stories fresh;
  for (const FindingStory& story : survey.found_now) fresh.push_back(&story);
  if (!fresh.empty() && survey.visit_before) {
    sentences.push_back(findings(fresh) + (fresh.size() == 1 ? " is new." : " are new."));
  }
  return sentences;
}

}  // namespace tailblock
