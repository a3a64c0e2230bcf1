// The event: one job at one venue, as a plain value. Lengths in metres, masses in kilograms, speeds in m/s,
// temperatures in degrees Celsius, money in minor units of the event's currency.
#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "sdk/value.hpp"
#include "studio/model/backdrop.hpp"
#include "studio/model/preserved.hpp"
#include "studio/model/quote.hpp"
#include "studio/model/shared.hpp"

namespace quadrille {

enum class Units { feet, metric };
enum class Surroundings { indoors, outdoors };
enum class Ground { grass, soil, sand, gravel, concrete, asphalt, paving, wood_floor, carpet };

/// The ground's key, in files and in the keys of figures that go by the ground.
constexpr const char* key_of(Ground ground) {
  constexpr const char* keys[] = {"grass",   "soil",   "sand",       "gravel", "concrete",
                                  "asphalt", "paving", "wood-floor", "carpet"};
  return keys[static_cast<std::size_t>(ground)];
}

/// True where a stake cannot be driven.
constexpr bool is_hard(Ground ground) {
  return ground != Ground::grass && ground != Ground::soil && ground != Ground::sand && ground != Ground::gravel;
}

/// A colour of a palette: keys of both.
struct ColourReference {
  std::string palette, colour;
  bool operator==(const ColourReference&) const = default;
};

/// What is kept of a piece's last build, so that it can be counted while its type is not available.
struct LastBuilt {
  struct Count {
    double nominal_in = 0, inflated_m = 0;
    std::uint32_t slot = 0;
    std::int64_t balloons = 0;
    bool operator==(const Count&) const = default;
  };
  double width_m = 0, height_m = 0, depth_m = 0;
  std::int64_t clusters = 0;
  std::vector<Count> counts;
  bool operator==(const LastBuilt&) const = default;
};

enum class AnchorKind { stake, dead_weight, structure };

/// A line that secures a piece: from one of its tie points to an anchor.
struct SecuringLine {
  std::string tie;  ///< key of the tie point: see tie_key() in studio/model/securing.hpp
  AnchorKind anchor = AnchorKind::stake;
  double x_m = 0, y_m = 0;  ///< of a stake or a dead weight, from the piece's place
  double height_m = 0;      ///< above the floor, at a structure
  double mass_kg = 0;       ///< of a dead weight
  std::string structure;    ///< id of the structure of the area
  std::string cord;         ///< key of the cord's kind; empty = the standard one
  Preserved preserved;
  bool operator==(const SecuringLine&) const = default;
};

/// One arch, column, garland… in an area.
struct PlacedPiece {
  std::string id;  ///< unique in the event
  std::string name;
  std::string type;                      ///< id of its piece type
  double x_m = 0;                        ///< along the front line from the area's left edge, rising to the right
  double y_m = 0;                        ///< depth from the front line: see Area
  ValueMap values;                       ///< what stands at other than the default
  std::vector<ColourReference> colours;  ///< by slot, A first
  std::vector<SecuringLine> lines;
  bool locked = false, hidden = false;
  std::optional<std::int64_t> price_minor;  ///< the decorator's own price for it
  std::string note;
  std::optional<LastBuilt> last_built;
  Preserved preserved;
  bool operator==(const PlacedPiece&) const = default;
};

enum class StructureKind { wall, post, tree, railing, beam, vehicle, table, other };

/// Something that stands at the place and that one may be allowed to tie to.
struct Structure {
  std::string id, name;
  StructureKind kind = StructureKind::other;
  double x_m = 0, y_m = 0, height_m = 0;  ///< the place is that of its middle
  std::string allowed_by;                 ///< who allowed it; empty = nobody yet
  Preserved preserved;
  std::optional<double> width_m = {}, depth_m = {};  ///< along the front line, and away from it; empty = not known
  bool operator==(const Structure&) const = default;
};

/// A strip on the floor that people walk on: a rectangle in the area's x and y.
struct Walkway {
  std::string id, name;
  double x_m = 0, y_m = 0, width_m = 0, depth_m = 0;
  Preserved preserved;
  bool operator==(const Walkway&) const = default;
};

/// What must be known of a place before one builds there. Empty = not known.
struct Site {
  Surroundings surroundings = Surroundings::indoors;
  Ground ground = Ground::wood_floor;
  std::optional<double> gust_m_s;           ///< forecast
  std::optional<double> inflating_celsius;  ///< air temperature where balloons are inflated
  std::optional<double> event_celsius;      ///< air temperature at the event
  std::optional<double> altitude_m;
  std::optional<double> inflating_altitude_m;  ///< where balloons are inflated; empty = at altitude_m
  std::optional<double> outlet_m;              ///< distance to the nearest outlet
  std::optional<double> vehicle_m;             ///< distance to the vehicle
  Preserved preserved;
  bool operator==(const Site&) const = default;
};

/// One place in the venue, one elevation. Places in it are counted from its front line, a line along the floor at which
/// the main piece stands: x along it from the area's left edge, rising to the right; y is the depth, 0 on the line,
/// growing away from the audience, so that what stands before the line has a negative y. The wall, where there is one,
/// stands behind everything.
struct Area {
  std::string id;  ///< unique in the event
  std::string name;
  std::optional<double> wall_width_m, wall_height_m;
  Site site;
  std::vector<Structure> structures;
  std::vector<Walkway> walkways;
  std::vector<Shared<PlacedPiece>> pieces;
  Preserved preserved;
  std::optional<Backdrop> backdrop = {};  ///< the photo behind everything
  bool operator==(const Area&) const = default;
};

/// What is agreed for this job at other than the house's own.
struct JobTerms {
  std::optional<double> travel_m;    ///< by road from the house to the venue, one way
  std::optional<std::int64_t> crew;  ///< people on the job, 1 to 20
  PartsPerMillion discount = 0;      ///< off the net of every line, 0 to 1,000,000
  bool operator==(const JobTerms&) const = default;
};

struct Event {
  std::string title, client, venue;
  std::string date;          ///< ISO 8601, "2027-06-19"; empty = not set
  std::string load_in_from;  ///< local time "07:30"; empty = not set
  std::string ready_by;
  std::string strike_from;
  Units units = Units::feet;
  std::string currency = "USD";  ///< ISO 4217
  JobTerms terms;
  std::optional<IssuedQuote> issued;  ///< the quote as it was given to the client
  std::vector<std::string> palettes;  ///< keys of the palettes it draws from
  /// What the decorator set of the standing check's assumptions at other than the standard, by key.
  std::map<std::string, double, std::less<>> assumptions;
  std::set<std::string, std::less<>> ticked;  ///< keys of the checklist lines that are done
  std::vector<Shared<Area>> areas;
  Preserved preserved;
  bool operator==(const Event&) const = default;
};

/// The piece with this id, or null. The pointer lives as long as the event is not edited.
inline const PlacedPiece* find_piece(const Event& event, std::string_view id) {
  for (const auto& area : event.areas)
    for (const auto& piece : area->pieces)
      if (piece->id == id) return &*piece;
  return nullptr;
}

}  // namespace quadrille
