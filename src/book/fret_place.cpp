#include "book/fret_place.h"

#include <array>
#include <charconv>
#include <utility>

namespace tailblock {
namespace {

constexpr std::array<std::pair<std::string_view, FretReadingKind>, 5> kinds{
    {{"fret_crown", FretReadingKind::departure},
     {"fret_gap", FretReadingKind::straightedge},
     {"fret_rock", FretReadingKind::rocker},
     {"fret_height", FretReadingKind::over_board},
     {"fret_springs", FretReadingKind::springs}}};

/// Takes a fret's number off the front; 0 when there is none.
int take_fret(std::string_view& text) {
  int fret = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), fret);
  if (error != std::errc() || fret < 1 || fret > 24 || text.front() == '0') return 0;
  text.remove_prefix(static_cast<std::size_t>(end - text.data()));
  return fret;
}

bool take(std::string_view& text, char wanted) {
  if (text.empty() || text.front() != wanted) return false;
  text.remove_prefix(1);
  return true;
}

}  // namespace

bool is_read_at_frets(std::string_view measure) { return measure.starts_with("fret_"); }

std::optional<FretReadingKind> fret_reading_kind(std::string_view measure) {
  for (const auto& [name, kind] : kinds) {
    if (name == measure) return kind;
  }
  return std::nullopt;
}

std::optional<FretPlace> fret_place(std::string_view text) {
  const auto at = text.find('@');
  if (at == std::string_view::npos || !is_read_at_frets(text)) return std::nullopt;
  FretPlace place{.measure = std::string(text.substr(0, at))};
  text.remove_prefix(at + 1);
  place.fret = take_fret(text);
  if (place.fret == 0) return std::nullopt;
  if (take(text, 'b')) {
    place.side = FretSide::bass;
  } else if (take(text, 't')) {
    place.side = FretSide::treble;
  }
  if (take(text, '/')) {
    place.from_fret = take_fret(text);
    if (place.from_fret == 0 || !take(text, '-')) return std::nullopt;
    place.to_fret = take_fret(text);
    if (place.to_fret <= place.from_fret) return std::nullopt;
  }
  const bool needs_feet = fret_reading_kind(place.measure) == FretReadingKind::straightedge;
  if (!text.empty() || needs_feet != (place.to_fret > 0)) return std::nullopt;
  return place;
}

}  // namespace tailblock
