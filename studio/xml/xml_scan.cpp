#include "studio/xml/xml_scan.hpp"

#include <algorithm>
#include <charconv>
#include <cstdint>
#include <optional>
#include <string>

#include "studio/xml/unreadable.hpp"
#include "studio/xml/xml_text.hpp"

namespace quadrille {
namespace {

constexpr std::size_t most_attributes = 256;
constexpr std::size_t longest_reference = 12;  // "#x10FFFF;" with room for leading zeros
constexpr auto nowhere = std::string_view::npos;

bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }
bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool begins_name(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_' || c == ':' ||
         static_cast<unsigned char>(c) >= 128;
}
bool continues_name(char c) { return begins_name(c) || is_digit(c) || c == '-' || c == '.'; }

/// The mark that `text` begins with, where it is one that word processors put in place of " and '; else empty.
std::string_view typographic_quote(std::string_view text) {
  constexpr std::string_view marks[] = {"“", "”", "„", "‟", "‘", "’", "‚", "‛", "«", "»", "‹", "›", "″", "′", "＂"};
  const auto found = std::ranges::find_if(marks, [&](std::string_view mark) { return text.starts_with(mark); });
  return found == std::end(marks) ? std::string_view() : *found;
}

/// Where in `text`, which follows a straight opening quote, such a mark stands as if it closed the value: before a
/// blank, "/" or ">". Nowhere if there is none; an apostrophe within a word is none.
std::size_t find_slip_of_closing_quote(std::string_view text) {
  for (std::size_t at = 0; at < text.size(); ++at) {
    const std::string_view mark = typographic_quote(text.substr(at));
    if (mark.empty()) continue;
    const std::size_t next = at + mark.size();
    if (next == text.size() || is_blank(text[next]) || text[next] == '/' || text[next] == '>') return at;
  }
  return nowhere;
}

class Scanner {
 public:
  explicit Scanner(std::string_view bytes) : bytes_(bytes) {}

  XmlScan run() {
    while (at_ < bytes_.size()) {
      if (bytes_[at_] != '<')
        text();
      else if (rest().starts_with("<!--"))
        closed_by("-->", 4, XmlKind::comment, "comment");
      else if (rest().starts_with("<![CDATA["))
        cdata();
      else if (rest().starts_with("<?"))
        instruction();
      else if (rest().starts_with("<!"))
        fail("A document type declaration is not accepted; take it out.");
      else if (rest().starts_with("</"))
        closing_tag();
      else
        opening_tag();
    }
    if (!open_.empty()) {
      const Open& last = open_.back();
      fail("The file ends inside <" + shown(last.name) + ">, which line " + std::to_string(last.line) +
           " opens; the rest is missing.");
    }
    if (!seen_root_) fail("There is no element in it.");
    return std::move(scan_);
  }

 private:
  struct Open {
    std::string_view name;
    std::size_t span;
    int line;
  };

  [[noreturn]] void fail(std::string text) const { throw Unreadable{line_, {}, std::move(text)}; }

  /// Characters from the beginning of its line to the byte `at`, counted from 1, as editors do.
  std::size_t column_of(std::size_t at) const {
    const std::size_t before = bytes_.substr(0, at).rfind('\n');
    const std::string_view line = bytes_.substr(before == nowhere ? 0 : before + 1, at - (before + 1));
    return 1 + static_cast<std::size_t>(std::ranges::count_if(line, [](char c) { return (c & 0xC0) != 0x80; }));
  }
  /// The typographic quote at the byte `at`, no earlier than the last line end before the scanner, can only be a slip.
  [[noreturn]] void fail_at_quote(std::size_t at, std::string_view attribute, std::string_view element) const {
    const std::string name = shown(attribute);
    fail("At column " + std::to_string(column_of(at)) + " the value of " + name + " in <" + shown(element) +
         "> has a typographic quote (" + std::string(typographic_quote(bytes_.substr(at))) +
         "), as word processors put it; XML takes straight ones: " + name +
         "=\"…\". Replace them in the whole file with a plain text editor.");
  }
  /// Fails where the value that a straight quote opens at the byte `from` was closed by a typographic one.
  void check_closing_quote(std::size_t from, std::string_view attribute, std::string_view element) const {
    const std::string_view line = bytes_.substr(from, bytes_.find('\n', from) - from);
    const std::size_t slip = find_slip_of_closing_quote(line);
    if (slip != nowhere) fail_at_quote(from + slip, attribute, element);
  }
  std::string_view rest() const { return bytes_.substr(at_); }

  void advance_to(std::size_t to) {
    line_ += static_cast<int>(std::count(bytes_.begin() + static_cast<std::ptrdiff_t>(at_),
                                         bytes_.begin() + static_cast<std::ptrdiff_t>(to), '\n'));
    at_ = to;
  }
  void skip_blanks() {
    std::size_t to = at_;
    while (to < bytes_.size() && is_blank(bytes_[to])) ++to;
    advance_to(to);
  }
  std::string_view name() {
    std::size_t to = at_;
    if (to < bytes_.size() && begins_name(bytes_[to]))
      while (to < bytes_.size() && continues_name(bytes_[to])) ++to;
    const std::string_view found = bytes_.substr(at_, to - at_);
    at_ = to;
    return found;
  }
  void count_part() {
    if (++parts_ > most_xml_parts)
      fail("It has more than " + std::to_string(most_xml_parts) + " elements and attributes; that is no file of ours.");
  }

  void closed_by(std::string_view closing, std::size_t opening, XmlKind kind, const std::string& called) {
    const std::size_t found = bytes_.find(closing, at_ + opening);
    if (found == nowhere)
      fail("A " + called + " begins here and never ends; \"" + std::string(closing) + "\" is missing.");
    count_part();
    scan_.nodes.push_back({kind, at_, found + closing.size(), line_});
    advance_to(found + closing.size());
  }
  void cdata() {
    if (open_.empty()) fail("Text stands outside the root element.");
    closed_by("]]>", 9, XmlKind::text, "CDATA section");
  }
  void instruction() {
    if (!scan_.nodes.empty() && rest().starts_with("<?xml") && rest().size() > 5 && is_blank(rest()[5]))
      fail("An XML declaration (<?xml …?>) may only stand at the very beginning of the file.");
    if (seen_root_) fail("A processing instruction (<?…?>) is only accepted above the root element.");
    closed_by("?>", 2, XmlKind::instruction, "processing instruction");
  }

  void text() {
    const std::size_t end = std::min(bytes_.find('<', at_), bytes_.size());
    const std::string_view run = bytes_.substr(at_, end - at_);
    if (std::ranges::all_of(run, is_blank)) return advance_to(end);
    const int line = line_;
    skip_blanks();
    const std::size_t begin = at_;  // with its indent it would grow each time it is kept and written
    if (open_.empty())
      fail(seen_root_ ? "Text stands after the root element." : "This is no XML: it does not begin with \"<\".");
    check_references(run);
    count_part();
    scan_.nodes.push_back({XmlKind::text, begin, end, line});
    advance_to(end);
  }

  void opening_tag() {
    const std::size_t begin = at_;
    const int line = line_;
    ++at_;
    const std::string_view called = name();
    if (called.empty()) fail("A \"<\" is followed by no name; a \"<\" in a text is written &lt;.");
    if (open_.empty() && seen_root_) fail("A second root element <" + shown(called) + "> begins here.");
    if (open_.size() == deepest_nesting)
      fail("Elements nest deeper than " + std::to_string(deepest_nesting) + "; that is no file of ours.");
    seen_root_ = true;
    count_part();
    const std::size_t span = scan_.nodes.size();
    scan_.nodes.push_back({XmlKind::element, begin, begin, line});
    attributes(called);
    if (rest().starts_with("/>")) {
      at_ += 2;
      scan_.nodes[span].end = at_;
      return;
    }
    if (!rest().starts_with(">")) fail("The tag <" + shown(called) + "> is not closed by \">\".");
    ++at_;
    open_.push_back({called, span, line});
  }

  void attributes(std::string_view element) {
    std::vector<std::string_view> seen;
    std::optional<std::size_t> swallowed;  // the value before, where it seems to hold the beginning of another
    for (skip_blanks(); at_ < bytes_.size() && begins_name(bytes_[at_]); skip_blanks()) {
      const std::string_view called = name();
      const std::string in = " in <" + shown(element) + ">";
      skip_blanks();
      if (!rest().starts_with("=")) {
        if (swallowed) check_closing_quote(*swallowed, seen.back(), element);
        fail("The attribute " + shown(called) + in + " has no value.");
      }
      ++at_;
      skip_blanks();
      const char quote = at_ < bytes_.size() ? bytes_[at_] : ' ';
      if (!typographic_quote(rest()).empty()) fail_at_quote(at_, called, element);
      if (quote != '"' && quote != '\'') fail("The value of " + shown(called) + in + " is not in quotes.");
      const std::size_t end = bytes_.find(quote, at_ + 1);
      const std::string_view value = bytes_.substr(at_ + 1, end == nowhere ? end : end - at_ - 1);
      if (end == nowhere || value.find('<') != nowhere) {
        check_closing_quote(at_, called, element);
        fail("The value of " + shown(called) + in + " has no closing quote, or a \"<\" that is not written &lt;.");
      }
      check_references(value);
      if (std::ranges::find(seen, called) != seen.end())
        fail("The attribute " + shown(called) + " stands twice" + in + ".");
      if (seen.size() == most_attributes)
        fail("There are more than " + std::to_string(most_attributes) + " attributes" + in + ".");
      seen.push_back(called);
      swallowed = value.ends_with('=') && value.find('\n') == nowhere ? std::optional(at_) : std::nullopt;
      count_part();
      advance_to(end + 1);
    }
  }

  void closing_tag() {
    at_ += 2;
    const std::string_view called = name();
    skip_blanks();
    if (!rest().starts_with(">")) fail("The tag </" + shown(called) + "> is not closed by \">\".");
    if (open_.empty()) fail("</" + shown(called) + "> closes nothing.");
    const Open last = open_.back();
    if (last.name != called)
      fail("</" + shown(called) + "> stands where </" + shown(last.name) + "> should close line " +
           std::to_string(last.line) + ".");
    ++at_;
    scan_.nodes[last.span].end = at_;
    open_.pop_back();
  }

  void check_references(std::string_view text) {
    for (std::size_t at = text.find('&'); at != nowhere; at = text.find('&', at + 1)) {
      const std::string_view window = text.substr(at + 1, longest_reference);
      const bool closed = window.find(';') != nowhere;
      const std::string_view reference = window.substr(0, window.find(';'));
      constexpr std::string_view named[] = {"amp", "lt", "gt", "quot", "apos"};
      if (closed && std::ranges::find(named, reference) != std::end(named)) continue;
      if (closed && reference.starts_with("#") && names_character(reference.substr(1))) continue;
      if (closed && reference.starts_with("#"))
        fail("&" + std::string(reference) + "; is no character that XML allows.");
      count_part();
      if (scan_.bare_ampersands.empty() || scan_.bare_ampersands.back() != line_)
        scan_.bare_ampersands.push_back(line_);
    }
  }
  static bool names_character(std::string_view digits) {
    const bool hexadecimal = digits.starts_with("x");
    if (hexadecimal) digits.remove_prefix(1);
    std::uint32_t number = 0;
    const auto end = std::from_chars(digits.data(), digits.data() + digits.size(), number, hexadecimal ? 16 : 10);
    return end.ec == std::errc() && end.ptr == digits.data() + digits.size() && may_stand_in_xml(number);
  }

  std::string_view bytes_;
  std::size_t at_ = 0;
  int line_ = 1;
  std::size_t parts_ = 0;
  bool seen_root_ = false;
  std::vector<Open> open_;
  XmlScan scan_;
};

}  // namespace

XmlScan scan_xml(std::string_view bytes) { return Scanner(bytes).run(); }

}  // namespace quadrille
