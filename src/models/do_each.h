#pragma once

#include <cstddef>
#include <functional>

namespace tailblock {

/// Does `work(0)` .. `work(count - 1)` on as many threads as the machine has cores, and comes back when all is done.
/// What a piece of work throws is thrown here, once the others have ended.
void do_each_on_threads(std::size_t count, const std::function<void(std::size_t)>& work);

}  // namespace tailblock
