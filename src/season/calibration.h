#pragma once

#include <array>
#include <vector>

#include "season/response.h"

namespace tailblock {

struct BodyDesignTable;
struct PlateFigures;
struct SeasonPrior;
struct SpeciesTable;
struct TopDesignTable;
struct TopMovements;

/// The tables the season model reads, loaded at the edge: data/body_designs.csv, species.csv, season_prior.csv,
/// season_structure.csv, and what of the plate model's own tables bears on the season.
struct SeasonTables {
  const BodyDesignTable* designs;
  const SpeciesTable* species;
  const SeasonPrior* prior;
  const TopMovements* movements;
  const TopDesignTable* tops;
  const PlateFigures* plate;
};

/// One instrument this might be: its lag and response fixed, everything else Gaussian given those two.
struct Hypothesis {
  double weight;
  Days lag;
  double response_mm_per_percent;               ///< bass
  double treble_ratio;                          ///< treble response over bass: posterior mean
  double level_bass_mm, level_treble_mm;        ///< action at the reference moisture, today
  double level_sd_bass_mm, level_sd_treble_mm;  ///< persistent uncertainty of the level, readings' error included
  double drift_mm_per_year;
  double moisture_today_percent;      ///< of the wood today as the known and expected air has it
  double moisture_departure_percent;  ///< today's departure from that, posterior mean
  /// Posterior of level bass, level treble, treble ratio, drift, departure, in that order.
  std::array<std::array<double, 5>, 5> covariance;
};

/// What is believed of the relief, as a normal: its level at the reference moisture, the work up to today included, and
/// what a percent of moisture does to it. Of no readings it is the prior alone.
struct ReliefBelief {
  int readings = 0;  ///< that were obeyed
  double level_mm = 0, mm_per_percent = 0;
  double level_variance = 0, covariance = 0, response_variance = 0;

  [[nodiscard]] double mean_mm(double above_reference_percent) const {
    return level_mm + mm_per_percent * above_reference_percent;
  }
  [[nodiscard]] double variance_mm2(double above_reference_percent) const {
    const double x = above_reference_percent;
    return level_variance + x * (2 * covariance + x * response_variance);
  }
};

/// What is believed of one instrument after its readings: a weighted set of hypotheses on a grid of lag and response.
struct Calibration {
  Date today;
  double reference_moisture_percent;
  std::vector<Hypothesis> hypotheses;  ///< weights sum to 1; those that together weigh under 0.1 % are dropped
  ReliefBelief relief{};
};

/// Posterior of one instrument. Deterministic. docs/models/response.md.
[[nodiscard]] Calibration calibrate(const ResponseRequest& request, const SeasonTables& tables);

[[nodiscard]] ResponseResult response(const ResponseRequest& request, const SeasonTables& tables);

/// How the least clean action moves through the year with the relief (season/moving_floor.h). Empty: it stands still.
struct MovingFloor {
  std::vector<double> rise_mm;  ///< that day over the floor the limits name
  std::vector<double> sd_mm;    ///< what is not known of it; one unknown for the whole year
  double weather_share = 1;     ///< spread by the weather of action less floor, over that of the action alone
};

/// The year ahead under one hypothesis, day by day:
///
///     action = mean + loading z1 level_sd + weather_sd z2        z1 one standard normal for the whole year
///
/// The loading is 1 but for the first weeks, in which what was read today is worth more than the level by itself.
struct YearPath {
  double weight;
  double response_mm_per_percent;
  double level_sd_bass_mm, level_sd_treble_mm;  ///< one unknown for the whole year
  double level_correlation;                     ///< of the two sides' levels
  double weather_days;                          ///< days over which a day outside drags others along
  std::vector<double> bass_mm, treble_mm;       ///< mean over the weather
  std::vector<double> level_loading_bass, level_loading_treble;
  /// Everything but the level: that day's own spread. On the treble side it holds what is not known of the treble
  /// ratio.
  std::vector<double> weather_sd_bass_mm, weather_sd_treble_mm;
  /// That part of it: what one standard deviation of the ratio, the same all year, is worth on that day. Empty: none.
  std::vector<double> ratio_mm;
  std::vector<double> above_reference_percent;  ///< moisture of the wood, weather apart
  MovingFloor floor_bass{}, floor_treble{};
};

/// The year ahead as a weighted set of paths: on every day, action is a mixture of normal distributions.
struct YearPaths {
  Date first;
  int count;
  std::vector<YearPath> paths;
};

/// `home` may differ from the one the instrument was calibrated in (a humidified room, another house).
[[nodiscard]] YearPaths year_paths(const Calibration& calibration, const HomeAir& home, Date first, int count);

}  // namespace tailblock
