// Boxes first, then the balloons that reach into the other piece's box.
#include "studio/takeoff/clashes.hpp"

#include <algorithm>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include "sdk/number.hpp"
#include "sdk/quoted.hpp"
#include "studio/model/lengths.hpp"

namespace quadrille {
namespace {

constexpr std::size_t most_listed = 10;  // pairs of an area

struct Sphere {
  Vec3 centre;  ///< in the area's frame
  double radius = 0;
  bool pressed = false;
};

/// A piece where it stands.
struct Standing {
  const PlacedPiece& placed;
  const BuiltPiece& built;
  Vec3 place() const { return {placed.x_m, placed.y_m, 0}; }
  Vec3 least() const { return built.box.least + place(); }
  Vec3 most() const { return built.box.most + place(); }
};

std::vector<Standing> standing_in(const Area& area, const BuiltEvent& built) {
  std::vector<Standing> all;
  for (const auto& piece : area.pieces) {
    const auto found = built.find(piece->id);
    if (piece->hidden || found == built.end() || found->second == nullptr) continue;
    if (found->second->status == Status::ok) all.push_back({*piece, *found->second});
  }
  return all;
}

/// The balloons of `piece` that reach into the box, sorted by x.
std::vector<Sphere> reaching_into(const Standing& piece, const Vec3& least, const Vec3& most) {
  std::vector<Sphere> spheres;
  for (const Balloon& balloon : piece.built.piece.balloons) {
    const Vec3 centre = balloon.centre + piece.place();
    const double radius = balloon.diameter_m / 2;
    const Vec3 off = centre - centre.cwiseMax(least).cwiseMin(most);
    if (off.squaredNorm() < radius * radius) spheres.push_back({centre, radius});
  }
  std::ranges::sort(spheres, {}, [](const Sphere& sphere) { return sphere.centre.x(); });
  return spheres;
}

struct Clash {
  std::ptrdiff_t balloons = 0;    ///< pressed deeper than clash_press, of both pieces
  double share = 0, depth_m = 0;  ///< of the deepest: of the smaller one's diameter
};

/// Sweeps along x: what lies further apart than the largest two reach cannot touch.
Clash clash_of(std::vector<Sphere> first, std::vector<Sphere> second) {
  const auto largest = [](const std::vector<Sphere>& spheres) {
    return spheres.empty() ? 0.0 : std::ranges::max(spheres, {}, &Sphere::radius).radius;
  };
  const double reach = largest(first) + largest(second);
  Clash clash;
  std::size_t begin = 0;
  for (Sphere& a : first) {
    while (begin < second.size() && second[begin].centre.x() < a.centre.x() - reach) ++begin;
    for (std::size_t i = begin; i < second.size() && second[i].centre.x() < a.centre.x() + reach; ++i) {
      Sphere& b = second[i];
      const double depth = a.radius + b.radius - (a.centre - b.centre).norm();
      const double share = depth / (2 * std::min(a.radius, b.radius));
      if (share <= clash_press) continue;
      a.pressed = b.pressed = true;
      if (share > clash.share) clash.share = share, clash.depth_m = depth;
    }
  }
  clash.balloons =
      std::ranges::count(first, true, &Sphere::pressed) + std::ranges::count(second, true, &Sphere::pressed);
  return clash;
}

std::string name_of(const PlacedPiece& piece) { return quoted(piece.name.empty() ? piece.id : piece.name); }

/// Whichever way `piece` is clear of `other` soonest: until the boxes are apart.
std::string remedy_for(const Standing& piece, const Standing& other) {
  struct Way {
    double by_m;
    const char* word;
  };
  const Vec3 down = piece.most() - other.least(), up = other.most() - piece.least();
  const Way ways[] = {
      {up.y(), "to the back"}, {down.y(), "to the front"}, {down.x(), "to the left"}, {up.x(), "to the right"}};
  const Way& shortest = *std::ranges::min_element(ways, {}, &Way::by_m);
  return "Move it by " + print_at_least(shortest.by_m) + " " + shortest.word + ", or the other as far the other way, " +
         "and nothing touches.";
}

std::string text_about(const Standing& other, const Clash& clash, Units units) {
  const std::string worst = clash.share < 1 ? "the worst by " + print_length(clash.depth_m, lengths_in(units)) + ", " +
                                                  print_fixed(100 * clash.share, 0) + " % of a diameter."
                                            : "and at least one is all inside another.";
  return "It stands in " + name_of(other.placed) + ": " + std::to_string(clash.balloons) +
         " balloons of the two press into each other deeper than they give, " + worst;
}

void check_area(const Area& area, const BuiltEvent& built, Units units, Findings& findings) {
  const std::vector<Standing> pieces = standing_in(area, built);
  std::size_t found = 0;
  for (std::size_t i = 0; i < pieces.size(); ++i)
    for (std::size_t k = i + 1; k < pieces.size(); ++k) {
      const Vec3 least = pieces[i].least().cwiseMax(pieces[k].least());
      const Vec3 most = pieces[i].most().cwiseMin(pieces[k].most());
      if ((least.array() >= most.array()).any()) continue;
      const Clash clash = clash_of(reaching_into(pieces[i], least, most), reaching_into(pieces[k], least, most));
      if (clash.balloons <= clash_balloons || ++found > most_listed) continue;
      for (const auto& [one, other] : {std::pair(i, k), std::pair(k, i)})
        findings.push_back({Weight::warning, "pieces-clash", area.id, pieces[one].placed.id, "",
                            text_about(pieces[other], clash, units), remedy_for(pieces[one], pieces[other])});
    }
  if (found > most_listed)
    findings.push_back({Weight::warning, "pieces-clash", area.id, "", "",
                        std::to_string(found - most_listed) + " more pairs of pieces stand in each other.", ""});
}

}  // namespace

Findings check_clashes(const Event& event, const BuiltEvent& built) {
  Findings findings;
  for (const auto& area : event.areas) check_area(*area, built, event.units, findings);
  return findings;
}

}  // namespace quadrille
