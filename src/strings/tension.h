#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "quantity/fields.h"

namespace tailblock {

/// Density of drawn carbon-steel spring wire, kg/m3. Source: a spring-wire material table (read; design study).
inline constexpr double steel_kg_per_m3 = 7850;
/// Density of phosphor bronze C51000, kg/m3. Source: mill data sheet to ASTM B103 (read; design study).
inline constexpr double phosphor_bronze_kg_per_m3 = 8860;
/// Young's modulus of steel wire, Pa. Assumed; the same tables say 200-205 GPa (read; design study).
inline constexpr double steel_modulus_pa = 200e9;

enum class CoreShape { round, hexagonal };

/// One string and the pitch it is tuned to. Plain steel when no core is given, wrapped when one is. A weighed mass
/// beats the geometry and replaces it; the diameters then serve the stiffness only.
struct GuitarString {
  double pitch_hz = 0;                    ///< of the open string
  std::optional<Length> diameter{};       ///< over everything
  std::optional<Length> core_diameter{};  ///< wrapped strings; across the corners when hexagonal
  CoreShape core_shape = CoreShape::round;
  double wrap_kg_per_m3 = phosphor_bronze_kg_per_m3;
  std::optional<double> weighed_kg_per_metre{};
};
void describe(FieldVisitor&, GuitarString&);

/// Mass per length.
///
///     plain    m = rho pi d^2/4
///     wrapped  m = rho_c A_c + rho_w phi pi w (c + w),  phi = (pi/4) sqrt(1 + (w/(pi (c + w)))^2)
///
/// d diameter, c core, w = (d - c)/2 round wrap wire laid close, A_c area of the core (a hexagon has 3 sqrt(3)/8 c^2).
/// Solder, lacquer, silk and the squeeze of the wrap are left out: weigh the string where it matters.
/// Source: derived here (docs/models/tension.md).
/// @throws Refused when there is neither a diameter nor a weighed mass, or the core is not thinner than the string.
[[nodiscard]] double mass_per_metre(const GuitarString& string);

/// Bending stiffness E I of the part that is solid: the whole of a plain string, the core alone of a wrapped one (the
/// wrap adds a little, so this is a lower bound), N m2.
///
///     I = pi d^4/64 round,  5 sqrt(3)/256 d^4 hexagonal, d across the corners
///
/// Source: derived here. @throws Refused when no diameter is known.
[[nodiscard]] double bending_stiffness_n_m2(const GuitarString& string);

/// Stretching stiffness E A of the part that carries the pull: the whole of a plain string, the core alone of a wrapped
/// one (the wrap opens like a spring), N.
///
/// Source: derived here. @throws Refused when no diameter is known.
[[nodiscard]] double stretching_stiffness_n(const GuitarString& string);

struct StringAtPitch {
  Length speaking_length;
  double kg_per_metre = 0;
  double pitch_hz = 0;
};

/// How hard one string pulls when it is at pitch.
///
///     T = m (2 L f)^2        L speaking length, m mass per length, f pitch
///
/// Ideal flexible string, first mode; stiffness ignored (a few parts in ten thousand).
/// Source: first principles.
[[nodiscard]] Force tension(const StringAtPitch& string);

/// Equal-tempered pitch of a note such as `E2`, `F#3`, `Bb2`, with A4 at 440 Hz.
///
///     f = 440 * 2^((n - 69)/12)     n number of the note, A4 = 69
///
/// @throws Refused naming `field` when the text is not a note of octaves 0..7.
[[nodiscard]] double equal_tempered_pitch_hz(std::string_view field, std::string_view note);

/// The pull of a set of strings. Strings are listed from string 1, the thinnest, on.
struct TensionRequest {
  Length scale_length = mm(645);
  std::vector<GuitarString> strings;
};
void describe(FieldVisitor&, TensionRequest&);

struct StringTension {
  int string = 1;  ///< 1 is the thinnest
  double pitch_hz = 0;
  double kg_per_metre = 0;
  Force pull;
  double pull_lbf = 0;
  std::optional<double>
      inharmonicity;  ///< B = pi^2 E I/(T L^2), a lower bound on wrapped strings; absent without a diameter
  std::optional<double> core_stress_mpa;  ///< pull over the area of the core; absent without a diameter
};
void describe(FieldVisitor&, StringTension&);

struct TensionResult {
  std::vector<StringTension> strings;
  Force total;
  double total_lbf = 0;
};
void describe(FieldVisitor&, TensionResult&);

/// What each string of a set pulls and what they pull together.
/// Valid for scales of 300..1000 mm, strings of 0.1..3 mm, pitches of 20..1500 Hz.
/// Source: first principles (docs/models/tension.md).
/// @throws Refused naming the field outside the valid range.
[[nodiscard]] TensionResult tension(const TensionRequest& request);

}  // namespace tailblock
