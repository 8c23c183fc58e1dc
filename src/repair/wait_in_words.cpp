#include "repair/wait_in_words.h"

#include <cmath>

#include "quantity/refused.h"

namespace tailblock {

std::string wait_in_words(double minutes) {
  if (minutes < 120) return plain_number(std::round(minutes)) + " min";
  if (minutes < 48 * 60) return plain_number(std::round(minutes / 60)) + " h";
  return plain_number(std::round(minutes / (24 * 60))) + " days";
}

}  // namespace tailblock
