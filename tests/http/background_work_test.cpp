#include "http/background_work.h"

#include <gtest/gtest.h>

#include <atomic>
#include <future>
#include <latch>
#include <nlohmann/json.hpp>

namespace tailblock {
namespace {

using Json = nlohmann::json;

/// Questions that stay unanswered until the gate opens, and callers that ask them.
class GatedQuestions : public testing::Test {
 protected:
  ~GatedQuestions() override { open(); }

  void open() {
    if (!opened_.exchange(true)) gate_.count_down();
  }
  std::future<Answer> ask(const std::string& page, const std::string& name) {
    return std::async(std::launch::async, [this, page, name] {
      return work_.answer(page, [this, name] {
        const int running = ++running_;
        int most = most_at_once_;
        while (running > most && !most_at_once_.compare_exchange_weak(most, running)) {
        }
        ++started_;
        started_.notify_all();
        gate_.wait();
        --running_;
        return Answer{.status = 200, .body = name};
      });
    });
  }
  /// Asks and waits until the question runs: both threads are then known to be taken.
  std::future<Answer> running(const std::string& page, const std::string& name) {
    const int before = started_;
    auto asked = ask(page, name);
    started_.wait(before);
    return asked;
  }
  static std::string busy_line(const Answer& answer) {
    EXPECT_EQ(answer.status, 503) << answer.body;
    return answer.status == 503 ? Json::parse(answer.body).at("busy").get<std::string>() : "";
  }

  std::atomic<int> most_at_once_ = 0;

 private:
  std::atomic<int> running_ = 0, started_ = 0;
  std::atomic<bool> opened_ = false;
  std::latch gate_{1};
  BackgroundWork work_{{.at_once = 2, .waiting = 6, .waiting_of_page = 2}};
};

TEST_F(GatedQuestions, are_answered_each_with_its_own_answer) {
  open();
  std::vector<std::future<Answer>> asked;
  for (int i = 0; i < 6; ++i) asked.push_back(ask("", std::to_string(i)));
  for (int i = 0; i < 6; ++i) EXPECT_EQ(asked[static_cast<std::size_t>(i)].get().body, std::to_string(i));
}

TEST_F(GatedQuestions, run_two_at_once_and_no_more) {
  std::vector<std::future<Answer>> asked;
  asked.push_back(running("a", "first"));
  asked.push_back(running("b", "second"));
  for (int i = 0; i < 6; ++i) asked.push_back(ask("", "later"));
  open();
  for (auto& each : asked) EXPECT_EQ(each.get().status, 200);
  EXPECT_EQ(most_at_once_, 2);
}

TEST_F(GatedQuestions, of_one_page_the_oldest_in_line_makes_way) {
  auto first = running("a", "first");
  auto second = running("b", "second");
  auto oldest = ask("mine", "oldest");
  auto newer = ask("mine", "newer");
  auto others = ask("other", "other");
  // Which of the two got in line first is not known; one of them makes way for the third.
  auto newest = ask("mine", "newest");
  const auto sent_away = [](std::future<Answer>& asked) {
    return asked.wait_for(std::chrono::seconds(0)) == std::future_status::ready;
  };
  while (!sent_away(oldest) && !sent_away(newer) && !sent_away(newest)) std::this_thread::yield();
  open();
  int answered = 0;
  for (auto* each : {&oldest, &newer, &newest}) {
    const Answer answer = each->get();
    answered += answer.status == 200;
    if (answer.status != 200) {
      EXPECT_EQ(busy_line(answer), "this page has asked something newer");
    }
  }
  EXPECT_EQ(answered, 2);
  EXPECT_EQ(others.get().body, "other");
  EXPECT_EQ(first.get().body, "first");
  EXPECT_EQ(second.get().body, "second");
}

TEST_F(GatedQuestions, beyond_six_in_line_are_told_so_at_once) {
  auto first = running("a", "first");
  auto second = running("b", "second");
  std::vector<std::future<Answer>> asked;
  for (int i = 0; i < 7; ++i) asked.push_back(ask("", "later"));
  std::size_t refused = asked.size();
  while (refused == asked.size()) {
    for (refused = 0; refused < asked.size(); ++refused) {
      if (asked[refused].wait_for(std::chrono::seconds(0)) == std::future_status::ready) break;
    }
    std::this_thread::yield();
  }
  EXPECT_EQ(busy_line(asked[refused].get()), "6 questions are waiting already; ask again");
  open();
  for (std::size_t i = 0; i < asked.size(); ++i) {
    if (i == refused) continue;
    EXPECT_EQ(asked[i].get().status, 200);
  }
}

}  // namespace
}  // namespace tailblock
