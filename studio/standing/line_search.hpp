// The search for the lines that let a piece bear the most.
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <vector>

#include "studio/standing/anchor_spots.hpp"

namespace quadrille {

/// Lines as tried, dead weights as heavy as they are to be, and what the piece bears with them.
struct TriedLines {
  std::vector<SecuringLine> lines;
  double limit_gust_m_s = 0;
};

using Choices = std::vector<LineChoice>;

struct FoundLines : TriedLines {
  Choices choices;
};

/// Tries lines on a piece: what it bears with them where that is more than `above_m_s`, otherwise nothing, known with much
/// less work.
using TryLines = std::function<std::optional<TriedLines>(std::vector<SecuringLine> lines, double above_m_s)>;

/// Sets that a search also begins with; empty ones are passed over.
struct Beginnings {
  Choices
      fewer;  ///< one line fewer than is sought: the best such set, to which one is added where plain ways are barred
  Choices known;  ///< as many as are sought
};

/// The set of `count` lines that bears the most, of those that bear more than `above_m_s`. A climb: it begins with the sets
/// of line_sets() as near to them as the site allows, and with what is known, and goes on from the best of those by single
/// steps (see AnchorSpots::beside()), of one line or of those that mirror each other, until none of them bears a fiftieth
/// more: so a set that is plainer to rig is kept over one that is hardly better. Where the site bars a plain way, it also
/// begins with all sets where those are at most 150, with all pairs of a coarse choice of spots (for three and four lines
/// with mirrored pairs of them), and with the best set of one line fewer and a further one. So what is found is the best of
/// all that lies near its beginnings. At most `most_tries` sets are tried.
std::optional<FoundLines> best_lines_of(std::size_t count, const AnchorSpots& spots, double above_m_s,
                                        const TryLines& tried, const Beginnings& from = {}, int most_tries = 400);

}  // namespace quadrille
