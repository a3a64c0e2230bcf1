// Counts of an event: balloons by nominal size, inflated diameter and colour, and supplies; per piece and in all.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "studio/model/built_event.hpp"
#include "studio/model/event.hpp"
#include "studio/model/palette.hpp"
#include "studio/takeoff/packs.hpp"
#include "studio/takeoff/spares.hpp"

namespace quadrille {

/// One line of the balloon list: all balloons of one nominal size, inflated diameter and colour. Lines that differ only
/// in their inflated diameter share their packs: what the packs of one line leave over serves the next.
struct BalloonLine {
  double nominal_in = 0;
  double inflated_m = 0;    ///< to the nearest millimetre
  ColourReference colour;   ///< keys; empty where the slot has no colour
  std::string colour_name;  ///< for people; "no colour (slot B)" where it has none
  std::int64_t used = 0;
  std::int64_t spares = 0;          ///< by spares_to_order, for this line alone
  std::int64_t on_hand = 0;         ///< always 0: there is no stockroom yet
  std::int64_t pack_size = 0;       ///< 0 where the palette does not sell this size, or several pack sizes are bought
  std::int64_t packs = 0;           ///< of all sizes
  std::int64_t order = 0;           ///< balloons bought: in the packs, or what is needed where no pack is known
  std::vector<BoughtPacks> bought;  ///< the packs by size, largest first
  bool operator==(const BalloonLine&) const = default;
};

struct SupplyLine {
  std::string key, name, unit;
  double quantity = 0;
  bool operator==(const SupplyLine&) const = default;
};

struct PieceCount {
  std::string id, name, type, area;
  std::int64_t balloons = 0, clusters = 0;
  std::vector<BalloonLine> lines;     ///< `used` only
  std::vector<std::int64_t> by_slot;  ///< balloons of slot A, B, …
  std::vector<SupplyLine> supplies;
  bool as_last_calculated = false;  ///< its type is not available: counts of its last build
  bool not_built = false;  ///< refused, or its type is not available and no last build is known: counts nothing
};

struct EventCount {
  std::vector<BalloonLine> balloons;  ///< sorted by palette, colour, nominal size, inflated diameter
  std::vector<SupplyLine> supplies;   ///< sorted by key
  std::vector<PieceCount> pieces;     ///< in the order of the event; hidden pieces are left out
  std::int64_t total_balloons = 0;
};

/// How many balloons the piece has of each slot, nominal size and inflated diameter (to the nearest millimetre), sorted
/// by these.
std::vector<LastBuilt::Count> counts_of(const Piece& piece);

/// Counts what `built` holds of `event`. A piece that was refused counts nothing.
EventCount count_event(const Event& event, const BuiltEvent& built, std::span<const Palette> palettes,
                       const SpareRule& rule = {});

}  // namespace quadrille
