#include "book/drawing_question.h"

namespace tailblock {

InstrumentDrawing drawing_of(const Instrument& instrument, const DataTables& tables) {
  return instrument_drawing({.body_size = instrument.design.body_size,
                             .bracing = instrument.design.bracing,
                             .lower_bout_width = instrument.design.lower_bout_width,
                             .scale_length = instrument.scale_length,
                             .body_joint_fret = instrument.body_joint_fret,
                             .fret_count = instrument.fret_count},
                            tables.tops, tables.drawing);
}

}  // namespace tailblock
