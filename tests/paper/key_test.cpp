// The key beside a drawing: one entry for pieces that are alike, and nothing lost by it.
#include <doctest/doctest.h>

#include <map>

#include "studio/paper/piece_key.hpp"
#include "tests/paper/sheets.hpp"

using namespace quadrille;

namespace {

std::size_t times(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++count;
  return count;
}

}  // namespace

TEST_CASE("numbers in a row are a range, and two are none") {
  CHECK(print_numbers({7}) == "7");
  CHECK(print_numbers({1, 2}) == "1, 2");
  CHECK(print_numbers({1, 2, 3}) == "1–3");
  CHECK(print_numbers({2, 4, 5, 6, 8, 9}) == "2, 4–6, 8, 9");
  CHECK(print_numbers({}) == "");
}

// Eight equal columns filled a page and a half with the same eight tables.
TEST_CASE("pieces that are alike share an entry that says how many each has") {
  // By hand: clusters (2 - 0.1) / (0.2 · 2^(-1/4)) = 11.3, so 11 of four balloons, half of them of each slot.
  const std::string text = all_text(sheet(columns(3), in_metres()));
  CHECK(times(text, "3 × 22\n") == 2);
  CHECK(times(text, "11 clusters, 44 balloons each\n") == 1);
  CHECK(has(text, "Aisle 1 to 3\n"));
  CHECK(has(text, "1–3\n"));
  // Many names do not fit: the first, and how many more.
  const std::string many = all_text(sheet(columns(20), in_metres()));
  CHECK(has(many, "Aisle 1 to 20\n"));
  CHECK(times(many, "20 × 22\n") == 2);
  // A single piece is told without.
  CHECK_FALSE(has(all_text(sheet(columns(1), in_metres())), "each"));
}

TEST_CASE("a piece that differs in anything that is printed has an entry of its own") {
  using Change = void (*)(sample::Job&, PlacedPiece&);
  const std::map<std::string, Change> changes{
      {"colour", [](sample::Job&, PlacedPiece& piece) { piece.colours[1].colour = "ink"; }},
      {"unknown colour", [](sample::Job&, PlacedPiece& piece) { piece.colours[1].colour = "none such"; }},
      {"height", [](sample::Job& job, PlacedPiece&) { job.built["c3"] = sample::built(sample::column(1.5, 0.2)); }},
      {"refused",
       [](sample::Job& job, PlacedPiece&) {
         BuiltPiece refused = *job.built["c3"];
         refused.status = Status::infeasible;
         job.built["c3"] = std::make_shared<BuiltPiece>(refused);
       }},
  };
  for (const auto& [what, change] : changes) {
    CAPTURE(what);
    const std::string text = all_text(sheet(columns(4, change), in_metres()));
    CHECK(has(text, "1, 2, 4\n"));
    CHECK(has(text, "Aisle 1, 2 and 4\n"));
    CHECK(has(text, "Aisle 3\n"));
  }
}

TEST_CASE("every piece is in one entry, and the entries add up to what is counted") {
  for (const HardCase& hard : hard_cases()) {
    if (hard.job.event.areas.empty()) continue;
    CAPTURE(hard.name);
    const Area& area = *hard.job.event.areas[0];
    const Scene scene = scene_of(area, hard.job.built, hard.job.palettes);
    const EventCount count = hard.job.count();
    Marks marks;
    for (const Block& block : key_blocks(area, scene, {count, hard.job.palettes, LengthStyle::metres, 70})) {
      for (const Row& row : block.head) row.draw(marks, {0, 0, 70, row.height});
      for (const Row& row : block.rows) row.draw(marks, {0, 0, 70, row.height});
    }
    // A count is "22" or "6 × 22", at the right.
    std::int64_t balloons = 0;
    for (const Mark& mark : marks) {
      const auto* text = std::get_if<TextMark>(&mark.shape);
      if (text == nullptr || text->style.across != Across::right) continue;
      const std::size_t cross = text->text.find(" × ");
      const std::string each = cross == std::string::npos ? text->text : text->text.substr(cross + 4);
      balloons += std::stoll(each) * (cross == std::string::npos ? 1 : std::stoll(text->text.substr(0, cross)));
    }
    std::int64_t counted = 0;
    for (const PieceCount& piece : count.pieces)
      if (!piece.not_built) counted += piece.balloons;
    CHECK(balloons == counted);
  }
}

// On a page of tables the rule over a key went on to the right of its figures.
TEST_CASE("the figures of a key end where its rule ends, however wide the column") {
  const sample::Job job = sample::one_arch();
  const Area& area = *job.event.areas[0];
  const EventCount count = job.count();
  const Scene scene = scene_of(area, job.built, job.palettes);
  for (const double width : {70.0, 92.5}) {
    Marks marks;
    for (const Block& block : key_blocks(area, scene, {count, job.palettes, LengthStyle::metres, 70}))
      for (const Row& row : block.rows) row.draw(marks, {5, 0, width, row.height});
    std::size_t figures = 0;
    for (const Mark& mark : marks)
      if (const auto* text = std::get_if<TextMark>(&mark.shape); text && text->style.across == Across::right) {
        CHECK(text->box.right() == doctest::Approx(5 + width));
        ++figures;
      }
    CHECK(figures == 2);
  }
}
