#pragma once

#include <vector>

#include "http/endpoint.h"
#include "http/shop.h"

namespace tailblock {

/// Records: owners, homes and their air, instruments, visits and what is kept at them.
[[nodiscard]] std::vector<Endpoint> record_endpoints(const Shop& shop);
/// A home's air, and its logger's file.
[[nodiscard]] std::vector<Endpoint> air_endpoints(const Shop& shop);
/// Questions about an instrument in the book: its season, its saddle, its string line.
[[nodiscard]] std::vector<Endpoint> question_endpoints(const Shop& shop);
/// The frets of an instrument in the book, and the strip for the bench.
[[nodiscard]] std::vector<Endpoint> fret_endpoints(const Shop& shop);
/// Findings on the instrument's drawing, and photos.
[[nodiscard]] std::vector<Endpoint> survey_endpoints(const Shop& shop);
/// A visit's finishing day, cleats, colours tried and own photos.
[[nodiscard]] std::vector<Endpoint> finish_endpoints(const Shop& shop);
/// What the cautions at a step ask beside themselves.
[[nodiscard]] std::vector<Endpoint> caution_endpoints(const Shop& shop);
/// The top of an instrument in the book.
[[nodiscard]] std::vector<Endpoint> top_endpoints(const Shop& shop);
/// Repairs chosen, agreed and worked on, and what they are worked with.
[[nodiscard]] std::vector<Endpoint> work_endpoints(const Shop& shop);
/// What a visit asks: its estimate, what is behind its complaints, and whether things moved as foretold.
[[nodiscard]] std::vector<Endpoint> visit_endpoints(const Shop& shop);
/// The bench's plan, what can be promised, and how the shop works.
[[nodiscard]] std::vector<Endpoint> bench_endpoints(const Shop& shop);
/// A visit's papers, as PDF or as the same page for a browser.
[[nodiscard]] std::vector<Endpoint> paper_endpoints(const Shop& shop);
/// The shop itself and the tables its forms offer.
[[nodiscard]] std::vector<Endpoint> shop_endpoints(const Shop& shop);
/// Every model by name, its schemas, and the API document.
[[nodiscard]] std::vector<Endpoint> compute_endpoints(const Shop& shop);

/// One note, to be heard.
[[nodiscard]] std::vector<Endpoint> sound_endpoints(const Shop& shop);

/// One row of the tables of measures, as the forms are told it.
void describe(FieldVisitor&, Measure&);

/// All of the above.
[[nodiscard]] std::vector<Endpoint> all_endpoints(const Shop& shop);

/// The OpenAPI 3.1 document of a list of endpoints.
[[nodiscard]] std::string open_api(const std::vector<Endpoint>& endpoints);

}  // namespace tailblock
