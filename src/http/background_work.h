#pragma once

#include <condition_variable>
#include <deque>
#include <functional>
#include <mutex>
#include <string>
#include <thread>
#include <vector>

#include "http/endpoint.h"

namespace tailblock {

/// Questions that take long (a map of contact runs) on a few threads of low priority, so that ordinary pages do not
/// wait for them. Each caller waits for its own answer; what cannot be taken on is answered 503 at once, with `busy`.
class BackgroundWork {
 public:
  struct Limits {
    int at_once = 2;          ///< threads
    int waiting = 6;          ///< questions in line, all pages together
    int waiting_of_page = 2;  ///< of one browser page: a third sends the oldest of them away
  };

  explicit BackgroundWork(const Limits& limits);
  BackgroundWork() : BackgroundWork(Limits{}) {}
  BackgroundWork(const BackgroundWork&) = delete;
  BackgroundWork& operator=(const BackgroundWork&) = delete;
  /// Whoever asks must have been answered before.
  ~BackgroundWork();

  /// Runs the question on one of the threads and waits for its answer. `page` says which browser page asks; empty when
  /// that is not known, and such questions do not send each other away. The question must not throw.
  [[nodiscard]] Answer answer(const std::string& page, const std::function<Answer()>& question);

 private:
  enum class State { waiting, running, done, sent_away };
  struct Asked {
    const std::string& page;
    const std::function<Answer()>& question;
    State state = State::waiting;
    Answer given = {};
  };

  void work();
  void send_away(Asked& asked, const std::string& line);
  void make_room_for(const std::string& page);

  const Limits limits_;
  std::mutex guard_;
  std::condition_variable something_to_do_, something_done_;
  std::deque<Asked*> in_line_;  ///< oldest first; each lives on its caller's stack until it is done or sent away
  bool closing_ = false;
  std::vector<std::thread> threads_;
};

}  // namespace tailblock
