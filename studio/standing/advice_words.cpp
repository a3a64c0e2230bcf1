// Advice on lines, as whoever rigs them reads it.
#include <array>
#include <cmath>
#include <set>

#include "sdk/vec.hpp"
#include "studio/model/securing.hpp"
#include "studio/standing/advice.hpp"
#include "studio/standing/number_word.hpp"
#include "studio/standing/site_words.hpp"

namespace quadrille {

std::string ways_in_words(const std::vector<SecuringLine>& lines, const PlacedPiece& placed, const Piece& piece,
                          const Area& area) {
  struct Sector {
    const char* words;
    int eighth;
  };
  constexpr std::array<Sector, 8> sectors{{{"to the front", 6},
                                           {"to the front left", 5},
                                           {"to the front right", 7},
                                           {"to the back", 2},
                                           {"to the back left", 3},
                                           {"to the back right", 1},
                                           {"to the left", 4},
                                           {"to the right", 0}}};
  std::array<std::size_t, 8> leaving{};
  for (const SecuringLine& line : lines)
    if (const auto run = run_of(line, placed, piece, area)) {
      const Vec3 way = run->to - run->from;
      ++leaving[static_cast<std::size_t>(std::lround(std::atan2(way.y(), way.x()) / (pi / 4)) + 8) % 8];
    }
  std::string words;
  for (const Sector& sector : sectors) {
    const std::size_t many = leaving[static_cast<std::size_t>(sector.eighth)];
    if (many == 0) continue;
    if (!words.empty()) words += ", ";
    words += number_word(many) + " " + sector.words;
  }
  return words;
}

std::string advice_in_words(const LineAdvice& advice, const Area& area, const Piece& piece, Units units) {
  std::string words = advice.words;
  std::set<std::string> ties, kinds;
  for (const SecuringLine& line : advice.lines) {
    words += (ties.empty() ? "; tie " : "; ") + line.tie;
    const auto tie = find_tie_point(piece, line.tie);
    if (ties.insert(line.tie).second && tie) words += " (" + piece.tie_points[*tie].label + ")";
    words += " to " + anchor_in_words(line, area, piece, units);
    if (const Cord* const cord = find_cord(line.cord)) kinds.insert(cord->label);
  }
  if (advice.ballast_kg)
    words += "; with " + print_mass_needed(*advice.ballast_kg, units, 0) + " of ballast on each foot";
  for (const std::string& kind : kinds) words += (kind == *kinds.begin() ? "; cord: " : ", ") + kind;
  return words;
}

std::string no_advice_in_words(const PieceStanding& answer) {
  if (!answer.outdoors || !answer.forecast_known || answer.hangs || answer.checks.empty()) return {};
  if (answer.verdict == Verdict::watch) return "No lines that the site allows make it fine in that gust.";
  return answer.verdict == Verdict::no ? "No lines that the site allows make it bear more." : "";
}

std::string reaching_in_words(const LineAdvice& advice, double gust_m_s) {
  switch (advice.reaches) {
    case Reaching::fine:
      return "and is fine in that gust";
    case Reaching::watched:
      return "and stays up in that gust, watched";
    case Reaching::less:
      break;
  }
  return advice.limit_gust_m_s < gust_m_s ? "which is not enough for that gust"
                                          : "and is to be taken down before that gust";
}

}  // namespace quadrille
