#include "studio/takeoff/off_wall.hpp"

#include <algorithm>
#include <string>

#include "studio/model/lengths.hpp"

namespace quadrille {
namespace {

/// Where a piece stands along its wall [m].
struct AlongWall {
  double left = 0, right = 0, top = 0;
  double wall_width = 0, wall_height = 0;  ///< 0 = not known
  double width() const { return right - left; }
  bool too_wide() const { return wall_width > 0 && width() > wall_width + off_wall_slack_m; }
  bool off_left() const { return wall_width > 0 && left < -off_wall_slack_m; }
  bool off_right() const { return wall_width > 0 && right > wall_width + off_wall_slack_m; }
  bool too_high() const { return wall_height > 0 && top > wall_height + off_wall_slack_m; }
};

/// What is to be said of a piece, sentence by sentence.
struct Said {
  std::string text, remedy;
  void add(std::string& to, const std::string& sentence) { to += (to.empty() ? "" : " ") + sentence; }
};

Said words_for(const AlongWall& at, const PlacedPiece& placed, LengthStyle lengths) {
  const auto print = [&](double metres) { return print_length(metres, lengths); };
  Said said;
  if (at.too_wide()) {
    said.add(said.text, "It is " + print(at.width()) + " wide, and the wall is " + print(at.wall_width) + ".");
    said.add(said.remedy, "Make it narrower, or mend the wall's width.");
  } else if (at.off_left() || at.off_right()) {
    said.add(said.text, "It stands out " + print(at.off_left() ? -at.left : at.right - at.wall_width) + " beyond the " +
                            (at.off_left() ? "left" : "right") + " end of the wall.");
    const double x = placed.x_m + (at.off_left() ? -at.left : at.wall_width - at.right);
    said.add(said.remedy, "From " + print(x) + (at.off_left() ? " on" : " back") +
                              " along the wall, counted from its left end, it stands before it as a whole.");
  }
  if (at.too_high()) {
    said.add(said.text, "It reaches up to " + print(at.top) + ", and the wall is " + print(at.wall_height) + " high.");
    said.add(said.remedy, "Make it lower, or mend the wall's height.");
  }
  return said;
}

}  // namespace

Findings check_off_wall(const Event& event, const BuiltEvent& built) {
  Findings findings;
  for (const auto& area : event.areas)
    for (const auto& piece : area->pieces) {
      const auto found = built.find(piece->id);
      if (piece->hidden || found == built.end() || found->second == nullptr) continue;
      if (found->second->status != Status::ok) continue;
      const Box& box = found->second->box;
      const AlongWall at{piece->x_m + box.least.x(), piece->x_m + box.most.x(), box.most.z(),
                         area->wall_width_m.value_or(0), area->wall_height_m.value_or(0)};
      Said said = words_for(at, *piece, lengths_in(event.units));
      if (!said.text.empty())
        findings.push_back(
            {Weight::warning, "beyond-wall", area->id, piece->id, "", std::move(said.text), std::move(said.remedy)});
    }
  return findings;
}

}  // namespace quadrille
