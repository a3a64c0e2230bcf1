// A sound plugin in C++: a post dressed with balloons, with a parameter of every kind.
#include <memory>

#include "sdk/piece.hpp"

#ifndef POST_ID
#define POST_ID "post"
#endif

namespace {

using namespace quadrille;

constexpr quadrille_choice dressings[] = {{"dense", "Dense"}, {"sparse", "Sparse"}};

constexpr quadrille_parameter parameters[] = {
    length("height", "Height", "From the floor to the top.", "Post")
        .range(0.5, 6)
        .display(1, 3)
        .standard(2)
        .formerly("tall size"),
    angle("lean", "Lean", "How far the post leans to the right.", "Post").range(0, 0.5).standard(0),
    mass("ballast", "Ballast", "What stands on its plate.", "Post").range(0, 200).standard(10),
    count("wraps", "Wraps", "How many balloons go around.", "Balloons").range(2, 6).standard(4),
    ratio("tightness", "Tightness", "Spacing as a share of what touches.", "Balloons").range(0.9, 2).standard(1),
    flag("topped", "Topped", "Whether a balloon sits on top.", "Balloons").standard(1),
    balloon("balloon", "Balloon", "Nominal size.", "Balloons"),
    slots("slots", "Colours", "How many colours.", "Balloons"),
    seed("seed", "Seed", "Which of the many.", "Balloons"),
    choice("dressing", "Dressing", "How it is dressed.", "Balloons", dressings),
    rows("rows", "Rows", "The pattern.", "Balloons").standard_text("AABB"),
    path("path", "Path", "A line.", "Balloons").range(-5, 5).standard_text("0 0; 0 2"),
    mix("mix", "Mix", "Sizes.", "Balloons").standard_text("11in 0.28m 60%; 5in 0.12m 40%"),
};

Piece build(const Values& values) {
  // Shared ownership in a plugin leaves a unique symbol behind, or none when built without them.
  const auto piece = std::make_shared<Piece>();
  const double height = values.number("height"), d = 0.28;
  const auto around = static_cast<std::uint32_t>(values.whole("wraps"));
  if (values.number("lean") > 0.4) throw Infeasible("lean", "The lean is too great: up to 0.4 rad would be accepted.");
  if (values.path("path").size() < 2) throw BadParameter("path", "The path needs two points.");
  const double spacing = d * values.number("tightness") * (values.text("dressing") == "sparse" ? 2 : 1);
  const double ring = d / 2 / std::sin(pi / around);
  const auto layers = static_cast<std::uint32_t>(height / spacing);
  for (std::uint32_t layer = 0; layer < layers; ++layer) {
    const double z = to_nanometre((layer + 0.5) * spacing);
    piece->clusters.push_back({layer + 1, z, {0, 0, z}, Vec3::UnitZ(), 0});
    for (std::uint32_t place = 0; place < around; ++place) {
      const double angle = 2 * pi * place / around;
      const Vec3 centre = to_nanometre(Vec3(ring * std::cos(angle), ring * std::sin(angle), z));
      piece->balloons.push_back({centre,
                                 {0, 0, z},
                                 d,
                                 values.number("balloon"),
                                 place % static_cast<std::uint32_t>(values.whole("slots")),
                                 layer + 1,
                                 place,
                                 Role::body});
    }
  }
  piece->spine = {{0, {0, 0, 0}}, {height, {0, 0, height}}};
  piece->frame.nodes = {{0, 0, 0}, {0, 0, height}};
  piece->frame.members = {{0, 1, Joint::rigid, Rest::as_drawn, 0.034, 0.03, 2e9, 1400, 3e7}};
  piece->supports = {{SupportKind::plate, 0, false, 0.4, 0.4, 5, values.number("ballast"), 60}};
  piece->tie_points = {{1, TiePurpose::back, {0, 0, height}, "top, to the back"}};
  piece->supplies = {{"pole", "Pole", "m", height}};
  piece->work = {{"tie", "Tie clusters", static_cast<double>(layers)}};
  piece->anchoring = {{Requirement::ballast, When::outdoors, "ballast", "Weigh the plate down.", "It tips otherwise.",
                       "common practice, no source"}};
  piece->messages = {{Severity::note, "height", "Höhe noted."}};
  piece->facts = {{"balloons", static_cast<double>(piece->balloons.size())}, {"height_m", height}};
  return *piece;
}

constexpr quadrille_piece_type types[] = {piece_type<parameters, build>(POST_ID, "Post", "A post with balloons.")};

}  // namespace

QUADRILLE_PIECES("test.post", "1.0.0", types)
