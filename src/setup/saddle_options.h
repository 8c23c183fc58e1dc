#pragma once

#include <optional>
#include <string>
#include <vector>

#include "setup/neck_angle.h"
#include "setup/pooled_action.h"
#include "setup/raised_year.h"
#include "setup/saddle.h"
#include "setup/saddle_search.h"
#include "setup/year_to_serve.h"

namespace tailblock {

/// One saddle question with what every option needs of it worked out once. It refers to the request, the year and the
/// limits and must not outlive them.
struct SaddleCase {
  SaddleCase(const SaddleRequest& asked, const YearToServe& ahead, const SaddleLimits& rules);

  const SaddleRequest& request;
  const YearToServe& year;
  const SaddleLimits& limits;
  SaddleQuestion question;  ///< inside the limits of the bridge
  Stretch whole_year;
  EndActions actions;  ///< at home, with the saddle that is fitted
};

/// The six ways, each complete with heights, days, checks and cautions.
[[nodiscard]] SaddleOption leave_option(const SaddleCase& asked);
[[nodiscard]] SaddleOption turn_rod_option(const SaddleCase& asked);
[[nodiscard]] SaddleOption one_saddle_option(const SaddleCase& asked);
[[nodiscard]] SaddleOption two_saddles_option(const SaddleCase& asked);
[[nodiscard]] SaddleOption humid_room_option(const SaddleCase& asked);
[[nodiscard]] SaddleOption neck_angle_option(const SaddleCase& asked);

/// What the option above starts from, for the question of the neck alone.
[[nodiscard]] NeckNeed neck_need(const SaddleCase& asked);

/// A saddle in its part of the year. It stands out by `neck_steps` more than its own steps say, where the neck is
/// turned back by as much at the saddle.
struct Fitted {
  std::string season;
  SaddleInPart saddle;
  int neck_steps = 0;
};

/// Fills in what all five options share, for the saddles of this one in this year: heights, days, what to set today,
/// checks, cautions and cost.
void fit_saddles(const SaddleCase& asked, const YearPaths& year, const std::vector<Fitted>& saddles,
                 SaddleOption& option);

/// Says where the bridge's limits hold a height back from what the year asks for.
void caution_held_back(const SaddleCase& asked, EndSteps steps, SaddleOption& option);

/// Whether the present saddle can be kept as the way back: always, but where an open-ended one is filed lower.
[[nodiscard]] bool can_be_put_back(SaddleSlot slot, const SaddleToMake& saddle);

/// Marks an option as not possible, or not needed. Its figures are then those of leaving the saddle as it is.
void refuse(std::string why_not, SaddleOption& option);

/// The same for want of any height inside the bridge's limits.
void refuse_for_height(const SaddleCase& asked, SaddleOption& option);

/// The height of each end that costs least, as though the bridge had no limits.
[[nodiscard]] EndSteps unbounded_heights(const SaddleCase& asked);

}  // namespace tailblock
