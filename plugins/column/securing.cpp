#include "plugins/column/securing.hpp"

namespace quadrille::column {

void add_anchoring_rules(Piece& piece, const Request&) {
  constexpr const char* practice = "common practice, no source";
  const auto rule = [&](Requirement requirement, When when, const char* key, const char* text, const char* reason) {
    piece.anchoring.push_back({requirement, when, key, text, reason, practice});
  };
  rule(Requirement::front_and_back, When::outdoors, "top-lines",
       "Tie the top to anchors in front and behind, a line each way, or to three anchors evenly round it.",
       "A column tips over the edge of its plate in a breeze that moves nothing else.");
  rule(Requirement::clusters_to_frame, When::outdoors, "clusters-to-frame",
       "Tie every third cluster to the pole with line, and the first and the last.",
       "Wind turns and lifts clusters that are only twisted on.");
  rule(Requirement::clusters_together, When::outdoors, "clusters-together",
       "Run a line from cluster to cluster up the whole column.",
       "If a joint of the pole parts the dressing stays in one piece.");
  rule(Requirement::ballast, When::always, "ballast-low", "Put the ballast on the plate before the pole is raised.",
       "A bare plate tips with the first push.");
  rule(Requirement::joints, When::always, "tape-joints", "Tape every joint of the pole.",
       "Tight packing pushes joints apart.");
  rule(Requirement::clearance, When::walkway, "off-the-way", "Keep plate, ballast and lines off the way people walk.",
       "People trip over what they do not look for.");
  rule(Requirement::ballast, When::hard_ground, "no-stakes",
       "Anchor lines to dead weights or a structure the site owner has allowed.", "Stakes do not hold in hard ground.");
}

void warn_of_standing(Piece& piece, const Request& request) {
  if (request.base.plate_width_m <= 0)
    warn(piece, "plate-width",
         "Without a base plate the pole must be set in the ground or tied: nothing else holds it up.");
  else if (request.height_m > 8 * request.base.plate_width_m)
    warn(piece, "plate-width",
         "The column is more than eight times as high as its plate is wide: widen the plate, or tie the top indoors "
         "too.");
}

}  // namespace quadrille::column
