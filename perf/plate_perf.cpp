// Limits of the design, 8 mm mesh (about 12,500 unknowns), one core: cold (mesh, order, assembly, factor, every unit
// load, answer) under 100 ms; a slider of air or strings under 3 ms; a brace loosened or a thickness changed under 40
// ms; 50 times quicker than CalculiX for the same quantities, whose solids run here on the same kind of top
// (tests/body/decks).
#include <benchmark/benchmark.h>

#include <Eigen/SparseCholesky>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <string>

#include "body/plate_figures.h"
#include "body/prepared_top.h"
#include "body/top_designs.h"
#include "wood/species.h"

namespace {

using namespace tailblock;

std::string text_of(const std::string& path) {
  std::ifstream file(TEST_SOURCE_DIR "/" + path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

struct Tables {
  PlateFigures figures = plate_figures(text_of("data/plate_figures.csv"));
  SpeciesTable species = species_table(text_of("data/species.csv"));
  std::string outlines = text_of("data/top_outlines.csv"), builds = text_of("data/top_builds.csv"),
              braces = text_of("data/top_braces.csv");
  TopDesignTable designs = top_design_table({outlines, builds, braces}, figures);
  [[nodiscard]] PlateTables all() const { return {&species, &designs, &figures}; }
};

const Tables& tables() {
  static const Tables read;
  return read;
}

PlateRequest large_top() {
  PlateRequest request;
  request.top.body_size = BodySize::slope_large;
  request.moisture = {-3, -3, -3, -3};
  return request;
}

void cold_three_load_cases(benchmark::State& state) {
  const PlateRequest request = large_top();
  PlateResult result;
  for (auto _ : state) benchmark::DoNotOptimize(result = plate(request, tables().all()));
  state.counters["unknowns"] = result.unknowns;
}
BENCHMARK(cold_three_load_cases)->Unit(benchmark::kMillisecond);

void air_or_strings_changed(benchmark::State& state) {
  PlateRequest request = large_top();
  const PreparedTop top = prepare_top(design_of(request.top, tables().designs), {}, request.mesh, tables().all());
  for (auto _ : state) {
    request.moisture.top -= 1e-6;
    benchmark::DoNotOptimize(plate(request, top, tables().all()));
  }
}
BENCHMARK(air_or_strings_changed)->Unit(benchmark::kMillisecond);

void brace_loosened(benchmark::State& state) {
  PlateRequest request = large_top();
  const TopDesign design = design_of(request.top, tables().designs);
  const PreparedTop sound = prepare_top(design, {}, request.mesh, tables().all());
  request.damage.loose_braces = {{.brace = "X leg to treble", .end = BraceEnd::second, .length = mm(60)}};
  FactorMemory memory;  // as the shop's program keeps it
  for (auto _ : state) {
    const PreparedTop top = prepare_top(design, request.damage, request.mesh, tables().all(), sound.meshed, &memory);
    benchmark::DoNotOptimize(plate(request, top, tables().all()));
  }
}
BENCHMARK(brace_loosened)->Unit(benchmark::kMillisecond);

void thickness_changed(benchmark::State& state) {
  PlateRequest request = large_top();
  TopDesign design = design_of(request.top, tables().designs);
  const PreparedTop sound = prepare_top(design, {}, request.mesh, tables().all());
  FactorMemory memory;
  for (auto _ : state) {
    design.thickness -= mm(1e-5);
    const PreparedTop top = prepare_top(design, {}, request.mesh, tables().all(), sound.meshed, &memory);
    benchmark::DoNotOptimize(plate(request, top, tables().all()));
  }
}
BENCHMARK(thickness_changed)->Unit(benchmark::kMillisecond);

// Where the time goes.
void mesh_and_order(benchmark::State& state) {
  const TopDesign design = design_of(large_top().top, tables().designs);
  for (auto _ : state) benchmark::DoNotOptimize(mesh_top(design, {}, mm(8)));
}
BENCHMARK(mesh_and_order)->Unit(benchmark::kMillisecond);

void order_alone(benchmark::State& state) {
  const PreparedTop top = prepare_top(design_of(large_top().top, tables().designs), {}, mm(8), tables().all());
  for (auto _ : state) benchmark::DoNotOptimize(dissect(top.top.plate));
}
BENCHMARK(order_alone)->Unit(benchmark::kMillisecond);

void assembly_and_factor(benchmark::State& state) {
  const PreparedTop top = prepare_top(design_of(large_top().top, tables().designs), {}, mm(8), tables().all());
  FactorMemory memory;
  for (auto _ : state) {
    Factor factor(top.top.plate, top.meshed->dissection, std::move(memory));
    memory = std::move(factor).taken_apart();
  }
  state.counters["factor_MB"] = static_cast<double>(top.meshed->dissection.factor_entries) * 8e-6;
  state.counters["Mflop"] = 2e-6 * top.meshed->dissection.operations;
}
BENCHMARK(assembly_and_factor)->Unit(benchmark::kMillisecond);

void six_solutions(benchmark::State& state) {
  const PreparedTop top = prepare_top(design_of(large_top().top, tables().designs), {}, mm(8), tables().all());
  Factor factor(top.top.plate, top.meshed->dissection);
  for (auto _ : state) benchmark::DoNotOptimize(factor.displacements(top.answers.loads));
}
BENCHMARK(six_solutions)->Unit(benchmark::kMillisecond);

/// The same stiffness as a general sparse matrix.
Eigen::SparseMatrix<double> sparse_stiffness(const BracedPlate& plate, const std::vector<int>& first) {
  std::vector<Eigen::Triplet<double>> entries;
  const auto add = [&](const auto& K, const std::vector<int>& places) {
    for (std::size_t j = 0; j < places.size(); ++j) {
      for (std::size_t i = 0; i < places.size(); ++i) {
        entries.emplace_back(places[i], places[j], K(static_cast<int>(i), static_cast<int>(j)));
      }
    }
  };
  const auto node_places = [&](std::vector<int>& places, int node) {
    for (int i = 0; i < plate_unknowns; ++i) places.push_back(first[static_cast<std::size_t>(node)] + i);
  };
  for (std::size_t t = 0; t < plate.mesh.triangles.size(); ++t) {
    std::vector<int> places;
    for (const int node : plate.mesh.triangles[t]) node_places(places, node);
    add(triangle_stiffness((*plate.strains)[t], plate.sections[static_cast<std::size_t>(plate.section_of[t])]), places);
  }
  for (const PlacedRib& rib : plate.ribs) {
    std::vector<int> places;
    node_places(places, rib.first);
    places.push_back(first[static_cast<std::size_t>(rib.first)] + plate_unknowns + rib.first_slot);
    node_places(places, rib.second);
    places.push_back(first[static_cast<std::size_t>(rib.second)] + plate_unknowns + rib.second_slot);
    add(rib_stiffness(rib.segment), places);
  }
  for (const NodeSpring& spring : plate.springs) {
    std::vector<int> places;
    node_places(places, spring.node);
    add(spring.stiffness, places);
  }
  Eigen::SparseMatrix<double> K(first.back(), first.back());
  K.setFromTriplets(entries.begin(), entries.end());
  return K;
}

/// What the front-by-front factor replaced: Eigen's sparse LDL' with its minimum-degree order, the pattern kept.
void eigen_sparse_factor_alone(benchmark::State& state) {
  const PreparedTop top = prepare_top(design_of(large_top().top, tables().designs), {}, mm(8), tables().all());
  const Eigen::SparseMatrix<double> K = sparse_stiffness(top.top.plate, top.answers.first_unknown);
  Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> solver;
  solver.analyzePattern(K);
  for (auto _ : state) solver.factorize(K);
  const Eigen::MatrixXd difference = solver.solve(top.answers.loads) - top.answers.displacements;
  state.counters["largest_difference"] =
      difference.cwiseAbs().maxCoeff() / top.answers.displacements.cwiseAbs().maxCoeff();
}
BENCHMARK(eigen_sparse_factor_alone)->Unit(benchmark::kMillisecond);

/// CalculiX on solids: the study's braced top, strings, unit load and drying.
void calculix_three_load_cases(benchmark::State& state) {
  if (std::system("command -v ccx > /dev/null") != 0) {
    state.SkipWithError("ccx (Debian: calculix-ccx) is not installed");
    return;
  }
  const std::string folder = "/tmp/tailblock_plate_perf";
  const std::string unpack = "mkdir -p " + folder +
                             " && gzip -dc " TEST_SOURCE_DIR "/tests/body/decks/c5b_braced_top_free_inplane.inp.gz > " +
                             folder + "/run.inp";
  if (std::system(unpack.c_str()) != 0) state.SkipWithError("the deck cannot be unpacked");
  for (auto _ : state) {
    // `time` tells what the processor did, so that a busy machine does not count.
    const std::string run =
        "cd " + folder + " && OMP_NUM_THREADS=1 bash -c 'TIMEFORMAT=%U; time ccx run > run.log 2>&1' 2> seconds";
    if (std::system(run.c_str()) != 0) state.SkipWithError("ccx failed");
    double seconds = 0;
    std::ifstream(folder + "/seconds") >> seconds;
    state.SetIterationTime(seconds);
  }
  (void)std::system(("rm -r " + folder).c_str());
}
BENCHMARK(calculix_three_load_cases)->Unit(benchmark::kMillisecond)->UseManualTime()->Iterations(1);

}  // namespace

BENCHMARK_MAIN();
