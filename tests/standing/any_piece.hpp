// Pieces of all types, sites and lines drawn by lot, sensible ones and absurd ones.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "sdk/random.hpp"
#include "studio/model/securing.hpp"
#include "studio/standing/share_out.hpp"
#include "tests/places.hpp"
#include "tests/standing/case_pieces.hpp"

namespace quadrille {

inline Value choice_of(std::string key) { return Value::of_text(Kind::choice, std::move(key)); }

/// Values within what people build. `type`: 0 arch, 1 column, 2 garland.
inline std::pair<const char*, ValueMap> any_values(Random& random, std::uint64_t type) {
  const auto one_of = [&](std::vector<const char*> words) { return choice_of(words[random.below(words.size())]); };
  const auto between = [&](double least, double most) { return length_of(random.within(least, most)); };
  ValueMap values;
  if (type < 2) {
    values["ballast"] = mass_of(random.below(4) == 0 ? 0 : random.within(0, 60));
    values["plate-width"] = between(0.2, 0.8);
    values["plate-mass"] = mass_of(random.within(1, 20));
  }
  if (type == 0) {
    values["frame"] = one_of({"flexible-rod", "flexible-rod", "half-circle", "half-ellipse", "square"});
    values["feet"] = one_of({"upright", "pinned"});
    values["rod-length"] = between(4, 9);
    values["span"] = between(1.6, 3.4);
    values["height"] = between(1.8, 3);
    values["rod-diameter"] = between(0.008, 0.03);
    if (random.below(3) == 0) values["rod-wall"] = length_of(0.0015);
    return {"arch", std::move(values)};
  }
  if (type == 1) {
    values["height"] = between(1.2, 3);
    values["pole-diameter"] = between(0.02, 0.05);
    values["topper"] = one_of({"none", "round-16", "round-24", "round-36", "cluster"});
    return {"column", std::move(values)};
  }
  std::vector<double> path;
  const double width = random.within(0.8, 2), high = random.within(1.2, 2.6);
  for (int i = 0; i < 4; ++i) path.insert(path.end(), {width * i / 3, 0.0, high + random.within(-0.4, 0.4)});
  values["path"] = Value::of_list(Kind::path, std::move(path));
  values["backing"] = one_of({"strip", "line", "hooks", "frame"});
  values["course"] = one_of({"smooth", "straight", "hanging"});
  values["mix"] = Value::of_list(Kind::mix, {11, 0.27, 0.7, 16, 0.38, 0.3});
  values["seed"] = Value::of_number(Kind::seed, static_cast<double>(random.below(1000)));
  return {"garland", std::move(values)};
}

/// `count` pieces of the three types in turn, built on all threads. A piece that its type refuses is drawn again.
inline std::vector<Piece> any_pieces(std::size_t count, std::uint64_t seed) {
  const PieceTypes types = find_piece_types({{build_place("pieces")}, std::nullopt, false});
  std::vector<Piece> pieces(count);
  share_out(count, [&](std::size_t i) {
    Random random(seed + i);
    for (int trial = 0; trial < 60 && pieces[i].frame.nodes.empty(); ++trial) {
      const auto [type, values] = any_values(random, i % 3);
      const auto built = build_piece(*types.find(type), values);
      if (built->status == Status::ok) pieces[i] = built->piece;
    }
  });
  for (const Piece& piece : pieces) REQUIRE_FALSE(piece.frame.nodes.empty());
  return pieces;
}

/// What no decorator builds and a slip of the finger asks for: stretched to absurd heights, rods too thin, nothing that
/// weighs it down.
inline void make_absurd(Piece& piece, Random& random) {
  const double taller = random.below(4) == 0 ? random.within(3, 30) : random.within(0.3, 3);
  const double thinner = random.below(3) == 0 ? random.within(0.02, 0.3) : 1;
  for (Vec3& node : piece.frame.nodes) node.z() *= taller;
  for (Balloon& balloon : piece.balloons) balloon.centre.z() *= taller;
  for (Cluster& cluster : piece.clusters) cluster.centre.z() *= taller;
  for (TiePoint& tie : piece.tie_points) tie.point.z() *= taller;
  for (FrameMember& member : piece.frame.members) {
    member.outer_m *= thinner;
    member.inner_m *= thinner;
  }
  for (Support& support : piece.supports) {
    if (random.below(3) == 0) support.own_mass_kg = support.ballast_kg = 0;
    if (random.below(8) == 0) support.width_m = support.depth_m = 0;
  }
}

inline Area any_area(Random& random, const Piece& piece) {
  Area area = lawn(static_cast<Ground>(random.below(9)));
  if (random.below(5) == 0) area.site.surroundings = Surroundings::indoors;
  area.site.altitude_m = random.within(-400, 5000);
  area.site.event_celsius = random.within(-30, 50);
  const Vec3 crown = piece.tie_points.empty() ? Vec3(0, 0, 2) : piece.tie_points.front().point;
  // One to tie to at the crown's height, one in the crown's own place, one anywhere.
  area.structures.push_back({"s1", "post", StructureKind::post, 2, 1, crown.z() + 1, "the owner", {}});
  area.structures.push_back({"s2", "beam", StructureKind::beam, crown.x(), crown.y(), crown.z() + 1, "", {}});
  area.structures.push_back(
      {"s3", "tree", StructureKind::tree, random.within(-4, 4), random.within(-4, 4), 4, "the owner", {}});
  return area;
}

inline SecuringLine any_line(Random& random, const Piece& piece) {
  SecuringLine line;
  if (piece.tie_points.empty() || random.below(12) == 0) {
    line.tie = "front-9";
    return line;
  }
  const std::size_t tie = random.below(piece.tie_points.size());
  const Vec3 point = piece.tie_points[tie].point;
  line.tie = tie_key(piece, tie);
  line.x_m = random.within(-3, 3);
  line.y_m = random.within(-3, 3);
  line.anchor = static_cast<AnchorKind>(random.below(3));
  line.mass_kg = random.below(3) == 0 ? 0 : random.within(0, 60);
  if (random.below(5) == 0) line.x_m = point.x(), line.y_m = point.y();  // straight down, or of no length
  if (random.below(5) == 0) line.x_m = 1, line.y_m = -1;                 // where others are as well
  if (line.anchor == AnchorKind::structure) {
    const char* const structures[] = {"s1", "s2", "s3", "none"};
    line.structure = structures[random.below(4)];
    line.height_m = random.below(2) == 0 ? point.z() : random.within(0, 5);
  }
  if (random.below(20) == 0) line.cord = "string";
  if (random.below(5) == 0) line.cord = cords[random.below(cords.size())].key;
  return line;
}

/// Lines as a decorator rigs them: `count` from tie points to stakes, about as far out as they are high.
inline std::vector<SecuringLine> usual_lines(Random& random, const Piece& piece, std::size_t count) {
  std::vector<SecuringLine> lines;
  for (std::size_t i = 0; i < count && !piece.tie_points.empty(); ++i) {
    const std::size_t tie = i < 2 && piece.tie_points.size() > 1 ? i : random.below(piece.tie_points.size());
    const TiePoint& from = piece.tie_points[tie];
    const double away = from.point.z() * random.within(0.6, 1.2);
    const double side = from.purpose == TiePurpose::front ? -1 : 1;
    SecuringLine line = stake(tie_key(piece, tie), from.point.x(), from.point.y() + side * away);
    if (from.purpose == TiePurpose::side) line.x_m += (from.point.x() < 0 ? -1 : 1) * away, line.y_m = from.point.y();
    lines.push_back(line);
  }
  return lines;
}

/// `piece` seen in a mirror: left and right changed over.
inline Piece mirrored(Piece piece) {
  const Vec3 flip(-1, 1, 1);
  const auto turn = [&](Vec3& point) { point = point.cwiseProduct(flip); };
  for (Vec3& node : piece.frame.nodes) turn(node);
  for (Balloon& balloon : piece.balloons) turn(balloon.centre), turn(balloon.neck);
  for (Cluster& cluster : piece.clusters) turn(cluster.centre), turn(cluster.axis);
  for (TiePoint& tie : piece.tie_points) turn(tie.point);
  for (SpinePoint& point : piece.spine) turn(point.point);
  return piece;
}

}  // namespace quadrille
