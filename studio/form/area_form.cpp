// The area's own facts.
#include <algorithm>
#include <string>
#include <utility>

#include "studio/form/site_form.hpp"
#include "studio/model/area_edits.hpp"
#include "studio/model/edits.hpp"

namespace quadrille {
namespace {

constexpr double far_m = 5000, high_m = 200, wide_m = 1000;

/// A fact of the site that is an amount, and where it is kept.
struct SiteRule {
  FactRule rule;
  std::optional<double> Site::*amount;
};

constexpr SiteRule site_rules[] = {
    {{"gust", "Forecast gust", "Weather", FactKind::speed, 0, 60, true,
      "The strongest gust that is forecast for the time it stands. Empty: not known."},
     &Site::gust_m_s},
    {{"event-temperature", "Air at the event", "Weather", FactKind::temperature, -40, 60, true,
      "The highest air temperature while it stands: warm air swells balloons."},
     &Site::event_celsius},
    {{"inflating-temperature", "Air when inflating", "Weather", FactKind::temperature, -40, 60, true,
      "The air temperature where the balloons are inflated."},
     &Site::inflating_celsius},
    {{"altitude", "Altitude", "Weather", FactKind::length, -500, 9000, true, "Of the venue above the sea."},
     &Site::altitude_m},
    {{"inflating-altitude", "Inflated at altitude", "Weather", FactKind::length, -500, 9000, true,
      "Where balloons are inflated, above the sea. Empty: at the venue."},
     &Site::inflating_altitude_m},
    {{"outlet", "Outlet", "Distances", FactKind::length, 0, far_m, true,
      "How far the nearest outlet that you may use is from where you inflate. Empty: not known."},
     &Site::outlet_m},
    {{"vehicle", "Vehicle", "Distances", FactKind::length, 0, far_m, true,
      "How far everything is carried from the vehicle. Empty: not known."},
     &Site::vehicle_m},
};

constexpr FactRule wall_width{"wall-width", "Wall width", "Wall", FactKind::length,
                              0.1,          wide_m,       true,   "Of the wall behind everything. Empty: no wall."};
constexpr FactRule wall_height{"wall-height", "Wall height", "Wall", FactKind::length,
                               0.1,           high_m,        true,   "Of the wall behind everything. Empty: no wall."};

std::vector<Choice> surroundings_choices() { return {{"indoors", "Indoors"}, {"outdoors", "Outdoors"}}; }

std::vector<Choice> ground_choices() {
  constexpr const char* labels[] = {"Grass",   "Soil",   "Sand",       "Gravel", "Concrete",
                                    "Asphalt", "Paving", "Wood floor", "Carpet"};
  std::vector<Choice> choices;
  for (int i = 0; i <= static_cast<int>(Ground::carpet); ++i)
    choices.push_back({key_of(static_cast<Ground>(i)), labels[i]});
  return choices;
}

Result<Event> with_choice(const Event& event, const Area& area, std::string_view key, std::string_view text) {
  const bool ground = key == "ground";
  const std::vector<Choice> choices = ground ? ground_choices() : surroundings_choices();
  const auto chosen = read_choice(ground ? "Ground" : "Place", choices, text);
  if (!chosen) return Result<Event>::bad(chosen.error);
  const auto index = std::ranges::find(choices, *chosen, &Choice::key) - choices.begin();
  Site site = area.site;
  if (ground)
    site.ground = static_cast<Ground>(index);
  else
    site.surroundings = static_cast<Surroundings>(index);
  return Result<Event>::good(with_site(event, area.id, std::move(site)));
}

}  // namespace

FactFields area_fields(const Event& event, const Area& area) {
  FactFields fields;
  fields.push_back(text_field("name", "Name", "What the place is called, on every sheet.", area.name));
  fields.push_back(choice_field("surroundings", "Place", "Outdoors the wind counts.", surroundings_choices(),
                                surroundings_choices()[static_cast<std::size_t>(area.site.surroundings)].key));
  fields.push_back(choice_field("ground", "Ground",
                                "Stakes hold in soft ground alone; hard ground asks for dead weights.",
                                ground_choices(), key_of(area.site.ground)));
  for (const SiteRule& one : site_rules) fields.push_back(amount_field(one.rule, area.site.*one.amount, event.units));
  fields.push_back(amount_field(wall_width, area.wall_width_m, event.units));
  fields.push_back(amount_field(wall_height, area.wall_height_m, event.units));
  return fields;
}

Result<Event> with_area_field(const Event& event, std::string_view area_id, std::string_view key,
                              std::string_view text) {
  const Area* const area = find_area(event, area_id);
  if (area == nullptr) return Result<Event>::good(event);
  if (key == "name") {
    if (trimmed_text(text).empty())
      return Result<Event>::bad("An area needs a name: sheets and lists call it by that.");
    return Result<Event>::good(renamed_area(event, area_id, std::string(trimmed_text(text))));
  }
  if (key == "surroundings" || key == "ground") return with_choice(event, *area, key, text);
  for (const FactRule* rule : {&wall_width, &wall_height}) {
    if (key != rule->key) continue;
    const bool width = rule == &wall_width;
    const auto read = read_amount(*rule, text, width ? area->wall_width_m : area->wall_height_m, event.units);
    if (!read) return Result<Event>::bad(read.error);
    return Result<Event>::good(
        with_wall(event, area_id, width ? *read.value : area->wall_width_m, width ? area->wall_height_m : *read.value));
  }
  for (const SiteRule& one : site_rules) {
    if (key != one.rule.key) continue;
    const auto read = read_amount(one.rule, text, area->site.*one.amount, event.units);
    if (!read) return Result<Event>::bad(read.error);
    if (*read.value == area->site.*one.amount) return Result<Event>::good(event);
    Site site = area->site;
    site.*one.amount = *read.value;
    return Result<Event>::good(with_site(event, area_id, std::move(site)));
  }
  return Result<Event>::good(event);
}

bool is_of_site(const Finding& finding) {
  return finding.key == "gust" || finding.key == "lines" || finding.key == "outlet-m";
}

}  // namespace quadrille
