#include "studio/model/conditions.hpp"

#include <algorithm>

#include "sdk/quoted.hpp"

namespace quadrille {
namespace {

/// The parts of `text` between `mark`s, without empty ones.
std::vector<std::string_view> parts_of(std::string_view text, char mark) {
  std::vector<std::string_view> parts;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(mark), text.size());
    if (end > 0) parts.push_back(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return parts;
}

bool is_plain_key(std::string_view word) {
  return !word.empty() &&
         std::ranges::all_of(word, [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-'; });
}

Result<Condition> parse_condition(std::string_view text) {
  using Test = Condition::Test;
  const auto make = [&](std::size_t key, std::size_t mark, Test test) {
    const std::string_view word = text.substr(key + mark);
    return Condition{std::string(text.substr(0, key)), test, std::string(test == Test::above_zero ? "" : word)};
  };
  const std::size_t unlike = text.find("!="), equal = text.find('='), above = text.find(">0");
  const auto reads = [&](std::size_t key, std::size_t mark) {
    return is_plain_key(text.substr(0, key)) && is_plain_key(text.substr(key + mark));
  };
  if (unlike != text.npos && reads(unlike, 2)) return Result<Condition>::good(make(unlike, 2, Test::is_not));
  if (above != text.npos && above + 2 == text.size() && is_plain_key(text.substr(0, above)))
    return Result<Condition>::good(make(above, 2, Test::above_zero));
  if (equal != text.npos && reads(equal, 1)) return Result<Condition>::good(make(equal, 1, Test::is));
  return Result<Condition>::bad(quoted(text) + " is no condition: key=choice, key!=choice or key>0 would be accepted.");
}

bool holds(const ParameterTable& table, const ValueMap& values, const Condition& condition) {
  const Parameter* other = find_parameter(table, condition.key);
  if (other == nullptr) return true;
  const Value& value = value_of(values, *other);
  if (condition.test == Condition::Test::above_zero) return value.number > 0;
  const bool flag = other->kind == Kind::flag;
  const bool same = flag ? (value.number != 0) == (condition.word == "yes") : value.text == condition.word;
  return same == (condition.test == Condition::Test::is);
}

std::string label_of(const Parameter& other, const std::string& word) {
  const auto choice = std::ranges::find(other.choices, word, &Choice::key);
  return choice == other.choices.end() ? word : choice->label;
}

std::string in_words(const ParameterTable& table, const Condition& condition) {
  const Parameter* other = find_parameter(table, condition.key);
  const std::string label = other ? other->label : condition.key;
  if (condition.test == Condition::Test::above_zero) return label + " is above 0";
  return label + (condition.test == Condition::Test::is ? " is " : " is not ") +
         (other ? label_of(*other, condition.word) : condition.word);
}

}  // namespace

Result<Conditions> parse_conditions(std::string_view text) {
  Conditions all;
  for (const std::string_view word : parts_of(text, ' ')) {
    all.emplace_back();
    for (const std::string_view part : parts_of(word, '|')) {
      auto condition = parse_condition(part);
      if (!condition) return Result<Conditions>::bad(condition.error);
      all.back().push_back(*condition);
    }
    if (all.back().empty()) return Result<Conditions>::bad(quoted(word) + " is no condition.");
  }
  return Result<Conditions>::good(std::move(all));
}

std::string fault_of_conditions(const ParameterTable& table, const Parameter& parameter) {
  for (const auto& alternatives : parameter.only_with)
    for (const Condition& condition : alternatives) {
      const auto other = std::ranges::find(table, condition.key, &Parameter::key);
      if (other == table.end() || &*other == &parameter)
        return "depends on " + quoted(condition.key) + ", which is no other parameter.";
      const bool above = condition.test == Condition::Test::above_zero;
      const bool askable = above ? is_number(other->kind) && other->kind != Kind::flag
                           : other->kind == Kind::choice
                               ? std::ranges::find(other->choices, condition.word, &Choice::key) != other->choices.end()
                           : other->kind == Kind::flag ? condition.word == "yes" || condition.word == "no"
                                                       : false;
      if (!askable)
        return "depends on " + quoted(condition.key + (above ? ">0" : "=" + condition.word)) +
               ", which that parameter can never be asked.";
    }
  return {};
}

bool applies_now(const ParameterTable& table, const ValueMap& values, const Parameter& parameter) {
  return std::ranges::all_of(parameter.only_with, [&](const std::vector<Condition>& alternatives) {
    return std::ranges::any_of(alternatives,
                               [&](const Condition& condition) { return holds(table, values, condition); });
  });
}

std::string conditions_in_words(const ParameterTable& table, const Parameter& parameter) {
  std::string text;
  for (const auto& alternatives : parameter.only_with) {
    std::string one;
    for (const Condition& condition : alternatives) {
      const std::string words = in_words(table, condition);
      // Of several choices of one parameter its label is said once: "Pattern is Stripes or Zigzag".
      const bool again = condition.test == Condition::Test::is && &condition != &alternatives.front() &&
                         alternatives.front().key == condition.key;
      const std::size_t from = again ? words.find(" is ") + 4 : 0;
      one += (one.empty() ? "" : " or ") + words.substr(from);
    }
    text += (text.empty() ? "" : ", and ") + one;
  }
  return text;
}

}  // namespace quadrille
