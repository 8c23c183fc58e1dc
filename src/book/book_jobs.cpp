#include <algorithm>
#include <cmath>
#include <map>

#include "book/book.h"
#include "book/finding_rows.h"
#include "book/record_changes.h"

namespace tailblock {
namespace {

template <class Record>
RecordId add_to_job(Session& session, const Record& record) {
  require_kept(session, "jobs", "job_id", record.job_id);
  return insert_record(session, record);
}

/// An offer is answered while it is the newest one of its job: a later one asks again.
void require_open_offer(Session& session, const OwnerWord& word) {
  const auto newest =
      session.first<std::optional<int>>("SELECT max(id) FROM job_offers WHERE job_id = :job", {cell(word.job_id)})
          .value_or(std::nullopt);
  if (newest == word.offer_id) return;
  const std::string number = std::to_string(word.offer_id);
  if (session.first<int>("SELECT 1 FROM job_offers WHERE id = :id AND job_id = :job",
                         {cell(word.offer_id), cell(word.job_id)})) {
    throw Refused("offer_id: offer " + number + " is no longer the newest of its job; the owner is asked again");
  }
  throw NotInBook("offer_id: " + number + " is not an offer for this job");
}

void require_free_hands(Session& session, const WorkSpell& spell) {
  const auto running = session.rows<std::string>(
      "SELECT operation FROM work_spells WHERE ended_on IS NULL AND person = :person", {cell(spell.person)});
  if (running.empty()) return;
  const std::string who = spell.person.empty() ? std::string("somebody") : spell.person;
  throw Refused("person: " + who + " is still at " + std::get<0>(running.front()) + "; end that first");
}

void require_after_its_beginning(const WorkSpell& spell, const WorkEnd& end) {
  if (Moment{end.day, end.minute} >= beginning(spell)) return;
  throw Refused("minute: work cannot end before it began, " + iso_date(spell.began_on));
}

/// Shorter than it was tapped: hands let go before the tap. Longer: they had begun before it.
void put_right(WorkSpell& spell, const WorkCorrection& correction) {
  const Moment began = beginning(spell), ended = *ending(spell);
  const int longer = correction.minutes - minutes_between(began, ended);
  const Moment from = later(began, -std::max(longer, 0)), until = later(ended, std::min(longer, 0));
  spell.began_on = from.day;
  spell.began_minute = from.minute;
  spell.ended_on = until.day;
  spell.ended_minute = until.minute;
  spell.finished = correction.finished;
}

/// Each stretch with the latest that was put right of it.
void put_right(std::vector<WorkSpell>& spells, const std::vector<WorkCorrection>& corrections) {
  std::map<RecordId, const WorkCorrection*> latest;
  for (const WorkCorrection& correction : corrections) latest[correction.spell_id] = &correction;
  for (WorkSpell& spell : spells) {
    const auto correction = latest.find(spell.id);
    if (correction != latest.end()) put_right(spell, *correction->second);
  }
}

/// The latest of each length read at a finding: at it, at its corrections, and at what later visits said of it.
std::vector<FindingExtent> read_at(Session& session, RecordId finding) {
  std::vector<FindingExtent> latest;
  const auto take = [&](const std::vector<FindingExtent>& read) {
    for (const FindingExtent& one : read) {
      std::erase_if(latest, [&](const FindingExtent& before) { return before.measure == one.measure; });
      latest.push_back(one);
    }
  };
  std::vector<RecordId> said_after;
  for (std::optional<int> at = finding; at;
       at = session.first<int>("SELECT id FROM findings WHERE supersedes = :id", {cell(*at)})) {
    latest.clear();
    take(extents_of(session, parts_of_finding, *at));
    for (const auto& [change] :
         session.rows<int>("SELECT id FROM finding_changes WHERE finding_id = :id AND id NOT IN "
                           "(SELECT supersedes FROM finding_changes WHERE supersedes IS NOT NULL) ORDER BY id",
                           {cell(*at)})) {
      said_after.push_back(change);
    }
  }
  std::ranges::sort(said_after);
  for (const RecordId change : said_after) take(extents_of(session, parts_of_change, change));
  return latest;
}

RecordId as_corrected_last(Session& session, RecordId finding) {
  RecordId latest = finding;
  for (std::optional<int> at = finding; at;
       at = session.first<int>("SELECT id FROM findings WHERE supersedes = :id", {cell(*at)})) {
    latest = *at;
  }
  return latest;
}

/// Of the line that a finding is drawn as.
std::optional<Length> drawn_length(Session& session, RecordId latest) {
  if (session.first<std::string>("SELECT shape FROM findings WHERE id = :id", {cell(latest)}) != "line") return {};
  double length = 0;
  std::optional<std::pair<double, double>> before;
  session.each<double, double>("SELECT x_mm, y_mm FROM finding_points WHERE record_id = :id ORDER BY number",
                               {cell(latest)}, [&](double x, double y) {
                                 if (before) length += std::hypot(x - before->first, y - before->second);
                                 before = {x, y};
                               });
  return mm(length);
}

/// The records of `table` whose job is one of a visit's, by job.
template <class Record>
std::map<RecordId, std::vector<Record>> by_job(Session& session, RecordId visit) {
  std::string from(table_of<Record>);
  from += " AS record WHERE record.job_id IN (SELECT id FROM jobs WHERE visit_id = :visit) ORDER BY record.id";
  std::map<RecordId, std::vector<Record>> found;
  each_record<Record>(session, from, {cell(visit)},
                      [&](Record&& record) { found[record.job_id].push_back(std::move(record)); });
  return found;
}

void add_finding(Session& session, RecordId finding, JobStory& story) {
  if (finding == 0) return;
  const RecordId latest = as_corrected_last(session, finding);
  story.at_finding = read_at(session, finding);
  story.drawn_length = drawn_length(session, latest);
  session.each<std::string, std::string>("SELECT kind, part FROM findings WHERE id = :id", {cell(latest)},
                                         [&](const std::string& kind, const std::string& part) {
                                           story.finding_kind = kind;
                                           story.finding_part = part;
                                         });
}

std::vector<AnsweredBefore> answered_before(Session& session, const Visit& visit) {
  std::vector<AnsweredBefore> answers;
  session.each<std::string, std::string, std::string>(
      "SELECT jobs.procedure, job_answers.decision, job_answers.outcome FROM job_answers "
      "JOIN jobs ON jobs.id = job_answers.job_id JOIN visits ON visits.id = jobs.visit_id "
      "WHERE visits.instrument_id = :instrument AND (visits.date < :date OR (visits.date = :same_date AND visits.id < :id)) "
      "ORDER BY job_answers.id",
      {cell(visit.instrument_id), cell(visit.date), cell(visit.date), cell(visit.id)},
      [&](const std::string& procedure, const std::string& decision, const std::string& outcome) {
        answers.push_back({procedure, decision, outcome});
      });
  return answers;
}

template <class Record>
std::vector<Record> at_visit(Session& session, RecordId visit) {
  std::string from(table_of<Record>);
  from += " AS record WHERE record.visit_id = :visit ORDER BY record.id";
  return select_records<Record>(session, from, {cell(visit)});
}

VisitWork work_of(Session& session, const Visit& visit) {
  VisitWork work{.visit = visit,
                 .jobs = {},
                 .overrides = at_visit<GateRecord>(session, visit.id),
                 .said = at_visit<SaidAtVisit>(session, visit.id),
                 .promises = at_visit<PromiseRecord>(session, visit.id),
                 .wishes = at_visit<BenchWish>(session, visit.id),
                 .handovers = at_visit<Handover>(session, visit.id),
                 .papers = at_visit<GivenPaper>(session, visit.id),
                 .invoiced = select_records<InvoicedOffer>(
                     session,
                     "invoiced_offers AS record WHERE record.paper_id IN (SELECT id FROM papers WHERE visit_id = "
                     ":visit) ORDER BY record.offer_id",
                     {cell(visit.id)}),
                 .before = answered_before(session, visit)};
  auto answers = by_job<JobAnswer>(session, work.visit.id);
  auto amounts = by_job<JobAmount>(session, work.visit.id);
  auto materials = by_job<JobMaterial>(session, work.visit.id);
  auto terms = by_job<JobTerms>(session, work.visit.id);
  auto offers = by_job<JobOffer>(session, work.visit.id);
  auto words = by_job<OwnerWord>(session, work.visit.id);
  auto spells = by_job<WorkSpell>(session, work.visit.id);
  auto pins = by_job<Pin>(session, work.visit.id);
  const auto corrections = select_records<WorkCorrection>(
      session,
      "work_corrections AS record WHERE record.spell_id IN (SELECT work_spells.id FROM work_spells "
      "JOIN jobs ON jobs.id = work_spells.job_id WHERE jobs.visit_id = :visit) ORDER BY record.id",
      {cell(work.visit.id)});
  for (Job& job : at_visit<Job>(session, work.visit.id)) {
    const RecordId id = job.id, id_of_finding = job.finding_id;
    work.jobs.push_back({.job = std::move(job),
                         .at_finding = {},
                         .drawn_length = {},
                         .answers = std::move(answers[id]),
                         .amounts = std::move(amounts[id]),
                         .materials = std::move(materials[id]),
                         .terms = std::move(terms[id]),
                         .offers = std::move(offers[id]),
                         .words = std::move(words[id]),
                         .spells = std::move(spells[id]),
                         .corrections = {},
                         .pins = std::move(pins[id])});
    JobStory& story = work.jobs.back();
    add_finding(session, id_of_finding, story);
    put_right(story.spells, corrections);
    for (const WorkCorrection& one : corrections) {
      const bool here = std::ranges::find(story.spells, one.spell_id, &WorkSpell::id) != story.spells.end();
      if (here) story.corrections.push_back(one);
    }
  }
  return work;
}

}  // namespace

RecordId Book::keep(const Job& job) {
  require_valid(job);
  require_text("procedure", job.procedure);
  return store_->change([&](Session& session) {
    require_kept(session, "visits", "visit_id", job.visit_id);
    if (job.finding_id != 0) require_kept(session, "findings", "finding_id", job.finding_id);
    if (job.id != 0 && record_of<Job>(session, "job_id", job.id).visit_id != job.visit_id) {
      throw Refused("visit_id: a job stays with the visit it was chosen at");
    }
    return insert_or_update(session, "job_id", job);
  });
}

RecordId Book::keep(const MaterialLot& lot) {
  require_valid(lot);
  require_text("material", lot.material);
  if (lot.good_until && *lot.good_until < lot.opened_on) throw Refused("good_until: is before it was opened");
  return store_->change([&](Session& session) { return insert_or_update(session, "lot_id", lot); });
}

RecordId Book::add(const JobAnswer& answer) {
  require_valid(answer);
  require_text("who", answer.who);
  return store_->change([&](Session& session) { return add_to_job(session, answer); });
}

RecordId Book::add(const JobAmount& amount) {
  require_valid(amount);
  return store_->change([&](Session& session) { return add_to_job(session, amount); });
}

RecordId Book::add(const JobMaterial& material) {
  require_valid(material);
  require_text("name", material.name);
  return store_->change([&](Session& session) { return add_to_job(session, material); });
}

RecordId Book::add(const JobTerms& terms) {
  require_valid(terms);
  return store_->change([&](Session& session) { return add_to_job(session, terms); });
}

RecordId Book::add(const JobOffer& offer) {
  require_valid(offer);
  require_text("words", offer.words);
  return store_->change([&](Session& session) { return add_to_job(session, offer); });
}

RecordId Book::add(const OwnerWord& word) {
  require_valid(word);
  require_text("who", word.who);
  if ((word.offer_id == 0) == word.operation.empty()) {
    throw Refused("offer_id: the owner's word is on an offer or on an operation, one of the two");
  }
  return store_->change([&](Session& session) {
    if (word.offer_id != 0) require_open_offer(session, word);
    return add_to_job(session, word);
  });
}

RecordId Book::add(const GateRecord& gate) {
  require_valid(gate);
  require_text("who", gate.who);
  require_text("why", gate.why);
  return store_->change([&](Session& session) {
    require_kept(session, "visits", "visit_id", gate.visit_id);
    return insert_record(session, gate);
  });
}

RecordId Book::add(const PromiseRecord& promise) {
  require_valid(promise);
  if (promise.ready_on < promise.said_on) throw Refused("ready_on: is before the day it is promised");
  return store_->change([&](Session& session) {
    require_kept(session, "visits", "visit_id", promise.visit_id);
    return insert_record(session, promise);
  });
}

RecordId Book::add(const SaidAtVisit& said) {
  require_valid(said);
  require_text("name", said.name);
  return store_->change([&](Session& session) {
    require_kept(session, "visits", "visit_id", said.visit_id);
    return insert_record(session, said);
  });
}

RecordId Book::add(const WorkCorrection& correction) {
  require_valid(correction);
  return store_->change([&](Session& session) {
    const auto spell = record_of<WorkSpell>(session, "spell_id", correction.spell_id);
    if (!spell.ended_on) throw Refused("spell_id: hands are still at it; end it first");
    return insert_record(session, correction);
  });
}

RecordId Book::add(const BenchWish& wish) {
  require_valid(wish);
  return store_->change([&](Session& session) {
    require_kept(session, "visits", "visit_id", wish.visit_id);
    return insert_record(session, wish);
  });
}

RecordId Book::add(const Pin& pin) {
  require_valid(pin);
  require_text("operation", pin.operation);
  return store_->change([&](Session& session) { return add_to_job(session, pin); });
}

RecordId Book::add(const ShopAir& air) {
  require_valid(air);
  return store_->change([&](Session& session) { return insert_record(session, air); });
}

RecordId Book::add(const Handover& handover) {
  require_valid(handover);
  return store_->change([&](Session& session) {
    require_kept(session, "visits", "visit_id", handover.visit_id);
    if (session.first<int>("SELECT 1 FROM handovers WHERE visit_id = :visit", {cell(handover.visit_id)})) {
      throw Refused("visit_id: the instrument of this visit has gone home already");
    }
    if (session.first<int>("SELECT 1 FROM work_spells JOIN jobs ON jobs.id = work_spells.job_id "
                           "WHERE jobs.visit_id = :visit AND ended_on IS NULL",
                           {cell(handover.visit_id)})) {
      throw Refused("visit_id: hands are still at work on it");
    }
    return insert_record(session, handover);
  });
}

RecordId Book::begin_work(const WorkSpell& spell) {
  require_valid(spell);
  require_text("operation", spell.operation);
  if (spell.ended_on || spell.finished) throw Refused("ended_on: work that begins has not ended");
  return store_->change([&](Session& session) {
    require_free_hands(session, spell);
    if (spell.lot_id != 0) require_kept(session, "material_lots", "lot_id", spell.lot_id);
    return add_to_job(session, spell);
  });
}

void Book::end_work(RecordId id, const WorkEnd& end) {
  require_valid(end);
  store_->change([&](Session& session) {
    auto spell = record_of<WorkSpell>(session, "spell_id", id);
    if (spell.ended_on) throw Refused("spell_id: this work has ended already");
    require_after_its_beginning(spell, end);
    if (end.lot_id != 0) require_kept(session, "material_lots", "lot_id", end.lot_id);
    spell.ended_on = end.day;
    spell.ended_minute = end.minute;
    spell.finished = end.finished;
    if (end.lot_id != 0) spell.lot_id = end.lot_id;
    if (!end.note.empty()) spell.note = end.note;
    return update_record(session, spell);
  });
}

VisitWork Book::visit_work(RecordId id) const {
  return store_->look([&](Session& session) { return work_of(session, record_of<Visit>(session, "visit_id", id)); });
}

JobStory Book::job_story(RecordId id) const {
  return store_->look([&](Session& session) {
    const auto job = record_of<Job>(session, "job_id", id);
    VisitWork work = work_of(session, record_of<Visit>(session, "visit_id", job.visit_id));
    return *std::ranges::find_if(work.jobs, [&](const JobStory& one) { return one.job.id == id; });
  });
}

WorkSpell Book::work_spell(RecordId id) const {
  return store_->look([&](Session& session) { return record_of<WorkSpell>(session, "spell_id", id); });
}

std::vector<VisitWork> Book::work_in_the_shop() const {
  return store_->look([&](Session& session) {
    std::vector<VisitWork> all;
    for (const Visit& visit : select_records<Visit>(
             session,
             "visits AS record WHERE record.id IN (SELECT visit_id FROM jobs) "
             "AND record.id NOT IN (SELECT visit_id FROM handovers) ORDER BY record.date, record.id")) {
      all.push_back(work_of(session, visit));
    }
    return all;
  });
}

std::vector<MaterialLot> Book::material_lots() const {
  return store_->look([&](Session& session) {
    return select_records<MaterialLot>(session,
                                       "material_lots AS record ORDER BY record.opened_on DESC, record.id DESC");
  });
}

std::vector<ShopAir> Book::shop_air(Date first) const {
  return store_->look([&](Session& session) {
    return select_records<ShopAir>(
        session, "shop_air AS record WHERE record.day >= :first ORDER BY record.day, record.minute, record.id",
        {cell(first)});
  });
}

std::vector<WorkSpell> Book::work_done() const {
  return store_->look([&](Session& session) {
    auto spells = select_records<WorkSpell>(
        session, "work_spells AS record WHERE record.ended_on IS NOT NULL ORDER BY record.id");
    put_right(spells, select_records<WorkCorrection>(session, "work_corrections AS record ORDER BY record.id"));
    return spells;
  });
}

}  // namespace tailblock
