#include "season/calibrate.h"

#include <algorithm>
#include <cmath>

namespace tailblock {
namespace {

constexpr std::size_t kept_latents = 5;  // level_bass .. departure_today
constexpr double least_weight_together = 1e-3;
constexpr double least_share_of_step = 1e-4;

/// Two normals with weights that sum to 1, as one of the same mean and covariance.
LatentNormal merged(const LatentNormal& a, const LatentNormal& b, double share_of_b) {
  LatentNormal both{};
  const double s = share_of_b;
  for (std::size_t i = 0; i < latent_count; ++i) both.mean[i] = (1 - s) * a.mean[i] + s * b.mean[i];
  for (std::size_t i = 0; i < latent_count; ++i) {
    for (std::size_t j = 0; j < latent_count; ++j) {
      both.covariance[i][j] = (1 - s) * a.covariance[i][j] + s * b.covariance[i][j] +
                              s * (1 - s) * (a.mean[i] - b.mean[i]) * (a.mean[j] - b.mean[j]);
    }
  }
  return both;
}

LatentNormal latents_of(const Learnt& learnt, const Cell& cell) {
  const LatentNormal plain = learnt.plain.latents(cell.lag, cell.response);
  const double share = cell.total() > 0 ? cell.weight[1] / cell.total() : 0;
  if (!learnt.stepped || share < least_share_of_step) return plain;
  return merged(plain, learnt.stepped->latents(cell.lag, cell.response), share);
}

Hypothesis hypothesis_of(const Learnt& learnt, const Cell& cell) {
  const LatentNormal latents = latents_of(learnt, cell);
  const LagNode& node = learnt.lags[cell.lag];
  Hypothesis hypothesis{.weight = cell.total(),
                        .lag = node.lag,
                        .response_mm_per_percent = cell.response,
                        .treble_ratio = latents.mean[treble_ratio],
                        .level_bass_mm = latents.mean[level_bass],
                        .level_treble_mm = latents.mean[level_treble],
                        .level_sd_bass_mm = std::sqrt(latents.covariance[level_bass][level_bass]),
                        .level_sd_treble_mm = std::sqrt(latents.covariance[level_treble][level_treble]),
                        .drift_mm_per_year = latents.mean[drift],
                        .moisture_today_percent = node.path.moisture_percent.back(),
                        .moisture_departure_percent = latents.mean[departure_today],
                        .covariance = {}};
  for (std::size_t i = 0; i < kept_latents; ++i) {
    std::copy_n(latents.covariance[i].begin(), kept_latents, hypothesis.covariance[i].begin());
  }
  return hypothesis;
}

}  // namespace

Calibration calibration_of(const Learnt& learnt) {
  std::vector<Cell> cells = learnt.cells;
  std::stable_sort(cells.begin(), cells.end(), [](const Cell& a, const Cell& b) { return a.total() > b.total(); });
  double left = 1;
  std::size_t kept = 0;
  while (kept < cells.size() && left > least_weight_together) left -= cells[kept++].total();
  Calibration calibration{.today = learnt.record.today,
                          .reference_moisture_percent = learnt.reference_percent,
                          .hypotheses = {},
                          .relief = learnt.relief};
  for (std::size_t i = 0; i < kept; ++i) {
    calibration.hypotheses.push_back(hypothesis_of(learnt, cells[i]));
    calibration.hypotheses.back().weight /= 1 - left;
  }
  return calibration;
}

Calibration calibrate(const ResponseRequest& request, const SeasonTables& tables) {
  return calibration_of(learn(request, tables));
}

}  // namespace tailblock
