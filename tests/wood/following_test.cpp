#include "wood/following.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <complex>
#include <numbers>
#include <random>

#include "published.h"

namespace tailblock {
namespace {

double computed(const CsvRow& row) {
  const std::string_view what = row.name("what");
  const auto input = [&](std::string_view column) { return row.number(column, {0, 1e6, ""}); };
  if (what == "uptake") return slab_uptake(input("fourier"));
  if (what == "uptake_through_film") return slab_uptake_through_film(input("fourier"), input("biot"));
  if (what == "first_root") return film_root(input("biot"), 0);
  throw Refused(row.where("what") + ": is not computed here");
}

TEST(Slab, agrees_with_the_series_worked_apart) {
  testing::Published table("transport.csv");
  for (const CsvRow& row : table.rows()) table.check(row, computed(row));
}

TEST(Slab, a_top_of_2_8_mm_has_the_published_time_constant) {
  // First study: 8.8 h with one face open at 1e-10 m2/s, a quarter of it with both.
  EXPECT_NEAR(in_hours(slab_time_constant({})), 8.8, 0.05);
  EXPECT_NEAR(in_hours(slab_time_constant({.faces_open = 2})), 8.8 / 4, 0.0125);
  EXPECT_NEAR(slab_uptake(fourier_number({}, hours(4.3))), 0.5, 0.005);
  EXPECT_NEAR(slab_uptake(fourier_number({}, hours(18.5))), 0.9, 0.002);
}

/// Mean uptake by finite volumes, explicit in time: slow and plain.
double uptake_by_cells(double fourier, double biot) {
  const int cells = 60;
  const double dx = 1.0 / cells;
  const double dt = 0.25 * dx * dx;
  const double film = biot > 0 ? 1 / (1 / biot + dx / 2) : 2 / dx;
  std::vector<double> moisture(cells, 0.0);
  for (double time = 0; time < fourier - dt / 2; time += dt) {
    double from_face = film * (1 - moisture[0]);
    for (int i = 0; i < cells; ++i) {
      const auto at = static_cast<std::size_t>(i);
      const double onward = i + 1 < cells ? (moisture[at] - moisture[at + 1]) / dx : 0;
      moisture[at] += dt / dx * (from_face - onward);
      from_face = onward;
    }
  }
  double sum = 0;
  for (const double one : moisture) sum += one;
  return sum / cells;
}

TEST(Slab, the_series_agree_with_a_plain_division_into_cells) {
  for (const double fourier : {0.05, 0.3, 1.0}) {
    EXPECT_NEAR(slab_uptake(fourier), uptake_by_cells(fourier, 0), 1e-3);
    EXPECT_NEAR(slab_uptake_through_film(fourier, 2), uptake_by_cells(fourier, 2), 1e-3);
  }
}

TEST(Slab, the_half_space_and_the_series_meet) {
  EXPECT_NEAR(slab_uptake(0.0199999), slab_uptake(0.0200001), 1e-6);
  EXPECT_EQ(slab_uptake(0), 0);
  EXPECT_NEAR(slab_uptake_through_film(0, 1), 0, 1e-9);
  EXPECT_NEAR(slab_uptake_through_film(0.4, 1e4), slab_uptake(0.4), 2e-4);
}

TEST(Slab, one_stage_is_the_slab_once_its_first_mode_rules) {
  for (double fourier = 0.3; fourier < 3; fourier += 0.1) {
    const double stage =
        8 / (std::numbers::pi * std::numbers::pi) * std::exp(-fourier * std::numbers::pi * std::numbers::pi / 4);
    EXPECT_NEAR(1 - slab_uptake(fourier), stage, 2e-4) << fourier;
  }
}

TEST(Slab, a_thin_film_limited_plate_is_one_box) {
  // 1/root^2 against 1/Bi at Bi = 0.1: the box is within about 3 % of the slowest mode.
  EXPECT_NEAR(1 / (film_root(0.1, 0) * film_root(0.1, 0)) * 0.1, 1.034, 0.001);
}

/// Share of a yearly swing that the mean of the slab takes up, and its lag: tanh(q)/q, q = sqrt(i w l^2/D).
TEST(Slab, one_stage_follows_the_year_as_the_slab_does) {
  const double l2_over_D_days = in_days(slab_time_constant({})) * std::numbers::pi * std::numbers::pi / 4;
  const double w = 2 * std::numbers::pi / 365;
  const std::complex<double> q = std::sqrt(std::complex<double>(0, w * l2_over_D_days));
  const std::complex<double> slab = std::tanh(q) / q;
  const std::complex<double> stage = 1.0 / std::complex<double>(1, w * in_days(slab_time_constant({})));
  EXPECT_NEAR(std::abs(slab), std::abs(stage), 1e-5);
  const double hours_apart = 24 * (std::arg(slab) - std::arg(stage)) / w;
  std::printf("  yearly swing: slab and first stage are %.2f h apart\n", hours_apart);
  EXPECT_NEAR(hours_apart, 0, 2);
}

/// tau dy/dt = x - y for both stages by small steps (Heun).
std::vector<double> by_small_steps(const std::vector<double>& daily, double a, double b, TwoStageStart start) {
  const int parts = 20'000;
  const double dt = 1.0 / parts;
  std::vector<double> answer{start.second};
  double first = start.first;
  double second = start.second;
  for (std::size_t day = 1; day < daily.size(); ++day) {
    const double rise = daily[day] - daily[day - 1];
    for (int i = 0; i < parts; ++i) {
      const double x0 = daily[day - 1] + rise * i / parts;
      const double x1 = daily[day - 1] + rise * (i + 1) / parts;
      const double slope0 = (x0 - first) / a;
      const double slope1 = (x1 - first - dt * slope0) / a;
      const double next = first + dt * (slope0 + slope1) / 2;
      const double second0 = (first - second) / b;
      const double second1 = (next - second - dt * second0) / b;
      second += dt * (second0 + second1) / 2;
      first = next;
    }
    answer.push_back(second);
  }
  return answer;
}

const std::vector<double> rough{8, 9, 7.5, 7.5, 10, 4, 4, 6, 12, 11};

TEST(Following, two_stages_agree_with_small_steps) {
  for (const auto& [a, b] : {std::pair{3.0, 0.37}, {0.37, 3.0}, {2.0, 2.0}, {2.0, 2.0000001}, {40.0, 0.1}}) {
    const TwoStageStart start{.first = 7, .second = 9};
    const auto fast = follow_twice(rough, days(a), days(b), start);
    const auto slow = by_small_steps(rough, a, b, start);
    for (std::size_t i = 0; i < rough.size(); ++i) EXPECT_NEAR(fast[i], slow[i], 1e-6) << a << " " << b << " day " << i;
  }
}

TEST(Following, one_stage_is_two_of_which_one_takes_no_time) {
  const auto one = follow(rough, days(2.5), 9);
  const auto none_first = follow_twice(rough, days(0), days(2.5), {.first = 9, .second = 9});
  const auto hardly_any = follow_twice(rough, days(1e-6), days(2.5), {.first = 8, .second = 9});
  for (std::size_t i = 0; i < rough.size(); ++i) {
    EXPECT_EQ(one[i], none_first[i]);
    EXPECT_NEAR(one[i], hardly_any[i], 1e-5);
  }
}

TEST(Following, a_line_is_followed_one_lag_behind_and_a_step_by_its_exponential) {
  std::vector<double> line(60);
  for (std::size_t i = 0; i < line.size(); ++i) line[i] = 0.1 * static_cast<double>(i);
  EXPECT_NEAR(follow(line, days(4), 0)[59], 0.1 * (59 - 4), 1e-6);
  const std::vector<double> held(20, 1.0);
  EXPECT_NEAR(follow(held, days(4), 0)[8], 1 - std::exp(-2), 1e-12);
}

TEST(Following, no_lag_gives_the_input_and_an_endless_one_the_start) {
  const auto at_once = follow(rough, days(0), 3);
  for (std::size_t i = 1; i < rough.size(); ++i) EXPECT_EQ(at_once[i], rough[i]);
  EXPECT_EQ(at_once[0], 3);
  EXPECT_NEAR(follow(rough, days(10'000), 3)[9], 3, 0.01);
  EXPECT_TRUE(follow({}, days(3), 1).empty());
}

TEST(Following, refuses_a_lag_that_is_none) {
  const auto refuses = [](double lag, const std::string& line) {
    try {
      (void)follow(rough, days(lag), 8);
      FAIL() << "accepted what should read: " << line;
    } catch (const Refused& refused) {
      EXPECT_EQ(refused.what(), line);
    }
  };
  refuses(-1, "lag_days: -1 days is outside 0..10000 days");
  refuses(std::nan(""), "lag_days: nan days is outside 0..10000 days");
}

double covariance(double T, double tau, double u) {
  return followed_weather_covariance(1, days(T), days(tau), days(u));
}

TEST(FollowedWeather, agrees_with_a_long_simulation) {
  std::mt19937 source(20240131);
  std::normal_distribution<double> normal;
  for (const auto& [T, tau] : {std::pair{6.0, 3.0}, {3.0, 6.0}, {5.0, 5.0}}) {
    const double dt = 0.1;
    const int steps = 2'500'000;
    const int apart = 40;  // 4 days
    const double kept = std::exp(-dt / T);
    const double fresh = std::sqrt(1 - kept * kept);
    const double wood_kept = std::exp(-dt / tau);
    double weather = normal(source);
    double wood = 0;
    double variance = 0;
    double product = 0;
    std::vector<double> past(apart, 0.0);
    for (int i = 0; i < steps; ++i) {
      const double before = weather;
      weather = kept * weather + fresh * normal(source);
      wood = wood_kept * wood + (1 - wood_kept) * (before + weather) / 2;
      auto& then = past[static_cast<std::size_t>(i % apart)];
      product += wood * then;
      variance += wood * wood;
      then = wood;
    }
    // 250,000 days hold some 20,000 separate spells of weather: 1 % of a standard error in a variance; four are
    // allowed.
    EXPECT_NEAR(variance / steps / covariance(T, tau, 0), 1, 0.04) << T << " " << tau;
    EXPECT_NEAR(product / steps / covariance(T, tau, 4), 1, 0.04 * covariance(T, tau, 0) / covariance(T, tau, 4));
  }
}

/// The double integral of the stage's memory of the weather, by the midpoint rule.
double by_integral(double T, double tau, double u) {
  const double end = 14 * tau;
  const int n = 1500;
  const double h = end / n;
  double sum = 0;
  for (int i = 0; i < n; ++i) {
    for (int j = 0; j < n; ++j) {
      const double s = (i + 0.5) * h;
      const double r = (j + 0.5) * h;
      sum += std::exp(-(s + r) / tau - std::abs(u + s - r) / T);
    }
  }
  return sum * h * h / (tau * tau);
}

TEST(FollowedWeather, agrees_with_the_double_integral) {
  for (const auto& [T, tau] : {std::pair{6.0, 2.0}, {6.0, 6.0}, {2.0, 9.0}}) {
    for (const double u : {0.0, 1.0, 10.0})
      EXPECT_NEAR(covariance(T, tau, u), by_integral(T, tau, u), 2e-4) << T << " " << tau << " " << u;
  }
}

RC_GTEST_PROP(FollowedWeather, is_smooth_through_equal_times_and_falls_with_separation, ()) {
  const double T = *rc::gen::inRange(10, 5000) / 100.0;
  const double u = *rc::gen::inRange(0, 10'000) / 100.0;
  RC_ASSERT(std::abs(covariance(T, T, u) - covariance(T, T * (1 + 1e-9), u)) < 1e-8);
  const double tau = *rc::gen::inRange(0, 10'000) / 100.0;
  RC_ASSERT(covariance(T, tau, u) <= covariance(T, tau, 0) + 1e-15);
  RC_ASSERT(covariance(T, tau, u) >= 0);
  RC_ASSERT(std::isfinite(covariance(T, tau, u * 1e4)));
  RC_ASSERT(std::abs(covariance(T, tau, u) - covariance(T, tau, -u)) < 1e-15);
  RC_ASSERT(std::abs(covariance(T, tau, 0) - 1 / (1 + tau / T)) < 1e-12);
}

}  // namespace
}  // namespace tailblock
