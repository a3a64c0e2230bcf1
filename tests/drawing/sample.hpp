// Events for the tests, made by formulas: no plugin, no file. All names are invented.
#pragma once

#include <cmath>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "studio/model/built_event.hpp"
#include "studio/model/event.hpp"
#include "studio/model/palette.hpp"
#include "studio/takeoff/count.hpp"

namespace quadrille::sample {

inline Palette palette(int extra = 0) {
  Palette p{"studio", "Studio", "USD", {}};
  p.colours = {{"rosewood", "Rosewood", 150, 52, 70, Finish::matte, {}},
               {"chalk", "Chalk", 245, 243, 238, Finish::matte, {}},
               {"lagoon", "Lagoon", 40, 150, 160, Finish::pearl, {}},
               {"brass", "Old brass", 192, 150, 70, Finish::metallic, {}},
               {"dew", "Dew", 205, 228, 240, Finish::clear, {}},
               {"ink", "Ink", 30, 34, 54, Finish::matte, {}}};
  for (int i = 0; i < extra; ++i) {
    const auto byte = [i](int step) { return static_cast<std::uint8_t>(40 + (i * step) % 200); };
    p.colours.push_back({"extra-" + std::to_string(i),
                         "Invented colour no. " + std::to_string(i),
                         byte(37),
                         byte(61),
                         byte(89),
                         static_cast<Finish>(i % 4),
                         {}});
  }
  return p;
}

/// Clusters of four on a half circle of radius `radius_m`, in a spiral of two slots: cluster k is turned by 45° to the
/// one before and its balloons take the slots A A B B. Hard-sphere spacing 2^(-1/4) d; rings drawn in to 0.88.
inline Piece arch(double radius_m, int clusters, double d, double floor_m = 0.25) {
  Piece piece;
  const double ring = 0.88 * d / (2 * std::sin(pi / 4)), spacing = d * std::pow(2.0, -0.25);
  const double angle_step = spacing / radius_m, first = (pi - angle_step * (clusters - 1)) / 2;
  for (int k = 0; k < clusters; ++k) {
    const double a = pi - (first + k * angle_step);
    const Vec3 centre(radius_m * std::cos(a), 0, floor_m + radius_m * std::sin(a));
    const Vec3 outward(std::cos(a), 0, std::sin(a)), along(std::sin(a), 0, -std::cos(a));
    piece.clusters.push_back({static_cast<std::uint32_t>(k + 1), spacing * (k + 0.5), centre, along, k * pi / 4});
    for (std::uint32_t j = 0; j < 4; ++j) {
      const double turn = k * pi / 4 + j * pi / 2 + pi / 4;
      const Vec3 offset = ring * (std::cos(turn) * outward + std::sin(turn) * Vec3::UnitY());
      piece.balloons.push_back(
          {centre + offset, centre, d, 11, j / 2, static_cast<std::uint32_t>(k + 1), j, Role::body});
    }
  }
  constexpr int nodes = 48;
  for (int i = 0; i <= nodes; ++i) {
    const double a = pi - pi * i / nodes;
    piece.frame.nodes.emplace_back(radius_m * std::cos(a), 0, floor_m + radius_m * std::sin(a));
    if (i > 0)
      piece.frame.members.push_back({static_cast<std::uint32_t>(i - 1), static_cast<std::uint32_t>(i), Joint::rigid,
                                     Rest::straight, 0.02, 0.014, 3e9, 1400, 5e7});
  }
  for (double x : {-radius_m, radius_m}) {
    const auto foot = static_cast<std::uint32_t>(piece.frame.nodes.size());
    piece.frame.nodes.emplace_back(x, 0, 0);
    piece.frame.members.push_back({foot, x < 0 ? 0u : static_cast<std::uint32_t>(nodes), Joint::rigid, Rest::as_drawn,
                                   0.025, 0.02, 3e9, 1400, 5e7});
    piece.supports.push_back({SupportKind::plate, foot, false, 0.4, 0.4, 6, 10, 30});
  }
  piece.supplies = {{"rod", "Rod 20 mm, section of 1.5 m", "piece", 3},
                    {"base-plate", "Base plate 40 cm", "piece", 2},
                    {"line", "Line 100 kg", "m", 4.5}};
  return piece;
}

/// A column of quads on a pole.
inline Piece column(double height_m, double d) {
  Piece piece;
  const double ring = 0.88 * d / std::sqrt(2.0), spacing = d * std::pow(2.0, -0.25);
  const int clusters = static_cast<int>((height_m - 0.1) / spacing);
  for (int k = 0; k < clusters; ++k) {
    const Vec3 centre(0, 0, 0.05 + d / 2 + k * spacing);
    piece.clusters.push_back({static_cast<std::uint32_t>(k + 1), k * spacing, centre, Vec3::UnitZ(), k * pi / 4});
    for (std::uint32_t j = 0; j < 4; ++j) {
      const double turn = k * pi / 4 + j * pi / 2 + pi / 4;
      piece.balloons.push_back({centre + Vec3(ring * std::cos(turn), ring * std::sin(turn), 0), centre, d, 11,
                                (j + static_cast<std::uint32_t>(k) / 2) % 2, static_cast<std::uint32_t>(k + 1), j,
                                Role::body});
    }
  }
  piece.frame.nodes = {{0, 0, 0}, {0, 0, height_m}};
  piece.frame.members = {{0, 1, Joint::rigid, Rest::as_drawn, 0.025, 0.02, 3e9, 1400, 5e7}};
  piece.supports = {{SupportKind::plate, 0, false, 0.35, 0.35, 5, 8, 20}};
  piece.supplies = {{"pole", "Pole 25 mm", "piece", 1}, {"base-plate", "Base plate 35 cm", "piece", 1}};
  return piece;
}

inline std::shared_ptr<const BuiltPiece> built(Piece piece) {
  auto made = std::make_shared<BuiltPiece>();
  made->status = Status::ok;
  Vec3 least = Vec3::Constant(1e300), most = -least;
  for (const Balloon& b : piece.balloons) {
    least = least.cwiseMin(b.centre - Vec3::Constant(b.diameter_m / 2));
    most = most.cwiseMax(b.centre + Vec3::Constant(b.diameter_m / 2));
  }
  for (const Vec3& node : piece.frame.nodes) least = least.cwiseMin(node), most = most.cwiseMax(node);
  made->box = {least, most};
  made->piece = std::move(piece);
  return made;
}

/// Everything that a sheet reads, in one place.
struct Job {
  Event event;
  BuiltEvent built;
  std::vector<Palette> palettes{palette()};
  EventCount count() const { return count_event(event, built, palettes); }
};

inline PlacedPiece placed(std::string id, std::string name, double x_m, std::vector<std::string> colours) {
  PlacedPiece piece;
  piece.id = std::move(id), piece.name = std::move(name), piece.type = "arch", piece.x_m = x_m;
  for (std::string& colour : colours) piece.colours.push_back({"studio", std::move(colour)});
  return piece;
}

/// The usual test event: an arch of 33 quads, d = 0.23 m, on a half circle of 1.2 m.
inline Job one_arch() {
  Job job;
  job.event.title = "Midsummer party";
  job.event.client = "Ada Fenwright", job.event.venue = "Orchard Hall", job.event.date = "2027-06-19";
  job.event.palettes = {"studio"};
  Area area;
  area.id = "a1", area.name = "Garden entrance";
  area.pieces.push_back(placed("p1", "Welcome arch", 2, {"rosewood", "chalk"}));
  job.event.areas.push_back(area);
  job.built["p1"] = built(arch(1.2, 19, 0.23));
  return job;
}

}  // namespace quadrille::sample
