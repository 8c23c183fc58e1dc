#include "http/server.h"

#include <httplib.h>

#include <algorithm>
#include <charconv>
#include <memory>
#include <thread>

#include "http/background_work.h"
#include "http/endpoints.h"
#include "http/page_file.h"

namespace tailblock {
namespace {

constexpr auto loopback = "127.0.0.1";
constexpr std::size_t largest_body = 64u << 20u;  // a year of one-minute hygrometer readings is about 20 MB
constexpr int worker_threads = 24;                // eight of them may be waiting for background work

std::string route_pattern(std::string path) {
  if (const auto at = path.find("{id}"); at != std::string::npos) path.replace(at, 4, "(\\d{1,9})");
  return path;
}

Ask asked(const httplib::Request& request) {
  Ask ask{.id = 0, .query = {}, .body = request.body, .page = request.get_header_value("Tailblock-Page")};
  for (const auto& [name, value] : request.params) ask.query[name] = value;
  if (request.matches.size() > 1) {
    const std::string number = request.matches[1].str();
    std::from_chars(number.data(), number.data() + number.size(), ask.id);
  }
  return ask;
}

/// A page of another site in the same browser must not reach the book: its requests carry a foreign Origin or Host.
bool from_this_machine(const httplib::Request& request) {
  const auto local = [](std::string_view host) {
    const auto name = host.substr(0, host.rfind(':'));
    return name == loopback || name == "localhost";
  };
  if (!local(request.get_header_value("Host"))) return false;
  const std::string origin = request.get_header_value("Origin");
  return origin.empty() || (origin.starts_with("http://") && local(std::string_view(origin).substr(7)));
}

/// Sends bytes as they are; they outlive the answer, or `kept` holds them. The server library would pack what it holds
/// itself, with its slowest setting: 40 ms for a string line that takes 2 ms to work out.
void send(httplib::Response& response, std::string_view bytes, const std::string& type,
          std::shared_ptr<const std::string> kept = nullptr) {
  response.set_content_provider(bytes.size(), type,
                                [bytes, kept](std::size_t from, std::size_t length, httplib::DataSink& sink) {
                                  return sink.write(bytes.data() + from, length);
                                });
}

void give(httplib::Response& response, std::string body, const std::string& type) {
  if (body.empty()) return;
  auto kept = std::make_shared<const std::string>(std::move(body));
  send(response, *kept, type, kept);
}

constexpr auto own_mistake = R"({"refused": "the program made a mistake here; nothing was changed"})";

/// An answer whatever happens: what the server would catch from one of its own threads, no one catches from another.
Answer whole_answer(const Endpoint& endpoint, const Ask& ask) {
  try {
    return answer(endpoint, ask);
  } catch (...) {
    return {.status = 500, .body = own_mistake};
  }
}

/// Whether the body is of the wanted type; `image/*` is any image.
bool is_of_type(const httplib::Request& request, std::string_view wanted) {
  if (wanted.ends_with('*')) wanted.remove_suffix(1);
  return request.get_header_value("Content-Type").starts_with(wanted);
}

void give(Answer given, const httplib::Request& request, httplib::Response& response) {
  response.status = given.status;
  response.set_header("X-Content-Type-Options", "nosniff");
  if (given.tag.empty()) {
    response.set_header("Cache-Control", "no-store");
  } else {
    const std::string tag = "\"" + given.tag + "\"";
    response.set_header("ETag", tag);
    response.set_header("Cache-Control", "private, max-age=31536000, immutable");
    if (request.get_header_value("If-None-Match") == tag) {
      response.status = 304;
      return;
    }
  }
  give(response, std::move(given.body), given.content_type);
}

void add_endpoint(httplib::Server& server, const Endpoint& endpoint, BackgroundWork& background) {
  const auto handler = [endpoint, &background](const httplib::Request& request, httplib::Response& response) {
    if (!from_this_machine(request)) {
      response.status = 403;
      return;
    }
    if (endpoint.method != "GET" && !is_of_type(request, endpoint.request_type)) {
      response.status = 415;
      give(response, "{\"refused\": \"Content-Type: " + endpoint.request_type + " is wanted\"}", "application/json");
      return;
    }
    const Ask ask = asked(request);
    Answer given = endpoint.takes_long ? background.answer(ask.page, [&] { return whole_answer(endpoint, ask); })
                                       : answer(endpoint, ask);
    give(std::move(given), request, response);
  };
  const std::string pattern = route_pattern(endpoint.path);
  if (endpoint.method == "GET") server.Get(pattern, handler);
  if (endpoint.method == "POST") server.Post(pattern, handler);
  if (endpoint.method == "PUT") server.Put(pattern, handler);
}

void give_page(const httplib::Request& request, httplib::Response& response) {
  if (request.path.starts_with("/api/")) {
    response.status = 404;
    give(response, R"({"refused": "there is no such call; the calls are listed at /api/openapi.json"})",
         "application/json");
    return;
  }
  const auto file = page_file(request.path, request.get_header_value("Accept-Encoding"));
  if (!file) {
    response.status = 503;
    give(response, "The pages are not built into this program: run make web, then make build.\n", "text/plain");
    return;
  }
  response.set_header("ETag", file->entity_tag);
  response.set_header("Vary", "Accept-Encoding");
  if (!file->encoding.empty()) response.set_header("Content-Encoding", file->encoding);
  response.set_header("Cache-Control", file->is_asset ? "public, max-age=31536000, immutable" : "no-cache");
  response.set_header("Content-Security-Policy",
                      "default-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; object-src 'none'; "
                      "base-uri 'none'; frame-ancestors 'none'");
  response.set_header("X-Content-Type-Options", "nosniff");
  response.set_header("Referrer-Policy", "no-referrer");
  if (request.get_header_value("If-None-Match") == file->entity_tag) {
    response.status = 304;
    return;
  }
  send(response, file->content, file->content_type);
}

/// The first list of a big book reads every instrument once (0.7 s for 100,000): done before anybody asks. Trouble with
/// the book is told to the one who asks next.
void read_lists_once(const Book& book) {
  try {
    (void)book.instruments({.per_page = 1});
  } catch (const StorageFault&) {
  }
}

int bound_port(httplib::Server& server, int wanted) {
  if (wanted == 0) return server.bind_to_any_port(loopback);
  if (server.bind_to_port(loopback, wanted)) return wanted;
  throw Refused("port: " + std::to_string(wanted) + " is taken; choose another, or 0 for any free one");
}

}  // namespace

void serve(const Shop& shop, const ServerOptions& options, const std::atomic<bool>& stop) {
  BackgroundWork background;
  httplib::Server server;
  server.new_task_queue = [] { return new httplib::ThreadPool(worker_threads); };  // owned and deleted by the server
  server.set_tcp_nodelay(true);
  server.set_payload_max_length(largest_body);
  server.set_read_timeout(5);
  server.set_write_timeout(5);
  server.set_keep_alive_timeout(5);
  server.set_keep_alive_max_count(1000);
  for (const Endpoint& endpoint : all_endpoints(shop)) add_endpoint(server, endpoint, background);
  server.Get(".*", give_page);
  server.set_exception_handler([](const httplib::Request&, httplib::Response& response, std::exception_ptr) {
    response.status = 500;
    give(response, own_mistake, "application/json");
  });

  const int port = bound_port(server, options.port);
  std::jthread watch([&](const std::stop_token& done) {
    while (!stop && !done.stop_requested()) std::this_thread::sleep_for(std::chrono::milliseconds(50));
    server.stop();
  });
  std::jthread announce([&](const std::stop_token& done) {
    while (!server.is_running() && !stop && !done.stop_requested())
      std::this_thread::sleep_for(std::chrono::milliseconds(1));
    if (server.is_running() && options.when_ready) options.when_ready("http://127.0.0.1:" + std::to_string(port) + "/");
  });
  std::jthread warm([&] { read_lists_once(shop.book); });
  server.listen_after_bind();
}

}  // namespace tailblock
