// Counts of an event: balloons by nominal size, inflated diameter and colour, and supplies; per piece and in all; and the
// bags of balloons to order.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "studio/model/built_event.hpp"
#include "studio/model/event.hpp"
#include "studio/model/house.hpp"
#include "studio/model/money.hpp"
#include "studio/model/palette.hpp"
#include "studio/takeoff/packs.hpp"

namespace quadrille {

/// One line of the balloon list: all balloons of one nominal size, inflated diameter and colour. Lines that differ only
/// in their inflated diameter are blown up from the same bag: spares, stock and packs are those of their BalloonBag,
/// shared out so that the lines add up to it. What the packs of one line leave over serves the next.
struct BalloonLine {
  double nominal_in = 0;
  double inflated_m = 0;    ///< to the nearest millimetre
  ColourReference colour;   ///< keys; empty where the slot has no colour
  std::string colour_name;  ///< for people; "no colour (slot B)" where it has none
  std::int64_t used = 0;
  std::int64_t spares = 0;          ///< its part of the bag's, by what is used
  std::int64_t on_hand = 0;         ///< taken from the stockroom for it; at most used + spares
  std::int64_t pack_size = 0;       ///< 0 where this size is not sold, or several pack sizes are bought
  std::int64_t packs = 0;           ///< of all sizes
  std::int64_t order = 0;           ///< balloons bought: in the packs, or what is needed where no pack is known
  std::vector<BoughtPacks> bought;  ///< the packs by size, largest first
  bool operator==(const BalloonLine&) const = default;
};

/// All balloons of one colour and nominal size, whatever they are inflated to: what is ordered together. Always
/// order + on_hand >= used + spares.
struct BalloonBag {
  double nominal_in = 0;
  ColourReference colour;
  std::string colour_name;
  std::int64_t used = 0;
  double failure_rate = 0;     ///< the house's for this size and finish
  std::int64_t spares = 0;     ///< by the house's rule: see spares_of_bag
  std::int64_t in_stock = 0;   ///< in the stockroom, before this event
  std::int64_t on_hand = 0;    ///< taken from it: at most used + spares
  bool is_sold = false;        ///< a pack of this colour and size is known
  std::int64_t pack_size = 0;  ///< as in BalloonLine
  std::int64_t packs = 0;
  std::int64_t order = 0;
  std::vector<BoughtPacks> bought;
  /// Of the packs, in `currency`; 0 where nothing has to be bought, nothing where no price is known (or the sum is beyond
  /// highest_amount): never to be shown as free.
  std::optional<Minor> cost_minor;
  std::string currency;  ///< of the palette, or the house's where its stockroom says how the balloons are bought
  std::size_t first_line = 0, lines = 0;  ///< its lines in EventCount::balloons
  bool operator==(const BalloonBag&) const = default;
};

/// Whether what is used of the line comes out of the bag: colour and nominal size are the same.
inline bool is_in(const BalloonLine& line, const BalloonBag& bag) {
  return line.colour == bag.colour && line.nominal_in == bag.nominal_in && line.colour_name == bag.colour_name;
}

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
  std::vector<BalloonBag> bags;       ///< the order, in the same order
  std::vector<SupplyLine> supplies;   ///< sorted by key
  std::vector<PieceCount> pieces;     ///< in the order of the event; hidden pieces are left out
  std::int64_t total_balloons = 0;
  /// Chance that at least one bag runs short, each balloon failing as its bag's rate says: with used + spares, and with
  /// all that is taken from stock and bought in whole packs.
  double short_chance = 0, short_chance_with_packs = 0;
};

/// How many balloons the piece has of each slot, nominal size and inflated diameter (to the nearest millimetre), sorted
/// by these.
std::vector<LastBuilt::Count> counts_of(const Piece& piece);

/// Counts what `built` holds of `event` and reckons the order with the house's stock, failure rates and packs. A piece
/// that was refused counts nothing. Supplies are those of the piece types and what placing a piece needs besides: see
/// placing.hpp.
EventCount count_event(const Event& event, const BuiltEvent& built, std::span<const Palette> palettes,
                       const House& house);

/// With the standard house in the event's currency.
EventCount count_event(const Event& event, const BuiltEvent& built, std::span<const Palette> palettes);

}  // namespace quadrille
