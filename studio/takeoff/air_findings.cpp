#include "studio/takeoff/air_findings.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <utility>

#include "sdk/number.hpp"
#include "sdk/units.hpp"
#include "studio/colour/lab.hpp"
#include "studio/model/figures.hpp"
#include "studio/model/lengths.hpp"
#include "studio/takeoff/air.hpp"
#include "studio/takeoff/market.hpp"
#include "studio/takeoff/print.hpp"

namespace quadrille {
namespace {

constexpr double worth_saying = 0.005;  // of the diameter: what a sizer can be set to, our choice
constexpr double high_m = 300;          // balloons from sea level grow by 1.2 % up to there

class AirCheck {
 public:
  AirCheck(const Event& event, const EventCount& count, std::span<const Palette> palettes, const House& house)
      : event_(event), count_(count), palettes_(palettes), house_(house) {}

  Findings made() && {
    for (const auto& area : event_.areas) {
      area_ = &*area;
      if (const BalloonLine* const usual = most_used()) check_area(*usual);
      for (const PieceCount& piece : count_.pieces)
        if (piece.area == area->id) check_piece(piece);
    }
    return std::move(findings_);
  }

 private:
  /// A balloon line of a piece, and how large it gets at most.
  struct Swollen {
    const BalloonLine* line = nullptr;
    double most_m = 0;  ///< in the sun, or at the event
    double heats = 1;   ///< growth in the sun
    double share() const { return most_m / nominal_m(); }
    double nominal_m() const { return line->nominal_in * metres_per_inch; }
  };

  LengthStyle lengths() const { return lengths_in(event_.units); }
  std::string size(double metres) const { return print_inflated(metres, lengths()); }
  /// Of a place above the sea, which nobody knows to an inch.
  std::string height(double metres) const {
    return event_.units == Units::feet ? print_fixed(metres / metres_per_foot, 0) + " ft"
                                       : print_fixed(metres, 0) + " m";
  }
  std::string heat(double celsius) const {
    return print_temperature(celsius,
                             event_.units == Units::feet ? TemperatureStyle::fahrenheit : TemperatureStyle::celsius);
  }
  bool outdoors() const { return area_->site.surroundings == Surroundings::outdoors; }
  Climate climate() const {
    const AirAround usual{20, area_->site.altitude_m.value_or(0)};
    return climate_of(area_->site).value_or(Climate{usual, usual, outdoors()});
  }

  void say(Weight weight, const char* code, std::string piece, const char* key, std::string text, std::string remedy) {
    findings_.push_back({weight, code, area_->id, std::move(piece), key, std::move(text), std::move(remedy)});
  }

  const BalloonLine* most_used() const {
    const BalloonLine* most = nullptr;
    for (const PieceCount& piece : count_.pieces)
      if (piece.area == area_->id)
        for (const BalloonLine& line : piece.lines)
          if (most == nullptr || line.used > most->used) most = &line;
    return most;
  }

  void check_area(const BalloonLine& usual) {
    const Site& site = area_->site;
    if (const auto known = climate_of(site))
      say_growth(*known, usual);
    else if (outdoors())
      say(Weight::note, "heat-not-known", {}, site.event_celsius ? "inflating-celsius" : "event-celsius",
          "The sizes to inflate to are not corrected for heat: it is not said how warm it is where the balloons are "
          "inflated and at the event.",
          "Set both temperatures of the area.");
    if (const double altitude = site.altitude_m.value_or(0); altitude >= high_m && !site.inflating_altitude_m)
      say(Weight::note, "inflated-lower-down", {}, "inflating-altitude-m",
          "Balloons that are blown at sea level and brought up to " + height(altitude) + " grow by " +
              print_fixed(100 * (growth({20, 0}, {20, altitude}) - 1), 1) +
              " % in diameter; the sizes here are for blowing them at the place.",
          "If they are blown lower down, set the altitude there.");
  }

  void say_growth(const Climate& known, const BalloonLine& usual) {
    const double grown = growth(known.blown, known.event);
    if (std::abs(grown - 1) < worth_saying) return;
    const bool up = known.blown.altitude_m != known.event.altitude_m;
    const std::string from =
        heat(known.blown.celsius) + (up ? " and " + height(known.blown.altitude_m) + " above the sea" : "");
    const std::string to =
        heat(known.event.celsius) + (up ? " and " + height(known.event.altitude_m) + " above the sea" : "");
    say(Weight::note, "inflate-to", {}, "event-celsius",
        std::string("Balloons ") + (grown > 1 ? "grow" : "shrink") + " by " +
            print_fixed(100 * std::abs(grown - 1), 1) + " % in diameter from " + from +
            ", where they are inflated, to " + to + " at the event.",
        "Blow them to " + size(usual.inflated_m / grown) + " for " + size(usual.inflated_m) + " at the event.");
  }

  void check_piece(const PieceCount& piece) {
    const Climate here = climate();
    const double grown = growth(here.blown, here.event);
    std::optional<Swollen> in_sun, on_the_way;
    const auto keep_worst = [](std::optional<Swollen>& worst, const Swollen& swollen) {
      if (!worst || swollen.share() > worst->share()) worst = swollen;
    };
    const double full = figure_of(house_, "full-share");
    for (const BalloonLine& line : piece.lines) {
      if (!(line.nominal_in > 0)) continue;
      const double heats = here.in_sun ? growth_in_sun(line, here.event) : 1;
      const Swollen corrected{&line, line.inflated_m * heats, heats}, as_blown{&line, corrected.most_m * grown, heats};
      if (heats > 1 && corrected.share() > full)
        keep_worst(in_sun, corrected);
      else if (grown > 1 + 1e-9 && as_blown.share() > full)
        keep_worst(on_the_way, as_blown);
    }
    if (in_sun) say_in_sun(piece, *in_sun, full);
    if (on_the_way) say_on_the_way(piece, *on_the_way, grown);
  }

  double growth_in_sun(const BalloonLine& line, const AirAround& event) const {
    const Colour* const colour = find_colour(palettes_, line.colour);
    AirAround heated = event;
    heated.celsius += figure_of(house_, colour && is_dark(*colour, house_) ? "sun-heat-dark" : "sun-heat-light");
    return growth(event, heated);
  }

  std::string swells(const Swollen& swollen) const {
    return swollen.line->colour_name + " balloons of " + print_nominal(swollen.line->nominal_in) + " swell to " +
           size(swollen.most_m) + ", " + print_fixed(100 * swollen.share(), 0) + " % of their nominal size";
  }

  void say_in_sun(const PieceCount& piece, const Swollen& swollen, double full) {
    const Colour* const colour = find_colour(palettes_, swollen.line->colour);
    const bool dark = colour != nullptr && is_dark(*colour, house_);
    const double larger = larger_size(*swollen.line, swollen.most_m / full);
    const std::string instead = larger > 0 ? "Take " + print_nominal(larger) + " balloons and blow them no larger"
                                           : std::string("Take a larger nominal size under-inflated");
    say(Weight::warning, "sun-overfull", piece.id, "inflated",
        "In the sun " + swells(swollen) + (dark ? "; dark colours heat up most and burst first." : "."),
        instead + ", make them no larger than " +
            size(std::floor(1000 * full * swollen.nominal_m() / swollen.heats) / 1000) + ", or keep them in the shade" +
            (dark ? " or light in colour." : "."));
  }

  void say_on_the_way(const PieceCount& piece, const Swollen& swollen, double grown) {
    say(Weight::warning, "grows-overfull", piece.id, "inflated",
        "Blown to " + size(swollen.line->inflated_m) + " where they are inflated, " + swells(swollen) +
            " at the event.",
        "Blow them to " + size(swollen.line->inflated_m / grown) + ".");
  }

  /// The smallest nominal size [in] that is sold in the line's colour and measures `least_m` or more; 0 where none does.
  double larger_size(const BalloonLine& line, double least_m) const {
    double best = 0;
    for (const double sold : sizes_sold(line.colour, palettes_, house_))
      if (sold > line.nominal_in && sold * metres_per_inch >= least_m && (best == 0 || sold < best)) best = sold;
    return best;
  }

  const Event& event_;
  const EventCount& count_;
  std::span<const Palette> palettes_;
  const House& house_;
  const Area* area_ = nullptr;
  Findings findings_;
};

}  // namespace

bool is_dark(const Colour& colour, const House& house) {
  return lab_of(Srgb{colour.red, colour.green, colour.blue}).lightness < figure_of(house, "dark-lightness");
}

Findings air_findings(const Event& event, const EventCount& count, std::span<const Palette> palettes,
                      const House& house) {
  return AirCheck(event, count, palettes, house).made();
}

}  // namespace quadrille
