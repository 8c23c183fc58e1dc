#pragma once

#include <array>
#include <memory>
#include <span>
#include <vector>

#include "season/season_prior.h"
#include "season/visit_record.h"

namespace tailblock {

/// Moisture of the wood under one lag on the days that matter: the visit days in order, then today.
struct DayMoisture {
  std::vector<double> above_reference_percent;  ///< expected, less the reference
  std::vector<double> departure_percent;        ///< scale of what is not known of it (WoodPath)
  std::vector<double> unit_covariance;          ///< of two such days at unit scale, row by row (memory and lag)
};

/// What is not known of an instrument once lag and response are given. `from` and `to` are the last two visit days.
enum Latent : std::size_t {
  level_bass,
  level_treble,
  treble_ratio,
  drift,
  departure_today,
  departure_from,
  departure_to,
  bridge_ratio,  ///< rise of the bridge over the rim for one of the bass action
  latent_count
};

struct LatentNormal {
  std::array<double, latent_count> mean;
  std::array<std::array<double, latent_count>, latent_count> covariance;
};

/// What is believed before the readings: of heights in general, and of the bridge's part in this instrument's response.
struct EvidencePrior {
  const SeasonPrior* season;
  double bridge_ratio, bridge_ratio_sd;
};

/// A reading as all the others expect it.
struct LeftOut {
  double expected_mm;
  double sd_mm;  ///< gauge included
};

/// What the readings say of a move between two visit days when nothing is believed of its size: precision and
/// precision times estimate, by side. A side (or a bridge) read on only one side of the interval says nothing.
struct StepInformation {
  std::array<std::array<double, side_count>, side_count> precision;
  std::array<double, side_count> weighted_mm;
};

/// How well an instrument's readings agree with a lag and a response r, and what they then say of the rest.
///
///     y = level(side) + r rho(side) (x + w) + drift t - later shifts + set + gauge
///
/// rho is 1 on the bass side, the treble ratio on the treble side and the bridge ratio at the bridge over the rim, x
/// the expected moisture over the reference, w the unknown departure of that day. For a given lag, y is normal with
/// covariance A + r^2 B, where A holds level, drift, shifts, sets and gauges and B the departures and the ratio. With A
/// = L L' and L^-1 B L^-T = sum of lambda e e' once a lag, every response costs a few sums. rho w is taken as (prior
/// mean of rho) w: (rho - mean) w is under 0.01 mm. Derivation: docs/models/response.md.
class Evidence {
 public:
  Evidence(const VisitRecord& record, const EvidencePrior& prior, std::span<const DayMoisture> moisture_by_lag);
  Evidence(Evidence&&) noexcept;
  Evidence& operator=(Evidence&&) noexcept;
  Evidence(const Evidence&) = delete;
  Evidence& operator=(const Evidence&) = delete;
  ~Evidence();

  [[nodiscard]] double log_likelihood(std::size_t lag, double response) const;
  [[nodiscard]] LatentNormal latents(std::size_t lag, double response) const;
  [[nodiscard]] std::vector<LeftOut> left_out(std::size_t lag, double response) const;
  /// A move between visit day `interval` and the next.
  [[nodiscard]] StepInformation step(std::size_t lag, double response, std::size_t interval) const;
  /// Logarithm of the likelihood with such a move of unknown size over that without.
  [[nodiscard]] double log_step_factor(std::size_t lag, double response, std::size_t interval) const;

 private:
  struct Parts;
  std::unique_ptr<const Parts> parts_;
};

}  // namespace tailblock
