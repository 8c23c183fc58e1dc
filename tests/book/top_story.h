#pragma once

#include "book/surveyed_top.h"
#include "shop_for_tests.h"

/// An instrument of no book with things found on its top.
namespace tailblock::testing {

const DataTables& data_tables();

inline const Date top_today = day(2026, 2, 20);
inline const Date top_visit_day = day(2026, 2, 10);

/// A mid-size top with scalloped X bracing, in a house that is dry in winter.
InstrumentStory top_story(std::vector<Reading> readings = {});

/// Found at its visit, with the next number.
FindingStory found(const std::string& kind, DrawingView view, std::vector<DrawingPoint> points);

FindingStory read_at(FindingStory story, const std::string& measure, double mm_value);

/// A later word of what was found.
FindingStory said_since(FindingStory story, Date date, FindingState state, std::vector<FindingExtent> extents = {});

TopRecords top_records_of(std::vector<FindingStory> stories);

/// A job for a finding with one operation finished.
JobStory job_done(const FindingStory& story, const std::string& operation, Date ended_on);

/// The part of a brace that lies on the top, at a place along it from its first end.
DrawingPoint on_brace(const TopDesign& design, const std::string& brace, double from_first_mm);
double length_on_top(const TopDesign& design, const std::string& brace);

}  // namespace tailblock::testing
