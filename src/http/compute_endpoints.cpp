#include <algorithm>
#include <array>

#include "http/endpoints.h"

namespace tailblock {
namespace {

struct ModelLine {
  std::string name;
  std::string summary;
};
void describe(FieldVisitor& visit, ModelLine& line) {
  visit.text({"name", "as in /api/compute/NAME"}, line.name, 100);
  visit.text({"summary", "what it computes"}, line.summary, 1000);
}

struct ModelList {
  std::vector<ModelLine> models;
};
void describe(FieldVisitor& visit, ModelList& answer) {
  list(visit, {"models", "every computation, once"}, answer.models, {0, 1000});
}

Endpoint listing_models(const ModelTable& models) {
  return {
      "GET", "/api/compute", "Every computation by name", {}, "", schema_of_result<ModelList>(), [&models](const Ask&) {
        ModelList answer;
        for (const Model& model : models.models()) answer.models.push_back({model.name, model.summary});
        return json_answer(answer);
      }};
}

/// Models that run the string through time: tens of milliseconds a string and more.
constexpr std::array<std::string_view, 2> long_models{"contact", "contact-map"};

Endpoint computing(const Model& model) {
  return {.method = "POST",
          .path = "/api/compute/" + model.name,
          .summary = model.summary,
          .query = {},
          .request_schema = model.request_schema(),
          .result_schema = model.result_schema(),
          .handle = [&model](const Ask& ask) { return Answer{.status = 200, .body = model.compute(ask.body)}; },
          .takes_long = std::ranges::find(long_models, model.name) != long_models.end()};
}

Endpoint showing_schemas(const Model& model) {
  return {"GET",
          "/api/schemas/" + model.name,
          "JSON Schemas of " + model.name + ", and a valid request",
          {},
          "",
          "",
          [&model](const Ask&) {
            return Answer{.status = 200,
                          .body = "{\"request\":" + model.request_schema() + ",\"result\":" + model.result_schema() +
                                  ",\"example\":" + model.example + "}"};
          }};
}

}  // namespace

std::vector<Endpoint> compute_endpoints(const Shop& shop) {
  std::vector<Endpoint> endpoints{listing_models(shop.models)};
  for (const Model& model : shop.models.models()) {
    endpoints.push_back(computing(model));
    endpoints.push_back(showing_schemas(model));
  }
  return endpoints;
}

std::vector<Endpoint> all_endpoints(const Shop& shop) {
  std::vector<Endpoint> endpoints = shop_endpoints(shop);
  for (auto* group :
       {&record_endpoints, &air_endpoints, &question_endpoints, &fret_endpoints, &survey_endpoints, &finish_endpoints,
        &caution_endpoints, &top_endpoints, &work_endpoints, &visit_endpoints, &bench_endpoints, &paper_endpoints, &compute_endpoints, &sound_endpoints}) {
    for (Endpoint& endpoint : group(shop)) endpoints.push_back(std::move(endpoint));
  }
  const auto document = std::make_shared<const std::string>(open_api(endpoints));
  endpoints.push_back({"GET", "/api/openapi.json", "This document", {}, "", "", [document](const Ask&) {
                         return Answer{.status = 200, .body = *document};
                       }});
  return endpoints;
}

}  // namespace tailblock
