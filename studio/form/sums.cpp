#include "studio/form/sums.hpp"

#include <array>
#include <cmath>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "sdk/number.hpp"
#include "sdk/quantity.hpp"
#include "sdk/quoted.hpp"
#include "studio/form/trimmed.hpp"

namespace quadrille {
namespace {

/// Thrown inside this file only.
struct BadSum {
  std::string sentence;
};

constexpr UnitOfMeasure no_unit[] = {{""}};
constexpr Measure plain_number{"number", "2.4, 2,4 or 1/2", no_unit};

/// One sign, or an operand with its unit.
struct Token {
  char sign = 0;  ///< one of + - * / ( ); 0: an operand
  std::string operand;
};

std::string with_plain_signs(std::string_view text) {
  std::string plain = with_plain_marks(text);
  static constexpr std::array<std::pair<std::string_view, std::string_view>, 6> signs{
      {{"×", "*"}, {"·", "*"}, {"⋅", "*"}, {"÷", "/"}, {" x ", " * "}, {" X ", " * "}}};
  for (const auto& [sign, written] : signs)
    for (auto at = plain.find(sign); at != std::string::npos; at = plain.find(sign, at + written.size()))
      plain.replace(at, sign.size(), written);
  return plain;
}

class Tokens {
 public:
  Tokens(std::string_view text, const Measure& measure) : text_(text), measure_(measure) {}

  std::vector<Token> all() {
    while (at_ < text_.size()) {
      const char c = text_[at_];
      const bool sign = c == '+' || c == '*' || c == '(' || c == ')' || (c == '/' && !is_fraction() && !is_in_unit()) ||
                        (c == '-' && !is_inside_quantity());
      if (sign) {
        end_operand();
        tokens_.push_back({c, {}});
      } else {
        operand_ += c;
      }
      ++at_;
    }
    end_operand();
    return std::move(tokens_);
  }

 private:
  void end_operand() {
    if (const std::string_view operand = trimmed_text(operand_); !operand.empty())
      tokens_.push_back({0, std::string(operand)});
    operand_.clear();
  }
  /// "km/h": letters on both sides.
  bool is_in_unit() const {
    const auto is_letter = [](char c) { return to_lower(c) >= 'a' && to_lower(c) <= 'z'; };
    return !operand_.empty() && is_letter(operand_.back()) && at_ + 1 < text_.size() && is_letter(text_[at_ + 1]);
  }
  /// "1/2" and "6 1/2": a whole number just before and a digit just behind. After another stroke it divides again, so that
  /// 20ft/3/2 is a sixth.
  bool is_fraction() const {
    const bool divides = !tokens_.empty() && tokens_.back().sign == '/';
    if (divides || operand_.empty() || at_ + 1 >= text_.size() || !is_digit(text_[at_ + 1])) return false;
    std::size_t first = operand_.size();
    while (first > 0 && is_digit(operand_[first - 1])) --first;
    const bool whole = first < operand_.size() && (first == 0 || is_blank(operand_[first - 1]) ||
                                                   operand_[first - 1] == '-' || operand_[first - 1] == '\'');
    return whole;
  }
  /// Between the feet and the inches, or a whole number and its fraction, or in an exponent: what stands around it up to
  /// the next blank or sign is a quantity only with it.
  bool is_inside_quantity() const {
    if (operand_.empty() || is_blank(operand_.back())) return false;
    const std::string_view rest = text_.substr(at_);
    const std::size_t end = std::min(rest.find_first_of(" \t+*()-", 1), rest.size());
    const std::string joined = operand_ + std::string(rest.substr(0, end));
    return bool(parse_quantity(joined, measure_));
  }

  std::string_view text_;
  const Measure& measure_;
  std::size_t at_ = 0;
  std::string operand_;
  std::vector<Token> tokens_;
};

/// A value on the way: of the measure, in its base unit, or a plain number.
struct Term {
  double number = 0;
  bool plain = false;
};

/// Reads tokens from left to right. Source: recursive descent by the usual grammar of sums, products and brackets.
class SumReader {
 public:
  SumReader(std::vector<Token> tokens, const Measure& measure) : tokens_(std::move(tokens)), measure_(measure) {}

  Term all() {
    const Term term = sum();
    if (at_ < tokens_.size()) throw BadSum{before_what() + " something is missing."};
    return term;
  }

 private:
  char sign() const { return at_ < tokens_.size() ? tokens_[at_].sign : '\0'; }
  std::string before_what() const {
    const Token& token = tokens_[at_];
    return "Before " + quoted(token.sign ? std::string(1, token.sign) : token.operand);
  }
  std::string noun() const { return std::string(measure_.noun); }

  Term sum() {
    Term left = product();
    for (char op = sign(); op == '+' || op == '-'; op = sign()) {
      ++at_;
      const Term right = product();
      if (left.plain != right.plain)
        throw BadSum{"A number without a unit cannot be added to a " + noun() +
                     " or taken from it: write its unit too."};
      left.number += op == '+' ? right.number : -right.number;
    }
    return left;
  }
  Term product() {
    Term left = factor();
    for (char op = sign(); op == '*' || op == '/'; op = sign()) {
      ++at_;
      const Term right = factor();
      if (op == '*' && !left.plain && !right.plain)
        throw BadSum{"Two quantities cannot be multiplied: one of them is to be a plain number, as in 3 * 9."};
      if (op == '/' && !right.plain) throw BadSum{"A " + noun() + " can be divided by a plain number only."};
      if (op == '/' && right.number == 0) throw BadSum{"Nothing can be divided by 0."};
      left = {op == '*' ? left.number * right.number : left.number / right.number, left.plain && right.plain};
    }
    return left;
  }
  Term factor() {
    const char op = sign();
    if (at_ == tokens_.size()) throw BadSum{"At the end something is missing."};
    if (op == '+' || op == '-') {
      ++at_;
      Term term = factor();
      if (op == '-') term.number = -term.number;
      return term;
    }
    if (op == '(') {
      ++at_;
      const Term inner = sum();
      if (sign() != ')') throw BadSum{"A bracket is not closed."};
      ++at_;
      return inner;
    }
    if (op != 0) throw BadSum{before_what() + " something is missing."};
    return operand(tokens_[at_++].operand);
  }
  Term operand(const std::string& text) const {
    if (const auto plain = parse_quantity(text, plain_number)) return {*plain, true};
    const auto quantity = parse_quantity(text, measure_);
    if (!quantity) throw BadSum{quantity.error};
    return {*quantity, false};
  }

  std::vector<Token> tokens_;
  const Measure& measure_;
  std::size_t at_ = 0;
};

std::string in_unit(double number, std::string_view unit) {
  return print_number(number) + (unit.empty() ? "" : " " + std::string(unit));
}

}  // namespace

Result<double> read_sum(std::string_view text, const Measure& measure, std::string_view bare_unit) {
  using Answer = Result<double>;
  constexpr std::size_t longest = 200;  // brackets and signs are read in each other
  if (text.size() > longest) return Answer::bad("A sum can have at most 200 signs; shorten it.");
  const std::string plain = with_plain_signs(text);
  std::string_view sum = trimmed_text(plain);
  if (take(sum, '=')) sum = trimmed_text(sum);
  std::vector<Token> tokens = Tokens(sum, measure).all();
  if (tokens.empty()) return parse_quantity("", measure);
  try {
    const Term term = SumReader(std::move(tokens), measure).all();
    if (!std::isfinite(term.number)) return Answer::bad(quoted(text) + " is beyond the numbers that can be used.");
    return term.plain ? parse_quantity(in_unit(term.number, bare_unit), measure) : Answer::good(term.number);
  } catch (const BadSum& bad) {
    return Answer::bad(bad.sentence);
  }
}

}  // namespace quadrille
