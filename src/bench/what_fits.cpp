#include "bench/what_fits.h"

#include <algorithm>

#include "bench/bench.h"
#include "bench/work_order.h"

namespace tailblock {
namespace {

constexpr int plans_for_a_pin = 300;

/// Why there is no plan; empty: there is one.
std::string why_refused(BenchRequest request, int plans, const BenchWeights& weights) {
  request.plans = plans;
  try {
    (void)bench(request, weights);
  } catch (const Refused& refused) {
    return refused.what();
  }
  return "";
}

std::string why_never(const BenchRequest& request, const BenchInstrument& instrument, const BenchWeights& weights) {
  BenchRequest alone = request;
  alone.instruments = {instrument};
  alone.kept_order.clear();
  for (Operation& operation : alone.instruments[0].operations) operation.pinned.reset();
  return why_refused(std::move(alone), 1, weights);
}

void leave_out_what_fits_no_day(WhatFits& fits, const BenchWeights& weights) {
  std::vector<BenchInstrument> fit;
  for (const BenchInstrument& instrument : fits.request.instruments) {
    const std::string why = why_never(fits.request, instrument, weights);
    if (why.empty()) {
      fit.push_back(instrument);
    } else {
      fits.left_out.push_back({.instrument = instrument.name, .why = why});
    }
  }
  fits.request.instruments = std::move(fit);
  fits.request.kept_order = order_of_those_here(std::move(fits.request.kept_order), fits.request);
}

struct Pinned {
  NamedWork work;
  Operation* operation;
  Moment to;
};

/// Takes all pins off, and says what they were, the oldest first.
std::vector<Pinned> take_pins_off(BenchRequest& request, const std::vector<NamedWork>& by_age) {
  std::vector<Pinned> pins;
  for (BenchInstrument& instrument : request.instruments) {
    for (Operation& operation : instrument.operations) {
      if (!operation.pinned) continue;
      pins.push_back({{instrument.name, operation.name}, &operation, *operation.pinned});
      operation.pinned.reset();
    }
  }
  std::ranges::stable_sort(pins, {}, [&](const Pinned& pin) {
    return std::ranges::find_if(by_age,
                                [&](const NamedWork& one) {
                                  return one.instrument == pin.work.instrument && one.operation == pin.work.operation;
                                }) -
           by_age.begin();
  });
  return pins;
}

void put_pins_back(WhatFits& fits, const std::vector<Pinned>& pins, const BenchWeights& weights) {
  for (const Pinned& pin : pins) {
    pin.operation->pinned = pin.to;
    const std::string why = why_refused(fits.request, plans_for_a_pin, weights);
    if (why.empty()) continue;
    pin.operation->pinned.reset();
    fits.pins_let_go.push_back({.instrument = pin.work.instrument, .operation = pin.work.operation, .why = why});
  }
}

}  // namespace

void describe(FieldVisitor& visit, PinLetGo& pin) {
  visit.text({"instrument", "on which"}, pin.instrument, 200);
  visit.text({"operation", "what was pinned"}, pin.operation, 200);
  visit.text({"why", "why it cannot be kept"}, pin.why, 4000);
}

WhatFits what_fits(const BenchRequest& request, const std::vector<NamedWork>& pins_by_age,
                   const BenchWeights& weights) {
  WhatFits fits{.request = request, .left_out = {}, .pins_let_go = {}};
  leave_out_what_fits_no_day(fits, weights);
  if (fits.request.instruments.empty()) return fits;
  put_pins_back(fits, take_pins_off(fits.request, pins_by_age), weights);
  return fits;
}

}  // namespace tailblock
