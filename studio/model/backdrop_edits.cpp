#include "studio/model/backdrop_edits.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <utility>

#include "sdk/number.hpp"
#include "sdk/units.hpp"
#include "studio/model/area_edits.hpp"
#include "studio/model/edit_parts.hpp"

namespace quadrille {
namespace {

constexpr double first_height_m = 3;

std::optional<std::string> fault_of_size(const Backdrop& backdrop) {
  const double longest = std::max(backdrop.width_m(), backdrop.height_m());
  const double shortest = std::min(backdrop.width_m(), backdrop.height_m());
  if (shortest >= least_backdrop_m && longest <= most_backdrop_m) return std::nullopt;
  const std::string what = longest > most_backdrop_m ? "large" : "small";
  return "The photo would become too " + what + ": each of its sides is to be " + print_both(least_backdrop_m) +
         " to " + print_both(most_backdrop_m) + " long.";
}

std::optional<std::string> fault_of(const Backdrop& backdrop) {
  const StoredPicture& picture = *backdrop.picture;
  if (picture.bytes.empty() || picture.width_px < 1 || picture.height_px < 1) return "There is no picture in it.";
  if (picture.bytes.size() > most_picture_bytes)
    return "The picture is too large: it takes " + print_fixed(static_cast<double>(picture.bytes.size()) / 1e6, 1) +
           " MB, and " + print_fixed(static_cast<double>(most_picture_bytes) / 1e6, 1) + " MB are accepted.";
  if (std::max(picture.width_px, picture.height_px) > most_picture_side_px)
    return "The picture is too large: it is " + std::to_string(picture.width_px) + " x " +
           std::to_string(picture.height_px) + " pixels, and " + std::to_string(most_picture_side_px) +
           " on each side are accepted.";
  if (!std::isfinite(backdrop.x_m) || !std::isfinite(backdrop.z_m) || !std::isfinite(backdrop.metres_per_pixel))
    return "It does not say where the photo lies.";
  return fault_of_size(backdrop);
}

template <class Change>
Event changed_backdrop(Event event, std::string_view area_id, Change change) {
  for (auto& area : event.areas)
    if (area->id == area_id && area->backdrop) area.edit([&](Area& edited) { change(*edited.backdrop); });
  return event;
}

const Backdrop* backdrop_of(const Event& event, std::string_view area_id) {
  const Area* const area = find_area(event, area_id);
  return area != nullptr && area->backdrop ? &*area->backdrop : nullptr;
}

}  // namespace

Backdrop fresh_backdrop(const Area& area, Shared<StoredPicture> picture) {
  Backdrop backdrop;
  backdrop.picture = std::move(picture);
  const double width_px = std::max(backdrop.picture->width_px, 1), height_px = std::max(backdrop.picture->height_px, 1);
  const bool has_wall = area.wall_width_m && *area.wall_width_m > 0;
  backdrop.metres_per_pixel = has_wall ? *area.wall_width_m / width_px : first_height_m / height_px;
  // However wide the wall or long the strip: within the bounds.
  const double longest_px = std::max(width_px, height_px), shortest_px = std::min(width_px, height_px);
  backdrop.metres_per_pixel = std::max(backdrop.metres_per_pixel, least_backdrop_m / shortest_px);
  backdrop.metres_per_pixel = std::min(backdrop.metres_per_pixel, most_backdrop_m / longest_px);
  return backdrop;
}

Result<Event> with_backdrop(Event event, std::string_view area_id, Backdrop backdrop) {
  backdrop.fade = std::clamp(backdrop.fade, 0.0, 1.0);
  if (auto fault = fault_of(backdrop)) return Result<Event>::bad(std::move(*fault));
  edit_area(event, area_id, [&](Area& area) { area.backdrop = std::move(backdrop); });
  return Result<Event>::good(std::move(event));
}

Event without_backdrop(Event event, std::string_view area_id) {
  for (auto& area : event.areas)
    if (area->id == area_id && area->backdrop) area.edit([](Area& edited) { edited.backdrop.reset(); });
  return event;
}

Event with_backdrop_at(Event event, std::string_view area_id, double x_m, double z_m) {
  return changed_backdrop(std::move(event), area_id,
                          [&](Backdrop& backdrop) { backdrop.x_m = x_m, backdrop.z_m = z_m; });
}

Result<Event> with_backdrop_scale(Event event, std::string_view area_id, PictureSpot fixed, PictureSpot other,
                                  double length_m) {
  const Backdrop* const before = backdrop_of(event, area_id);
  if (before == nullptr) return Result<Event>::good(std::move(event));
  const double apart_px = std::hypot(other.x_px - fixed.x_px, other.y_px - fixed.y_px);
  if (!(apart_px >= least_calibration_px))
    return Result<Event>::bad(
        "The two points lie on one another: put them at the ends of something whose length you know.");
  if (!(length_m > 0) || !(length_m <= most_calibration_m))
    return Result<Event>::bad("The length between the points is to be above 0, up to " +
                              print_both(most_calibration_m) + ".");
  Backdrop after = *before;
  after.metres_per_pixel = length_m / apart_px;
  if (auto fault = fault_of_size(after)) return Result<Event>::bad(std::move(*fault));
  const ElevationSpot stood = before->in_area(fixed), stands = after.in_area(fixed);
  after.x_m += stood.x_m - stands.x_m;
  after.z_m += stood.z_m - stands.z_m;
  return Result<Event>::good(
      changed_backdrop(std::move(event), area_id, [&](Backdrop& backdrop) { backdrop = std::move(after); }));
}

Event with_backdrop_fade(Event event, std::string_view area_id, double fade) {
  return changed_backdrop(std::move(event), area_id,
                          [&](Backdrop& backdrop) { backdrop.fade = std::clamp(fade, 0.0, 1.0); });
}

Event with_backdrop_lock(Event event, std::string_view area_id, bool locked) {
  return changed_backdrop(std::move(event), area_id, [&](Backdrop& backdrop) { backdrop.locked = locked; });
}

Event with_backdrop_hidden(Event event, std::string_view area_id, bool hidden) {
  return changed_backdrop(std::move(event), area_id, [&](Backdrop& backdrop) { backdrop.hidden = hidden; });
}

}  // namespace quadrille
