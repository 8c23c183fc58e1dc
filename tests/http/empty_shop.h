#pragma once

#include <gtest/gtest.h>
#include <turbojpeg.h>

#include <filesystem>
#include <nlohmann/json.hpp>
#include <random>

#include "http/endpoints.h"
#include "http/program.h"

namespace tailblock::testing {

using Json = nlohmann::json;

/// A grey JPEG, 64 by 48.
inline std::string small_jpeg() {
  void* encoder = tjInitCompress();
  const std::vector<unsigned char> grey(64 * 48, 128);
  unsigned char* made = nullptr;
  unsigned long size = 0;
  tjCompress2(encoder, grey.data(), 64, 0, 48, TJPF_GRAY, &made, &size, TJSAMP_GRAY, 90, 0);
  std::string bytes(reinterpret_cast<const char*>(made), size);
  tjFree(made);
  tjDestroy(encoder);
  return bytes;
}

/// An empty shop of its own, on 10 February 2026.
class EmptyShop : public ::testing::Test {
 protected:
  EmptyShop() : endpoints_(all_endpoints(shop_)) {}
  ~EmptyShop() override { std::filesystem::remove_all(folder_); }

  const Endpoint& endpoint(const std::string& method, const std::string& path) {
    for (const Endpoint& each : endpoints_) {
      if (each.method == method && each.path == path) return each;
    }
    throw std::out_of_range(method + " " + path);
  }
  Answer call(const std::string& method, const std::string& path, Ask ask = {}) {
    return answer(endpoint(method, path), ask);
  }
  Json done(const std::string& method, const std::string& path, Ask ask = {}) {
    const Answer given = call(method, path, std::move(ask));
    EXPECT_EQ(given.status, 200) << method << " " << path << ": " << given.body;
    return Json::parse(given.body);
  }
  [[nodiscard]] const ModelTable& program_models() const { return program_.models(); }
  int kept(const std::string& path, const Json& record, int id = 0) {
    return done("POST", path, {.id = id, .body = record.dump()}).at("id");
  }
  /// One instrument with an August and a February visit; the strings came down by half a millimetre.
  int instrument_read_twice() {
    const int owner = kept("/api/owners", {{"name", "A. Player"}});
    const int home = kept("/api/homes", {{"name", "a heated house"}, {"air", heated_house()}});
    const int instrument =
        kept("/api/instruments",
             {{"owner_id", owner}, {"home_id", home}, {"name", "the old one"}, {"scale_length_mm", 645}});
    add_visit(instrument, "2025-08-14", 2.5, 2.0);
    add_visit(instrument, "2026-02-08", 2.0, 1.5);
    return instrument;
  }

 private:
  static Json heated_house() {
    return {{"temperature_c", {20, 20, 20, 20, 21, 23, 24, 24, 22, 20, 20, 20}},
            {"relative_humidity", {.24, .25, .29, .35, .45, .54, .57, .56, .50, .41, .32, .26}}};
  }
  void add_visit(int instrument, const std::string& date, double bass_mm, double treble_mm) {
    const int visit = kept("/api/visits", {{"instrument_id", instrument}, {"date", date}});
    const auto reading = [&](const char* measure, double value) -> Json {
      return {{"visit_id", visit},
              {"measure", measure},
              {"typed", std::to_string(value) + " mm"},
              {"value", value},
              {"gauge", "ruler_64ths"}};
    };
    const Json body{{"readings",
                     {reading("action12_bass", bass_mm), reading("action12_treble", treble_mm),
                      reading("saddle_exposure_bass", 2.6), reading("saddle_exposure_treble", 2.3)}}};
    done("POST", "/api/visits/{id}/readings", {.id = visit, .body = body.dump()});
  }

  std::filesystem::path folder_ = std::filesystem::temp_directory_path() / ("tailblock-http-" + std::to_string(std::random_device{}()));
  bool made_ = std::filesystem::create_directory(folder_);
  Program program_;
  Book book_{folder_ / "shop.tailblock", program_.trade()};
  Shop shop_{
      book_, program_.trade(), program_.tables(), program_.models(), program_.envelopes(), program_.plates(), [] {
        return Date(std::chrono::year(2026) / 2 / 10);
      }};
  std::vector<Endpoint> endpoints_;
};

}  // namespace tailblock::testing
