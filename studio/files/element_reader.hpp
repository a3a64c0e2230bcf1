// Reads one element of a file of ours: typed attributes, known children, and what is not known, which is kept.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "studio/files/words.hpp"
#include "studio/model/event.hpp"
#include "studio/model/finding.hpp"
#include "studio/xml/xml_tree.hpp"

namespace quadrille {

/// What is gathered while one file is read.
struct Reading {
  /// Most findings of one file that are told one by one.
  static constexpr std::size_t most_findings = 1000;
  bool newer = false;       ///< written by a newer version: what is not known is no mistake
  std::string area, piece;  ///< ids of where reading is, for the findings
  Findings findings;
  std::size_t untold = 0;  ///< how many more there were

  void add(Finding finding);
  /// All findings, the last of them about those that are untold.
  Findings take();
};

/// Throws Unreadable, with the place, where a number cannot be meant.
class ElementReader {
 public:
  /// What is not known goes to `kept`, addressed by `inside` where the element keeps nothing of its own.
  ElementReader(const XmlNode& element, Reading& reading, Preserved& kept, std::string inside = {});

  /// The attribute's text; empty where it is missing.
  std::string text(std::string_view attribute);
  std::optional<double> number(std::string_view attribute, const Range& range);
  std::optional<std::int64_t> whole(std::string_view attribute, const Range& range);
  /// As the three above; one that is missing makes the file unreadable.
  std::string required(std::string_view attribute);
  double required_number(std::string_view attribute, const Range& range);
  std::int64_t required_whole(std::string_view attribute, const Range& range);
  /// Warns where `text` is not empty and not `well_formed`: it is not written as `accepted`, "a time such as 07:30".
  void check_form(bool well_formed, std::string_view attribute, const std::string& text, const std::string& accepted);
  /// `fallback` where it is missing. A word that is not in the table is kept, reported, and read as `fallback`.
  template <class E, std::size_t N>
  E word(std::string_view attribute, const std::array<Word<E>, N>& words, E fallback) {
    const std::string* written = take(attribute);
    if (written == nullptr) return fallback;
    for (const Word<E>& entry : words)
      if (*written == entry.word) return entry.value;
    keep_word(attribute, *written, list_of(words), word_of(words, fallback));
    return fallback;
  }
  /// From 0 for "A"; nothing where it is missing or no letter.
  std::optional<std::size_t> slot(std::string_view attribute);

  /// The words that stand in the element, all runs of them one after the other; children() then keeps none of them.
  std::string words();
  /// Hands each child element of our namespace to `take`, which returns its address ("piece:p1"), or "" where it does
  /// not know it. Comments, foreign elements and what is not known are kept where they stood.
  void children(const std::function<std::string(const XmlNode&)>& take);
  /// For use in `take`: says why a child is not understood, and what it stands for: see Preserved::Node. Returns "".
  std::string leave(std::string reason, std::string stands_for = {});
  /// `inside` for a child that keeps nothing of its own.
  std::string inside(const std::string& address) const;

  /// Keeps the attributes that nobody asked for. Call it last.
  void finish();

  const XmlNode& element() const { return element_; }
  Reading& reading() { return reading_; }
  Preserved& kept() { return kept_; }
  [[noreturn]] void fail(std::string sentence) const;
  void report(Weight weight, std::string code, const XmlNode& where, std::string key, const std::string& sentence,
              std::string remedy);

 private:
  const std::string* take(std::string_view attribute);
  void keep_word(std::string_view attribute, const std::string& written, const std::string& accepted,
                 const std::string& fallback);
  void keep_child(const XmlNode& child);

  const XmlNode& element_;
  Reading& reading_;
  Preserved& kept_;
  std::string inside_, reason_, stands_for_;
  std::vector<std::string_view> taken_;
  bool words_taken_ = false;
};

}  // namespace quadrille
