#include <CLI/CLI.hpp>
#include <iostream>
#include <iterator>
#include <nlohmann/json.hpp>

#include "cli/commands.h"
#include "http/program.h"

namespace tailblock {
namespace {

struct ComputeWish {
  std::string name;
  bool list = false;
  bool schema = false;
  bool example = false;
};

std::string pretty(const std::string& json) { return nlohmann::ordered_json::parse(json).dump(2) + "\n"; }

void list_models(const ModelTable& models) {
  for (const Model& model : models.models()) {
    std::cout << model.name << std::string(model.name.size() < 20 ? 20 - model.name.size() : 1, ' ') << model.summary
              << '\n';
  }
}

const Model& wanted_model(const ModelTable& models, const std::string& name) {
  if (const Model* model = models.find(name)) return *model;
  throw Refused("NAME: \"" + name + "\" is no computation; tailblock compute --list names them");
}

void compute(const ComputeWish& wish) {
  const Program program;
  if (wish.list) return list_models(program.models());
  const Model& model = wanted_model(program.models(), wish.name);
  if (wish.schema) {
    std::cout << pretty("{\"request\":" + model.request_schema() + ",\"result\":" + model.result_schema() + "}");
  } else if (wish.example) {
    std::cout << pretty(model.example);
  } else {
    const std::string request(std::istreambuf_iterator<char>(std::cin), {});
    std::cout << pretty(model.compute(request));
  }
}

}  // namespace

void add_compute_command(CLI::App& app) {
  const auto wish = std::make_shared<ComputeWish>();
  CLI::App* command = app.add_subcommand("compute", "Run one computation: tailblock compute NAME < request.json");
  CLI::Option* name = command->add_option("NAME", wish->name, "the computation; --list names them");
  command->add_flag("--list", wish->list, "name every computation with a line each");
  command->add_flag("--schema", wish->schema, "print the JSON Schemas of request and result")->needs(name);
  command->add_flag("--example", wish->example, "print a valid request")->needs(name);
  command->callback([wish] {
    if (!wish->list && wish->name.empty()) throw CLI::RequiredError("NAME");
    compute(*wish);
  });
}

}  // namespace tailblock
