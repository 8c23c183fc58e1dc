#pragma once

#include <functional>
#include <optional>

#include "paper/letterhead.h"
#include "paper/year_picture.h"
#include "quantity/physical.h"

namespace tailblock {

/// Air that a reading was taken in.
struct StatedAir {
  Date day;
  RelativeHumidity relative_humidity = humidity_percent(45);
  Temperature temperature = celsius(20);
};
void describe(FieldVisitor&, StatedAir&);

/// A fault found, and what came of it.
struct ReportedFinding {
  enum class Outcome { done, in_hand, can_wait, left_alone, open };
  int number = 0;  ///< as on the drawing; 0: it has none
  std::string where, what;
  std::string how_bad{}, how_sure{};  ///< in words
  Outcome outcome = Outcome::done;
  std::string because{};  ///< why it was done, can wait or was left
};
void describe(FieldVisitor&, ReportedFinding&);

/// A photo that the shop's book keeps.
struct ReportedPhoto {
  int photo_id = 0;
  std::string caption{};
};
void describe(FieldVisitor&, ReportedPhoto&);

/// One measure before and after, as text in the notations the shop prints: `2.6 mm (.102, 7/64 - .007)`.
struct BeforeAndAfter {
  std::string what, before, after;
  std::string remark{};
};
void describe(FieldVisitor&, BeforeAndAfter&);

/// The paper that goes home with the instrument.
struct OwnersReport {
  PaperHead head;
  std::string owner, instrument;
  std::string lives{};  ///< where the instrument lives
  Date arrived;
  std::optional<Date> ready{};
  std::string wish{};  ///< what the owner asked for
  std::string summary{};
  std::vector<ReportedFinding> findings{};
  std::optional<Picture> drawing{};  ///< the instrument with its findings marked
  std::string drawing_caption{};
  std::vector<ReportedPhoto> photos{};
  std::vector<std::string> done{};
  std::vector<std::string> left_alone{};
  std::vector<std::string> still_open{};  ///< not decided yet
  std::vector<BeforeAndAfter> readings{};
  std::optional<StatedAir> air_before{}, air_after{};
  std::optional<YearOnPaper> year{};
  std::string year_in_words{};
  std::optional<RelativeHumidity> keep_from{}, keep_to{};  ///< the air it should live in
  std::vector<std::string> care{};
  std::vector<std::string> uncertain{};  ///< what is not known well, and what would tell
  std::string next_visit{};
};
void describe(FieldVisitor&, OwnersReport&);

/// Gives the bytes of a kept photo, small enough for paper: JPEG.
using PhotoOfNumber = std::function<std::string(int photo_id)>;

/// What was found, what was done and left, what changed, what the year will do and how to keep the instrument.
/// Readings whose air was not read say so: a height without its air says little.
/// @param photo is asked for each photo of the report.
/// @throws Refused naming a field out of range.
[[nodiscard]] Document owners_report(const OwnersReport& report, const PhotoOfNumber& photo);

}  // namespace tailblock
