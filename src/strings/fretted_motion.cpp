#include "strings/fretted_motion.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "quantity/refused.h"
#include "strings/fret_contact.h"
#include "strings/fretted_steps.h"
#include "strings/held_string.h"
#include "strings/motion_energy.h"

namespace tailblock {
namespace {

constexpr double out_of_reach = 1e3;  ///< m
constexpr int most_doublings = 4;

FretCell fret_cell(const FretPointUnder& point, const StringGrid& grid) {
  const double place = point.from_stop / grid.h;
  FretCell cell;
  cell.at = static_cast<std::size_t>(place);
  cell.right = place - static_cast<double>(cell.at);
  constexpr double on_the_point = 1e-9;
  if (cell.right > 1 - on_the_point) ++cell.at, cell.right = 0;
  if (cell.right < on_the_point) cell.right = 0;
  cell.left = 1 - cell.right;
  return cell;
}

/// Whether each fret has its grid points to itself, so that their contacts can be settled one by one.
bool stand_apart(const std::vector<FretCell>& cells, int intervals) {
  std::size_t first_free = 1;
  for (const FretCell& cell : cells) {
    const std::size_t last = cell.right > 0 ? cell.at + 1 : cell.at;
    if (cell.at < first_free || last >= static_cast<std::size_t>(intervals)) return false;
    first_free = last + 1;
  }
  return true;
}

struct Cells {
  StringGrid grid;
  std::vector<FretCell> frets;
};

Cells cells_apart(const SpeakingString& string, std::span<const FretPointUnder> points, double steps_per_s) {
  constexpr int fewest_intervals = 8;
  for (int doubling = 0; doubling <= most_doublings; ++doubling, steps_per_s *= 2) {
    Cells cells{finest_grid(string, steps_per_s), {}};
    if (cells.grid.intervals < fewest_intervals) continue;
    for (const FretPointUnder& point : points) cells.frets.push_back(fret_cell(point, cells.grid));
    if (stand_apart(cells.frets, cells.grid.intervals)) return cells;
  }
  throw Refused("strings: two frets lie too near each other for this string's waves");
}

void refuse_rods(const SpeakingString& string, std::span<const HeldPluck> plucks) {
  for (const HeldPluck& pluck : plucks) {
    if (height_per_force(string, pluck.place) > 0) continue;
    throw Refused("strings: too stiff for its pull and length to be plucked there like a string");
  }
}

StepState at_release(const SpeakingString& string, Cells cells, std::span<const FretPointUnder> points,
                     std::span<const HeldPluck> plucks) {
  const StringGrid& grid = cells.grid;
  StepState state{.grid = grid,
                  .before = StringRow(grid.intervals),
                  .now = StringRow(grid.intervals),
                  .next = StringRow(grid.intervals),
                  .frets = std::move(cells.frets)};
  for (std::size_t i = 0; i < points.size(); ++i) {
    for (std::size_t lane = 0; lane < plucks_at_once; ++lane) {
      const bool bare = lane >= plucks.size() || !plucks[lane].over_frets;
      state.frets[i].gap.set(lane, bare ? out_of_reach : points[i].gap);
    }
  }
  const auto n = static_cast<std::size_t>(grid.intervals);
  for (std::size_t lane = 0; lane < plucks.size(); ++lane) {
    const HeldString held = held_string(string, grid, plucks[lane], state.frets, lane);
    for (std::size_t j = 0; j <= n; ++j) {
      state.now.from_stop()[j].set(lane, held.shape[j]);
      state.before.from_stop()[j].set(lane, held.before[j]);
    }
  }
  for (StringRow* row : {&state.now, &state.before}) {
    Four* u = row->from_stop();
    u[-1].of = -u[1].of;
    u[n + 1].of = -u[n - 1].of;
  }
  state.bridge = bridge_pull(string, grid);
  state.filter = high_pass(high_band_hz, 1 / grid.k);
  return state;
}

/// How far a row lies below a fret; negative above it.
double depth(const StringRow& row, const FretCell& fret, std::size_t lane) {
  const Four* u = row.from_stop();
  return -fret.gap[lane] - fret.left * u[fret.at][lane] - fret.right * u[fret.at + 1][lane];
}

/// Settles the contacts of one step and books them.
class Contacts {
 public:
  Contacts(const StepState& state, std::size_t plucks, std::vector<PluckMotion>& told) : plucks_(plucks), told_(told) {
    for (const FretCell& fret : state.frets) {
      const double own = fret.left * fret.left + fret.right * fret.right;
      height_per_force_.push_back(own * state.grid.height_per_impulse);
    }
  }

  /// Whether any fret was touched or has yet to let go.
  bool settle(StepState& state, double time_s) {
    bool busy = false;
    for (std::size_t i = 0; i < state.frets.size(); ++i) {
      const FretCell& fret = state.frets[i];
      for (std::size_t lane = 0; lane < plucks_; ++lane) {
        const double free = depth(state.next, fret, lane);
        const double before = depth(state.before, fret, lane);
        if (free <= 0 && before <= 0) continue;
        busy = true;
        const double force = contact_force({before, free, height_per_force_[i]});
        push(state, fret, lane, force);
        book(told_[lane], i, force, time_s, state.grid.k);
      }
    }
    return busy;
  }

 private:
  static void push(StepState& state, const FretCell& fret, std::size_t lane, double force) {
    Four* u = state.next.from_stop();
    const double height = force * state.grid.height_per_impulse;
    u[fret.at].set(lane, u[fret.at][lane] + fret.left * height);
    u[fret.at + 1].set(lane, u[fret.at + 1][lane] + fret.right * height);
  }
  static void book(PluckMotion& told, std::size_t point, double force, double time_s, double step_s) {
    told.impulses[point] += force * step_s;
    told.least_force = std::min(told.least_force, force);
    if (told.first_touch_s || force <= 0) return;
    told.first_touch_s = time_s;
    told.first_point = point;
  }

  std::size_t plucks_;
  std::vector<PluckMotion>& told_;
  std::vector<double> height_per_force_;  ///< how much a unit force lifts the string over each fret within a step
};

}  // namespace

NoteMotions fretted_motion(const SpeakingString& string, std::span<const FretPointUnder> points,
                           std::span<const HeldPluck> plucks, const MotionWishes& wishes) {
  refuse_rods(string, plucks);
  StepState state = at_release(string, cells_apart(string, points, wishes.least_steps_per_s), points, plucks);

  const StringGrid& grid = state.grid;
  NoteMotions motions{.intervals = grid.intervals, .grid_m = grid.h, .step_s = grid.k, .plucks = {}};
  motions.plucks.resize(plucks.size());
  for (PluckMotion& told : motions.plucks) told.impulses.assign(points.size(), 0);
  Contacts contacts(state, plucks.size(), motions.plucks);
  MotionEnergy energy(string, grid);
  energy.release(state, motions.plucks);

  const StepWork work = fastest_step_work();
  const auto steps = static_cast<long>(std::llround(wishes.seconds / grid.k));
  const auto settled = static_cast<long>(std::llround(settled_s / grid.k));
  long contact_until = -1;  // a fret dented one step ago still pushes now
  for (long step = 1; step <= steps; ++step) {
    const bool below = work.free_step(state);
    if (below || step <= contact_until) {
      if (contacts.settle(state, static_cast<double>(step) * grid.k)) contact_until = step + 2;
    }
    state.settled = step >= settled;
    work.finish_step(state);
    if (wishes.watch_energy) energy.watch(state, motions.plucks);
    if (wishes.keep_bridge_force) {
      for (std::size_t lane = 0; lane < plucks.size(); ++lane) {
        motions.plucks[lane].bridge_force.push_back(state.bridge_force[lane]);
      }
    }
    std::swap(state.before, state.now);
    std::swap(state.now, state.next);
    if (step % grid.steps_a_loss != 0) continue;
    if (wishes.watch_energy) energy.before_losses(state, motions.plucks);
    work.take_losses(state);
    if (wishes.watch_energy) energy.after_losses(state, motions.plucks);
  }
  energy.end(state, motions.plucks);
  for (std::size_t lane = 0; lane < plucks.size(); ++lane) {
    motions.plucks[lane].bridge_energy = state.bridge_energy[lane] * grid.k;
    motions.plucks[lane].bridge_energy_high = state.bridge_energy_high[lane] * grid.k;
  }
  return motions;
}

}  // namespace tailblock
