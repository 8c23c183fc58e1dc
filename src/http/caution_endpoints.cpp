#include <algorithm>

#include "http/endpoints.h"

namespace tailblock {
namespace {

constexpr std::size_t name_bytes = 500;
constexpr Count many{0, 1000};
/// Where papers are asked for in the order of a visit: an id in data/operations.csv.
constexpr std::string_view papers_asked_at = "check_listed_materials";
/// An id in data/hazards.csv.
constexpr std::string_view noise = "noise";

struct MaterialToAskAbout {
  std::string id, name;
};
void describe(FieldVisitor& visit, MaterialToAskAbout& material) {
  visit.text({"id", "as the model cautions names it"}, material.id, name_bytes);
  visit.text({"name", "in words"}, material.name, name_bytes);
}

/// What the cautions at a step ask beside themselves.
struct CautionForms {
  std::vector<std::string> noisy;
  std::string papers_at;
  std::vector<MaterialToAskAbout> materials;
};
void describe(FieldVisitor& visit, CautionForms& forms) {
  visit.texts({"noisy", "operations whose minutes depend on the level measured at the ear"}, forms.noisy, name_bytes,
              many);
  visit.text({"papers_at", "the operation at which papers are asked for"}, forms.papers_at, name_bytes);
  list(visit, {"materials", "that trade rules may protect"}, forms.materials, many);
}

CautionForms caution_forms(const RepairTables& tables) {
  CautionForms forms{.noisy = {}, .papers_at = std::string(papers_asked_at), .materials = {}};
  for (const OperationKind& kind : tables.operations) {
    if (std::ranges::find(kind.hazards, noise) != kind.hazards.end()) forms.noisy.push_back(kind.id);
  }
  for (const ListedMaterial& material : tables.listed) forms.materials.push_back({material.id, material.name});
  return forms;
}

}  // namespace

std::vector<Endpoint> caution_endpoints(const Shop& shop) {
  return {{"GET", "/api/caution-forms", "Which steps ask for a noise level or for papers", {}, "",
           schema_of_result<CautionForms>(),
           [shop](const Ask&) { return json_answer(caution_forms(shop.tables.repairs)); }}};
}

}  // namespace tailblock
