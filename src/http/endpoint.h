#pragma once

#include <functional>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "models/json.h"
#include "quantity/refused.h"

namespace tailblock {

/// One request as a handler sees it, free of any server library.
struct Ask {
  int id = 0;                                     ///< the {id} in the path, where there is one
  std::map<std::string, std::string> query = {};  ///< decoded
  std::string body = {};
  std::string page = {};  ///< which browser page asks, by the number it gave itself; empty when it does not say
};

struct Answer {
  int status = 200;
  std::string body = {};
  std::string content_type = "application/json";
  std::string tag = {};  ///< of what never changes: a browser may keep it, and asks for it by this
};

/// One query parameter: what it means, for the API document. A parameter that no endpoint names is refused.
struct QueryField {
  std::string name;
  std::string doc;
};

/// One call of the API. The server and the API document are both made from the list of these.
struct Endpoint {
  std::string method;  ///< GET, POST or PUT
  std::string path;    ///< /api/instruments/{id}
  std::string summary;
  std::vector<QueryField> query;
  std::string request_schema;  ///< empty: no body
  std::string result_schema;
  std::function<Answer(const Ask&)> handle;       ///< @throws Refused, StorageFault
  std::string request_type = "application/json";  ///< `image/*` is any image
  std::string result_type = "application/json";
  bool takes_long = false;  ///< answered by BackgroundWork, where it may be sent away with 503 and `busy`
};

/// Runs the handler and turns what it throws into an answer: 422 with `refused`, 404 for what is not there, 503 with
/// `storage`.
[[nodiscard]] Answer answer(const Endpoint& endpoint, const Ask& ask);

/// What a call that keeps one record answers.
struct Kept {
  int id = 0;
};
void describe(FieldVisitor&, Kept&);

template <class Result>
[[nodiscard]] Answer json_answer(Result result) {
  return {.status = 200, .body = to_json(std::move(result))};
}

template <class Request>
[[nodiscard]] std::string schema_of_request() {
  return json_schema<Request>(SchemaWriter::Of::request);
}

template <class Result>
[[nodiscard]] std::string schema_of_result() {
  return json_schema<Result>(SchemaWriter::Of::result);
}

}  // namespace tailblock
