#include "http/shop.h"

#include <ctime>

namespace tailblock {

int minute_on_the_wall() {
  const std::time_t now = std::time(nullptr);
  std::tm local{};
  localtime_r(&now, &local);
  return local.tm_hour * 60 + local.tm_min;
}

Moment now_in(const Shop& shop) { return {shop.today(), shop.minute()}; }

}  // namespace tailblock
