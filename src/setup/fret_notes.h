#pragma once

#include <vector>

#include "setup/fret_readings.h"

namespace tailblock {

/// Departures of every crown from the bow under the bass and the treble string, mm; index 0 is fret 1.
struct CrownPair {
  std::vector<double> bass, treble;
};

/// One note over one higher fret, in mm, as a straight line in the metal taken off:
///
///     room(r) = -shortfall + r_n - stopped_pull r_m - saddle_bass r_12,bass - saddle_treble r_12,treble
///
/// r_n and r_m under this string: a share of the bass side's cut and the rest of the treble's. A higher action by d
/// adds (saddle_bass + saddle_treble) d.
struct NoteOverFret {
  int string = 1;
  int stopped_fret = 0;
  int fret = 1;
  bool away = true;
  double shortfall = 0;     ///< reach and margin less the gap: positive touches
  double over_stop = 0;     ///< t, share of the way from the stop to the saddle
  double stopped_pull = 0;  ///< how far the line at n comes down with the stopped crown m; 0 for an open string
  double saddle_bass = 0, saddle_treble = 0;
  double bass_share = 0;  ///< of this string across the board
};

/// How the neck is set while its frets are judged.
struct FretSetting {
  Length relief;
  double action_raise_mm = 0;  ///< over the wanted action, bass and treble alike
  double margin_mm = 0;
};

/// Every note of every string over every higher fret, the nut slots held where today's readings show them to be and the
/// saddle where the wanted action over crown 12 puts it.
class FretNotes {
 public:
  FretNotes(const FretDressRequest& request, const UnitEnvelopes& envelopes, const Crowns& crowns);

  [[nodiscard]] std::vector<NoteOverFret> over_frets(const CrownPair& crowns, const FretSetting& setting) const;
  /// One standard deviation of a note's shortfall from the crowns' own.
  [[nodiscard]] double shortfall_sd(const NoteOverFret& note, const Crowns& crowns) const;
  [[nodiscard]] Length wanted_bass() const { return wanted_bass_; }
  [[nodiscard]] Length wanted_treble() const { return wanted_treble_; }

 private:
  struct Reach {
    int string, stopped_fret, fret;
    bool away;
    double mm;
    double over_stop;  ///< t: share of the way from the stop to the saddle
  };
  NeckLine neck_;  ///< nut held
  Length wanted_bass_, wanted_treble_;
  std::vector<double> share_, saddle_per_action_;  ///< a string
  double saddle_per_action_bass_, saddle_per_action_treble_;
  std::vector<Reach> reaches_;
};

/// Notes that are short of their margin.
[[nodiscard]] int touching_notes(const std::vector<NoteOverFret>& notes);
/// The worst of them, touching or not.
[[nodiscard]] const NoteOverFret& worst_note(const std::vector<NoteOverFret>& notes);

}  // namespace tailblock
