#pragma once

#include "body/meshed_top.h"

namespace tailblock::testing {

/// The representative top of the design study (invented there): flat, X-braced with straight braces, no reinforcement
/// round the hole. Its rim is "base"; its woods are the study's.
TopDesign study_top();
TopWoods study_woods(const TopDesign& design);

/// w = 0 at the edge, free in the plane, as in the study's deck c5b: neck edge held along x, two points across.
RimStiffness rim_held_up();
/// The edge held in the plane as well.
RimStiffness rim_pinned();

/// The same with the braces that have a mirror image only.
TopDesign mirrored_study_top();

}  // namespace tailblock::testing
