#include "studio/model/finding_words.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <optional>

#include "sdk/number.hpp"
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

/// A name and the number at its end, which may be missing: "Column 12" is "Column " and 12.
struct NumberedName {
  std::string stem;
  std::optional<std::int64_t> number;
};

NumberedName taken_apart(const std::string& name) {
  const std::size_t last = name.find_last_not_of("0123456789");
  const std::size_t digits = last == std::string::npos ? 0 : last + 1;
  if (digits == 0 || name.size() - digits > 9 || name.size() == digits || name[digits] == '0') return {name, {}};
  return {name.substr(0, digits), parse_whole(name.substr(digits))};
}

/// The numbers as runs: "1 to 4 and 6", "2 and 4".
std::string print_numbers(std::vector<std::int64_t> numbers) {
  std::ranges::sort(numbers);
  std::vector<std::string> runs;
  for (std::size_t from = 0; from < numbers.size();) {
    std::size_t to = from;
    while (to + 1 < numbers.size() && numbers[to + 1] == numbers[to] + 1) ++to;
    runs.push_back(std::to_string(numbers[from]));
    if (to == from + 1) runs.push_back(std::to_string(numbers[to]));
    if (to > from + 1) runs.back() += " to " + std::to_string(numbers[to]);
    from = to + 1;
  }
  std::string text;
  for (std::size_t i = 0; i < runs.size(); ++i) text += (i == 0 ? "" : i + 1 == runs.size() ? " and " : ", ") + runs[i];
  return text;
}

/// "Ceiling swags " of "Ceiling swag ", for the words of the trade; what else a name ends in stays as it was given.
std::string of_several(const std::string& stem) {
  constexpr std::array<std::string_view, 14> words{"arch",    "column", "garland", "swag", "frame",
                                                   "wall",    "pillar", "tower",   "post", "hoop",
                                                   "cluster", "table",  "balloon", "ring"};
  const std::size_t end = stem.find_last_not_of(' ');
  if (end == std::string::npos || end + 1 == stem.size()) return stem;
  const std::size_t begin = stem.find_last_of(' ', end) + 1;
  const std::string last = in_lower_case(stem.substr(begin, end + 1 - begin));
  if (std::ranges::find(words, last) == words.end()) return stem;
  return stem.substr(0, end + 1) + (last == "arch" ? "es" : "s") + stem.substr(end + 1);
}

std::string area_name(const Finding& finding, const Event& event) {
  if (finding.area.empty()) return {};
  const auto area = std::ranges::find_if(event.areas, [&](const auto& a) { return a->id == finding.area; });
  return name_or_id(area == event.areas.end() ? "" : (*area)->name, "area", finding.area);
}

std::string piece_name(const Finding& finding, const Event& event) {
  if (finding.piece.empty()) return {};
  const PlacedPiece* piece = find_piece(event, finding.piece);
  return name_or_id(piece ? piece->name : "", "piece", finding.piece);
}

std::string joined(const std::string& area, const std::string& pieces) {
  return area + (area.empty() || pieces.empty() ? "" : ", ") + pieces;
}

std::string sentence_at(const std::string& place, const Finding& finding) {
  std::string sentence = (place.empty() ? "" : place + ": ") + with_key(finding.text, finding.key);
  if (!finding.remedy.empty()) sentence += " " + finding.remedy;
  return sentence;
}

bool differ_in_piece_alone(const Finding& a, const Finding& b) {
  return !a.piece.empty() && !b.piece.empty() && a.weight == b.weight && a.code == b.code && a.area == b.area &&
         a.key == b.key && a.text == b.text && a.remedy == b.remedy;
}

}  // namespace

std::string place_of(const Finding& finding, const Event& event) {
  return joined(area_name(finding, event), piece_name(finding, event));
}

std::string print_names(const std::vector<std::string>& names) {
  struct Group {
    std::string stem;
    std::vector<std::int64_t> numbers;
  };
  std::vector<Group> groups;
  for (const std::string& name : names) {
    const NumberedName parts = taken_apart(name);
    auto group = groups.end();
    if (parts.number)
      group = std::ranges::find_if(groups, [&](const Group& g) { return !g.numbers.empty() && g.stem == parts.stem; });
    if (group == groups.end()) group = groups.insert(groups.end(), Group{parts.stem, {}});
    if (parts.number) group->numbers.push_back(*parts.number);
  }
  std::string text;
  for (std::size_t i = 0; i < groups.size(); ++i) {
    // "Columns 1 and 2, and Gate"
    const char* const last = text.find(" and ") == std::string::npos ? " and " : ", and ";
    if (i > 0) text += i + 1 == groups.size() ? last : ", ";
    text += groups[i].numbers.size() > 1 ? of_several(groups[i].stem) + print_numbers(groups[i].numbers)
                                         : groups[i].stem + print_numbers(groups[i].numbers);
  }
  return text;
}

bool differ_in_number(const std::string& one, const std::string& other) {
  const NumberedName first = taken_apart(one), second = taken_apart(other);
  return first.number && second.number && first.stem == second.stem;
}

std::vector<ToldFinding> told(const Findings& findings, const Event& event) {
  std::vector<ToldFinding> all;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    const auto known = std::ranges::find_if(all, [&](const ToldFinding& one) {
      return differ_in_piece_alone(findings[one.findings.front()], findings[i]);
    });
    if (known == all.end())
      all.push_back({findings[i].weight, {}, {}, {i}});
    else
      known->findings.push_back(i);
  }
  for (ToldFinding& one : all) {
    const Finding& first = findings[one.findings.front()];
    std::vector<std::string> names;
    for (const std::size_t i : one.findings) names.push_back(piece_name(findings[i], event));
    one.place = joined(area_name(first, event), print_names(names));
    one.sentence = sentence_at(one.place, first);
  }
  return all;
}

std::string with_key(std::string text, std::string_view key) {
  if (key.empty() || has_word(text, key)) return text;
  const std::string added = " (" + std::string(key) + ")";
  text.insert(text.ends_with('.') ? text.size() - 1 : text.size(), added);
  return text;
}

std::string sentence_of(const Finding& finding, const Event& event) {
  return sentence_at(place_of(finding, event), finding);
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
