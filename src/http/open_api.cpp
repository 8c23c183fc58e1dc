#include <nlohmann/json.hpp>

#include "http/endpoints.h"

namespace tailblock {
namespace {

using Json = nlohmann::ordered_json;

std::string replaced(std::string text, std::string_view from, std::string_view to) {
  for (auto at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size())) {
    text.replace(at, from.size(), to);
  }
  return text;
}

/// Moves a schema and the structs it names into the document's components, and gives a reference to it.
Json referred_schema(Json& components, const std::string& text) {
  Json schema = Json::parse(replaced(text, "#/$defs/", "#/components/schemas/"));
  schema.erase("$schema");
  if (schema.contains("$defs")) {
    for (auto& [name, definition] : schema["$defs"].items()) components[name] = definition;
    schema.erase("$defs");
  }
  const std::string name = schema.at("title");
  components[name] = std::move(schema);
  return {{"$ref", "#/components/schemas/" + name}};
}

Json answer_of(const std::string& description, Json schema) {
  return {{"description", description}, {"content", {{"application/json", {{"schema", std::move(schema)}}}}}};
}

Json result_of(Json& components, const Endpoint& endpoint) {
  if (endpoint.result_type != "application/json") {
    return {{"description", "done"}, {"content", {{endpoint.result_type, Json::object()}}}};
  }
  return answer_of("done", endpoint.result_schema.empty() ? Json{{"type", "object"}}
                                                          : referred_schema(components, endpoint.result_schema));
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

Json operation(Json& components, const Endpoint& endpoint) {
  Json described = {{"summary", endpoint.summary}};
  if (Json parameters = parameters_of(endpoint); !parameters.empty()) described["parameters"] = std::move(parameters);
  if (endpoint.request_type != "application/json") {
    described["requestBody"] = {{"required", true},
                                {"content", {{endpoint.request_type, {{"schema", {{"type", "string"}}}}}}}};
  } else if (!endpoint.request_schema.empty()) {
    described["requestBody"] = {
        {"required", true},
        {"content", {{"application/json", {{"schema", referred_schema(components, endpoint.request_schema)}}}}}};
  }
  described["responses"] = {
      {"200", result_of(components, endpoint)},
      {"404", answer_of("not there", one_line("refused"))},
      {"422", answer_of("refused, in one line", one_line("refused"))},
      {"503", endpoint.takes_long ? answer_of("busy with other long questions: ask again", one_line("busy"))
                                  : answer_of("storage trouble, and what is still safe", one_line("storage"))}};
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
  Json components = Json::object();
  for (const Endpoint& endpoint : endpoints) {
    document["paths"][endpoint.path][lower(endpoint.method)] = operation(components, endpoint);
  }
  document["components"]["schemas"] = std::move(components);
  return document.dump();
}

}  // namespace tailblock
