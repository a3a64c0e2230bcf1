// Pieces of known sizes for the tests of this folder: their builds are made by hand.
#pragma once

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "studio/arrange/piece_box.hpp"
#include "studio/model/edits.hpp"
#include "studio/model/piece_edits.hpp"

namespace quadrille::testing {

/// A venue with one area "a" and, where asked, a second one "b".
struct Venue {
  Event event;
  BuiltEvent built;

  Venue() {
    Area a, b;
    a.id = "a", b.id = "b";
    event.areas = {a, b};
    event.units = Units::metric;
  }

  /// A solid block of `width` by `depth` by `height`, its place in the middle of its floor.
  Venue& block(const std::string& id, double x, double width, double y = 0, double depth = 0.4, double height = 2,
               const std::string& area = "a") {
    PlacedPiece piece;
    piece.id = id;
    piece.name = "Piece " + id;
    piece.type = "block";
    piece.x_m = x, piece.y_m = y;
    event = with_piece(std::move(event), area, piece);
    auto made = std::make_shared<BuiltPiece>();
    made->status = Status::ok;
    made->box = {Vec3(-width / 2, -depth / 2, 0), Vec3(width / 2, depth / 2, height)};
    built[id] = made;
    return *this;
  }

  /// An upright ring: 12 balloons of 0.3 m round a middle 1.5 m above the floor, 1 m away from it.
  Venue& ring(const std::string& id, double x, double y = 0) {
    block(id, x, 2.3, y, 0.3, 2.65);
    auto made = std::make_shared<BuiltPiece>(*built[id]);
    for (int i = 0; i < 12; ++i) {
      Balloon balloon;
      balloon.centre = Vec3(std::cos(pi * i / 6), 0, 1.5 + std::sin(pi * i / 6));
      balloon.neck = balloon.centre;
      balloon.diameter_m = 0.3;
      made->piece.balloons.push_back(balloon);
    }
    made->piece.frame.nodes = {Vec3(0, 0, 0), Vec3(0, 0, 0.5)};
    FrameMember post;
    post.from = 0, post.to = 1, post.outer_m = 0.02;
    made->piece.frame.members = {post};
    built[id] = made;
    return *this;
  }

  const Area& area() const { return *event.areas[0]; }
  const PlacedPiece& piece(const std::string& id) const { return *find_piece(event, id); }
};

/// A number from `least` to `most`.
inline double any(double least, double most) {
  return least + (most - least) * static_cast<double>(*rc::gen::inRange(0, 1'000'001)) / 1e6;
}

/// Some blocks "p1", "p2"… in area "a", at any places and of any sizes.
inline Venue any_blocks(int least, int most) {
  Venue venue;
  const int count = *rc::gen::inRange(least, most + 1);
  for (int i = 1; i <= count; ++i)
    venue.block("p" + std::to_string(i), any(-10, 10), any(0.1, 3), any(-3, 3), any(0.1, 2));
  return venue;
}

inline PieceIds all_ids(const Venue& venue) {
  PieceIds ids;
  for (const auto& piece : venue.area().pieces) ids.push_back(piece->id);
  return ids;
}

}  // namespace quadrille::testing
