#include "http/background_work.h"

#ifdef __linux__
#include <sys/resource.h>
#include <sys/syscall.h>
#include <unistd.h>
#endif

#include <algorithm>
#include <cassert>

namespace tailblock {
namespace {

struct Busy {
  std::string busy;
};
void describe(FieldVisitor& visit, Busy& answer) {
  visit.text({"busy", "why this was not computed, in one line; ask again"}, answer.busy, 1000);
}

/// Ordinary answers come first where both want a core. Where the system has no priority for one thread, they share.
void let_others_go_first() {
#ifdef __linux__
  constexpr int niceness = 10;
  (void)setpriority(PRIO_PROCESS, static_cast<id_t>(syscall(SYS_gettid)), niceness);
#endif
}

}  // namespace

BackgroundWork::BackgroundWork(const Limits& limits) : limits_(limits) {
  for (int i = 0; i < limits_.at_once; ++i) threads_.emplace_back([this] { work(); });
}

BackgroundWork::~BackgroundWork() {
  {
    const std::lock_guard lock(guard_);
    assert(in_line_.empty() && "whoever asks has been answered before this goes");
    closing_ = true;
  }
  something_to_do_.notify_all();
  for (std::thread& thread : threads_) thread.join();
}

Answer BackgroundWork::answer(const std::string& page, const std::function<Answer()>& question) {
  Asked mine{.page = page, .question = question};
  std::unique_lock lock(guard_);
  make_room_for(page);
  in_line_.push_back(&mine);
  if (in_line_.size() > static_cast<std::size_t>(limits_.waiting)) {
    send_away(mine, std::to_string(limits_.waiting) + " questions are waiting already; ask again");
  }
  something_to_do_.notify_one();
  something_done_.wait(lock, [&] { return mine.state == State::done || mine.state == State::sent_away; });
  return std::move(mine.given);
}

void BackgroundWork::make_room_for(const std::string& page) {
  if (page.empty()) return;
  const auto of_page = [&](const Asked* asked) { return asked->page == page; };
  while (std::ranges::count_if(in_line_, of_page) >= limits_.waiting_of_page) {
    send_away(**std::ranges::find_if(in_line_, of_page), "this page has asked something newer");
  }
}

void BackgroundWork::send_away(Asked& asked, const std::string& line) {
  std::erase(in_line_, &asked);
  asked.given = {.status = 503, .body = to_json(Busy{line})};
  asked.state = State::sent_away;
  something_done_.notify_all();
}

void BackgroundWork::work() {
  let_others_go_first();
  std::unique_lock lock(guard_);
  while (true) {
    something_to_do_.wait(lock, [&] { return closing_ || !in_line_.empty(); });
    if (in_line_.empty()) return;
    Asked& next = *in_line_.front();
    in_line_.pop_front();
    next.state = State::running;
    lock.unlock();
    Answer given = next.question();
    lock.lock();
    next.given = std::move(given);
    next.state = State::done;
    something_done_.notify_all();
  }
}

}  // namespace tailblock
