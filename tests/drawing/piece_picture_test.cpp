// One piece alone on a small page.
#include "studio/drawing/piece_picture.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "sample.hpp"

using namespace quadrille;

namespace {

/// Around all balls on the page [mm].
Rect balls_on(const Page& page, std::size_t& count) {
  double left = 1e9, right = -1e9, top = 1e9, bottom = -1e9;
  count = 0;
  for (const Mark& mark : page.marks)
    if (const auto* ball = std::get_if<BalloonMark>(&mark.shape)) {
      ++count;
      left = std::min(left, ball->centre.x - ball->radius), right = std::max(right, ball->centre.x + ball->radius);
      top = std::min(top, ball->centre.y - ball->radius), bottom = std::max(bottom, ball->centre.y + ball->radius);
    }
  return {left, top, right - left, bottom - top};
}

}  // namespace

TEST_CASE("a piece fills its picture, stays inside it and is not out of proportion") {
  auto built = std::make_shared<BuiltPiece>();
  built->status = Status::ok;
  built->piece = sample::arch(1.2, 17, 0.23);
  built->box = {Vec3(-1.5, -0.2, 0), Vec3(1.5, 0.2, 1.7)};
  PlacedPiece piece;
  piece.id = "p1", piece.x_m = 40, piece.hidden = true;  // neither its place nor its hiding matters
  for (const auto& [width, height] : {std::pair(30.0, 20.0), std::pair(15.0, 40.0)}) {
    const Page page = piece_picture(piece, built, {}, width, height);
    std::size_t count = 0;
    const Rect balls = balls_on(page, count);
    CHECK(count == 68);  // 17 clusters of four
    CHECK(balls.x >= 0);
    CHECK(balls.y >= 0);
    CHECK(balls.right() <= width);
    CHECK(balls.bottom() <= height);
    CHECK(std::max(balls.width / width, balls.height / height) > 0.7);
    // In the middle, to the eye.
    CHECK(std::abs(balls.middle().x - width / 2) < 0.02 * width);
  }
}

TEST_CASE("what was never built is drawn as its box") {
  PlacedPiece piece;
  piece.id = "p1", piece.type = "nobody-has-it";
  const Page page = piece_picture(piece, nullptr, {}, 30, 20);
  CHECK(!page.marks.empty());
  std::size_t count = 0;
  balls_on(page, count);
  CHECK(count == 0);
}
