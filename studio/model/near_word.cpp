#include "studio/model/near_word.hpp"

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <utility>
#include <vector>

namespace quadrille {
namespace {

constexpr std::size_t longest_compared = 64;

/// How many letters must be changed, put in, taken out or swapped with their neighbour. Source: F. J. Damerau, 1964, in
/// the form in which no letter is touched twice.
std::size_t distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> before(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 1; i <= a.size(); ++i) {
    before = std::exchange(last, row);
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      row[j] = std::min({last[j - 1] + (a[i - 1] != b[j - 1]), last[j] + 1, row[j - 1] + 1});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) row[j] = std::min(row[j], before[j - 2] + 1);
    }
  }
  return row.back();
}

std::size_t slips_in(std::size_t letters) {
  const std::size_t slips = letters <= 5 ? 1 : letters <= 8 ? 2 : 3;
  return letters == 0 ? 0 : std::min(slips, (letters - 1) / 2);
}

}  // namespace

std::optional<std::string> near_word(std::string_view typed, std::span<const std::string> words) {
  if (typed.size() > longest_compared) return std::nullopt;
  std::optional<std::string> nearest;
  std::size_t least = slips_in(typed.size()) + 1;
  for (const std::string& word : words) {
    if (word.size() > longest_compared) continue;
    const std::size_t slips = distance(typed, word);
    if (slips >= least) continue;
    least = slips;
    nearest = word;
  }
  return nearest;
}

}  // namespace quadrille
