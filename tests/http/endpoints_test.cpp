#include "http/endpoints.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <nlohmann/json.hpp>
#include <random>

#include "http/program.h"

namespace tailblock {
namespace {

using Json = nlohmann::json;
namespace fs = std::filesystem;
using namespace std::chrono;

/// An empty shop of its own, on 10 February 2026.
class EmptyShop : public testing::Test {
 protected:
  EmptyShop() : endpoints_(all_endpoints(shop_)) {}
  ~EmptyShop() override { fs::remove_all(folder_); }

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

  fs::path folder_ = fs::temp_directory_path() / ("tailblock-http-" + std::to_string(std::random_device{}()));
  bool made_ = fs::create_directory(folder_);
  Program program_;
  Book book_{folder_ / "shop.tailblock", program_.trade()};
  Shop shop_{book_, program_.trade(), program_.tables(), program_.models(), program_.envelopes(), [] {
               return Date(2026y / February / 10);
             }};
  std::vector<Endpoint> endpoints_;
};

TEST_F(EmptyShop, answers_about_itself) {
  const Json shop = done("GET", "/api/shop");
  EXPECT_EQ(shop.at("today"), "2026-02-10");
  EXPECT_EQ(shop.at("instruments"), 0);
  EXPECT_FALSE(done("GET", "/api/tables").at("measures").empty());
}

TEST_F(EmptyShop, a_record_that_is_not_there_is_404) {
  EXPECT_EQ(call("GET", "/api/instruments/{id}", {.id = 17}).status, 404);
  EXPECT_EQ(call("GET", "/api/instruments/{id}/season", {.id = 17}).status, 404);
  EXPECT_EQ(call("GET", "/api/homes/{id}/air", {.id = 17}).status, 404);
}

TEST_F(EmptyShop, refusals_are_422_with_one_line) {
  const Answer unknown = call("POST", "/api/compute/air", {.body = R"({"temperature_c": 20, "damp": 1})"});
  EXPECT_EQ(unknown.status, 422);
  EXPECT_EQ(Json::parse(unknown.body).at("refused").get<std::string>().rfind("damp: unknown field", 0), 0u);
  const Answer far = call("POST", "/api/compute/air", {.body = R"({"temperature_c": 900, "relative_humidity": 0.5})"});
  EXPECT_EQ(Json::parse(far.body).at("refused"), "temperature_c: 900 C is outside -40..60 C");
  const Answer query = call("GET", "/api/instruments", {.query = {{"sort", "up"}}});
  EXPECT_EQ(Json::parse(query.body).at("refused"), "sort: unknown query field of /api/instruments");
}

TEST_F(EmptyShop, reads_lengths_as_the_trade_writes_them) {
  const Json read = done("GET", "/api/read-length", {.query = {{"text", "5/64"}, {"unit", "mm"}}});
  EXPECT_NEAR(read.at("mm").get<double>(), 1.984375, 1e-9);
  EXPECT_EQ(read.at("thousandths"), ".078");
}

TEST_F(EmptyShop, from_two_readings_to_the_saddle) {
  const int instrument = instrument_read_twice();
  const Json season = done("GET", "/api/instruments/{id}/season", {.id = instrument});
  const Json change = season.at("response").at("last_change").at(0);
  EXPECT_NEAR(change.at("measured_bass_mm").at("median").get<double>(), -0.5, 0.05);
  EXPECT_LT(change.at("season_bass_mm").at("median").get<double>(), -0.2);
  EXPECT_FALSE(change.at("something_else").get<bool>());
  EXPECT_EQ(season.at("year").at("bass").at("median_mm").size(), 365u);

  const Json answer = done("POST", "/api/instruments/{id}/saddle", {.id = instrument, .body = "{}"});
  EXPECT_EQ(answer.at("result").at("options").size(), 6u);
  EXPECT_NEAR(answer.at("request").at("bridge").at("exposure_bass_mm").get<double>(), 2.6, 1e-9);

  const Json lines = done("GET", "/api/instruments/{id}/string-line", {.id = instrument});
  EXPECT_NEAR(lines.at("string_line").at("outer").at("action12_bass_mm").get<double>(), 2.0, 1e-6);
}

TEST_F(EmptyShop, the_sliders_move_the_strings_by_half_at_fret_12) {
  const int instrument = instrument_read_twice();
  const auto action = [&](const std::string& raise) {
    const Json lines = done("GET", "/api/instruments/{id}/string-line",
                            {.id = instrument, .query = {{"saddle_raise_bass_mm", raise}}});
    return lines.at("string_line").at("outer").at("action12_bass_mm").get<double>();
  };
  EXPECT_NEAR(action("1/32") - action("0"), 0.397, 0.005);
}

TEST_F(EmptyShop, keeps_a_loggers_file_and_reports_what_it_refused) {
  const int home = kept("/api/homes", {{"name", "the house"}});
  const std::string csv =
      "time,temperature C,humidity %\n2026-01-01 06:00,20.1,31\n2026-01-01 18:00,20.3,33\n2026-01-02 06:00,20.0,130\n"
      "2026-01-02 18:00,20.2,30\n2026-01-03 06:00,20.0,29\n2026-01-03 18:00,20.0,29\n";
  const Json report = done("POST", "/api/homes/{id}/log", {.id = home, .body = csv});
  EXPECT_EQ(report.at("report").at("refused").at(0).at("line"), 4);
  EXPECT_GE(report.at("added").get<int>(), 2);
  const Json air = done("GET", "/api/homes/{id}/air", {.id = home, .query = {{"first", "2026-01-01"}, {"count", "3"}}});
  EXPECT_TRUE(air.at("days").at(0).at("logged").get<bool>());
  EXPECT_NEAR(air.at("days").at(0).at("relative_humidity").get<double>(), 0.32, 1e-9);
}

TEST_F(EmptyShop, the_api_document_names_every_call) {
  const Json document = done("GET", "/api/openapi.json");
  EXPECT_EQ(document.at("openapi"), "3.1.0");
  EXPECT_TRUE(document.at("paths").contains("/api/compute/saddle"));
  EXPECT_TRUE(document.at("components").at("schemas").contains("InstrumentStory"));
}

}  // namespace
}  // namespace tailblock
