// What to say where the frame of a dressed piece shows, and what would help.
#pragma once

#include <algorithm>
#include <cmath>
#include <span>
#include <string>
#include <utility>

#include "sdk/dressing.hpp"
#include "sdk/hidden.hpp"

namespace quadrille {

/// A stretch of the spine, the parameter to blame where the frame shows there, and what would help: "widen the corner".
struct BlamedStretch {
  Stretch stretch;
  const char* key = "";
  std::string remedy = {};
};

namespace bare_frame_detail {

/// A hand's width bare at an end of the frame is where plate and socket are, and nobody looks for balloons: common
/// practice, no source.
inline constexpr double plain_end_m = 0.1;

/// What shows for so long that it is told where.
struct Shown {
  std::string places;
  int found = 0;
  bool only_at_ends = true, only_blamed = true;
  const BlamedStretch* blamed = nullptr;
};

inline Shown shown(const HiddenSpine& hidden, double length_m, double inflated_m,
                   std::span<const BlamedStretch> blamed) {
  Shown shown;
  for (const Stretch& bare : hidden.bare) {
    const bool at_end = bare.from_m < 1e-9 || bare.to_m > length_m - 1e-9;
    const double told_from = at_end ? std::max(0.75 * inflated_m, plain_end_m) : 0.25 * inflated_m;
    if (bare.to_m - bare.from_m < told_from) continue;
    const auto touches = [&](const BlamedStretch& b) {
      return b.stretch.from_m <= bare.to_m && bare.from_m <= b.stretch.to_m;
    };
    const auto place = std::ranges::find_if(blamed, touches);
    if (place != blamed.end()) shown.blamed = &*place;
    shown.only_at_ends = shown.only_at_ends && at_end;
    shown.only_blamed = shown.only_blamed && (at_end || place != blamed.end());
    if (++shown.found <= 3)
      shown.places += (shown.found > 1 ? ", " : "") + print_both(bare.from_m) + " to " + print_both(bare.to_m);
  }
  if (shown.found > 3) shown.places += " and " + std::to_string(shown.found - 3) + " more places";
  return shown;
}

/// Many small gaps: at a tightness t the balloons of a cluster hide the same length of a shorter spacing.
inline void note_small_gaps(Piece& piece, const DressingValues& dressing, double share) {
  const double tightness = std::floor(100 * dressing.tightness * share / hidden_aim - 1 + 1e-9) / 100;
  std::string helps = "fillers in the gaps or fewer balloons in a cluster close them.";
  if (tightness >= forced_below) helps = "a tightness of " + print_fixed(tightness, 2) + ", " + helps;
  piece.messages.push_back(
      {Severity::note, "tightness",
       print_fixed(100 * (1 - share), 0) + " % of the frame shows, in small gaps between the clusters: " + helps,
       Topic::bare_frame});
}

}  // namespace bare_frame_detail

/// Warns where the frame shows for longer than a quarter of a balloon, or three quarters at an end of the spine, and a
/// hand's width at least. `ends_key` is blamed where it shows at the ends alone; else snugness or tightness, whichever is
/// farther above 1; else the key of `blamed` whose stretches touch all that shows; else tightness. Where it shows in
/// smaller gaps only, notes what would help if less is hidden than hidden_aim.
inline void warn_of_bare_frame(Piece& piece, const DressingValues& dressing, const char* ends_key,
                               std::span<const BlamedStretch> blamed = {}) {
  if (piece.spine.empty()) return;
  const HiddenSpine hidden = hidden_spine(piece.spine, piece.balloons);
  const auto shown = bare_frame_detail::shown(hidden, piece.spine.back().at_m, dressing.make.inflated_m, blamed);
  if (shown.found == 0) {
    if (hidden.share < hidden_aim) bare_frame_detail::note_small_gaps(piece, dressing, hidden.share);
    return;
  }
  std::string key = "tightness", remedy = "pack the clusters closer, or push fillers in";
  if (shown.only_at_ends) {
    key = ends_key;
    remedy = dressing.clusters > 0 ? "mount more clusters" : "leave less bare";
  } else if (dressing.make.snug > 1 && dressing.make.snug >= dressing.tightness) {
    key = "snug";
    remedy = "a snugness below 1 draws the clusters in";
  } else if (dressing.tightness <= 1 && shown.only_blamed) {
    key = shown.blamed->key;
    remedy = shown.blamed->remedy;
  }
  piece.messages.push_back(
      {Severity::warning, std::move(key),
       "The frame shows at " + shown.places + " along it" + (remedy.empty() ? "." : ": " + remedy + "."),
       Topic::bare_frame});
}

}  // namespace quadrille
