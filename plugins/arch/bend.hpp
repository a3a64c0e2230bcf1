// The flexible rod: whether it can be bent to its span, and the facts of its bending.
#pragma once

#include <optional>

#include "plugins/arch/elastica.hpp"
#include "plugins/arch/request.hpp"

namespace quadrille::arch {

/// Least and greatest span [m] at which the rod is bent no more tightly than its material bears, to the centimetre
/// within; nothing where there is none.
struct SpanRange {
  double least_m = 0, greatest_m = 0;
};
std::optional<SpanRange> bearable_spans(const Request& request);

/// The bent rod; nothing for a rigid frame. Throws Infeasible where the span cannot be reached with the rod.
std::optional<Elastica> bend_rod(const Request& request);

/// Facts of a bent rod, to 12 digits.
void add_bend_facts(Piece& piece, const Request& request, const Elastica& elastica);

/// Throws Infeasible, with the piece so far, where the rod is bent more tightly than its material bears. The facts must
/// be there.
void refuse_sharp_bend(const Piece& piece, const Request& request);

/// Warns of feet that hold nothing, and of an arch that flops over sideways or for which that cannot be told.
void warn_of_toppling(Piece& piece, const Request& request);

}  // namespace quadrille::arch
