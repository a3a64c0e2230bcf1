#include "studio/sheets/alike_names.hpp"

#include <cstddef>

#include "studio/model/finding_words.hpp"

namespace quadrille {

std::string print_list(const std::vector<std::string>& names) {
  std::string text;
  for (std::size_t from = 0; from < names.size();) {
    std::size_t to = from + 1;
    while (to < names.size() && differ_in_number(names[to - 1], names[to])) ++to;
    const auto first = names.begin() + static_cast<std::ptrdiff_t>(from);
    const auto last = names.begin() + static_cast<std::ptrdiff_t>(to);
    text += (text.empty() ? "" : "; ") + print_names({first, last});
    from = to;
  }
  return text;
}

}  // namespace quadrille
