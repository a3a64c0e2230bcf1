#include "studio/files/element_reader.hpp"

#include <algorithm>
#include <utility>

#include "sdk/number.hpp"
#include "studio/xml/unreadable.hpp"

namespace quadrille {
namespace {

std::string_view trimmed(std::string_view text) {
  const std::size_t begin = text.find_first_not_of(" \t\r\n");
  if (begin == std::string_view::npos) return {};
  return text.substr(begin, text.find_last_not_of(" \t\r\n") - begin + 1);
}

std::string quoted(std::string_view attribute, std::string_view value) {
  return std::string(attribute) + "=\"" + shown(value) + "\"";
}

/// Written out: "100000" and "0.000001" read better than "1e+05" and "1e-06".
std::string end_of(double number) {
  std::string text = print_fixed(number, 6);
  while (text.ends_with('0')) text.pop_back();
  if (text.ends_with('.')) text.pop_back();
  return text;
}

std::string accepted(const Range& range) {
  const std::string unit = range.unit;
  const std::string from_to = (range.above ? "above " : "from ") + end_of(range.least) +
                              (range.above ? ", up to " : " to ") + end_of(range.most);
  return unit.empty() ? from_to : from_to + " (" + unit + ")";
}

/// What is wrong with a text that is no number.
std::string no_number(std::string_view text, const Range& range) {
  std::string with_point(text);
  std::ranges::replace(with_point, ',', '.');
  if (parse_number(with_point)) return "has a comma; write the decimals with a point: " + shown(with_point) + ".";
  std::size_t digits = text.size();
  while (digits > 0 && !parse_number(text.substr(0, digits))) --digits;
  if (digits > 0 && text.substr(digits).find_first_of("0123456789") == std::string_view::npos)
    return "has something after the number; write the number alone, " + accepted(range) + ".";
  return "is no number; accepted is a number " + accepted(range) + ".";
}

bool is_foreign(std::string_view attribute) { return attribute.find(':') != std::string_view::npos; }

}  // namespace

void Reading::add(Finding finding) {
  if (findings.size() < most_findings)
    findings.push_back(std::move(finding));
  else
    ++untold;
}

Findings Reading::take() {
  if (untold > 0)
    findings.push_back({newer ? Weight::note : Weight::warning,
                        "not-understood",
                        {},
                        {},
                        {},
                        "There are " + std::to_string(untold) + " more such findings, which are not told one by one.",
                        "Mend the first ones and open the file again."});
  return std::move(findings);
}

ElementReader::ElementReader(const XmlNode& element, Reading& reading, Preserved& kept, std::string inside)
    : element_(element), reading_(reading), kept_(kept), inside_(std::move(inside)) {}

const std::string* ElementReader::take(std::string_view attribute) {
  taken_.push_back(attribute);
  return element_.attribute(attribute);
}

void ElementReader::fail(std::string text) const {
  throw Unreadable{element_.line, place_of(element_), std::move(text)};
}

void ElementReader::report(Weight weight, std::string code, const XmlNode& where, std::string key,
                           const std::string& text, std::string remedy) {
  reading_.add({weight, std::move(code), reading_.area, reading_.piece, std::move(key),
                "Line " + std::to_string(where.line) + ", " + place_of(where) + ": " + text, std::move(remedy)});
}

std::string ElementReader::text(std::string_view attribute) {
  const std::string* written = take(attribute);
  return written == nullptr ? std::string() : *written;
}

std::optional<double> ElementReader::number(std::string_view attribute, const Range& range) {
  const std::string* written = take(attribute);
  if (written == nullptr) return std::nullopt;
  const std::string_view digits = trimmed(*written);
  const auto number = parse_number(digits);
  if (!number) fail(quoted(attribute, *written) + " " + no_number(digits, range));
  if (*number < range.least || *number > range.most || (range.above && *number == range.least))
    fail(quoted(attribute, *written) + " cannot be meant; accepted is a number " + accepted(range) + ".");
  return number;
}

std::optional<std::int64_t> ElementReader::whole(std::string_view attribute, const Range& range) {
  const auto number = this->number(attribute, range);
  if (!number) return std::nullopt;
  const auto whole = static_cast<std::int64_t>(*number);
  if (static_cast<double>(whole) != *number)
    fail(quoted(attribute, *element_.attribute(attribute)) + " is not whole; accepted is a number " + accepted(range) +
         ".");
  return whole;
}

std::string ElementReader::required(std::string_view attribute) {
  std::string written = text(attribute);
  if (written.empty()) fail("The attribute " + std::string(attribute) + " is missing.");
  return written;
}

double ElementReader::required_number(std::string_view attribute, const Range& range) {
  const auto written = number(attribute, range);
  if (!written)
    fail("The attribute " + std::string(attribute) + " is missing; it is a number " + accepted(range) + ".");
  return *written;
}

std::int64_t ElementReader::required_whole(std::string_view attribute, const Range& range) {
  const auto written = whole(attribute, range);
  if (!written)
    fail("The attribute " + std::string(attribute) + " is missing; it is a number " + accepted(range) + ".");
  return *written;
}

void ElementReader::check_form(bool well_formed, std::string_view attribute, const std::string& written,
                               const std::string& accepted_form) {
  if (written.empty() || well_formed) return;
  report(Weight::warning, "not-understood", element_, std::string(attribute),
         quoted(attribute, written) + " is not understood.", "Write it as " + accepted_form + ".");
}

std::optional<std::size_t> ElementReader::slot(std::string_view attribute) {
  const std::string letter = text(attribute);
  if (letter.size() != 1 || letter[0] < 'A' || letter[0] > 'Z') return std::nullopt;
  return static_cast<std::size_t>(letter[0] - 'A');
}

void ElementReader::keep_word(std::string_view attribute, const std::string& written, const std::string& accepted_words,
                              const std::string& fallback) {
  kept_.attributes.push_back({std::string(attribute), written, inside_});
  report(reading_.newer ? Weight::note : Weight::warning, "not-understood", element_, std::string(attribute),
         quoted(attribute, written) + " is not known; it is kept, and taken as " + fallback + " here.",
         "Write " + accepted_words + ".");
}

void ElementReader::keep_child(const XmlNode& child) {
  kept_.nodes.push_back({{}, kept_text(child), inside_, std::exchange(stands_for_, {})});
  const std::string reason = std::exchange(reason_, {});
  const Weight weight = reading_.newer ? Weight::note : Weight::warning;
  if (child.kind == XmlKind::text)
    report(weight, "not-understood", element_, {},
           "The text \"" + shown(kept_text(child)) + "\" has no meaning here; it is kept.",
           "Put what people should read into a note attribute or a comment.");
  else if (child.kind == XmlKind::element && child.own)
    report(weight, "not-understood", child, {},
           (reason.empty() ? "<" + shown(child.name) + "> is not known in " + place_of(element_) + ";" : reason) +
               " it is kept as it is.",
           "Check the spelling, or open the file with the version that wrote it.");
}

std::string ElementReader::words() {
  words_taken_ = true;
  std::string all;
  for (const XmlNode& child : element_.children)
    if (child.kind == XmlKind::text) all += child.written;
  return all;
}

void ElementReader::children(const std::function<std::string(const XmlNode&)>& take_child) {
  std::vector<std::size_t> waiting;  // kept nodes whose next known sibling is not met yet
  for (const XmlNode& child : element_.children) {
    if (words_taken_ && child.kind == XmlKind::text) continue;
    const bool known_space = child.kind == XmlKind::element && child.own;
    const std::string address = known_space ? take_child(child) : std::string();
    if (address.empty()) {
      keep_child(child);
      waiting.push_back(kept_.nodes.size() - 1);
      continue;
    }
    for (const std::size_t node : waiting) kept_.nodes[node].before = address;
    waiting.clear();
  }
}

std::string ElementReader::leave(std::string reason, std::string stands_for) {
  reason_ = std::move(reason);
  stands_for_ = std::move(stands_for);
  return {};
}

std::string ElementReader::inside(const std::string& address) const {
  return inside_.empty() ? address : inside_ + "/" + address;
}

void ElementReader::finish() {
  for (const XmlAttribute& a : element_.attributes) {
    // A default namespace on a known element is our own, and stands on the root when the file is written.
    if (a.name == "xmlns" || std::ranges::find(taken_, a.name) != taken_.end()) continue;
    kept_.attributes.push_back({a.name, a.value, inside_});
    if (!is_foreign(a.name))
      report(reading_.newer ? Weight::note : Weight::warning, "not-understood", element_, a.name,
             "The attribute " + shown(a.name) + " is not known here; it is kept.",
             "Check the spelling, or open the file with the version that wrote it.");
  }
}

}  // namespace quadrille
