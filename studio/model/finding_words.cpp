#include "studio/model/finding_words.hpp"

#include <algorithm>

#include "sdk/quantity.hpp"
#include "sdk/quoted.hpp"

namespace quadrille {
namespace {

std::string name_or_id(const std::string& name, const char* what, const std::string& id) {
  return name.empty() ? what + (" " + quoted(id)) : name;
}

bool is_of_word(char c) {
  return is_digit(c) || (to_lower(c) >= 'a' && to_lower(c) <= 'z') || c == '-' || static_cast<unsigned char>(c) >= 0x80;
}

bool has_word(std::string_view text, std::string_view word) {
  const std::string all = in_lower_case(text), wanted = in_lower_case(word);
  for (std::size_t at = all.find(wanted); at != std::string::npos; at = all.find(wanted, at + 1)) {
    const std::size_t end = at + wanted.size();
    if ((at == 0 || !is_of_word(all[at - 1])) && (end == all.size() || !is_of_word(all[end]))) return true;
  }
  return false;
}

}  // namespace

std::string place_of(const Finding& finding, const Event& event) {
  std::string place;
  if (!finding.area.empty()) {
    const auto area = std::ranges::find_if(event.areas, [&](const auto& a) { return a->id == finding.area; });
    place = name_or_id(area == event.areas.end() ? "" : (*area)->name, "area", finding.area);
  }
  if (!finding.piece.empty()) {
    const PlacedPiece* piece = find_piece(event, finding.piece);
    place += (place.empty() ? "" : ", ") + name_or_id(piece ? piece->name : "", "piece", finding.piece);
  }
  return place;
}

std::string with_key(std::string text, std::string_view key) {
  if (key.empty() || has_word(text, key)) return text;
  const std::string added = " (" + std::string(key) + ")";
  text.insert(text.ends_with('.') ? text.size() - 1 : text.size(), added);
  return text;
}

std::string sentence_of(const Finding& finding, const Event& event) {
  const std::string place = place_of(finding, event);
  std::string sentence = (place.empty() ? "" : place + ": ") + with_key(finding.text, finding.key);
  if (!finding.remedy.empty()) sentence += " " + finding.remedy;
  return sentence;
}

std::string_view name_of(Weight weight) {
  switch (weight) {
    case Weight::note:
      return "note";
    case Weight::warning:
      return "warning";
    case Weight::problem:
      return "problem";
  }
  return "problem";
}

}  // namespace quadrille
