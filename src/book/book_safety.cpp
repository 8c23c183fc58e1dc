#include <algorithm>
#include <string>
#include <tuple>
#include <vector>

#include "book/book.h"
#include "book/file_safety.h"
#include "book/migrations.h"
#include "book/sha256.h"
#include "book/record_rows.h"
#include "book/store.h"

namespace tailblock {
namespace {

using Troubles = std::vector<std::string>;

void add_damage(Session& session, Troubles& troubles) {
  session.ask("PRAGMA integrity_check", {}, {CellKind::text}, [&](const std::vector<Cell>& row) {
    if (row.front().text != "ok") troubles.push_back("damaged: " + row.front().text);
  });
}

void add_broken_references(Session& session, Troubles& troubles) {
  session.ask(
      "PRAGMA foreign_key_check", {}, {CellKind::text, CellKind::whole, CellKind::text},
      [&](const std::vector<Cell>& row) {
        const std::string which = row[1].absent ? "a row" : "row " + std::to_string(row[1].whole);
        troubles.push_back(row[0].text + ": " + which + " refers to one of " + row[2].text + " that is not there");
      });
}

/// Whatever a rule of the tables or a trigger keeps from happening, unless another program was at the file.
struct Rule {
  const char* broken;
  const char* rows;  ///< asks for the ids of those that break it
};
constexpr Rule rules[]{
    {"home has not twelve months of air: ",
     "SELECT id FROM homes WHERE (SELECT count(*) FROM home_months WHERE home_id = homes.id) <> 12"},
    {"reading corrects one of another visit or measure: ",
     "SELECT correction.id FROM readings AS correction JOIN readings AS old ON old.id = correction.supersedes "
     "WHERE old.visit_id <> correction.visit_id OR old.measure <> correction.measure"},
    {"reading is superseded twice: ",
     "SELECT supersedes FROM readings WHERE supersedes IS NOT NULL GROUP BY supersedes HAVING count(*) > 1"},
    {"finding corrects one of another visit: ",
     "SELECT correction.id FROM findings AS correction JOIN findings AS old ON old.id = correction.supersedes "
     "WHERE old.visit_id <> correction.visit_id"},
    {"finding is nowhere on the drawing: ",
     "SELECT id FROM findings WHERE id NOT IN (SELECT record_id FROM finding_points)"},
    {"trial corrects one of another visit: ",
     "SELECT correction.id FROM finish_trials AS correction JOIN finish_trials AS old ON old.id = correction.supersedes "
     "WHERE old.visit_id <> correction.visit_id"},
    {"change is said of a finding of another instrument: ",
     "SELECT change.id FROM finding_changes AS change JOIN visits AS said ON said.id = change.visit_id "
     "JOIN findings ON findings.id = change.finding_id JOIN visits AS found ON found.id = findings.visit_id "
     "WHERE said.instrument_id <> found.instrument_id"},
    {"offer is asked to be paid for on a paper that is no invoice, or of another visit: ",
     "SELECT offer_id FROM invoiced_offers JOIN papers ON papers.id = invoiced_offers.paper_id "
     "JOIN job_offers ON job_offers.id = invoiced_offers.offer_id JOIN jobs ON jobs.id = job_offers.job_id "
     "WHERE papers.kind <> 'invoice' OR jobs.visit_id <> papers.visit_id"},
    {"instrument is not in the list of changes: ",
     "SELECT id FROM instruments WHERE id NOT IN (SELECT id FROM list_changes WHERE list = 'instruments')"},
    {"owner is not in the list of changes: ",
     "SELECT id FROM owners WHERE id NOT IN (SELECT id FROM list_changes WHERE list = 'owners')"},
    {"home is not in the list of changes: ",
     "SELECT id FROM homes WHERE id NOT IN (SELECT id FROM list_changes WHERE list = 'homes')"},
};

void add_broken_rules(Session& session, Troubles& troubles) {
  for (const Rule& rule : rules) {
    session.ask(rule.rows, {}, {CellKind::whole}, [&](const std::vector<Cell>& row) {
      troubles.push_back(rule.broken + std::to_string(row.front().whole));
    });
  }
}

/// Every table, index, view and trigger with its text, in one order.
std::vector<std::tuple<std::string, std::string>> schema_of(Session& session) {
  return session.rows<std::string, std::string>(
      "SELECT name, sql FROM sqlite_master WHERE sql IS NOT NULL ORDER BY name");
}

/// Compares with a new book made in memory.
void add_changed_schema(Session& session, Troubles& troubles) {
  Session fresh(":memory:", Session::May::write);
  migrate(fresh, migration_files(), [](Session&) {});
  const auto expected = schema_of(fresh), found = schema_of(session);
  for (const auto& [name, sql] : expected) {
    if (std::find(found.begin(), found.end(), std::tuple(name, sql)) == found.end()) {
      troubles.push_back(name + ": is missing from the book, or not as this program made it");
    }
  }
}

/// `from` is the table or the view that has all the record's fields.
template <class Record>
void add_unreadable(Session& session, Troubles& troubles, std::string_view from = table_of<Record>) {
  const std::string table(from);
  try {
    each_record<Record>(session, table + " AS record", {}, [](Record&&) {});
  } catch (const StorageFault& fault) {
    troubles.push_back(table + ": " + fault.what());
  }
}

void add_unreadable_records(Session& session, Troubles& troubles) {
  add_unreadable<Owner>(session, troubles);
  add_unreadable<Home>(session, troubles);
  add_unreadable<Instrument>(session, troubles);
  add_unreadable<Visit>(session, troubles);
  add_unreadable<Intervention>(session, troubles);
  add_unreadable<SaddleDecision>(session, troubles);
  add_unreadable<Finding>(session, troubles, "findings_and_corrections");
  add_unreadable<FindingChange>(session, troubles, "finding_changes_and_corrections");
  add_unreadable<FinishTrial>(session, troubles, "finish_trials_and_corrections");
  add_unreadable<VisitPhoto>(session, troubles);
  add_unreadable<Job>(session, troubles);
  add_unreadable<JobAnswer>(session, troubles);
  add_unreadable<JobAmount>(session, troubles);
  add_unreadable<JobOffer>(session, troubles);
  add_unreadable<OwnerWord>(session, troubles);
  add_unreadable<WorkSpell>(session, troubles);
  add_unreadable<MaterialLot>(session, troubles);
  add_unreadable<GateRecord>(session, troubles);
  add_unreadable<PromiseRecord>(session, troubles);
  add_unreadable<BenchWish>(session, troubles);
  add_unreadable<Pin>(session, troubles);
  add_unreadable<ShopAir>(session, troubles);
  add_unreadable<Handover>(session, troubles);
  add_unreadable<JobMaterial>(session, troubles);
  add_unreadable<JobTerms>(session, troubles);
  add_unreadable<SaidAtVisit>(session, troubles);
  add_unreadable<WorkCorrection>(session, troubles);
  add_unreadable<GivenPaper>(session, troubles);
  add_unreadable<InvoicedOffer>(session, troubles);
}

/// Every photo's bytes are those it was kept with.
void add_changed_photos(Session& session, Troubles& troubles) {
  for (const auto& [id, hash] : session.rows<int, std::string>("SELECT id, sha256 FROM photos")) {
    if (sha256(session.read_bytes("photos", "whole", id)) == hash) continue;
    troubles.push_back("photo " + std::to_string(id) + ": its bytes are not those that were kept");
  }
}

/// Every paper says what it said when it was given.
void add_changed_papers(Session& session, Troubles& troubles) {
  for (const auto& [id, hash, says] :
       session.rows<int, std::string, std::string>("SELECT id, sha256, says FROM papers")) {
    if (sha256(says) == hash) continue;
    troubles.push_back("paper " + std::to_string(id) + ": it does not say what it said when it was given");
  }
}

}  // namespace

void Book::back_up_to(const std::filesystem::path& copy) const {
  if (std::filesystem::exists(copy)) throw Refused("copy: " + copy.string() + " is there already");
  UnfinishedFile unfinished(copy);
  {
    Session session(store_->file, Session::May::read);
    session.copy_to(unfinished.path());
  }
  {
    Session check(unfinished.path(), Session::May::read);
    Troubles troubles;
    add_damage(check, troubles);
    if (!troubles.empty()) {
      throw StorageFault("no copy was made, the book itself is damaged: " + troubles.front() +
                         "; restore the last good copy");
    }
  }
  unfinished.finish();
}

std::vector<std::string> Book::troubles() const {
  Troubles troubles;
  for (const auto add : {add_damage, add_broken_references, add_broken_rules, add_changed_schema,
                         add_unreadable_records, add_changed_photos, add_changed_papers}) {
    try {
      store_->look([&](Session& session) {
        add(session, troubles);
        return true;
      });
    } catch (const StorageFault& fault) {
      troubles.emplace_back(fault.what());
    }
  }
  return troubles;
}

}  // namespace tailblock
