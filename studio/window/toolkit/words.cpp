// Words for values.
#include "studio/window/toolkit/words.hpp"

#include "studio/model/finding_words.hpp"

namespace quadrille {

std::string_view weight_text(Weight weight) {
  switch (weight) {
    case Weight::note:
      return "Note";
    case Weight::warning:
      return "Warning";
    case Weight::problem:
      return "Problem";
  }
  return "Problem";
}

std::string place_text(const Finding& finding, const Event& event) {
  const std::string place = place_of(finding, event);
  return place.empty() ? "Whole event" : place;
}

}  // namespace quadrille
