#pragma once

#include <atomic>
#include <functional>
#include <string>

#include "http/shop.h"

namespace tailblock {

struct ServerOptions {
  int port = 8484;  ///< 0 takes any free one
  /// Called once the address answers.
  std::function<void(const std::string& address)> when_ready;
};

/// Serves the API and the pages on the loopback address until `stop` becomes true.
/// @throws Refused when the port is taken.
void serve(const Shop& shop, const ServerOptions& options, const std::atomic<bool>& stop);

}  // namespace tailblock
