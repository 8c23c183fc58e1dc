#pragma once

#include <vector>

#include "strings/fretted_steps.h"

namespace tailblock {

/// The energy of a stepped string, so reckoned that a step without losses does not change it:
///
///     H = sum h [m v^2/2 + T u_x u'_x/2 + E I u_xx u'_xx/2] + sum over frets [V + V']/2,   v = (u' - u)/k
///
/// between two instants. What a taking of losses takes is the difference it makes.
/// Source: derived here (docs/models/contact.md).
class MotionEnergy {
 public:
  MotionEnergy(const SpeakingString& string, const StringGrid& grid) : string_(string), grid_(grid) {}

  void release(const StepState& state, std::vector<PluckMotion>& told);
  /// After `next` is finished: how far the balance is off.
  void watch(const StepState& state, std::vector<PluckMotion>& told);
  void before_losses(const StepState& state, std::vector<PluckMotion>& told);
  void after_losses(const StepState& state, std::vector<PluckMotion>& told);
  void end(const StepState& state, std::vector<PluckMotion>& told) const;

 private:
  [[nodiscard]] double energy(const StringRow& early, const StringRow& late, const StepState& state,
                              std::size_t lane) const;

  SpeakingString string_;
  StringGrid grid_;
};

}  // namespace tailblock
