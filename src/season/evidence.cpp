#include "season/evidence.h"

#include <Eigen/Cholesky>
#include <Eigen/Dense>
#include <Eigen/Eigenvalues>
#include <cmath>
#include <numbers>

namespace tailblock {
namespace {

using Eigen::ArrayXd;
using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr double days_in_year = 365.25;
constexpr Index static_latents = 3;  // level_bass, level_treble, drift: their covariance with y does not hold r

Index at(std::size_t i) { return static_cast<Index>(i); }
std::size_t side_index(Side side) { return static_cast<std::size_t>(side); }
double square(double x) { return x * x; }

double level_covariance(Side a, Side b, const SeasonPrior& p) {
  if (a == Side::bridge || b == Side::bridge) return a == b ? square(p.bridge_level_sd) : 0;
  return square(p.level_sd) + (a == Side::treble && b == Side::treble ? square(p.level_side_sd) : 0);
}

double shift_covariance(const Shift& shift, Side a, Side b) {
  const double product = shift.sd_mm[side_index(a)] * shift.sd_mm[side_index(b)];
  if (a == b) return product;
  return (a == Side::bridge || b == Side::bridge ? shift.bridge_correlation : shift.correlation) * product;
}

/// Of the drift in a year: strings and bridge drift each in their own way.
double drift_covariance(Side a, Side b, const SeasonPrior& p) {
  if (a == Side::bridge || b == Side::bridge) return a == b ? square(p.bridge_drift_sd) : 0;
  return square(p.drift_sd);
}

/// Of what one day's readings share: strings share strings and hand; the straightedge has its own seat.
double set_covariance(Side a, Side b, const SeasonPrior& p) {
  if (a == Side::bridge || b == Side::bridge) return a == b ? square(p.bridge_set_sd) : 0;
  return square(p.set_sd);
}

/// The part of the model that holds neither lag nor response.
struct StaticPart {
  VectorXd residual;  // y less its mean at response 0
  VectorXd years;     // from today, negative
  MatrixXd lower;     // A = lower lower'
  MatrixXd inverse;   // of A
  double log_det = 0;
  MatrixXd with_latents;  // covariance of level_bass, level_treble, drift with y
  MatrixXd steps;         // a column for each side of an interval: -1 before it
};

MatrixXd static_covariance(const VisitRecord& record, const SeasonPrior& p, const VectorXd& years) {
  const std::size_t n = record.observations.size();
  MatrixXd a(at(n), at(n));
  for (std::size_t i = 0; i < n; ++i) {
    const Observation& one = record.observations[i];
    for (std::size_t j = 0; j <= i; ++j) {
      const Observation& other = record.observations[j];
      double c = level_covariance(one.side, other.side, p) +
                 drift_covariance(one.side, other.side, p) * years[at(i)] * years[at(j)];
      if (one.set == other.set) c += set_covariance(one.side, other.side, p);
      if (i == j) c += square(one.gauge_sd_mm);
      for (const Shift& shift : record.shifts) {
        if (is_before(one, shift) && is_before(other, shift)) c += shift_covariance(shift, one.side, other.side);
      }
      a(at(i), at(j)) = a(at(j), at(i)) = c;
    }
  }
  return a;
}

MatrixXd step_columns(const VisitRecord& record) {
  const std::size_t intervals = record.days.empty() ? 0 : record.days.size() - 1;
  MatrixXd steps = MatrixXd::Zero(at(record.observations.size()), at(side_count * intervals));
  for (std::size_t i = 0; i < record.observations.size(); ++i) {
    for (std::size_t interval = record.observations[i].day; interval < intervals; ++interval) {
      steps(at(i), at(side_count * interval + side_index(record.observations[i].side))) = -1;
    }
  }
  return steps;
}

StaticPart static_part(const VisitRecord& record, const SeasonPrior& p) {
  const std::size_t n = record.observations.size();
  StaticPart part;
  part.residual.resize(at(n));
  part.years.resize(at(n));
  part.with_latents.resize(static_latents, at(n));
  for (std::size_t i = 0; i < n; ++i) {
    const Observation& seen = record.observations[i];
    const double years = days_between(record.today, seen.date) / days_in_year;
    double expected = seen.side == Side::bridge
                          ? p.bridge_level
                          : (seen.side == Side::bass ? p.level_bass : p.level_treble) + p.drift * years;
    for (const Shift& shift : record.shifts) {
      if (is_before(seen, shift)) expected -= shift.known_mm[side_index(seen.side)];
    }
    part.years[at(i)] = years;
    part.residual[at(i)] = seen.value_mm - expected;
    part.with_latents(0, at(i)) = level_covariance(Side::bass, seen.side, p);
    part.with_latents(1, at(i)) = level_covariance(Side::treble, seen.side, p);
    part.with_latents(2, at(i)) = seen.side == Side::bridge ? 0 : square(p.drift_sd) * years;
  }
  const Eigen::LLT<MatrixXd> llt(static_covariance(record, p, part.years));
  part.lower = llt.matrixL();
  part.inverse = llt.solve(MatrixXd::Identity(at(n), at(n)));
  part.log_det = 2 * part.lower.diagonal().array().log().sum();
  part.steps = step_columns(record);
  return part;
}

/// Covariance of the departures of the visit days and of today.
MatrixXd departure_covariance(const DayMoisture& moisture, double floor) {
  const std::size_t m = moisture.departure_percent.size();
  MatrixXd w(at(m), at(m));
  for (std::size_t i = 0; i < m; ++i) {
    for (std::size_t j = 0; j < m; ++j) {
      w(at(i), at(j)) =
          moisture.departure_percent[i] * moisture.departure_percent[j] * moisture.unit_covariance[i * m + j];
    }
    w(at(i), at(i)) += square(floor);
  }
  return w;
}

/// The part that belongs to one lag. Names follow evidence.h: e are the columns of L^-1 B L^-T's factor, turned.
struct LagPart {
  ArrayXd lambda;
  MatrixXd e_back;                     // L^-T e
  ArrayXd e_residual;                  // e' L^-1 residual
  ArrayXd e_slope;                     // e' L^-1 c, c what one unit of response adds to y
  VectorXd back_residual, back_slope;  // A^-1 residual, A^-1 c
  double residual_residual = 0, residual_slope = 0, slope_slope = 0;
  // Latents: covariance with y at response 1, its products, prior.
  MatrixXd latent_e, latent_latent, latent_prior;
  VectorXd latent_residual, latent_slope, latent_mean;
  // Steps.
  MatrixXd step_e, step_step;
  VectorXd step_residual, step_slope;

  [[nodiscard]] ArrayXd gain(double r) const { return r * r / (1 + r * r * lambda); }
  [[nodiscard]] ArrayXd projected(double r) const { return e_residual - r * e_slope; }
};

struct Response {
  MatrixXd factor;       // B = factor factor'
  VectorXd slope;        // c
  MatrixXd covariances;  // of the latents with y, at response 1
  MatrixXd prior;        // of the latents
  VectorXd mean;
};

Response response_part(const VisitRecord& record, const EvidencePrior& prior, const StaticPart& fixed,
                       const DayMoisture& moisture) {
  const SeasonPrior& p = *prior.season;
  const std::size_t n = record.observations.size();
  const std::size_t today = record.days.size();
  const MatrixXd w = departure_covariance(moisture, p.logged_floor);
  const MatrixXd f = Eigen::LLT<MatrixXd>(w).matrixL();
  const std::size_t to = today > 0 ? today - 1 : today;
  const std::size_t from = today > 1 ? today - 2 : to;
  const std::array<std::size_t, 3> moments{today, from, to};

  Response part;
  part.factor = MatrixXd::Zero(at(n), at(today + 2));
  part.slope.resize(at(n));
  part.covariances = MatrixXd::Zero(at(latent_count), at(n));
  part.covariances.row(level_bass) = fixed.with_latents.row(0);
  part.covariances.row(level_treble) = fixed.with_latents.row(1);
  part.covariances.row(drift) = fixed.with_latents.row(2);
  for (std::size_t i = 0; i < n; ++i) {
    const Observation& seen = record.observations[i];
    const bool treble = seen.side == Side::treble, bridge = seen.side == Side::bridge;
    const double ratio = treble ? p.treble_ratio : bridge ? prior.bridge_ratio : 1;
    const double x = moisture.above_reference_percent[seen.day];
    part.factor.row(at(i)).head(at(today)) = ratio * f.row(at(seen.day)).head(at(today));
    part.slope[at(i)] = ratio * x;
    if (treble) {
      part.factor(at(i), at(today)) = p.treble_ratio_sd * x;
      part.covariances(treble_ratio, at(i)) = square(p.treble_ratio_sd) * x;
    }
    if (bridge) {
      part.factor(at(i), at(today + 1)) = prior.bridge_ratio_sd * x;
      part.covariances(bridge_ratio, at(i)) = square(prior.bridge_ratio_sd) * x;
    }
    for (std::size_t k = 0; k < moments.size(); ++k) {
      part.covariances(at(departure_today + k), at(i)) = ratio * w(at(moments[k]), at(seen.day));
    }
  }
  part.prior = MatrixXd::Zero(at(latent_count), at(latent_count));
  part.prior(level_bass, level_bass) = part.prior(level_bass, level_treble) = part.prior(level_treble, level_bass) =
      square(p.level_sd);
  part.prior(level_treble, level_treble) = level_covariance(Side::treble, Side::treble, p);
  part.prior(treble_ratio, treble_ratio) = square(p.treble_ratio_sd);
  part.prior(drift, drift) = square(p.drift_sd);
  part.prior(bridge_ratio, bridge_ratio) = square(prior.bridge_ratio_sd);
  for (std::size_t k = 0; k < moments.size(); ++k) {
    for (std::size_t l = 0; l < moments.size(); ++l) {
      part.prior(at(departure_today + k), at(departure_today + l)) = w(at(moments[k]), at(moments[l]));
    }
  }
  part.mean = VectorXd::Zero(at(latent_count));
  part.mean[level_bass] = p.level_bass;
  part.mean[level_treble] = p.level_treble;
  part.mean[treble_ratio] = p.treble_ratio;
  part.mean[drift] = p.drift;
  part.mean[bridge_ratio] = prior.bridge_ratio;
  return part;
}

// Each product and each solve of a new pair of types costs seconds of compiling: these three serve for all.
MatrixXd product(const MatrixXd& a, const MatrixXd& b) { return a * b; }
MatrixXd forward(const MatrixXd& lower, const MatrixXd& b) { return lower.triangularView<Eigen::Lower>().solve(b); }
MatrixXd backward(const MatrixXd& lower, const MatrixXd& b) {
  return lower.triangularView<Eigen::Lower>().transpose().solve(b);
}

LagPart lag_part(const StaticPart& fixed, const Response& response) {
  const MatrixXd h = forward(fixed.lower, response.factor);
  const Eigen::SelfAdjointEigenSolver<MatrixXd> eigen(product(h.transpose(), h));
  const MatrixXd e = product(h, eigen.eigenvectors());
  const MatrixXd steps = fixed.steps.transpose();
  const VectorXd z = forward(fixed.lower, fixed.residual);
  const VectorXd k = forward(fixed.lower, response.slope);
  LagPart part;
  part.lambda = eigen.eigenvalues().array().max(0);
  part.e_back = backward(fixed.lower, e);
  part.e_residual = product(e.transpose(), z).array();
  part.e_slope = product(e.transpose(), k).array();
  part.back_residual = backward(fixed.lower, z);
  part.back_slope = backward(fixed.lower, k);
  part.residual_residual = z.squaredNorm();
  part.residual_slope = z.dot(k);
  part.slope_slope = k.squaredNorm();
  part.latent_e = product(response.covariances, part.e_back);
  part.latent_latent = product(product(response.covariances, fixed.inverse), response.covariances.transpose());
  part.latent_residual = product(response.covariances, part.back_residual);
  part.latent_slope = product(response.covariances, part.back_slope);
  part.latent_prior = response.prior;
  part.latent_mean = response.mean;
  part.step_e = product(steps, part.e_back);
  part.step_residual = product(steps, part.back_residual);
  part.step_slope = product(steps, part.back_slope);
  return part;
}

}  // namespace

struct Evidence::Parts {
  StaticPart fixed;
  MatrixXd step_inverse;  // A^-1 between the step columns
  std::vector<double> values_mm;
  std::vector<LagPart> lags;
  Eigen::Matrix3d step_prior;
};

Evidence::Evidence(const VisitRecord& record, const EvidencePrior& prior,
                   std::span<const DayMoisture> moisture_by_lag) {
  const SeasonPrior& season = *prior.season;
  auto parts = std::make_unique<Parts>();
  parts->fixed = static_part(record, season);
  const StaticPart& fixed = parts->fixed;
  parts->step_inverse = product(product(fixed.steps.transpose(), fixed.inverse), fixed.steps);
  for (const Observation& seen : record.observations) parts->values_mm.push_back(seen.value_mm);
  for (const DayMoisture& moisture : moisture_by_lag) {
    parts->lags.push_back(lag_part(parts->fixed, response_part(record, prior, parts->fixed, moisture)));
  }
  const double strings = square(season.step_sd), bridge = square(season.bridge_step_sd);
  const double both = season.bridge_step_correlation * season.step_sd * season.bridge_step_sd;
  const double sides_apart = season.step_correlation * strings;
  parts->step_prior << strings, sides_apart, both, sides_apart, strings, both, both, both, bridge;
  parts_ = std::move(parts);
}

Evidence::Evidence(Evidence&&) noexcept = default;
Evidence& Evidence::operator=(Evidence&&) noexcept = default;
Evidence::~Evidence() = default;

double Evidence::log_likelihood(std::size_t lag, double r) const {
  const LagPart& part = parts_->lags[lag];
  const double misfit = part.residual_residual - 2 * r * part.residual_slope + r * r * part.slope_slope -
                        (part.gain(r) * part.projected(r).square()).sum();
  const double log_det = parts_->fixed.log_det + (r * r * part.lambda).log1p().sum();
  const auto n = static_cast<double>(parts_->values_mm.size());
  return -(misfit + log_det + n * std::log(2 * std::numbers::pi)) / 2;
}

LatentNormal Evidence::latents(std::size_t lag, double r) const {
  const LagPart& part = parts_->lags[lag];
  const ArrayXd gain = part.gain(r);
  VectorXd scale = VectorXd::Constant(at(latent_count), r);
  scale[level_bass] = scale[level_treble] = scale[drift] = 1;
  const VectorXd told =
      part.latent_residual - r * part.latent_slope - part.latent_e * (gain * part.projected(r)).matrix();
  const MatrixXd weighted = part.latent_e.array().rowwise() * gain.transpose();
  const MatrixXd known = part.latent_latent - product(weighted, part.latent_e.transpose());
  LatentNormal latents{};
  for (std::size_t i = 0; i < latent_count; ++i) {
    latents.mean[i] = part.latent_mean[at(i)] + scale[at(i)] * told[at(i)];
    for (std::size_t j = 0; j < latent_count; ++j) {
      latents.covariance[i][j] = part.latent_prior(at(i), at(j)) - scale[at(i)] * known(at(i), at(j)) * scale[at(j)];
    }
  }
  return latents;
}

std::vector<LeftOut> Evidence::left_out(std::size_t lag, double r) const {
  const LagPart& part = parts_->lags[lag];
  const ArrayXd gain = part.gain(r);
  const VectorXd pull = part.back_residual - r * part.back_slope - part.e_back * (gain * part.projected(r)).matrix();
  const ArrayXd precision =
      parts_->fixed.inverse.diagonal().array() - (part.e_back.array().square().matrix() * gain.matrix()).array();
  std::vector<LeftOut> others(parts_->values_mm.size());
  for (std::size_t i = 0; i < others.size(); ++i) {
    others[i] = {.expected_mm = parts_->values_mm[i] - pull[at(i)] / precision[at(i)],
                 .sd_mm = std::sqrt(1 / precision[at(i)])};
  }
  return others;
}

StepInformation Evidence::step(std::size_t lag, double r, std::size_t interval) const {
  const LagPart& part = parts_->lags[lag];
  const Index first = at(side_count * interval);
  const ArrayXd gain = part.gain(r), pulled = gain * part.projected(r);
  StepInformation info{};
  for (std::size_t i = 0; i < side_count; ++i) {
    const Index row = first + at(i);
    info.weighted_mm[i] = part.step_residual[row] - r * part.step_slope[row];
    for (Index j = 0; j < part.lambda.size(); ++j) info.weighted_mm[i] -= part.step_e(row, j) * pulled[j];
    for (std::size_t k = 0; k < side_count; ++k) {
      const Index column = first + at(k);
      double precision = parts_->step_inverse(row, column);
      for (Index j = 0; j < part.lambda.size(); ++j)
        precision -= gain[j] * part.step_e(row, j) * part.step_e(column, j);
      info.precision[i][k] = precision;
    }
  }
  return info;
}

double Evidence::log_step_factor(std::size_t lag, double r, std::size_t interval) const {
  const StepInformation info = step(lag, r, interval);
  Eigen::Matrix3d precision;
  Eigen::Vector3d weighted;
  for (int i = 0; i < 3; ++i) {
    weighted[i] = info.weighted_mm[static_cast<std::size_t>(i)];
    for (int k = 0; k < 3; ++k)
      precision(i, k) = info.precision[static_cast<std::size_t>(i)][static_cast<std::size_t>(k)];
  }
  const Eigen::Matrix3d& prior = parts_->step_prior;
  const double log_det = std::log((Eigen::Matrix3d::Identity() + prior * precision).determinant());
  const Eigen::Matrix3d sum = prior.inverse() + precision;
  return (weighted.dot(sum.inverse() * weighted) - log_det) / 2;
}

}  // namespace tailblock
