// A finding as a sentence: the one place where it gets the names of its area and piece.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "studio/model/event.hpp"
#include "studio/model/finding.hpp"

namespace quadrille {

/// "Gate, Welcome arch": the area and the piece that it is about; what has no name goes by its id ("piece 'p1'"). Empty
/// where it is about the whole event.
std::string place_of(const Finding& finding, const Event& event);

/// Where, what is so, and what would mend it, on one line: "Gate, Welcome arch: … (rod-length) …". The key is left out
/// where the text has it as a word of its own, in capitals or not.
std::string sentence_of(const Finding& finding, const Event& event);

/// Findings that say the same of several pieces of one area, told once.
struct ToldFinding {
  Weight weight = Weight::note;
  std::string place;                  ///< "Foyer, Columns 1 to 6"; empty: the whole event
  std::string sentence;               ///< the same with what was found: "Foyer, Columns 1 to 6: …"
  std::vector<std::size_t> findings;  ///< places in the list it was made from, rising; at least one
};

/// Every finding once, in the order of the first of each: those that differ in nothing but the piece share a sentence.
std::vector<ToldFinding> told(const Findings& findings, const Event& event);

/// "Columns 1 to 4 and 6, Gate arch and Frame": names that differ in their last number are drawn together.
std::string print_names(const std::vector<std::string>& names);

/// Whether two names differ in nothing but the number at their end.
bool differ_in_number(const std::string& one, const std::string& other);

/// "note", "warning" or "problem".
std::string_view name_of(Weight weight);

/// `text` followed by `key` in brackets, which is put before a full stop at its end; `text` alone where `key` is empty
/// or stands in it as a word of its own.
std::string with_key(std::string text, std::string_view key);

}  // namespace quadrille
