#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "book/job_records.h"
#include "book/shop_settings.h"

namespace tailblock {

/// What is on the bench of the invented shop, as data/demo/ tells it. Instruments are named by their key; everything is
/// told relative to the moment the demo opens. All of it is invented.

enum class DemoOwnerSays { yes, no, asked, none };

/// A job at the newest visit of its instrument, and how far hands have come with it.
struct DemoJob {
  struct Done {
    std::string through;  ///< every operation up to this one
    int minutes_ago = 0;  ///< ended then, or at the end of the shop hours before
  };
  struct AtHand {
    std::string operation;
    int minutes_ago = 0;  ///< taken up then, where those are shop hours
  };
  std::string instrument, procedure;
  JobAdvice advice = JobAdvice::do_now;
  DemoOwnerSays owner = DemoOwnerSays::none;
  int offered_days_ago = 0;
  std::string person;
  std::optional<Done> done;
  std::optional<AtHand> at_hand;
  std::string goes_on_because;  ///< although the humidity of the body holds it; empty: it is held
  std::string note;
};

/// What was promised and wished for an instrument; days from today.
struct DemoPromise {
  std::string instrument;
  std::optional<int> ready_in_days;
  double chance = 0.8;
  int said_days_ago = 0;
  std::optional<int> wanted_in_days, waits_until_in_days;
};

struct DemoShopAir {
  int days_ahead = 0;
  ShopAir record;
};

struct DemoLot {
  int opened_days_ago = 0, good_for_days = 0;
  MaterialLot record;
};

struct DemoBenchTables {
  std::vector<BenchPerson> people;
  std::vector<DemoJob> jobs;
  std::vector<DemoPromise> promises;
  std::vector<DemoShopAir> air;
  std::vector<DemoLot> lots;
};

/// @throws Refused naming the cell.
[[nodiscard]] DemoBenchTables demo_bench_tables(const std::function<std::string_view(std::string_view path)>& text);

}  // namespace tailblock
