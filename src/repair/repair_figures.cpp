#include "repair/repair_figures.h"

#include <array>
#include <string>

#include "quantity/named_values.h"

namespace tailblock {
namespace {

std::array<NamedValue, 34> figures_of(RepairFigures& f) {
  return {{{"gate_humidity_low", &f.gate_humidity_low, {10, 60, "percent"}},
           {"gate_humidity_high", &f.gate_humidity_high, {40, 90, "percent"}},
           {"slacken_lift", &f.slacken_lift, {0, 40, "mm"}},
           {"slacken_heel", &f.slacken_heel, {0, 40, "mm"}},
           {"sure_margin", &f.sure_margin, {0, 5, "repeatabilities"}},
           {"cleat_spacing_least", &f.cleat_spacing_least, {10, 200, "mm"}},
           {"cleat_spacing_most", &f.cleat_spacing_most, {10, 200, "mm"}},
           {"cleat_along_crack", &f.cleat_along_crack, {4, 40, "mm"}},
           {"cleat_across_crack", &f.cleat_across_crack, {6, 60, "mm"}},
           {"cleat_thickness_most", &f.cleat_thickness_most, {0.5, 5, "mm"}},
           {"cleat_thickness_share", &f.cleat_thickness_share, {0.1, 1, ""}},
           {"cleat_thickness_least", &f.cleat_thickness_least, {0.2, 3, "mm"}},
           {"cleat_clear_of_brace", &f.cleat_clear_of_brace, {0, 20, "mm"}},
           {"cleat_from_crack_end", &f.cleat_from_crack_end, {0, 40, "mm"}},
           {"cleat_saw_and_plane", &f.cleat_saw_and_plane, {0, 5, "mm"}},
           {"crack_needs_cleats", &f.crack_needs_cleats, {0, 300, "mm"}},
           {"reach_most", &f.reach_most, {50, 600, "mm"}},
           {"off_grain_most", &f.off_grain_most, {1, 45, "degrees"}},
           {"plate_least", &f.plate_least, {0.5, 5, "mm"}},
           {"loss_most", &f.loss_most, {0.01, 2, "mm"}},
           {"thickness_gauge_sd", &f.thickness_gauge_sd, {0.001, 1, "mm"}},
           {"hygrometer_sd", &f.hygrometer_sd, {0.1, 15, "percent"}},
           {"thermometer_sd", &f.thermometer_sd, {0.01, 5, "C"}},
           {"dust_settles", &f.dust_settles, {0, 1440, "minutes"}},
           {"billing_step", &f.billing_step, {1, 60, "minutes"}},
           {"shared_scatter", &f.shared_scatter, {0, 1, ""}},
           {"low_high_chance", &f.low_high_chance, {0.01, 0.4, ""}},
           {"noise_reference", &f.noise_reference, {70, 100, "dB(A)"}},
           {"noise_exchange", &f.noise_exchange, {3, 6, "dB"}},
           {"noise_ceiling", &f.noise_ceiling, {100, 150, "dB(A)"}},
           {"noise_legal_reference", &f.noise_legal_reference, {70, 100, "dB(A)"}},
           {"noise_legal_exchange", &f.noise_legal_exchange, {3, 6, "dB"}},
           {"cleat_clear_of_rim", &f.cleat_clear_of_rim, {0, 40, "mm"}},
           {"back_thickness", &f.back_thickness, {1, 5, "mm"}}}};
}

}  // namespace

RepairFigures repair_figures(std::string_view csv) {
  RepairFigures figures{};
  read_named_values({.name = "repair_figures.csv"}, csv, figures_of(figures));
  if (!(figures.gate_humidity_low < figures.gate_humidity_high)) {
    throw Refused("repair_figures.csv: gate_humidity_high: is not over gate_humidity_low");
  }
  if (!(figures.cleat_spacing_least <= figures.cleat_spacing_most)) {
    throw Refused("repair_figures.csv: cleat_spacing_most: is under cleat_spacing_least");
  }
  return figures;
}

}  // namespace tailblock
