// How a hoop must be secured, and what to warn of.
#include <span>

#include "hoop.hpp"
#include "sdk/bare_frame.hpp"

namespace hoop {

using namespace quadrille;

void add_anchoring_rules(Piece& piece) {
  const auto rule = [&](Requirement requirement, When when, const char* key, const char* text, const char* reason) {
    piece.anchoring.push_back({requirement, when, key, text, reason, "common practice, no source"});
  };
  rule(Requirement::front_and_back, When::outdoors, "top-lines",
       "Tie the top of the ring to anchors in front and behind, a line each way.",
       "A hoop is a sail on one foot: it tips to the audience or away.");
  rule(Requirement::clusters_to_frame, When::outdoors, "clusters-to-frame",
       "Tie every third cluster to the ring with line, and the first and the last.",
       "Wind turns and slides clusters that are only twisted on.");
  rule(Requirement::ballast, When::always, "ballast-low", "Put the ballast on the plate before the ring is raised.",
       "A bare plate tips with the first push.");
  rule(Requirement::joints, When::always, "tape-joints", "Tape every joint of the ring.",
       "Tight packing pushes joints apart.");
  rule(Requirement::clearance, When::walkway, "off-the-way", "Keep plate, ballast and lines off the way people walk.",
       "People trip over what they do not look for.");
  rule(Requirement::ballast, When::hard_ground, "no-stakes",
       "Anchor lines to dead weights or a structure the site owner has allowed.", "Stakes do not hold in hard ground.");
}

void add_warnings(Piece& piece, const Hoop& hoop) {
  warn_of_tightness(piece, hoop.dressing);
  // Where a number of clusters was asked for, it is that number that leaves the ring bare.
  const BlamedStretch asked{{0, hoop.dressed_m()}, "clusters", "mount more clusters"};
  warn_of_bare_frame(piece, hoop.dressing, "from", std::span(&asked, hoop.dressing.clusters > 0 ? 1 : 0));
  warn_of_ballast(piece, hoop.base);
  note_unused_slots(piece, hoop.dressing.pattern.slots);
  const double height = hoop.lift_m + 2 * hoop.radius_m;
  if (hoop.base.plate_width_m <= 0)
    warn(piece, "plate-width",
         "Without a base plate the stand must be set in the ground or tied: nothing else holds it up.");
  else if (height > 6 * hoop.base.plate_width_m)
    warn(piece, "plate-width",
         "The hoop is more than six times as high as its plate is wide: widen the plate, or tie its top indoors too.");
}

}  // namespace hoop
