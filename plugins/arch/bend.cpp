#include "plugins/arch/bend.hpp"

#include <cmath>
#include <string>

#include "plugins/arch/topple.hpp"
#include "sdk/material.hpp"
#include "sdk/number.hpp"
#include "sdk/units.hpp"

namespace quadrille::arch {
namespace {

/// Up to this share of the rod's length sideways_limit is sure of its answer.
constexpr double most_checked_span = 0.87;

double least_share(Feet feet) { return feet == Feet::pinned ? 0.02 : 0.0; }

/// Largest curvature at a span given as a share of the rod's length, in 1/L. It falls to a least value and rises again.
double curvature_at(Feet feet, double share) { return Elastica(feet, share).largest_curvature(); }

/// The share of the span at which the rod is bent least.
double easiest_share(Feet feet) {
  double from = least_share(feet), to = Elastica::most_span;
  for (int i = 0; i < 60; ++i) {
    const double low = from + (to - from) / 3, high = to - (to - from) / 3;
    if (curvature_at(feet, low) > curvature_at(feet, high))
      from = low;
    else
      to = high;
  }
  return (from + to) / 2;
}

/// Between a share that is borne and one that may not be, the last that is.
double last_borne(Feet feet, double borne, double other, double most_curvature) {
  if (curvature_at(feet, other) <= most_curvature) return other;
  for (int i = 0; i < 50; ++i) {
    const double middle = (borne + other) / 2;
    (curvature_at(feet, middle) <= most_curvature ? borne : other) = middle;
  }
  return borne;
}

std::string reachable(const Request& request) {
  const auto spans = bearable_spans(request);
  if (!spans) return "it bears no span at all, being too thick for its length.";
  return "it bears spans " + (spans->least_m > 0 ? "from " + print_at_least(spans->least_m) + " to " : "up to ") +
         print_at_most(spans->greatest_m) + ".";
}

/// The nearest span that the rod bears; empty where it bears none.
std::string span_setting(const Request& request) {
  const auto spans = bearable_spans(request);
  if (!spans) return {};
  return "span=" + print_number(std::clamp(request.span_m, spans->least_m, spans->greatest_m)) + "m";
}

}  // namespace

std::optional<SpanRange> bearable_spans(const Request& request) {
  const double length = request.rod_length_m, most_curvature = length / request.rod.bend_limit_m();
  const double easiest = easiest_share(request.feet);
  if (curvature_at(request.feet, easiest) > most_curvature) return std::nullopt;
  const double least = length * last_borne(request.feet, easiest, least_share(request.feet), most_curvature),
               greatest = length * last_borne(request.feet, easiest, Elastica::most_span, most_curvature);
  const SpanRange range{std::ceil(least * 100 - 1e-6) / 100, std::floor(greatest * 100 + 1e-6) / 100};
  return range.least_m <= range.greatest_m ? std::optional(range) : std::nullopt;
}

std::optional<Elastica> bend_rod(const Request& request) {
  if (request.frame != FrameKind::flexible_rod) return std::nullopt;
  const double length = request.rod_length_m, span = request.span_m / length;
  if (request.span_m >= length)
    throw Infeasible("span",
                     "The span of " + print_both(request.span_m) + " is as long as the rod of " + print_both(length) +
                         " or longer: " + reachable(request),
                     {}, span_setting(request));
  if (!Elastica::span_is_valid(request.feet, span))
    throw Infeasible("span",
                     "At a span of " + print_both(request.span_m) + " a rod of " + print_both(length) +
                         (span > 0.5 ? " is all but straight: " : " free to turn at its feet closes on itself: ") +
                         reachable(request),
                     {}, span_setting(request));
  return Elastica(request.feet, span);
}

void add_bend_facts(Piece& piece, const Request& request, const Elastica& elastica) {
  const double length = request.rod_length_m, stiffness = request.rod.bending_stiffness_nm2();
  const double curvature = elastica.largest_curvature() / length;
  const auto add = [&](const char* key, double number) { piece.facts.push_back({key, to_twelve_digits(number)}); };
  add("foot_push_n", elastica.thrust() * stiffness / (length * length));
  add("foot_moment_nm", elastica.foot_curvature() * stiffness / length);
  add("widest_at_m", elastica.widest_at() * length);
  add("bend_radius_m", 1 / curvature);
  add("bend_limit_m", request.rod.bend_limit_m());
  add("bend_stress_pa", request.rod.material->young_pa * request.rod.section.outer_m / 2 * curvature);
  add("bend_energy_j", elastica.energy() * stiffness / length);
  // A foot that turns freely holds nothing upright: it topples without any weight.
  const auto limit = request.feet == Feet::pinned           ? std::optional(0.0)
                     : elastica.span() <= most_checked_span ? sideways_limit(elastica.span())
                                                            : std::nullopt;
  if (limit) add("topple_weight_n_per_m", *limit * stiffness / (length * length * length));
}

void refuse_sharp_bend(const Piece& piece, const Request& request) {
  const double radius = find_fact(piece, "bend_radius_m").value_or(0),
               limit = find_fact(piece, "bend_limit_m").value_or(0);
  if (radius <= 0 || radius >= limit) return;
  const double outer = request.rod.section.outer_m;
  throw Infeasible("rod-diameter",
                   "The rod would bend to a radius of " + print_both(radius) + "; a rod of " +
                       print_fixed(outer * 1000, 1) + " mm in " + word_of(*request.rod.material) + " bears " +
                       print_at_least(limit) + " or more. Take a rod diameter of at most " +
                       print_fixed(std::floor(outer * 1e4 * radius / limit) / 10, 1) +
                       " mm, another rod material or a longer rod; as it is " + reachable(request),
                   piece, "rod-diameter=" + print_number(std::floor(outer * 1e4 * radius / limit) / 1e4) + "m");
}

void warn_of_toppling(Piece& piece, const Request& request) {
  if (request.feet == Feet::pinned)
    return warn(piece, "feet", "Feet that are free to turn hold nothing upright: the arch stands only by its lines.");
  if (request.frame != FrameKind::flexible_rod) return;
  const auto limit = find_fact(piece, "topple_weight_n_per_m");
  if (!limit)
    return warn(
        piece, "span",
        "Not checked whether the arch flops over sideways, because it is too flat for that: hold its crown with "
        "lines, indoors too, or take a span of at most " +
            print_at_most(most_checked_span * request.rod_length_m) + ".");
  const double weight = find_fact(piece, "weight_n_per_m").value_or(0);
  if (weight > *limit)
    warn(piece, "rod-diameter",
         "Dressed it weighs " + print_mass_per_length(weight / gravity) + ", and flops over sideways above " +
             print_mass_per_length(*limit / gravity) +
             " unless lines hold its crown: take a thicker rod, or tie it indoors too.");
}

}  // namespace quadrille::arch
