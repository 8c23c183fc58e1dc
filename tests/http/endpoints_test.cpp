#include "http/endpoints.h"

#include "empty_shop.h"

namespace tailblock {
namespace {

using testing::EmptyShop;
using testing::Json;
using testing::small_jpeg;
using namespace std::chrono;

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

TEST_F(EmptyShop, turning_the_rod_lifts_the_strings_and_reading_again_does_not) {
  const int instrument = instrument_read_twice();
  const auto lines = [&](const std::map<std::string, std::string>& query) {
    return done("GET", "/api/instruments/{id}/string-line", {.id = instrument, .query = query});
  };
  const auto action = [](const Json& answer) {
    return answer.at("string_line").at("outer").at("action12_bass_mm").get<double>();
  };
  const Json start = lines({});
  const double relief = start.at("relief_mm");
  const Json turned = lines({{"relief_mm", std::to_string(relief + 0.1)}});
  const double per_mm = start.at("string_line").at("action12_per_relief_at_held_joint");
  EXPECT_NEAR(action(turned) - action(start), 0.1 * per_mm, 0.002);  // the bass setback against the middle one
  EXPECT_GT(per_mm, 2.2);
  const Json read_again = lines({{"relief_read_mm", std::to_string(relief + 0.1)}});
  EXPECT_NEAR(action(read_again), action(start), 1e-9);
  EXPECT_NEAR(read_again.at("relief_mm").get<double>(), relief + 0.1, 1e-6);
  // The bridge goes with the body: the rod leaves the saddle's exposure alone.
  EXPECT_NEAR(turned.at("string_line").at("strings").at(5).at("exposure_mm").get<double>(), 2.6, 1e-9);
}

TEST_F(EmptyShop, a_raised_crown_and_a_harder_attack_are_in_the_request_that_was_asked) {
  const int instrument = instrument_read_twice();
  const Json start = done("GET", "/api/instruments/{id}/string-line", {.id = instrument});
  const Json moved = done(
      "GET", "/api/instruments/{id}/string-line",
      {.id = instrument,
       .query = {{"crowns", "6:0.2,9:-0.05"}, {"amplitude_bass_mm", "0.9"}, {"string", "5"}, {"stopped_fret", "5"}}});
  EXPECT_NEAR(moved.at("request").at("neck").at("crown_departures_mm").at(5).get<double>(), 0.2, 1e-12);
  EXPECT_NEAR(moved.at("request").at("neck").at("crown_departures_mm").at(8).get<double>(), -0.05, 1e-12);
  EXPECT_NEAR(moved.at("request").at("attack").at("amplitude_bass_mm").get<double>(), 0.9, 1e-12);
  EXPECT_GT(moved.at("hard_attack").at("amplitude_bass_mm").get<double>(), 0.9);
  EXPECT_EQ(moved.at("swing").at("string"), 5);
  EXPECT_EQ(moved.at("swing").at("frets").at(0).at("fret"), 6);
  const auto gap = [](const Json& answer) {
    return answer.at("string_line").at("strings").at(4).at("over_fret_mm").at(5).get<double>();
  };
  EXPECT_NEAR(gap(start) - gap(moved), 0.2, 1e-9);
  // What clearance says of the request that was handed on is what the answer said.
  const Json again = done("POST", "/api/compute/clearance", {.body = moved.at("request").dump()});
  EXPECT_EQ(again.at("touching"), moved.at("clearance").at("touching"));
  EXPECT_EQ(again.at("worst_note"), moved.at("clearance").at("worst_note"));
}

TEST_F(EmptyShop, crowns_that_are_not_fret_and_height_are_refused) {
  const int instrument = instrument_read_twice();
  const auto refusal = [&](const std::string& crowns) {
    const Answer given =
        call("GET", "/api/instruments/{id}/string-line", {.id = instrument, .query = {{"crowns", crowns}}});
    EXPECT_EQ(given.status, 422) << crowns;
    return Json::parse(given.body).at("refused").get<std::string>();
  };
  EXPECT_EQ(refusal("6"), "crowns: \"6\" is not a fret and a height in mm, as 5:0.05");
  EXPECT_EQ(refusal("6.5:0.1"), "crowns: \"6.5:0.1\" is not a fret and a height in mm, as 5:0.05");
  EXPECT_EQ(refusal("6:0.1,,"), "crowns: \"\" is not a fret and a height in mm, as 5:0.05");
  EXPECT_EQ(refusal("30:0.1"), "crowns: 30 is outside 1..24");
  EXPECT_EQ(refusal("6:2"), "crowns: 2 mm is outside -1..1 mm");
  EXPECT_EQ(refusal("24:0.1"), "crown_departures_mm: fret 24 is raised, the neck has 20 frets");
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

/// Four bytes of a wave file, least significant first.
std::size_t number_at(const std::string& file, std::size_t at) {
  std::size_t value = 0;
  for (std::size_t i = 4; i-- > 0;) value = value * 256 + static_cast<unsigned char>(file.at(at + i));
  return value;
}

TEST_F(EmptyShop, lets_a_note_be_heard_and_refuses_one_that_lies_on_a_fret) {
  Json request = Json::parse(program_models().find("contact")->example);
  request["seconds"] = 0.5;
  const Answer sound = call("POST", "/api/note-sound", {.body = request.dump()});
  EXPECT_EQ(sound.status, 200) << sound.body;
  EXPECT_EQ(sound.content_type, "audio/wav");
  EXPECT_EQ(sound.body.substr(0, 4) + sound.body.substr(8, 8), "RIFFWAVEfmt ");
  EXPECT_EQ(number_at(sound.body, 4) + 8, sound.body.size());
  EXPECT_EQ(number_at(sound.body, 24), 44100U);
  EXPECT_EQ(number_at(sound.body, 40), 2 * 22050U);

  request["neck"]["crown_departures_mm"] = std::vector<double>(20, 0.0);
  request["neck"]["crown_departures_mm"][1] = 1;
  const Answer refused = call("POST", "/api/note-sound", {.body = request.dump()});
  EXPECT_EQ(refused.status, 422);
  EXPECT_EQ(Json::parse(refused.body).at("refused"), "action: String 6 at fret 1 lies on fret 2 before it is plucked");
  EXPECT_EQ(call("POST", "/api/note-sound", {.body = "{\"seconds\": 5}"}).status, 422);
}

TEST_F(EmptyShop, takes_a_repair_from_its_choice_to_the_owners_word_and_the_work) {
  const int instrument = instrument_read_twice();
  const int visit = kept("/api/visits", {{"instrument_id", instrument}, {"date", "2026-02-10"}});
  const int job = kept("/api/visits/{id}/jobs", {{"procedure", "top_crack"}}, visit);
  EXPECT_EQ(done("POST", "/api/visits/{id}/offers", {.id = visit}).at("made"), 1);
  EXPECT_EQ(done("POST", "/api/visits/{id}/offers", {.id = visit}).at("made"), 0) << "nothing changed";
  const int offer =
      done("GET", "/api/visits/{id}/work", {.id = visit}).at("jobs")[0].at("story").at("offers")[0].at("id");
  kept("/api/jobs/{id}/words", {{"offer_id", offer}, {"says", "yes"}, {"day", "2026-02-10"}, {"who", "A. Player"}},
       job);

  const Json gated{{"operation", "glue_crack_hide"}, {"person", "Ada"}};
  const Answer held = call("POST", "/api/jobs/{id}/work", {.id = job, .body = gated.dump()});
  EXPECT_EQ(held.status, 422) << "the humidity in the body was not read";
  kept("/api/visits/{id}/gate", {{"who", "Ada"}, {"day", "2026-02-10"}, {"why", "damp cloth beside it"}}, visit);
  const int spell = kept("/api/jobs/{id}/work", gated, job);
  kept("/api/work/{id}/end", {{"minutes", 30}}, spell);
  kept("/api/work/{id}/corrections", {{"minutes", 25}, {"day", "2026-02-10"}}, spell);
  const Json work = done("GET", "/api/visits/{id}/work", {.id = visit});
  for (const Json& step : work.at("jobs")[0].at("steps")) {
    if (step.at("step").at("operation") == "glue_crack_hide") {
      EXPECT_EQ(step.at("state"), "waiting");
      EXPECT_EQ(step.at("minutes_spent"), 25);
    }
  }
  const Json unknown{{"operation", "level_frets"}};
  const Answer refused = call("POST", "/api/jobs/{id}/work", {.id = job, .body = unknown.dump()});
  EXPECT_EQ(Json::parse(refused.body).at("refused"),
            "operation: \"level_frets\" is not left to do in this job as it stands");
}

TEST_F(EmptyShop, money_that_no_estimate_can_be_made_with_is_not_kept) {
  const int visit = kept("/api/visits", {{"instrument_id", instrument_read_twice()}, {"date", "2026-02-10"}});
  const int job = kept("/api/visits/{id}/jobs", {{"procedure", "drop_in_saddle"}}, visit);
  const Json odd{{"name", "bone"}, {"unit_price", "12,50"}};
  EXPECT_EQ(call("POST", "/api/jobs/{id}/materials", {.id = job, .body = odd.dump()}).status, 422);
  kept("/api/jobs/{id}/materials", {{"name", "bone"}, {"unit_price", "12.50"}}, job);
  const Json estimate = done("GET", "/api/visits/{id}/estimate", {.id = visit});
  EXPECT_EQ(estimate.at("result").at("lines")[0].at("materials"), "12.50");
}

TEST_F(EmptyShop, asks_what_is_behind_a_complaint_and_keeps_the_answers) {
  const int visit = kept("/api/visits", {{"instrument_id", instrument_read_twice()}, {"date", "2026-02-10"}});
  const Json before = done("GET", "/api/visits/{id}/diagnosis", {.id = visit});
  kept("/api/visits/{id}/sayings",
       {{"about", "symptom"}, {"name", "buzz"}, {"holds", true}, {"day", "2026-02-10"}, {"who", "Ada"}}, visit);
  const Json after = done("GET", "/api/visits/{id}/diagnosis", {.id = visit});
  EXPECT_GT(after.at("answer").at("result").at("causes").size(), before.at("answer").at("result").at("causes").size());
  const Json odd{{"about", "fact"}, {"name", "buzz"}, {"holds", true}, {"day", "2026-02-10"}, {"who", "Ada"}};
  EXPECT_EQ(Json::parse(call("POST", "/api/visits/{id}/sayings", {.id = visit, .body = odd.dump()}).body).at("refused"),
            "name: \"buzz\" is nothing that the diagnosis asks");
}

TEST_F(EmptyShop, a_lot_past_its_day_is_used_only_with_a_yes) {
  const int visit = kept("/api/visits", {{"instrument_id", instrument_read_twice()}, {"date", "2026-02-10"}});
  const int job = kept("/api/visits/{id}/jobs", {{"procedure", "drop_in_saddle"}}, visit);
  const int lot = kept("/api/lots", {{"material", "hot_hide"},
                                     {"words", "hide glue, pot 3"},
                                     {"opened_on", "2026-02-01"},
                                     {"good_until", "2026-02-09"}});
  const std::string line =
      "lot_id: hide glue, pot 3 was good until 2026-02-09; open a fresh one, or say past_its_day to use it all the same";
  Json tap{{"operation", "short_intake"}, {"person", "Ada"}, {"lot_id", lot}};
  const Answer refused = call("POST", "/api/jobs/{id}/work", {.id = job, .body = tap.dump()});
  EXPECT_EQ(Json::parse(refused.body).at("refused"), line);
  tap.erase("lot_id");
  const int spell = kept("/api/jobs/{id}/work", tap, job);
  Json end{{"lot_id", lot}};
  EXPECT_EQ(Json::parse(call("POST", "/api/work/{id}/end", {.id = spell, .body = end.dump()}).body).at("refused"), line);
  end["past_its_day"] = true;
  kept("/api/work/{id}/end", end, spell);
  const Json work = done("GET", "/api/visits/{id}/work", {.id = visit});
  EXPECT_EQ(work.at("jobs")[0].at("story").at("spells")[0].at("lot_id"), lot);
}

TEST_F(EmptyShop, says_whether_a_coat_goes_on_once_the_air_is_read) {
  const int visit = kept("/api/visits", {{"instrument_id", instrument_read_twice()}, {"date", "2026-02-10"}});
  kept("/api/visits/{id}/jobs", {{"procedure", "refinish"}}, visit);
  const Json before = done("GET", "/api/visits/{id}/finish", {.id = visit});
  EXPECT_FALSE(before.contains("result"));
  kept("/api/shop-air", {{"day", "2026-02-10"}, {"minute", 0}, {"temperature_c", 21}, {"relative_humidity", .35}});
  const Ask lacquer{.id = visit, .query = {{"finish", "nc_lacquer"}, {"coats_done", "2"}}};
  const Json after = done("GET", "/api/visits/{id}/finish", lacquer);
  EXPECT_EQ(after.at("result").at("verdict"), "free");
  EXPECT_EQ(after.at("request").at("coats_done"), 2);
  const Answer odd = call("GET", "/api/visits/{id}/finish", {.id = visit, .query = {{"coats_wanted", "0"}}});
  EXPECT_EQ(Json::parse(odd.body).at("refused"), "coats_wanted: 0 is outside 1..200");
}

TEST_F(EmptyShop, keeps_a_colour_tried_and_finds_it_again) {
  const int visit = kept("/api/visits", {{"instrument_id", instrument_read_twice()}, {"date", "2026-02-10"}});
  const Json trial{{"mix", "amber 6 drops in 30 ml"}, {"substrate", "spruce offcut"}, {"day", "2026-02-10"}};
  const int wet = kept("/api/visits/{id}/finish-trials", trial, visit);
  Json dry = trial;
  dry["supersedes"] = wet;
  dry["verdict"] = "keep";
  kept("/api/visits/{id}/finish-trials", dry, visit);
  const Json found = done("GET", "/api/finish-trials", {.query = {{"search", "amber"}, {"verdict", "keep"}}});
  EXPECT_EQ(found.at("total"), 1);
  EXPECT_EQ(found.at("trials")[0].at("earlier")[0].at("id"), wet);
  EXPECT_EQ(found.at("trials")[0].at("instrument"), "the old one");
  EXPECT_EQ(call("POST", "/api/visits/{id}/finish-trials", {.id = 99, .body = trial.dump()}).status, 404);
}

TEST_F(EmptyShop, places_cleats_along_a_crack_of_the_survey) {
  const int visit = kept("/api/visits", {{"instrument_id", instrument_read_twice()}, {"date", "2026-02-10"}});
  EXPECT_TRUE(done("GET", "/api/visits/{id}/cleats", {.id = visit}).at("cracks").empty());
  kept("/api/visits/{id}/findings",
       {{"kind", "crack"},
        {"view", "front"},
        {"shape", "line"},
        {"points", {{{"x_mm", 250}, {"y_mm", 95}}, {{"x_mm", 430}, {"y_mm", 95}}}}},
       visit);
  const Json cracks = done("GET", "/api/visits/{id}/cleats", {.id = visit}).at("cracks");
  EXPECT_GE(cracks.at(0).at("result").at("cleats").size(), 2U);
}

TEST_F(EmptyShop, a_visit_shows_photos_of_its_own) {
  const int visit = kept("/api/visits", {{"instrument_id", instrument_read_twice()}, {"date", "2026-02-10"}});
  const int photo = done("POST", "/api/photos", {.body = small_jpeg()}).at("id");
  kept("/api/visits/{id}/photos", {{"photo_id", photo}, {"words", "as it came"}}, visit);
  const Json shown = done("GET", "/api/visits/{id}/photos", {.id = visit}).at("photos");
  EXPECT_EQ(shown.at(0).at("words"), "as it came");
  kept("/api/visits/{id}/photos", {{"photo_id", photo}, {"left_out", true}}, visit);
  EXPECT_TRUE(done("GET", "/api/visits/{id}/photos", {.id = visit}).at("photos").empty());
}

TEST_F(EmptyShop, a_finding_with_its_photo_goes_in_and_comes_out_at_the_next_visit) {
  const int instrument = instrument_read_twice();
  const Json visits = done("GET", "/api/instruments/{id}", {.id = instrument}).at("visits");
  const int first = visits.at(0).at("visit").at("id"), second = visits.at(1).at("visit").at("id");
  const Json photo = done("POST", "/api/photos", {.body = small_jpeg()});
  EXPECT_EQ(done("POST", "/api/photos", {.body = small_jpeg()}).at("id"), photo.at("id")) << "kept once";
  const int finding = kept("/api/visits/{id}/findings",
                           {{"kind", "crack"},
                            {"view", "front"},
                            {"shape", "line"},
                            {"points", {{{"x_mm", 300}, {"y_mm", -60}}, {{"x_mm", 360}, {"y_mm", -60}}}},
                            {"extents", {{{"measure", "crack_width"}, {"value_mm", ".004"}}}},
                            {"photos", {{{"photo_id", photo.at("id")}}}}},
                           first);
  kept("/api/visits/{id}/finding-changes", {{"finding_id", finding}, {"state", "grown"}}, second);
  const Json survey = done("GET", "/api/visits/{id}/survey", {.id = second});
  const Json story = survey.at("found_before").at(0);
  EXPECT_EQ(story.at("changes").at(0).at("change").at("state"), "grown");
  EXPECT_NEAR(story.at("finding").at("extents").at(0).at("value_mm").get<double>(), 0.1016, 1e-9);
  EXPECT_EQ(survey.at("what_changed").at(0), "Finding 1, crack has grown.");
  const int shown = story.at("finding").at("photos").at(0).at("photo_id");
  for (const char* path : {"/api/photos/{id}/whole", "/api/photos/{id}/thumbnail"}) {
    const Answer picture = call("GET", path, {.id = shown});
    EXPECT_EQ(picture.content_type, "image/jpeg");
    EXPECT_EQ(picture.body.substr(0, 3), "\xff\xd8\xff");
    EXPECT_EQ(picture.tag, photo.at("sha256"));
  }
  EXPECT_EQ(call("GET", "/api/photos/{id}/whole", {.id = 99}).status, 404);
}

TEST_F(EmptyShop, what_is_no_photo_and_what_is_nowhere_are_refused_in_one_line) {
  const int instrument = instrument_read_twice();
  const Answer paper = call("POST", "/api/photos", {.body = "%PDF-1.7"});
  EXPECT_EQ(paper.status, 422);
  EXPECT_EQ(Json::parse(paper.body).at("refused"), "photo: it is neither a JPEG nor a PNG");
  const int visit = done("GET", "/api/instruments/{id}", {.id = instrument}).at("visits").at(0).at("visit").at("id");
  const Answer nowhere = call("POST", "/api/visits/{id}/findings",
                              {.id = visit, .body = R"({"kind":"crack","view":"front","shape":"line","points":[]})"});
  EXPECT_EQ(nowhere.status, 422);
  EXPECT_EQ(Json::parse(nowhere.body).at("refused").get<std::string>().rfind("points: ", 0), 0U) << nowhere.body;
}

TEST_F(EmptyShop, draws_the_instrument_from_its_own_measures) {
  const int instrument = instrument_read_twice();
  const Json drawing = done("GET", "/api/instruments/{id}/drawing", {.id = instrument});
  ASSERT_EQ(drawing.at("views").size(), 7U);
  EXPECT_EQ(drawing.at("views").at(0).at("view"), "front");
  EXPECT_NEAR(drawing.at("views").at(0).at("x_from_mm").get<double>(), -645 * (1 - std::pow(2.0, -14 / 12.0)) - 6,
              1e-6);
  EXPECT_FALSE(done("GET", "/api/finding-kinds").at("kinds").empty());
}

TEST_F(EmptyShop, the_api_document_names_every_call) {
  const Json document = done("GET", "/api/openapi.json");
  EXPECT_EQ(document.at("openapi"), "3.1.0");
  EXPECT_TRUE(document.at("paths").contains("/api/compute/saddle"));
  EXPECT_TRUE(document.at("components").at("schemas").contains("InstrumentStory"));
  EXPECT_TRUE(document.at("paths")
                  .at("/api/note-sound")
                  .at("post")
                  .at("responses")
                  .at("200")
                  .at("content")
                  .contains("audio/wav"));
}

}  // namespace
}  // namespace tailblock
