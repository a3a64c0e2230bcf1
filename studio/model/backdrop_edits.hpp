// Edits of the photo behind an area. An id that is not there, or an area without a photo, leaves the event as it is.
#pragma once

#include <string_view>

#include "sdk/result.hpp"
#include "studio/model/event.hpp"

namespace quadrille {

/// A photo lies this wide and high at least and at most [m].
inline constexpr double least_backdrop_m = 0.01, most_backdrop_m = 1000;
/// The longest known length that a photo is calibrated by [m].
inline constexpr double most_calibration_m = 200;
/// Ends of a known length lie at least so far apart in the photo [pixels]; nearer, the scale would be chance.
inline constexpr double least_calibration_px = 8;

/// A photo as it is first laid into `area`: standing on the floor at the area's left edge; as wide as the wall where its
/// width is known, else 3 m high, which is about what an ordinary photo of a room shows (by eye, no source).
Backdrop fresh_backdrop(const Area& area, Shared<StoredPicture> picture);

/// Puts `backdrop` behind the area in place of the one there. An error where the picture has no size, is larger than
/// most_picture_bytes or most_picture_side_px, or lies smaller or larger than the bounds above, or somewhere that is no
/// number.
Result<Event> with_backdrop(Event event, std::string_view area_id, Backdrop backdrop);
Event without_backdrop(Event event, std::string_view area_id);
/// Lays its lower left corner to x, z [m].
Event with_backdrop_at(Event event, std::string_view area_id, double x_m, double z_m);
/// Gives it the scale at which `fixed` and `other` are `length_m` apart; `fixed` stays where it is in the area. An error
/// where they are nearer than least_calibration_px, the length is not above 0 or above most_calibration_m, or the photo
/// would become smaller or larger than the bounds above.
Result<Event> with_backdrop_scale(Event event, std::string_view area_id, PictureSpot fixed, PictureSpot other,
                                  double length_m);
/// `fade` is taken to the nearer of 0 and 1 where it lies outside.
Event with_backdrop_fade(Event event, std::string_view area_id, double fade);
Event with_backdrop_lock(Event event, std::string_view area_id, bool locked);
Event with_backdrop_hidden(Event event, std::string_view area_id, bool hidden);

}  // namespace quadrille
