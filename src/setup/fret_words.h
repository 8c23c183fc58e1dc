#pragma once

#include <string>
#include <vector>

#include "setup/fret_judgement.h"

namespace tailblock {

/// `fret 7`, `frets 3, 4 and 9`.
[[nodiscard]] std::string frets_in_words(const std::vector<int>& frets);
/// `string 5 (A)`, by the pitch it is tuned to.
[[nodiscard]] std::string string_in_words(const std::vector<GuitarString>& strings, int string);
/// `string 5 (A) stopped at 5`, `open string 6 (E)`.
[[nodiscard]] std::string note_in_words(const std::vector<GuitarString>& strings, int string, int stopped_fret);
/// `0.04 mm (1.6 thousandths)`.
[[nodiscard]] std::string cut_in_words(double millimetres);

/// Fills in the sentence, what it rests on, the steps and the cautions from the figures and the verdict.
void speak(FretDressResult& result, const FretCase& c);

}  // namespace tailblock
