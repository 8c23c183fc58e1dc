#include <nlohmann/json.hpp>

#include "http/endpoints.h"

namespace tailblock {
namespace {

using Json = nlohmann::ordered_json;

/// A schema inside the document: the document's own dialect holds, so `$schema` is left out.
Json embedded_schema(const std::string& text) {
  Json schema = Json::parse(text);
  schema.erase("$schema");
  return schema;
}

Json answer_of(const std::string& description, Json schema) {
  return {{"description", description}, {"content", {{"application/json", {{"schema", std::move(schema)}}}}}};
}

Json one_line(const char* field) {
  return {{"type", "object"}, {"properties", {{field, {{"type", "string"}}}}}, {"required", Json::array({field})}};
}

Json parameters_of(const Endpoint& endpoint) {
  Json parameters = Json::array();
  if (endpoint.path.find("{id}") != std::string::npos) {
    parameters.push_back({{"name", "id"}, {"in", "path"}, {"required", true}, {"schema", {{"type", "integer"}}}});
  }
  for (const QueryField& field : endpoint.query) {
    parameters.push_back(
        {{"name", field.name}, {"in", "query"}, {"description", field.doc}, {"schema", {{"type", "string"}}}});
  }
  return parameters;
}

Json operation(const Endpoint& endpoint) {
  Json described = {{"summary", endpoint.summary}};
  if (Json parameters = parameters_of(endpoint); !parameters.empty()) described["parameters"] = std::move(parameters);
  if (endpoint.request_type != "application/json") {
    described["requestBody"] = {{"required", true},
                                {"content", {{endpoint.request_type, {{"schema", {{"type", "string"}}}}}}}};
  } else if (!endpoint.request_schema.empty()) {
    described["requestBody"] = {
        {"required", true},
        {"content", {{"application/json", {{"schema", embedded_schema(endpoint.request_schema)}}}}}};
  }
  described["responses"] = {
      {"200", answer_of("done", endpoint.result_schema.empty() ? Json{{"type", "object"}}
                                                               : embedded_schema(endpoint.result_schema))},
      {"404", answer_of("not there", one_line("refused"))},
      {"422", answer_of("refused, in one line", one_line("refused"))},
      {"503", answer_of("storage trouble, and what is still safe", one_line("storage"))}};
  return described;
}

std::string lower(std::string text) {
  for (char& letter : text) letter = static_cast<char>(letter >= 'A' && letter <= 'Z' ? letter - 'A' + 'a' : letter);
  return text;
}

}  // namespace

std::string open_api(const std::vector<Endpoint>& endpoints) {
  Json document = {{"openapi", "3.1.0"},
                   {"info",
                    {{"title", "Tailblock"},
                     {"summary", "The bench book of an acoustic guitar repair shop"},
                     {"version", "1"},
                     {"license", {{"name", "MIT"}, {"identifier", "MIT"}}}}},
                   {"servers", Json::array({{{"url", "http://127.0.0.1:8484"}}})},
                   {"security", Json::array()},
                   {"paths", Json::object()}};
  for (const Endpoint& endpoint : endpoints) {
    document["paths"][endpoint.path][lower(endpoint.method)] = operation(endpoint);
  }
  return document.dump();
}

}  // namespace tailblock
