#include "studio/files/element_writer.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "sdk/number.hpp"
#include "studio/xml/xml_text.hpp"

namespace quadrille {
namespace {

/// The shortest text, but "0.0005" and "100000" rather than "5e-04" and "1e+05"; it reads back as the same double.
std::string written_out(double number) {
  std::string text = print_number(number);
  if (text.find('e') == std::string::npos || std::abs(number) >= 1e15) return text;
  for (int decimals = 0; decimals <= 12; ++decimals)
    if (std::string plain = print_fixed(number, decimals); parse_number(plain) == number) return plain;
  return text;
}

}  // namespace

ElementWriter::ElementWriter(std::string name, int depth, const Kept& kept, std::string inside)
    : name_(std::move(name)),
      inside_(std::move(inside)),
      depth_(depth),
      kept_(kept.inside(inside_)),
      node_done_(kept_.nodes.size()) {}

void ElementWriter::add(std::string_view attribute, std::string_view value) {
  known_.push_back(attribute);
  attributes_ += " " + std::string(attribute) + "=\"" + escaped(clean_text(value)) + "\"";
}

void ElementWriter::text(const char* attribute, std::string_view value) { add(attribute, value); }

void ElementWriter::text_unless_empty(const char* attribute, std::string_view value) {
  if (!value.empty()) add(attribute, value);
}

void ElementWriter::number(const char* attribute, double value) { add(attribute, written_out(value)); }

void ElementWriter::number(const char* attribute, const std::optional<double>& value) {
  if (value) number(attribute, *value);
}

void ElementWriter::whole(const char* attribute, std::int64_t value) { add(attribute, std::to_string(value)); }

void ElementWriter::yes(const char* attribute, bool value) {
  const std::string written = kept_or(attribute, !value, value ? "yes" : "");
  known_.push_back(attribute);
  text_unless_empty(attribute, written);
}

std::string ElementWriter::kept_or(std::string_view attribute, bool may_keep, std::string_view value) const {
  if (may_keep)
    for (const auto* kept : kept_.attributes)
      if (kept->name == attribute) return kept->value;
  return std::string(value);
}

void ElementWriter::write_kept(std::size_t node) {
  if (node_done_[node]) return;
  node_done_[node] = true;
  children_ += line_of(kept_.nodes[node]->xml, depth_ + 1);
}

void ElementWriter::child(const std::string& address, const std::string& lines) {
  const auto found = kept_.before.find(address);
  if (found != kept_.before.end() && !address.empty())
    for (const std::size_t node : found->second) write_kept(node);
  children_ += lines;
}

void ElementWriter::words(const std::vector<std::string>& lines) {
  for (const std::string& line : lines) children_ += line_of(line, depth_ + 1);
}

bool ElementWriter::keeps_another(const std::string& address) const {
  return std::ranges::any_of(kept_.nodes, [&](const Preserved::Node* node) { return node->stands_for == address; });
}

void ElementWriter::give_up(const std::function<bool(std::string_view)>& given_up) {
  for (std::size_t node = 0; node < node_done_.size(); ++node)
    if (!kept_.nodes[node]->stands_for.empty() && given_up(kept_.nodes[node]->stands_for)) node_done_[node] = true;
}

std::string ElementWriter::inside(const std::string& address) const {
  return inside_.empty() ? address : inside_ + "/" + address;
}

bool ElementWriter::is_empty() const {
  return attributes_.empty() && children_.empty() && kept_.nodes.empty() && kept_.attributes.empty();
}

std::string ElementWriter::finish() {
  for (const auto* kept : kept_.attributes)
    if (std::ranges::find(known_, kept->name) == known_.end()) add(kept->name, kept->value);
  for (std::size_t node = 0; node < node_done_.size(); ++node) write_kept(node);
  const std::string opening = "<" + name_ + attributes_;
  if (children_.empty()) return line_of(opening + "/>", depth_);
  return line_of(opening + ">", depth_) + children_ + line_of("</" + name_ + ">", depth_);
}

std::string line_of(std::string_view text, int depth) {
  return std::string(static_cast<std::size_t>(depth) * 2, ' ') + std::string(text) + "\n";
}

}  // namespace quadrille
