// The house: the decorator's own figures, as a plain value. What is on the shelf, what it costs, how fast work goes, and
// what is charged. Without a file of its own the standard house serves, and says so.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "studio/model/event.hpp"
#include "studio/model/money.hpp"
#include "studio/model/palette.hpp"

namespace quadrille {

/// Balloons of one colour and nominal size in the stockroom.
struct BalloonStock {
  ColourReference colour;
  double nominal_in = 0;
  std::int64_t on_hand = 0;  ///< loose balloons and full packs together
  std::vector<Pack> packs;   ///< how the decorator buys them; where empty, as the palette says
  Preserved preserved;
  bool operator==(const BalloonStock&) const = default;
};

/// How a supply is bought and kept.
struct SupplyStock {
  /// The supply's key, or the beginning of several at a '-': "rod-glass-fibre" stands for every glass fibre rod that has
  /// no entry of its own; the longest that fits counts.
  std::string key;
  std::string name;        ///< empty = as the piece type calls it
  double pack = 1;         ///< in the supply's unit: a spool of 100 (m), one rod; above 0
  Minor price_minor = 0;   ///< of a pack
  double on_hand = 0;      ///< in the supply's unit
  bool reused = false;     ///< comes back from the job: owned and used again, not used up
  Minor rental_minor = 0;  ///< charged to the client for each unit that is reused
  double mass_kg = 0;      ///< of one unit, for the load
  std::string kept_where;  ///< "Shelf 3", "Garage"; empty = not said
  Preserved preserved;
  bool operator==(const SupplyStock&) const = default;
};

/// Hardware that is kept and rented out together, such as the parts of one arch.
struct FrameKit {
  struct Part {
    std::string supply;  ///< key
    double quantity = 0;
    bool operator==(const Part&) const = default;
  };
  std::string key, name;
  std::int64_t on_hand = 1;
  Minor rental_minor = 0;  ///< for the whole kit and one event, instead of its parts one by one
  std::vector<Part> parts;
  std::string kept_where;
  Preserved preserved;
  bool operator==(const FrameKit&) const = default;
};

/// What blows the balloons up.
struct Inflator {
  std::string key, name;
  double litres_per_s = 0;   ///< through one nozzle
  std::int64_t nozzles = 1;  ///< one person fills that many balloons at once
  double watts = 0;          ///< while it blows; 0 = by hand or from a cylinder
  double volts = 120;
  std::string source;  ///< where the figures come from
  Preserved preserved;
  bool operator==(const Inflator&) const = default;
};

/// Failures of balloons while they are inflated and mounted.
struct FailureRate {
  double nominal_in = 0;         ///< 0 = every size
  std::optional<Finish> finish;  ///< nothing = every finish
  double rate = 0;               ///< 0 to 0.9
  Preserved preserved;
  bool operator==(const FailureRate&) const = default;
};

/// Prices and taxes. Amounts in minor units of the house's currency.
struct Pricing {
  Minor wage_per_hour = 0;    ///< what an hour of one person costs the decorator
  Minor charge_per_hour = 0;  ///< what an hour of one person costs the client, for set-up and strike
  PartsPerMillion markup_balloons = 0, markup_supplies = 0,
                  markup_labour = 0;  ///< on top of cost: 1,500,000 = 2.5-fold
  Minor delivery_base = 0;            ///< once for each event
  Minor delivery_per_km = 0;          ///< there and back
  Minor travel_cost_per_km = 0;       ///< what a kilometre costs the decorator
  Minor minimum = 0;                  ///< a job under it is warned of
  bool prices_with_tax = false;       ///< prices are told with tax in them
  PartsPerMillion tax_pieces = 0, tax_delivery = 0, tax_work = 0, tax_rental = 0;
  PartsPerMillion deposit = 0;   ///< of the total
  Minor deposit_above = 0;       ///< no deposit is asked for a total of this or less
  std::int64_t valid_days = 30;  ///< how long a quote holds
  bool operator==(const Pricing&) const = default;
};

/// A piece of the decorator's own, to be used again.
struct RepertoirePiece {
  std::string key, name;
  std::string type;
  ValueMap values;
  std::vector<ColourReference> colours;
  std::optional<Minor> price_minor;
  std::string note;
  Preserved preserved;
  bool operator==(const RepertoirePiece&) const = default;
};

/// What a build measured: it makes the packing of that balloon and cluster the decorator's own.
struct PackingCalibration {
  double nominal_in = 0, inflated_m = 0;
  std::int64_t cluster_size = 4;
  double tightness = 1, snug = 0.88;
  std::string date, note;
  Preserved preserved;
  bool operator==(const PackingCalibration&) const = default;
};

/// How a finished job went: planned against actual seconds of work, by rate key. Planned is what the standard rates give
/// for it, so that the record stays true when the house's rates change.
struct JobRecord {
  std::string date, title;
  std::map<std::string, double, std::less<>> planned_s, actual_s;
  Preserved preserved;
  bool operator==(const JobRecord&) const = default;
};

/// What ballast containers are filled with.
enum class BallastFill { water, sand };

struct House {
  std::string name;              ///< of the decorator's business; empty = not said
  std::string contact;           ///< as it stands on the client's sheet
  std::string currency = "USD";  ///< ISO 4217, of every amount in the house
  std::int64_t crew = 1;         ///< people on a job where the event does not say, 1 to 20
  std::string inflator;          ///< key of the one in use; empty = the first
  double short_chance = 0.05;    ///< accepted chance that balloons of one colour and size run short, 1e-6 to 0.5
  /// What the decorator set of the rates and figures at other than the standard, by key: see rates.hpp, figures.hpp.
  std::map<std::string, double, std::less<>> rates;
  Pricing pricing;
  BallastFill ballast_fill = BallastFill::water;
  double container_l = 10;  ///< what one ballast container holds, above 0
  std::vector<Inflator> inflators;
  std::vector<FailureRate> failures;  ///< the most special that fits counts: size and finish, size, finish, all
  std::vector<BalloonStock> balloons;
  std::vector<SupplyStock> supplies;
  std::vector<FrameKit> kits;
  std::vector<RepertoirePiece> repertoire;
  std::vector<PackingCalibration> packings;
  std::vector<JobRecord> jobs;
  Preserved preserved;
  bool operator==(const House&) const = default;
};

/// The house that serves where the decorator has none: invented prices, and rates and failure rates of common practice.
/// Its amounts are of `currency`: the figures of the standard one in whole units, in that currency's digits. Its inflators
/// are for the voltage where that currency is used, 120 or 230 V.
House standard_house(std::string_view currency = "USD");

/// The entry for a supply: the one of its key, or else of the longest beginning of it; null where none fits.
const SupplyStock* find_supply(const House& house, std::string_view supply_key);

/// The inflator in use: of the house's key, else the first; null where the house has none.
const Inflator* inflator_in_use(const House& house);

/// The failure rate that fits best; 0.02 where none does (common practice, no source).
double failure_rate(const House& house, double nominal_in, Finish finish);

}  // namespace quadrille
