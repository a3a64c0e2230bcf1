// The organic garland: balloons of mixed sizes packed around a line of any shape.
#include <algorithm>
#include <cmath>
#include <string>

#include "plugins/garland/colours.hpp"
#include "plugins/garland/materials.hpp"
#include "plugins/garland/measure.hpp"
#include "plugins/garland/pack.hpp"
#include "plugins/garland/parameters.hpp"
#include "plugins/garland/sizes.hpp"
#include "sdk/dressing.hpp"
#include "sdk/hidden.hpp"
#include "sdk/piece.hpp"

namespace quadrille::garland {
namespace {

/// Arc lengths at which the thickness is told: evenly along the line.
std::vector<double> thickness_places(const Curve& line) {
  constexpr int stations = 11;
  std::vector<double> places;
  for (int i = 0; i < stations; ++i) places.push_back((i + 0.5) / stations * line.length_m());
  return places;
}

/// Clusters numbered anew without gaps, and places within them; a cluster of which relaxing left nothing is gone.
void add_clusters(Piece& piece, std::vector<Ball>& balls) {
  std::uint32_t last = 0, number = 0, place = 0;
  for (Ball& ball : balls) {
    if (ball.cluster == 0) continue;
    if (ball.cluster != last) {
      last = ball.cluster;
      ++number;
      place = 0;
      piece.clusters.push_back({number, ball.at, ball.neck, ball.axis, 0});
    }
    ball.cluster = number;
    ball.place = place++;
  }
}

std::string inches(double nominal) {
  std::string text = print_number(nominal);
  std::ranges::replace(text, '.', '_');
  return text;
}

void add_facts(Piece& piece, const std::vector<Ball>& balls, const Request& request, const Curve& line,
               const Overlaps& overlaps) {
  const auto add = [&](const std::string& key, double number) { piece.facts.push_back({key, number}); };
  const auto count = static_cast<double>(balls.size());
  add("line_m", line.length_m());
  add("thickness_m", request.thickness);
  add("thickness_end_m", request.thickness_end);
  add("balloons", count);
  add("clusters", static_cast<double>(piece.clusters.size()));
  add("fillers", static_cast<double>(std::ranges::count(balls, 0u, &Ball::cluster)));
  for (std::size_t size = 0; size < request.mix.size(); ++size)
    add("balloons_" + inches(request.mix[size].nominal_in) + "in",
        static_cast<double>(std::ranges::count(balls, size, &Ball::size)));
  for (int slot = 0; slot < request.slots; ++slot)
    add(std::string("slot_") + static_cast<char>('a' + slot),
        static_cast<double>(std::ranges::count(balls, static_cast<std::uint32_t>(slot), &Ball::slot)));
  add("balloons_per_m", count / line.length_m());
  add("balloons_per_ft", count / line.length_m() * metres_per_foot);
  const auto places = thickness_places(line);
  const auto thickness = thickness_along(balls, request, line, places);
  for (std::size_t i = 0; i < places.size(); ++i) {
    const std::string station = (i < 10 ? "0" : "") + std::to_string(i) + "_m";
    add("thickness_" + station, thickness[i]);
    add("thickness_asked_" + station, request.thickness_at(places[i] / line.length_m()));
  }
  add("largest_gap_m", largest_gap(balls, request, line));
  add("deepest_overlap", overlaps.deepest);
  add("deepest_core_overlap", overlaps.deepest_core);
  add("mean_overlap", overlaps.mean);
  add("loose_balloons", static_cast<double>(overlaps.loose));
  double mass = 0;
  for (const Ball& ball : balls) mass += latex_mass_kg(request.mix[ball.size].nominal_in);
  add("mass_kg", mass);
}

/// Where the thickness misses most what is asked, and what is to blame there: the floor, a corner or the mix.
void warn_of_thickness(Piece& piece, const std::vector<Ball>& balls, const Request& request, const Curve& line) {
  double worst = 0, where = 0;
  const auto places = thickness_places(line);
  const auto thickness = thickness_along(balls, request, line, places);
  for (std::size_t i = 0; i < places.size(); ++i) {
    const double miss = std::abs(thickness[i] / request.thickness_at(places[i] / line.length_m()) - 1);
    if (miss > worst) worst = miss, where = places[i];
  }
  if (worst <= 0.1) return;
  const double half = request.thickness_at(where / line.length_m()) / 2;
  const std::string misses = "The thickness misses what is asked by " + print_fixed(100 * worst, 0) + " % at " +
                             print_both(where) + " along the line: ";
  if (line.point(where).z() < half)
    warn(piece, "path", misses + "the floor is nearer to the line than half the thickness. Raise the path there.");
  else if (line.tangent(where - half).dot(line.tangent(where + half)) < 0.7)
    warn(piece, "path", misses + "the path turns too sharply for so thick a garland. Round the corner off.");
  else
    warn(piece, "thickness", misses + "the mix has too few balloons of a size that carries it.");
}

/// What would hide the line, as things are: the parameter to change first and a sentence.
struct Remedy {
  std::string key, text;
};

Remedy remedy_for_bare_line(const Request& request) {
  constexpr double enough_fillers = 0.4;
  std::vector<Remedy> remedies;
  if (request.filler < enough_fillers)
    remedies.push_back({"filler", "raise the fillers from " + print_fixed(100 * request.filler, 0) + " % to " +
                                      print_fixed(100 * enough_fillers, 0) + " % of the balloons"});
  if (request.mix.size() == 1)
    remedies.push_back({"mix", request.mix.front().nominal_in > 5
                                   ? "give the mix a smaller size for the creases, such as 40 % of 5 in"
                                   : "give the mix a larger size too, such as 40 % of 11 in, as balloons of one size "
                                     "leave creases that take no filler"});
  if (request.core < 4)
    remedies.push_back({"core", "tie 4 balloons to a cluster, not " + std::to_string(request.core)});
  if (request.tightness > 1)
    remedies.push_back({"tightness", "lower the tightness from " + print_fixed(request.tightness, 2) + " to 1"});
  if (remedies.empty())
    remedies.push_back({"tightness", "lower the tightness further, or take more of the smaller sizes into the mix"});
  Remedy all{remedies.front().key, "To hide it "};
  for (std::size_t i = 0; i < remedies.size(); ++i)
    all.text += (i == 0 ? "" : i + 1 == remedies.size() ? ", and " : ", ") + remedies[i].text;
  // Balloons of one size leave creases whatever else is changed.
  all.text += remedies.size() > 1 && request.mix.size() > 1 ? "; the first may do." : ".";
  return all;
}

void warn_of_bare_line(Piece& piece, const Request& request, const Curve& line) {
  const HiddenSpine hidden = hidden_spine(piece.spine, piece.balloons);
  if (hidden.share >= 0.95) return;
  const Remedy remedy = remedy_for_bare_line(request);
  const double bare = 1 - hidden.share;
  piece.messages.push_back({Severity::warning, remedy.key,
                            "The line shows on " + print_fixed(100 * bare, 0) + " % of its length, " +
                                print_both(bare * line.length_m()) + " in all. " + remedy.text,
                            Topic::bare_frame});
}

void add_warnings(Piece& piece, const std::vector<Ball>& balls, const Request& request, const Curve& line) {
  warn_of_bare_line(piece, request, line);
  warn_of_thickness(piece, balls, request, line);
  const std::vector<double> fillers = filler_shares(request);
  for (std::size_t size = 0; balls.size() >= 100 && size < request.mix.size(); ++size) {
    const double share =
        static_cast<double>(std::ranges::count(balls, size, &Ball::size)) / static_cast<double>(balls.size());
    if (request.mix[size].share - share <= (balls.size() >= 300 ? 0.02 : 0.03)) continue;
    warn(piece, "mix",
         "Balloons of " + print_number(request.mix[size].nominal_in) + " in come to " + print_fixed(100 * share, 0) +
             " %, not " + print_fixed(100 * request.mix[size].share, 0) + " %: " +
             (fillers[size] > 0 ? "the creases do not take more fillers of that size."
                                : "the line does not take more of that size. More thickness gives them room."));
  }
}

Piece build(const Values& values) {
  const Request request = read_request(values);
  const Curve line = course_of(request);
  std::vector<Ball> balls = pack(request, line);
  colour(balls, request, line);
  Piece piece;
  add_clusters(piece, balls);
  for (const Ball& ball : balls) piece.balloons.push_back(balloon_of(ball, request));
  piece.spine = line.spine();
  add_facts(piece, balls, request, line, overlaps_of(balls, request));
  add_materials(piece, request, line);
  add_warnings(piece, balls, request, line);
  return piece;
}

constexpr quadrille_piece_type types[] = {piece_type<parameters, build>(
    "garland", "Organic garland", "Balloons of mixed sizes packed around a line of any shape.")};

}  // namespace
}  // namespace quadrille::garland

QUADRILLE_PIECES("quadrille.garland", "1.0.0", quadrille::garland::types)
