#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "book/finding_records.h"
#include "book/finish_records.h"
#include "book/job_records.h"
#include "book/records.h"
#include "book/session.h"
#include "quantity/fields.h"

namespace tailblock {

/// Which table keeps a record.
template <class Record>
inline constexpr std::string_view table_of = "";
template <>
inline constexpr std::string_view table_of<Owner> = "owners";
template <>
inline constexpr std::string_view table_of<Home> = "homes";
template <>
inline constexpr std::string_view table_of<Instrument> = "instruments";
template <>
inline constexpr std::string_view table_of<Visit> = "visits";
template <>
inline constexpr std::string_view table_of<Reading> = "readings";
template <>
inline constexpr std::string_view table_of<Intervention> = "interventions";
template <>
inline constexpr std::string_view table_of<SaddleDecision> = "saddle_decisions";
template <>
inline constexpr std::string_view table_of<Finding> = "findings";
template <>
inline constexpr std::string_view table_of<FindingChange> = "finding_changes";
template <>
inline constexpr std::string_view table_of<KeptPhoto> = "photos";
template <>
inline constexpr std::string_view table_of<FinishTrial> = "finish_trials";
template <>
inline constexpr std::string_view table_of<VisitPhoto> = "visit_photos";

template <>
inline constexpr std::string_view table_of<Job> = "jobs";
template <>
inline constexpr std::string_view table_of<JobAnswer> = "job_answers";
template <>
inline constexpr std::string_view table_of<JobAmount> = "job_amounts";
template <>
inline constexpr std::string_view table_of<JobOffer> = "job_offers";
template <>
inline constexpr std::string_view table_of<OwnerWord> = "owner_words";
template <>
inline constexpr std::string_view table_of<WorkSpell> = "work_spells";
template <>
inline constexpr std::string_view table_of<MaterialLot> = "material_lots";
template <>
inline constexpr std::string_view table_of<GateRecord> = "gate_overrides";
template <>
inline constexpr std::string_view table_of<PromiseRecord> = "promises";
template <>
inline constexpr std::string_view table_of<BenchWish> = "bench_wishes";
template <>
inline constexpr std::string_view table_of<Pin> = "pins";
template <>
inline constexpr std::string_view table_of<ShopAir> = "shop_air";
template <>
inline constexpr std::string_view table_of<Handover> = "handovers";
template <>
inline constexpr std::string_view table_of<GivenPaper> = "papers";
template <>
inline constexpr std::string_view table_of<InvoicedOffer> = "invoiced_offers";
template <>
inline constexpr std::string_view table_of<JobMaterial> = "job_materials";
template <>
inline constexpr std::string_view table_of<JobTerms> = "job_terms";
template <>
inline constexpr std::string_view table_of<SaidAtVisit> = "visit_sayings";
template <>
inline constexpr std::string_view table_of<WorkCorrection> = "work_corrections";

/// How a record lies in its table: one column a field, named as its describe() names it, lengths in millimetres, dates
/// as ISO text, choices by name, flags as 0 and 1. A nested struct's fields lie beside the others; a list is rows of
/// another table and is passed over. `supersedes` and numbers of other records that are 0 are NULL; `superseded_by` is found, never kept.
struct RecordLayout {
  std::vector<std::string> names;
  std::vector<CellKind> kinds;
  std::vector<std::size_t> kept;  ///< which of them a row is written with: not the id, nor what is found
  std::string insert, update;     ///< the statements
};

using Describe = std::function<void(FieldVisitor&)>;

[[nodiscard]] RecordLayout record_layout(std::string_view table, const Describe& record);
/// The kept cells of a record.
[[nodiscard]] std::vector<Cell> kept_cells(const RecordLayout& layout, const Describe& record);
/// Sets the record from a whole row.
/// @throws StorageFault when the row holds what no record can: the file was damaged, or changed by another program.
void set_record(const Describe& record, const std::vector<Cell>& row);
[[nodiscard]] std::string select_text(const RecordLayout& layout, std::string_view from);

template <class Record>
[[nodiscard]] const RecordLayout& layout_of() {
  static const RecordLayout layout = [] {
    Record record;
    return record_layout(table_of<Record>, [&](FieldVisitor& visit) { describe(visit, record); });
  }();
  return layout;
}

/// Adds a record and returns its new id, whatever id it came with.
template <class Record>
int insert_record(Session& session, Record record) {
  const RecordLayout& layout = layout_of<Record>();
  return session.first<int>(layout.insert, kept_cells(layout, [&](FieldVisitor& visit) { describe(visit, record); }))
      .value();
}

/// Changes the record with this id; false when there is none.
template <class Record>
bool update_record(Session& session, Record record) {
  const RecordLayout& layout = layout_of<Record>();
  std::vector<Cell> given = kept_cells(layout, [&](FieldVisitor& visit) { describe(visit, record); });
  given.push_back(cell(record.id));
  return session.run(layout.update, given) == 1;
}

/// Hands over the records of `from` one by one; it names the table or view `record`: `"visits AS record WHERE record.id
/// = :id"`.
template <class Record, class Take>
void each_record(Session& session, std::string_view from, const std::vector<Cell>& given, Take take) {
  const RecordLayout& layout = layout_of<Record>();
  session.ask(select_text(layout, from), given, layout.kinds, [&](const std::vector<Cell>& row) {
    Record record;
    set_record([&](FieldVisitor& visit) { describe(visit, record); }, row);
    take(std::move(record));
  });
}

/// Those records, all of them.
template <class Record>
[[nodiscard]] std::vector<Record> select_records(Session& session, std::string_view from,
                                                 const std::vector<Cell>& given = {}) {
  std::vector<Record> records;
  each_record<Record>(session, from, given, [&](Record&& record) { records.push_back(std::move(record)); });
  return records;
}

}  // namespace tailblock
