// Writes one element of a file of ours, with what was kept of it, one element per line.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "studio/files/kept.hpp"
#include "studio/files/words.hpp"

namespace quadrille {

/// Attributes stand in the order of the calls, then the kept ones that no call named; children likewise. Texts are
/// written without what XML forbids.
class ElementWriter {
 public:
  /// `depth` is that of the element: 0 for the root. `inside` as for ElementReader. `kept` must outlive it.
  ElementWriter(std::string name, int depth, const Kept& kept, std::string inside = {});

  void text(const char* attribute, std::string_view value);
  /// Not written where it is empty.
  void text_unless_empty(const char* attribute, std::string_view value);
  void number(const char* attribute, double value);
  /// Not written where there is none.
  void number(const char* attribute, const std::optional<double>& value);
  void whole(const char* attribute, std::int64_t value);
  /// `standard` is what a reader takes where the file holds a word that is not known: as long as the value is that, the
  /// word is written back.
  template <class E, std::size_t N>
  void word(const char* attribute, const std::array<Word<E>, N>& words, E value, E standard) {
    add(attribute, kept_or(attribute, value == standard, word_of(words, value)));
  }
  /// As `word` with no as standard, and not written where it is no.
  void yes(const char* attribute, bool value);
  /// `value`, or where `may_keep`, the text that was kept under this name.
  std::string kept_or(std::string_view attribute, bool may_keep, std::string_view value) const;

  /// True where something is kept that stands for the child at `address`: see Preserved::Node.
  bool keeps_another(const std::string& address) const;
  /// Does not write what is kept and `given_up` of what it stands for. Call it before the first child.
  void give_up(const std::function<bool(std::string_view stands_for)>& given_up);

  /// What was kept before the child at `address`, then the child's lines; `lines` may be empty where there is no child.
  void child(const std::string& address, const std::string& lines);
  /// Lines of words, each indented as a child would be; `lines` need no escaping.
  void words(const std::vector<std::string>& lines);
  int depth() const { return depth_; }
  /// `inside` for a child that keeps nothing of its own.
  std::string inside(const std::string& address) const;

  /// True where nothing was written and nothing was kept.
  bool is_empty() const;
  /// The element's lines.
  std::string finish();

 private:
  void add(std::string_view attribute, std::string_view value);
  void write_kept(std::size_t node);

  std::string name_, inside_;
  int depth_;
  const KeptInside& kept_;
  std::vector<bool> node_done_;
  std::vector<std::string_view> known_;
  std::string attributes_, children_;
};

/// One line, or the lines that `text` has, the first of them indented by two blanks per `depth`.
std::string line_of(std::string_view text, int depth);

}  // namespace quadrille
