#include "strings/fretted_motion.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>
#include <random>

#include "plain_fretted_string.h"
#include "published.h"
#include "quantity/refused.h"
#include "strings/bare_motion.h"
#include "strings/fret_contact.h"
#include "strings/fretted_steps.h"
#include "strings/string_grid.h"

namespace tailblock {
namespace {

/// The low E of the second design study.
const SpeakingString low_e{.length = 0.645,
                           .tension = 113.7711,
                           .kg_per_metre = 0.01006759,
                           .bending_stiffness = 9.573e-4,
                           .loss_per_s = 0.7,
                           .loss_m2_per_s = 4e-4};

SpeakingString lossless(SpeakingString string) {
  string.loss_per_s = string.loss_m2_per_s = 0;
  return string;
}

/// A string without stiffness and losses, a metre long, that waves cross in a hundredth of a second.
const SpeakingString ideal{.length = 1, .tension = 100, .kg_per_metre = 0.01, .bending_stiffness = 0};
/// Steps a second at which its grid has so many intervals and its waves go a step a step.
double steps_for(int intervals) { return 100.0 * intervals; }

double fret_at(int n) { return 0.645 * (1 - std::exp2(-n / 12.0)); }

/// A neck with 0.45 mm under the string at the nut and this action at fret 12, no relief.
std::vector<FretPointUnder> flat_neck(double action12_mm) {
  std::vector<FretPointUnder> frets;
  for (int n = 1; n <= 20; ++n) {
    frets.push_back({fret_at(n), 1e-3 * (0.45 + (2 * action12_mm - 0.9) * fret_at(n) / 0.645)});
  }
  return frets;
}

HeldPluck at_85_percent(double height_mm, double width_mm = 10) {
  return {{0.85 * 0.645, width_mm / 1000}, height_mm / 1000};
}

PluckMotion one(const SpeakingString& string, const std::vector<FretPointUnder>& frets, const HeldPluck& pluck,
                const MotionWishes& wishes) {
  return fretted_motion(string, frets, std::vector<HeldPluck>{pluck}, wishes).plucks[0];
}

double total(const std::vector<double>& impulses) {
  double sum = 0;
  for (const double impulse : impulses) sum += impulse;
  return sum;
}

double gain_db(const PluckMotion& fretted, const BareMotion& bare) {
  return 10 *
         std::log10(fretted.bridge_energy_high / fretted.bridge_energy * bare.bridge_energy / bare.bridge_energy_high);
}

/// The lag, in steps, after which a force most resembles itself.
std::size_t period_of(const std::vector<double>& force, std::size_t from, std::size_t to) {
  const std::size_t span = force.size() - to - 1;
  std::size_t best = from;
  double least = INFINITY;
  for (std::size_t lag = from; lag <= to; ++lag) {
    double off = 0;
    for (std::size_t i = 0; i < span; ++i) off += std::pow(force[i + lag] - force[i], 2);
    if (off < least) least = off, best = lag;
  }
  return best;
}

constexpr int cabannes_intervals = 800;

/// Centre pluck of 2 mm over a point at mid-span, this share of the pluck above the rest line.
PluckMotion over_point(double share) {
  const std::vector<FretPointUnder> point{{0.5, -share * 2e-3}};
  return one(ideal, point, {{0.5, 1e-4}, 2e-3},
             {.seconds = 0.06, .least_steps_per_s = steps_for(cabannes_intervals), .keep_bridge_force = true});
}

double period_over_point(double share) {
  const double steps_per_period = 2 * cabannes_intervals;
  return static_cast<double>(period_of(over_point(share).bridge_force, 800, 1580)) / steps_per_period;
}

double period_over_flat() {
  std::vector<FretPointUnder> flat;
  constexpr int intervals = 1600;
  for (int j = 1; j < intervals; ++j) flat.push_back({j / static_cast<double>(intervals), 0});
  const PluckMotion run = one(ideal, flat, {{0.5, 1e-4}, 2e-3},
                              {.seconds = 0.05, .least_steps_per_s = steps_for(intervals), .keep_bridge_force = true});
  return static_cast<double>(period_of(run.bridge_force, 800, 3000)) / (2 * intervals);
}

/// Where, within a ten-thousandth of a millimetre, a point under an ideal string is just touched: the row's depth when
/// it is so, else nothing that agrees.
double deepest_mm(int fret, double expected_mm) {
  const SpeakingString string{.length = 0.645, .tension = 113.7711, .kg_per_metre = 0.01006759};
  const double wave = std::sqrt(string.tension / string.kg_per_metre);
  const auto touched = [&](double depth_mm) {
    const std::vector<FretPointUnder> point{{fret_at(std::abs(fret)), depth_mm / 1000}};
    // 4000 intervals: the kink is sharp to a grid step, and 0.85 of the length is a point of the grid.
    return one(string, point, at_85_percent(fret > 0 ? 1 : -1, 1e-3),
               {.seconds = 0.015, .least_steps_per_s = 4000 * wave / 0.645})
        .first_touch_s.has_value();
  };
  const double nudge = 1e-4 * 0.99;
  return touched(-expected_mm - nudge) && !touched(-expected_mm + nudge) ? expected_mm : NAN;
}

/// Frequency of one partial of a force, from how its phase turns between two windows.
double frequency_near(const std::vector<double>& force, double steps_per_s, double guess_hz) {
  const auto half = force.size() / 2;
  const auto phase = [&](std::size_t start) {
    std::complex<double> sum = 0;
    for (std::size_t i = 0; i < half; ++i) {
      const double window = 1 - std::cos(2 * std::numbers::pi * static_cast<double>(i) / static_cast<double>(half));
      sum += window * force[start + i] *
             std::polar(1.0, -2 * std::numbers::pi * guess_hz * static_cast<double>(start + i) / steps_per_s);
    }
    return std::arg(sum);
  };
  double turn = phase(half) - phase(0);
  turn -= 2 * std::numbers::pi * std::round(turn / (2 * std::numbers::pi));
  return guess_hz + turn / (2 * std::numbers::pi) * steps_per_s / static_cast<double>(half);
}

/// How sharp partial n is over n times partial 1, cents, and the same by formula.
double partial_cents(int n, double steps_per_s) {
  const SpeakingString string = lossless(low_e);
  const double wave = std::sqrt(string.tension / string.kg_per_metre);
  const double B = std::pow(std::numbers::pi / string.length, 2) * string.bending_stiffness / string.tension;
  const double f0 = wave / (2 * string.length);
  const NoteMotions run = fretted_motion(string, {}, std::vector<HeldPluck>{{{0.57, 0.002}, 1e-3}},
                                         {.seconds = 0.5, .least_steps_per_s = steps_per_s, .keep_bridge_force = true});
  const auto& force = run.plucks[0].bridge_force;
  const double first = frequency_near(force, steps_per_s, f0 * std::sqrt(1 + B));
  const double nth = frequency_near(force, steps_per_s, n * f0 * std::sqrt(1 + B * n * n));
  return 1200 * std::log2(nth / (n * first));
}

/// A neck with relief by the chord of frets 1 and 14, a string this high over the fret plane at one place near the nut
/// and with this action at fret 12; the frets under the note stopped at one of them.
std::vector<FretPointUnder> neck_line(double near_height, double near_place, double action12_mm, double relief_mm,
                                      int stopped) {
  const auto crown = [&](double x) {
    const double x1 = fret_at(1), x14 = fret_at(14);
    return x < x1 || x > x14 ? 0 : -4e-3 * relief_mm * (x - x1) * (x14 - x) / std::pow(x14 - x1, 2);
  };
  const double x12 = fret_at(12);
  const double slope = (1e-3 * action12_mm + crown(x12) - near_height) / (x12 - near_place);
  const double saddle = near_height + slope * (0.645 - near_place);
  const double start_x = fret_at(stopped), start_y = stopped == 0 ? near_height - slope * near_place : crown(start_x);
  std::vector<FretPointUnder> frets;
  for (int n = stopped + 1; n <= 20; ++n) {
    const double from = fret_at(n) - start_x;
    frets.push_back({from, start_y + (saddle - start_y) * from / (0.645 - start_x) - crown(fret_at(n))});
  }
  return frets;
}
std::vector<FretPointUnder> second_study_neck(double action12_mm, double relief_mm, int stopped) {
  return neck_line(0.45e-3, 0, action12_mm, relief_mm, stopped);
}

/// The height, mm, at which the low E plucked at 0.15 of 645 mm from the saddle first touches a fret.
double limit_amplitude(double action12_mm, double relief_mm, double sign) {
  const auto frets = second_study_neck(action12_mm, relief_mm, 0);
  double low = 0.1, high = 5;
  while (high - low > 2e-4) {
    std::vector<HeldPluck> plucks;
    for (std::size_t i = 1; i <= plucks_at_once; ++i) {
      plucks.push_back(at_85_percent(sign * (low + (high - low) * static_cast<double>(i) / 5)));
    }
    const NoteMotions run = fretted_motion(low_e, frets, plucks, {});
    for (std::size_t i = 0; i < plucks.size(); ++i) {
      (run.plucks[i].first_touch_s ? high : low) = 1e3 * std::abs(plucks[i].height);
      if (run.plucks[i].first_touch_s) break;
    }
  }
  return (low + high) / 2;
}

/// The first study's low E: the lowest action at fret 12, mm, at which this pluck touches nothing.
double least_action12(double relief_mm, int stopped, double height_mm) {
  const SpeakingString string{.length = 0.645 - fret_at(stopped),
                              .tension = 115.2,
                              .kg_per_metre = 10.19e-3,
                              .bending_stiffness = 9.586e-4,
                              .loss_per_s = 0.7,
                              .loss_m2_per_s = 4e-4};
  const HeldPluck pluck{{string.length - 0.12, 0.002}, height_mm / 1000};
  double low = 0.5, high = 4;
  while (high - low > 1e-3) {
    const double action = (low + high) / 2;
    const auto frets = neck_line(0.45e-3, fret_at(1), action, relief_mm, stopped);
    const bool lies = std::ranges::any_of(frets, [](const FretPointUnder& fret) { return fret.gap <= 0; });
    const bool touches = lies || one(string, frets, pluck, {.seconds = 0.5}).first_touch_s.has_value();
    (touches ? low : high) = action;
  }
  return high;
}

TEST(FrettedMotion, agrees_with_published_strings_over_obstacles) {
  testing::Published table("strings_contact.csv");
  for (const CsvRow& row : table.rows()) {
    const std::string quantity(row.name("quantity"));
    const double given = row.number_if_given("given", {-100, 100, ""}).value_or(0);
    const double expected = row.number("expected", {-100, 100, ""});
    if (quantity == "period_over_point") table.check(row, period_over_point(given));
    if (quantity == "touch_over_point") {
      table.check(row, over_point(given).first_touch_s.value_or(NAN) / 0.02);
    }
    if (quantity == "period_over_flat") table.check(row, period_over_flat());
    if (quantity == "deepest_mm") table.check(row, deepest_mm(static_cast<int>(given), expected));
    if (quantity == "partial_cents") table.check(row, partial_cents(static_cast<int>(given), 384e3));
  }
}

// The same rows that clearance is held against, here by contact itself.
TEST(FrettedMotion, first_touches_are_where_the_design_studies_found_them) {
  testing::Published table("strings_clearance.csv");
  for (const CsvRow& row : table.rows()) {
    const double given = row.number("given_mm", {0, 5, "mm"}), relief = row.number("relief_mm", {0, 1, "mm"});
    const double sign = row.name("direction") == "away" ? 1 : -1;
    const int stopped = row.whole_number("stopped_fret", {0, 19, ""});
    const bool by_amplitude = row.name("quantity") == "limit_amplitude";
    table.check(row,
                by_amplitude ? limit_amplitude(given, relief, sign) : least_action12(relief, stopped, sign * given));
  }
}

// d'Alembert: the force on the bridge of an ideal plucked string has two values, T A/(L - p) while the kink is away and
// -T A/p while it is back, and changes between them at (L - p)/c, (L + p)/c and every 2 L/c after.
TEST(FrettedMotion, an_ideal_string_pulls_the_bridge_as_dalembert_says) {
  const double p = 0.8, A = 1e-3;
  const PluckMotion run =
      one(ideal, {}, {{p, 1e-4}, A}, {.seconds = 0.1, .least_steps_per_s = steps_for(500), .keep_bridge_force = true});
  double largest = 0;
  for (std::size_t i = 0; i < run.bridge_force.size(); ++i) {
    const double phase = std::fmod(static_cast<double>(i + 1) / 1000, 1);  // of the period
    const double away = std::min({std::abs(phase - (1 - p) / 2), std::abs(phase - (1 + p) / 2)});
    if (away < 2.0 / 1000) continue;  // the kink itself is a step wide
    const bool still = phase < (1 - p) / 2 || phase > (1 + p) / 2;
    const double expected = still ? 100 * A / (1 - p) : -100 * A / p;
    largest = std::max(largest, std::abs(run.bridge_force[i] / expected - 1));
  }
  std::printf("  largest deviation %.2g over 5 periods\n", largest);
  EXPECT_LT(largest, 1e-3);  // the apex of a pluck of a finite width lies w/8 lower
}

TEST(FrettedMotion, partials_come_to_the_characteristic_equations_roots_as_steps_get_finer) {
  const double exact = 16.93529;
  const double coarse = std::abs(partial_cents(10, 96e3) - exact), fine = std::abs(partial_cents(10, 384e3) - exact);
  std::printf("  partial 10 off by %.3f cents at 96 kHz, %.3f at 384 kHz\n", coarse, fine);
  EXPECT_LT(coarse, 1.1);
  EXPECT_LT(fine, coarse / 2);
}

/// Largest relative error of the energy over a run.
double energy_error(const SpeakingString& string, double seconds, double height_mm) {
  const PluckMotion run =
      one(string, flat_neck(1.5), at_85_percent(height_mm), {.seconds = seconds, .watch_energy = true});
  EXPECT_TRUE(run.first_touch_s.has_value());
  return run.energy_error;
}
TEST(FrettedMotion, keeps_its_energy_for_ten_seconds_without_losses) {
  const double error = energy_error(lossless(low_e), 10, 1.5);
  std::printf("  largest error %.2g of the pluck's energy\n", error);
  EXPECT_LT(error, 1e-9);
}
TEST(FrettedMotion, loses_exactly_what_the_damping_takes) { EXPECT_LT(energy_error(low_e, 1, 1.5), 1e-9); }
TEST(FrettedMotion, keeps_its_energy_when_it_starts_bent_over_frets) { EXPECT_LT(energy_error(low_e, 0.5, -4), 1e-9); }
// The damping asked for: partial q falls as exp(-(s0 + s1 (q pi/L)^2) t).
TEST(FrettedMotion, partials_die_as_fast_as_the_losses_say) {
  const NoteMotions run = fretted_motion(low_e, {}, std::vector<HeldPluck>{{{0.57, 0.002}, 1e-3}},
                                         {.seconds = 1, .keep_bridge_force = true});
  const auto& force = run.plucks[0].bridge_force;
  const double wave = std::sqrt(low_e.tension / low_e.kg_per_metre);
  const double B = std::pow(std::numbers::pi / low_e.length, 2) * low_e.bending_stiffness / low_e.tension;
  for (const int q : {1, 5, 20}) {
    const double hz = q * wave / (2 * low_e.length) * std::sqrt(1 + B * q * q);
    const auto level = [&](std::size_t start) {
      std::complex<double> sum = 0;
      const std::size_t span = force.size() / 2;
      for (std::size_t i = 0; i < span; ++i) {
        const double window = 1 - std::cos(2 * std::numbers::pi * static_cast<double>(i) / static_cast<double>(span));
        sum += window * force[start + i] *
               std::polar(1.0, -2 * std::numbers::pi * hz * static_cast<double>(start + i) * run.step_s);
      }
      return std::abs(sum);
    };
    const double apart = static_cast<double>(force.size() / 2) * run.step_s;
    const double sigma = std::log(level(0) / level(force.size() / 2)) / apart;
    const double expected = low_e.loss_per_s + low_e.loss_m2_per_s * std::pow(q * std::numbers::pi / low_e.length, 2);
    EXPECT_NEAR(sigma, expected, 0.005 * expected) << "partial " << q;
  }
}

TEST(FrettedMotion, puts_the_plucks_work_into_the_string) {
  const PluckMotion run = one(low_e, {}, at_85_percent(1.2), {.seconds = 0.05});
  const double force = 1.2e-3 / height_per_force(low_e, {0.85 * 0.645, 0.01});
  EXPECT_NEAR(run.energy_at_release, force * 1.2e-3 / 2, 0.02 * run.energy_at_release);
}

struct RandomContact {
  double before, free, rise;
};
std::vector<RandomContact> random_contacts() {
  std::mt19937 random(8);
  std::uniform_real_distribution<double> metres(-1e-4, 1e-4), power(-8, -3);
  std::vector<RandomContact> contacts;
  for (int i = 0; i < 20000; ++i) contacts.push_back({metres(random), metres(random), std::pow(10, power(random))});
  for (const double tiny : {0.0, 1e-12, -1e-12, 1e-18}) contacts.push_back({tiny, tiny, 1e-6});
  return contacts;
}
TEST(FretContact, never_pulls_and_solves_its_equation) {
  for (const RandomContact& c : random_contacts()) {
    const double force = contact_force({c.before, c.free, c.rise});
    ASSERT_GE(force, 0) << c.before << " " << c.free << " " << c.rise;
    const double plain = c.free > 0 || c.before > 0 ? testing::plain_contact_force(c.before, c.free, c.rise) : 0;
    ASSERT_NEAR(force, plain, 1e-6 * std::abs(plain) + 2e-13 / c.rise) << c.before << " " << c.free << " " << c.rise;
  }
}
TEST(FretContact, takes_from_the_string_what_the_dent_gains) {
  for (const RandomContact& c : random_contacts()) {
    const double force = contact_force({c.before, c.free, c.rise});
    const double after = c.free - force * c.rise;
    const double work = force * (after - c.before);
    const double gained = contact_energy(after) - contact_energy(c.before);
    const double scale = contact_energy(after) + contact_energy(c.before);
    ASSERT_NEAR(work, gained, 1e-9 * scale + 1e-20) << c.before << " " << c.free << " " << c.rise;
  }
}

TEST(FrettedMotion, no_fret_ever_pulls) {
  std::mt19937 random(3);
  std::uniform_real_distribution<double> action(1, 2.5), height(-3, 3), place(0.6, 0.9);
  int touched = 0;
  for (int i = 0; i < 40; ++i) {
    const PluckMotion run = one(low_e, flat_neck(action(random)),
                                {{place(random) * 0.645, 0.002}, 1e-3 * height(random)}, {.seconds = 0.1});
    touched += run.first_touch_s.has_value();
    EXPECT_GE(run.least_force, 0);
    for (const double impulse : run.impulses) EXPECT_GE(impulse, 0);
  }
  EXPECT_GT(touched, 15);
}

// What the frets give is what the string's momentum and its ends show: d/dt of the momentum is the pull of both ends
// less the losses; here a lossless string, over a whole run, momentum by the trapezoidal rule on the bridge's force
// would need the nut's too, so a symmetric case is taken: a point at mid-span under a centre pluck.
TEST(FrettedMotion, the_frets_impulse_is_what_turns_the_string_round) {
  // An ideal string falling on a point at the rest line: half of its motion is reflected. Between touch at T0/4 and
  // release at T0/2 the point pushes with 2 Z v, v = 4 A/T0 the speed of the flat string, Z = sqrt(T m).
  const double T0 = 0.02, A = 2e-3, Z = std::sqrt(100 * 0.01);
  const PluckMotion run = one(ideal, {{0.5, 0}}, {{0.5, 1e-4}, A},
                              {.seconds = 0.6 * T0, .least_steps_per_s = steps_for(cabannes_intervals)});
  EXPECT_NEAR(total(run.impulses), 2 * Z * (4 * A / T0) * T0 / 4, 0.01 * total(run.impulses));
}

/// A note judged at steps twice and four times as fine.
void converges(const SpeakingString& string, const std::vector<FretPointUnder>& frets, const HeldPluck& pluck) {
  std::vector<double> gains, impulses, touches;
  for (const double rate : {88200.0, 176400.0, 352800.0}) {
    const NoteMotions run =
        fretted_motion(string, frets, std::vector<HeldPluck>{pluck}, {.seconds = 0.25, .least_steps_per_s = rate});
    const BareMotion bare = bare_motion(string, finest_grid(string, 1 / run.step_s), pluck, 0.25);
    gains.push_back(gain_db(run.plucks[0], bare));
    impulses.push_back(total(run.plucks[0].impulses));
    touches.push_back(run.plucks[0].first_touch_s.value_or(NAN));
  }
  std::printf("  gain %.2f %.2f %.2f dB, impulse %.3f %.3f %.3f mN s, touch %.3f %.3f %.3f ms\n", gains[0], gains[1],
              gains[2], 1e3 * impulses[0], 1e3 * impulses[1], 1e3 * impulses[2], 1e3 * touches[0], 1e3 * touches[1],
              1e3 * touches[2]);
  // The bounds that docs/models/contact.md states for the map's steps and for those of one note's report.
  EXPECT_NEAR(gains[0], gains[2], 1.2);
  EXPECT_NEAR(gains[1], gains[2], 0.3);
  EXPECT_NEAR(impulses[0], impulses[2], 0.35 * impulses[2]);
  EXPECT_NEAR(impulses[1], impulses[2], 0.25 * impulses[2]);
  EXPECT_NEAR(touches[0], touches[2], 1e-4);
}
const SpeakingString plain_012{.length = 0.645,
                               .tension = 103.57,
                               .kg_per_metre = 5.7278e-4,
                               .bending_stiffness = 8.473e-5,
                               .loss_per_s = 0.7,
                               .loss_m2_per_s = 4e-4};
TEST(FrettedMotion, low_e_open_converges) { converges(low_e, flat_neck(1.5), at_85_percent(1.2)); }
TEST(FrettedMotion, low_e_barely_buzzing_converges) { converges(low_e, flat_neck(1.9), at_85_percent(1.05)); }
TEST(FrettedMotion, high_e_open_converges) { converges(plain_012, flat_neck(1.2), at_85_percent(0.9)); }
TEST(FrettedMotion, low_e_at_fret_5_converges) {
  SpeakingString stopped = low_e;
  stopped.length -= fret_at(5);
  converges(stopped, second_study_neck(1.7, 0.1, 5), {{0.85 * stopped.length, 0.002}, 0.7e-3});
}

TEST(FrettedMotion, a_pluck_held_below_frets_starts_bent_over_them) {
  const auto frets = flat_neck(1.5);
  const PluckMotion bent = one(low_e, frets, at_85_percent(-4), {.seconds = 0.1, .watch_energy = true});
  const PluckMotion free = one(low_e, {}, at_85_percent(-4), {.seconds = 0.1});
  EXPECT_LT(bent.energy_at_release, free.energy_at_release);
  EXPECT_GT(bent.energy_at_release, 0.2 * free.energy_at_release);
  EXPECT_LT(*bent.first_touch_s, 1e-4);
  EXPECT_GE(bent.least_force, 0);
  EXPECT_LT(bent.energy_at_end, bent.energy_at_release);
}

TEST(FrettedMotion, two_frets_never_share_a_grid_cell) {
  // A tight light string on a short scale with 24 frets: at 48 kHz a cell is wider than the last fret spacing.
  SpeakingString tight{.length = 0.5, .tension = 100, .kg_per_metre = 4e-4, .bending_stiffness = 5e-5};
  std::vector<FretPointUnder> frets;
  for (int n = 1; n <= 24; ++n) frets.push_back({0.5 * (1 - std::exp2(-n / 12.0)), 1e-3});
  const NoteMotions run = fretted_motion(tight, frets, std::vector<HeldPluck>{{{0.4, 0.002}, 1e-3}},
                                         {.seconds = 0.05, .least_steps_per_s = 48000});
  EXPECT_GT(frets[23].from_stop - frets[22].from_stop, run.grid_m);
  EXPECT_LT(run.step_s, 1 / 48000.0);
  frets = {{0.2, 1e-3}, {0.2001, 1e-3}};
  EXPECT_THROW((void)fretted_motion(tight, frets, std::vector<HeldPluck>{{{0.4, 0.002}, 1e-3}}, {}), Refused);
}

TEST(BareMotion, in_closed_form_is_the_stepped_string_without_frets) {
  for (const SpeakingString& string : {low_e, plain_012}) {
    for (const double place : {0.6, 0.85}) {
      const HeldPluck pluck{{place * 0.645, 0.002}, 1e-3, false};
      const NoteMotions run = fretted_motion(string, flat_neck(1), std::vector<HeldPluck>{pluck}, {});
      const BareMotion bare = bare_motion(string, finest_grid(string, 1 / run.step_s), pluck, 0.25);
      EXPECT_NEAR(gain_db(run.plucks[0], bare), 0, 0.01);
      EXPECT_NEAR(bare.energy_at_end / run.plucks[0].energy_at_end, 1, 1e-8);
      EXPECT_EQ(total(run.plucks[0].impulses), 0);
    }
  }
}

testing::PlainString plain(const SpeakingString& s, const std::vector<FretPointUnder>& frets, const HeldPluck& pluck) {
  testing::PlainString string{.length = s.length,
                              .tension = s.tension,
                              .kg_per_metre = s.kg_per_metre,
                              .bending_stiffness = s.bending_stiffness,
                              .loss_per_s = s.loss_per_s,
                              .loss_m2_per_s = s.loss_m2_per_s,
                              .pluck_from_stop = pluck.place.from_stop,
                              .pluck_width = pluck.place.width,
                              .pluck_force = pluck.height / height_per_force(s, pluck.place),
                              .frets = {}};
  for (const FretPointUnder& fret : frets) string.frets.push_back({fret.from_stop, fret.gap});
  return string;
}

TEST(FrettedMotion, four_plucks_at_once_are_the_plain_string_four_times) {
  const auto frets = flat_neck(1.5);
  const std::vector<HeldPluck> plucks{
      at_85_percent(1.2), at_85_percent(-1.9), at_85_percent(0.9, 2), {{0.5, 0.004}, 1.5e-3}};
  const double seconds = 0.03;  // roundings grow with every contact
  const NoteMotions fast = fretted_motion(low_e, frets, plucks, {.seconds = seconds, .keep_bridge_force = true});
  double largest = 0;
  for (std::size_t i = 0; i < plucks.size(); ++i) {
    testing::PlainMotion motion(plain(low_e, frets, plucks[i]), 88200);
    const testing::PlainRun slow = motion.run(seconds);
    EXPECT_NEAR(fast.plucks[i].first_touch_s.value_or(-1), slow.first_touch_s, 1e-9);
    double loudest = 0;
    for (const double force : slow.bridge_force) loudest = std::max(loudest, std::abs(force));
    ASSERT_EQ(slow.bridge_force.size(), fast.plucks[i].bridge_force.size());
    for (std::size_t n = 0; n < slow.bridge_force.size(); ++n) {
      largest = std::max(largest, std::abs(fast.plucks[i].bridge_force[n] - slow.bridge_force[n]) / loudest);
    }
    for (std::size_t n = 0; n < frets.size(); ++n) {
      EXPECT_NEAR(fast.plucks[i].impulses[n], slow.frets[n].impulse, 1e-5 * total(fast.plucks[i].impulses) + 1e-12);
    }
  }
  std::printf("  largest difference %.2g of the loudest force\n", largest);
  EXPECT_LT(largest, 1e-5);
}

TEST(FrettedSteps, wide_registers_change_nothing) {
  const StringGrid grid = finest_grid(low_e, 88200);
  const auto fresh = [&] {
    StepState state{.grid = grid,
                    .before = StringRow(grid.intervals),
                    .now = StringRow(grid.intervals),
                    .next = StringRow(grid.intervals),
                    .frets = {}};
    for (int j = 1; j < grid.intervals; ++j) {
      for (std::size_t lane = 0; lane < plucks_at_once; ++lane) {
        const double u = std::sin(j * 0.1 * static_cast<double>(lane + 1)) * 1e-3;
        state.now.from_stop()[j].set(lane, u);
        state.before.from_stop()[j].set(lane, 0.9 * u);
      }
    }
    state.bridge = bridge_pull(low_e, grid);
    state.filter = high_pass(high_band_hz, 88200);
    state.settled = true;
    FretCell fret{.at = 40, .left = 0.3, .right = 0.7, .gap = {}};
    for (std::size_t lane = 0; lane < plucks_at_once; ++lane) fret.gap.set(lane, lane == 0 ? 1e-3 : 1e-4);
    state.frets.push_back(fret);
    return state;
  };
  StepState plain = fresh(), fast = fresh();
  for (int i = 0; i < 100; ++i) {
    const bool plain_below = plain_step_work().free_step(plain), fast_below = fastest_step_work().free_step(fast);
    EXPECT_EQ(plain_below, fast_below);
    plain_step_work().finish_step(plain);
    fastest_step_work().finish_step(fast);
    for (std::size_t lane = 0; lane < plucks_at_once; ++lane) {
      ASSERT_NEAR(plain.bridge_force[lane], fast.bridge_force[lane], 1e-10);
      ASSERT_NEAR(plain.bridge_energy_high[lane], fast.bridge_energy_high[lane], 1e-9);
    }
    for (StepState* state : {&plain, &fast}) {
      std::swap(state->before, state->now);
      std::swap(state->now, state->next);
    }
  }
}

}  // namespace
}  // namespace tailblock
