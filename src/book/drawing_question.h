#pragma once

#include "body/instrument_drawing.h"
#include "book/records.h"
#include "models/data_tables.h"

namespace tailblock {

/// An instrument in the book as its surveys draw it.
/// @throws Refused as instrument_drawing.
[[nodiscard]] InstrumentDrawing drawing_of(const Instrument& instrument, const DataTables& tables);

}  // namespace tailblock
