// An invented event with wind.
#pragma once

#include <string>

#include "scratch.hpp"

namespace quadrille {

inline SecuringLine stake_line(const char* tie, double x_m, double y_m) {
  SecuringLine line;
  line.tie = tie, line.x_m = x_m, line.y_m = y_m;
  return line;
}

/// harvest_event() with its porch on grass in the open, 9 m/s of gust forecast: the door arch tied to the front and to the
/// back, the side arch not tied. The hall is indoors, with a piece of a type that nobody has.
inline Event breezy_event() {
  Event event = harvest_event();
  event.areas[0].edit([](Area& area) {
    area.site.surroundings = Surroundings::outdoors;
    area.site.ground = Ground::grass;
    area.site.gust_m_s = 9;
    area.pieces[0].edit([](PlacedPiece& piece) {
      piece.lines = {stake_line("front-1", 0, -1.8), stake_line("back-1", 0, 1.8)};
    });
  });
  return event;
}

}  // namespace quadrille
