#include "setup/least_metal.h"

#include <algorithm>

namespace tailblock {
namespace {

constexpr double nothing_mm = 1e-7;  // less than the solver tells apart

/// A fret's columns: where they are, and how the sides of one crown share in them.
struct Columns {
  bool apart;
  [[nodiscard]] int bass(int fret) const { return apart ? 2 * (fret - 1) : fret - 1; }
  [[nodiscard]] int treble(int fret) const { return apart ? 2 * (fret - 1) + 1 : fret - 1; }
};

/// The entries of one row, gathered: a note may meet crown 12 twice.
class Row {
 public:
  Row(const NoteOverFret& note, const Columns& columns) {
    add_crown(note, columns, note.fret, 1);
    if (note.stopped_fret > 0) add_crown(note, columns, note.stopped_fret, -note.stopped_pull);
    add(columns.bass(12), -note.saddle_bass);
    add(columns.treble(12), -note.saddle_treble);
  }
  [[nodiscard]] const std::vector<std::pair<int, double>>& entries() const { return entries_; }

 private:
  void add_crown(const NoteOverFret& note, const Columns& columns, int fret, double weight) {
    add(columns.bass(fret), weight * note.bass_share);
    add(columns.treble(fret), weight * (1 - note.bass_share));
  }
  void add(int column, double weight) {
    if (weight == 0) return;
    for (auto& [have, sum] : entries_) {
      if (have == column) {
        sum += weight;
        return;
      }
    }
    entries_.emplace_back(column, weight);
  }
  std::vector<std::pair<int, double>> entries_;
};

/// Whether the note stays clear with every crown that helps it left whole and every one that hurts it cut to the least.
bool never_touches(const Row& row, double shortfall, const std::vector<double>& lower,
                   const std::vector<double>& upper) {
  double room = -shortfall;
  for (const auto& [column, weight] : row.entries()) {
    const auto i = static_cast<std::size_t>(column);
    room += weight * (weight > 0 ? lower[i] : upper[i]);
  }
  return room >= 0;
}

void add_columns(LinearProgram& program, const MetalBounds& bounds, double cost_of_a_fret) {
  for (std::size_t i = 0; i < bounds.most.bass.size(); ++i) {
    const double cost = bounds.apart ? cost_of_a_fret / 2 : cost_of_a_fret;
    program.add_column(cost, bounds.least.bass[i], bounds.most.bass[i]);
    if (bounds.apart) program.add_column(cost, bounds.least.treble[i], bounds.most.treble[i]);
  }
}

/// Rows of all notes that may touch, each with one more entry where `extra` gives one: its column and weight.
template <class Extra>
std::vector<NoteOverFret> add_rows(LinearProgram& program, const std::vector<NoteOverFret>& notes,
                                   const MetalBounds& bounds, Extra extra) {
  const Columns columns{bounds.apart};
  std::vector<NoteOverFret> row_note;
  for (const NoteOverFret& note : notes) {
    const Row row(note, columns);
    if (never_touches(row, note.shortfall, program.lower, program.upper)) continue;
    for (const auto& [column, weight] : row.entries()) program.add_entry(column, weight);
    extra(note);
    program.end_row(note.shortfall);
    row_note.push_back(note);
  }
  return row_note;
}

/// Which notes pay for which column, from the prices: at an optimum a fret that is partly cut costs exactly what the
/// notes that force it are worth, so price times weight over cost are shares of its cut.
std::vector<std::vector<ForcingNote>> forcing_notes(const MetalProgram& metal, const LinearAnswer& answer, bool apart,
                                                    std::size_t frets) {
  std::vector<std::vector<ForcingNote>> forced(frets);
  const LinearProgram& program = metal.program;
  for (std::size_t row = 0; row < metal.row_note.size(); ++row) {
    if (answer.row_price[row] < nothing_mm) continue;
    const NoteOverFret& note = metal.row_note[row];
    const auto fret = static_cast<std::size_t>(note.fret - 1);
    double share = 0;
    for (auto k = static_cast<std::size_t>(program.start[row]); k < static_cast<std::size_t>(program.start[row + 1]);
         ++k) {
      const auto column = static_cast<std::size_t>(program.column[k]);
      if ((apart ? column / 2 : column) == fret) share += answer.row_price[row] * program.entry[k];
    }
    if (share > nothing_mm) forced[fret].push_back({note.string, note.stopped_fret, note.away, share});
  }
  for (auto& of_fret : forced) std::ranges::stable_sort(of_fret, std::greater{}, &ForcingNote::share);
  return forced;
}

CrownPair cuts_of(const std::vector<double>& x, const MetalBounds& bounds) {
  CrownPair cuts;
  const std::size_t frets = bounds.most.bass.size();
  for (std::size_t i = 0; i < frets; ++i) {
    const auto cut = [&](std::size_t column, double least, double most) {
      const double within = std::clamp(x[column], least, most);
      return within < nothing_mm ? 0 : within;
    };
    cuts.bass.push_back(cut(bounds.apart ? 2 * i : i, bounds.least.bass[i], bounds.most.bass[i]));
    cuts.treble.push_back(bounds.apart ? cut(2 * i + 1, bounds.least.treble[i], bounds.most.treble[i])
                                       : cuts.bass.back());
  }
  return cuts;
}

}  // namespace

MetalProgram metal_program(const std::vector<NoteOverFret>& notes, const MetalBounds& bounds) {
  MetalProgram metal;
  add_columns(metal.program, bounds, 1);
  metal.row_note = add_rows(metal.program, notes, bounds, [](const NoteOverFret&) {});
  return metal;
}

std::optional<LeastMetal> least_metal(const std::vector<NoteOverFret>& notes, const MetalBounds& bounds) {
  const MetalProgram metal = metal_program(notes, bounds);
  const LinearAnswer answer = least_cost(metal.program);
  if (!answer.feasible) return std::nullopt;
  const std::size_t frets = bounds.most.bass.size();
  LeastMetal least{
      .remove = cuts_of(answer.x, bounds), .total = 0, .forced_by = forcing_notes(metal, answer, bounds.apart, frets)};
  for (std::size_t i = 0; i < frets; ++i) least.total += (least.remove.bass[i] + least.remove.treble[i]) / 2;
  return least;
}

std::vector<UncleanNote> unclean_notes(const std::vector<NoteOverFret>& notes, const MetalBounds& bounds) {
  constexpr double metal_against_missing = 1e-3;  // metal is spent freely here, but not for nothing
  LinearProgram program;
  add_columns(program, bounds, metal_against_missing);
  const auto frets_columns = static_cast<int>(program.cost.size());
  int missing = frets_columns;
  const auto row_note = add_rows(program, notes, bounds, [&](const NoteOverFret&) { program.add_entry(missing++, 1); });
  for (std::size_t i = 0; i < row_note.size(); ++i) program.add_column(1, 0, 1000);
  const LinearAnswer answer = least_cost(program);
  std::vector<UncleanNote> unclean;
  for (std::size_t i = 0; i < row_note.size(); ++i) {
    const double short_by = answer.x[static_cast<std::size_t>(frets_columns) + i];
    if (short_by < 1e-6) continue;
    unclean.push_back({row_note[i].string, row_note[i].stopped_fret, row_note[i].fret, mm(short_by)});
  }
  std::ranges::stable_sort(unclean, std::greater{}, [](const UncleanNote& note) { return in_mm(note.short_by); });
  return unclean;
}

double least_action_raise(const std::vector<NoteOverFret>& notes, const MetalBounds& bounds) {
  LinearProgram program;
  add_columns(program, bounds, 0);
  const auto raise = static_cast<int>(program.cost.size());
  (void)add_rows(program, notes, bounds,
                 [&](const NoteOverFret& note) { program.add_entry(raise, note.saddle_bass + note.saddle_treble); });
  program.add_column(1, 0, 1000);
  return least_cost(program).cost;
}

}  // namespace tailblock
