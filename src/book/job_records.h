#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "bench/request.h"
#include "book/finding_records.h"
#include "book/paper_records.h"
#include "book/records.h"

namespace tailblock {

/// What the shop thinks should become of a repair.
enum class JobAdvice { do_now, can_wait, leave_alone };
inline constexpr std::array<std::string_view, 3> job_advice_names{"do_now", "can_wait", "leave_alone"};

/// A repair chosen at a visit. Its operations follow from the procedure, the answers and the amounts: they are worked
/// out anew whenever they are asked for, and the book keeps what was said and done.
struct Job {
  RecordId id = 0;
  RecordId visit_id = 0;
  RecordId finding_id = 0;  ///< what it is for; 0: no finding
  std::string procedure{};  ///< an id in data/procedures.csv
  JobAdvice advice = JobAdvice::do_now;
  bool withdrawn = false;  ///< thought better of
  std::string note{};
};
void describe(FieldVisitor&, Job&);

/// What a person answered to one of the procedure's questions. The latest stands.
struct JobAnswer {
  RecordId id = 0;
  RecordId job_id = 0;
  std::string decision{}, outcome{};
  Date day{};
  std::string who{};
};
void describe(FieldVisitor&, JobAnswer&);

/// How many of something the job takes: cleats, frets, mm of crack. The latest stands.
struct JobAmount {
  RecordId id = 0;
  RecordId job_id = 0;
  std::string amount{};  ///< named as in data/operations.csv
  double count = 0;
};
void describe(FieldVisitor&, JobAmount&);

/// Something bought for a job. Of one name the latest stands; a quantity of 0 takes it off.
struct JobMaterial {
  RecordId id = 0;
  RecordId job_id = 0;
  std::string name{};
  std::string quantity = "1";  ///< exact decimals, both
  std::string unit_price{};
};
void describe(FieldVisitor&, JobMaterial&);

/// How a job is priced beside its hours. The latest stands.
struct JobTerms {
  RecordId id = 0;
  RecordId job_id = 0;
  std::string fixed_price{};  ///< for the labour, instead of its hours; empty: the hours
  std::string tax_percent{};  ///< empty: the shop's
  std::string risk{};         ///< in words that an owner can accept or refuse
};
void describe(FieldVisitor&, JobTerms&);

/// What the owner was offered for a job: the line of the estimate as it was printed. A later offer for the same job
/// asks again, and what was said of the earlier one no longer counts.
struct JobOffer {
  RecordId id = 0;
  RecordId job_id = 0;
  Date day{};
  std::string words{};
  double hours_low = 0, hours = 0, hours_high = 0;
  std::string net{}, tax{};  ///< exact decimals, as worked out: "245.00"
  std::string currency{};    ///< ISO 4217
  /// What the net is made of, and the rate of the tax on it; empty in offers of books older than these were kept.
  std::string labour{}, materials{}, tax_percent{};
  /// What it needs of arriving and finishing, paid once a visit beside the net; empty in offers of books older than
  /// migration 9, whose net has it inside.
  std::string visit_net{}, visit_tax{};
};
void describe(FieldVisitor&, JobOffer&);

enum class OwnerSays { yes, no };
inline constexpr std::array<std::string_view, 2> owner_says_names{"yes", "no"};

/// The owner's word, with the day and a name: on an offer, or on one operation that cannot be undone.
struct OwnerWord {
  RecordId id = 0;
  RecordId job_id = 0;
  RecordId offer_id = 0;    ///< the offer it answers; 0: an operation
  std::string operation{};  ///< an id in data/operations.csv; empty: an offer
  OwnerSays says = OwnerSays::no;
  Date day{};
  std::string who{};
};
void describe(FieldVisitor&, OwnerWord&);

/// One stretch of hands-on work, begun and ended by a tap. The wait after an operation begins where the stretch that
/// finished it ended.
struct WorkSpell {
  RecordId id = 0;
  RecordId job_id = 0;
  std::string operation{};
  std::string person{};
  Date began_on{};
  int began_minute = 0;  ///< since midnight, by the shop's clock
  std::optional<Date> ended_on{};
  int ended_minute = 0;
  bool finished = false;  ///< the operation's hands-on part is done
  RecordId lot_id = 0;    ///< what it was glued or finished with; 0: not said
  std::string note{};
};
void describe(FieldVisitor&, WorkSpell&);
[[nodiscard]] Moment beginning(const WorkSpell& spell);
[[nodiscard]] std::optional<Moment> ending(const WorkSpell& spell);  ///< absent while hands are at it

/// How a running stretch ended.
struct WorkEnd {
  Date day{};
  int minute = 0;
  bool finished = true;
  RecordId lot_id = 0;
  std::string note{};
};
void describe(FieldVisitor&, WorkEnd&);

/// A stretch of work put right: the clock was forgotten, or the tap was the wrong one. The latest stands. Shorter than
/// it was tapped, it ended earlier; longer, it began earlier. The stretch itself is kept as it was tapped.
struct WorkCorrection {
  RecordId id = 0;
  RecordId spell_id = 0;
  int minutes = 0;
  bool finished = true;
  Date day{};
  std::string who{};
  std::string note{};
};
void describe(FieldVisitor&, WorkCorrection&);

/// A pot, bottle or stick that was opened: glue is good until a day.
struct MaterialLot {
  RecordId id = 0;
  std::string material{};  ///< an id in data/adhesives.csv or data/finishes.csv, or plain words
  std::string words{};     ///< as on the label
  Date opened_on{};
  std::optional<Date> good_until{};
  std::optional<Date> empty_on{};
  std::string note{};
};
void describe(FieldVisitor&, MaterialLot&);

/// Work that the humidity gate would hold, let go on: who, when and why.
struct GateRecord {
  RecordId id = 0;
  RecordId visit_id = 0;
  std::string who{};
  Date day{};
  std::string why{};
};
void describe(FieldVisitor&, GateRecord&);

/// The day the owner was told the instrument would be ready. The latest stands.
struct PromiseRecord {
  RecordId id = 0;
  RecordId visit_id = 0;
  Date ready_on{};
  double chance = 0.8;  ///< it was given with
  Date said_on{};
};
void describe(FieldVisitor&, PromiseRecord&);

/// When a visit's instrument is wanted, how much its lateness counts, and what keeps it from being worked on. The
/// latest stands.
struct BenchWish {
  RecordId id = 0;
  RecordId visit_id = 0;
  std::optional<Date> due_on{};
  double weight = 1;
  std::optional<Date> waits_until{};  ///< for a part, or for the owner: no work before that day
  std::string note{};
};
void describe(FieldVisitor&, BenchWish&);

/// An operation fixed to a moment. The latest stands.
struct Pin {
  RecordId id = 0;
  RecordId job_id = 0;
  std::string operation{};
  int which = 1;              ///< of the times that the job does this operation
  std::optional<Date> day{};  ///< absent: let go again
  int minute = 0;
};
void describe(FieldVisitor&, Pin&);

/// The shop's air: read, or forecast for a day to come. Of a day's forecasts the latest stands.
struct ShopAir {
  RecordId id = 0;
  Date day{};
  int minute = 12 * 60;
  double temperature_c = 20;
  double relative_humidity = 0.45;
  bool forecast = false;
};
void describe(FieldVisitor&, ShopAir&);

/// What the owner complains of, and what a person answered to the diagnosis. The latest of each stands.
enum class SaidAbout { symptom, fact };
inline constexpr std::array<std::string_view, 2> said_about_names{"symptom", "fact"};
struct SaidAtVisit {
  RecordId id = 0;
  RecordId visit_id = 0;
  SaidAbout about = SaidAbout::fact;
  std::string name{};  ///< an id in data/symptoms.csv or data/diagnosis_facts.csv
  bool holds = true;
  Date day{};
  std::string who{};
};
void describe(FieldVisitor&, SaidAtVisit&);

/// The instrument went home.
struct Handover {
  RecordId id = 0;
  RecordId visit_id = 0;
  Date day{};
  std::string taken_by{};
};
void describe(FieldVisitor&, Handover&);

/// What was answered to a question of another job on the same instrument.
struct AnsweredBefore {
  std::string procedure{}, decision{}, outcome{};
};
void describe(FieldVisitor&, AnsweredBefore&);

/// A job with everything kept of it, oldest first.
struct JobStory {
  Job job{};
  std::string finding_kind{}, finding_part{};  ///< of the finding it is for, as corrected last; empty: it has none
  std::vector<FindingExtent> at_finding{};  ///< the latest of each length read at the finding it is for
  std::optional<Length> drawn_length{};     ///< of that finding's line as it is drawn; absent: it is no line
  std::vector<JobAnswer> answers{};
  std::vector<JobAmount> amounts{};
  std::vector<JobMaterial> materials{};
  std::vector<JobTerms> terms{};
  std::vector<JobOffer> offers{};
  std::vector<OwnerWord> words{};
  std::vector<WorkSpell> spells{};  ///< as corrected
  std::vector<WorkCorrection> corrections{};
  std::vector<Pin> pins{};
};
void describe(FieldVisitor&, JobStory&);

/// What is kept of a visit's work.
struct VisitWork {
  Visit visit{};
  std::vector<JobStory> jobs{};
  std::vector<GateRecord> overrides{};
  std::vector<SaidAtVisit> said{};
  std::vector<PromiseRecord> promises{};
  std::vector<BenchWish> wishes{};
  std::vector<Handover> handovers{};
  std::vector<GivenPaper> papers{};
  std::vector<InvoicedOffer> invoiced{};
  std::vector<AnsweredBefore> before{};  ///< at earlier visits of the instrument, oldest first
};
void describe(FieldVisitor&, VisitWork&);

}  // namespace tailblock
