#include "strings/contact_verdicts.h"

#include "quantity/csv_table.h"

namespace tailblock {

ContactVerdicts contact_verdicts(std::string_view csv) {
  const CsvTable table("contact_verdicts.csv", csv);
  ContactVerdicts limits;
  for (const CsvRow& row : table.rows()) {
    (void)row.name("source");
    (void)row.name("reason");
    const std::string_view limit = row.name("limit");
    if (limit == "buzz_from_gain_db") {
      limits.buzz_from_gain_db = row.number("value", {0.1, 20, "dB"});
    } else if (limit == "buzz_from_energy_taken") {
      limits.buzz_from_energy_taken = row.number("value", {0.001, 1, ""});
    } else {
      throw Refused(row.where("limit") + ": \"" + std::string(limit) +
                    "\" is not buzz_from_gain_db or buzz_from_energy_taken");
    }
  }
  if (limits.buzz_from_gain_db == 0 || limits.buzz_from_energy_taken == 0) {
    throw Refused("contact_verdicts.csv: needs buzz_from_gain_db and buzz_from_energy_taken");
  }
  return limits;
}

}  // namespace tailblock
