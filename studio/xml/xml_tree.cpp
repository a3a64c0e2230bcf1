#include "studio/xml/xml_tree.hpp"

#include <tinyxml2.h>

#include <cctype>
#include <optional>
#include <utility>

#include "studio/xml/unreadable.hpp"
#include "studio/xml/xml_text.hpp"

namespace quadrille {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

int line_at(std::string_view bytes, std::size_t offset) {
  int line = 1;
  for (const char c : bytes.substr(0, offset)) line += c == '\n';
  return line;
}

void check_bytes(std::string_view bytes) {
  if (bytes.empty()) throw Unreadable{0, {}, "The file is empty (0 bytes)."};
  if (bytes.starts_with("\xFF\xFE") || bytes.starts_with("\xFE\xFF"))
    throw Unreadable{0, {}, "The file is UTF-16; save it as UTF-8."};
  const auto bad = find_bad_byte(bytes);
  if (!bad) return;
  throw Unreadable{line_at(bytes, bad->offset),
                   {},
                   "Byte " + std::to_string(bad->offset) + " (counted from 0) is " + bad->what +
                       "; UTF-8 text without control characters is accepted."};
}

std::string_view prefix_of(std::string_view name) {
  const std::size_t colon = name.find(':');
  return colon == std::string_view::npos ? std::string_view() : name.substr(0, colon);
}

/// Namespace that `prefix` stands for on the element, by the declarations on it and above it; empty where it is none.
std::string namespace_of(const tinyxml2::XMLElement& element, std::string_view prefix) {
  const std::string declaration = prefix.empty() ? "xmlns" : "xmlns:" + std::string(prefix);
  for (const tinyxml2::XMLNode* node = &element; node != nullptr; node = node->Parent()) {
    const tinyxml2::XMLElement* holder = node->ToElement();
    const char* space = holder == nullptr ? nullptr : holder->Attribute(declaration.c_str());
    if (space != nullptr) return space;
  }
  return {};
}

/// Pairs tinyxml2's nodes with the scanned ones: both come in document order.
class TreeMaker {
 public:
  TreeMaker(std::string_view bytes, const XmlScan& scan, std::string space)
      : bytes_(bytes), scan_(scan), space_(std::move(space)) {}

  XmlNode make(const tinyxml2::XMLNode& from) {
    if (next_ == scan_.nodes.size()) disagree();
    const XmlSpan& span = scan_.nodes[next_++];
    XmlNode node;
    node.kind = span.kind;
    node.line = span.line;
    node.written = bytes_.substr(span.begin, span.end - span.begin);
    const tinyxml2::XMLElement* element = from.ToElement();
    if ((element != nullptr) != (span.kind == XmlKind::element)) disagree();
    if (element != nullptr) fill(*element, node);
    return node;
  }
  /// The processing instructions that come next: tinyxml2 has not seen them, see without_instructions.
  void take_instructions(std::vector<XmlNode>& nodes) {
    for (; next_ < scan_.nodes.size() && scan_.nodes[next_].kind == XmlKind::instruction; ++next_) {
      const XmlSpan& span = scan_.nodes[next_];
      XmlNode node;
      node.kind = span.kind;
      node.line = span.line;
      node.written = bytes_.substr(span.begin, span.end - span.begin);
      nodes.push_back(std::move(node));
    }
  }
  void check_all_used() const {
    if (next_ != scan_.nodes.size()) disagree();
  }

 private:
  [[noreturn]] static void disagree() {
    throw Unreadable{0, {}, "Its XML can be read in two ways; that is not accepted."};
  }

  void fill(const tinyxml2::XMLElement& element, XmlNode& node) {
    const std::string_view called = node.written.substr(1, std::string_view(element.Name()).size());
    const std::string_view prefix = prefix_of(called);
    node.name = called.substr(prefix.empty() ? 0 : prefix.size() + 1);
    node.own = namespace_of(element, prefix) == space_;
    const bool matters = prefix.empty() || element.FirstChildElement() != nullptr;
    const std::string around = namespace_of(element, {});
    if (matters && around != space_ && element.Attribute("xmlns") == nullptr) node.default_space = around;
    for (const auto* a = element.FirstAttribute(); a != nullptr; a = a->Next())
      node.attributes.push_back({a->Name(), a->Value(), a->GetLineNum()});
    for (const auto* child = element.FirstChild(); child != nullptr; child = child->NextSibling())
      node.children.push_back(make(*child));
  }

  std::string_view bytes_;
  const XmlScan& scan_;
  std::string space_;
  std::size_t next_ = 0;
};

/// `bytes` with the scanned processing instructions made blank, line ends kept: tinyxml2 takes them all for declarations
/// and refuses one that follows a comment, which XML allows.
std::string without_instructions(std::string_view bytes, const XmlScan& scan) {
  std::string blanked(bytes);
  for (const XmlSpan& span : scan.nodes) {
    if (span.kind == XmlKind::element) break;
    if (span.kind != XmlKind::instruction) continue;
    for (std::size_t at = span.begin; at < span.end; ++at)
      if (blanked[at] != '\n' && blanked[at] != '\r') blanked[at] = ' ';
  }
  return blanked;
}

/// The encoding that an XML declaration names, in lower case.
std::optional<std::string> declared_encoding(std::string_view declaration) {
  std::size_t at = declaration.find("encoding");
  if (!declaration.starts_with("<?xml ") || at == std::string_view::npos) return std::nullopt;
  at = declaration.find_first_of("\"'", at);
  if (at == std::string_view::npos) return std::nullopt;
  std::string encoding(declaration.substr(at + 1, declaration.find_first_of("\"'?", at + 1) - at - 1));
  for (char& c : encoding) c = static_cast<char>(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c);
  return encoding;
}

}  // namespace

const std::string* XmlNode::attribute(std::string_view called) const {
  for (const XmlAttribute& a : attributes)
    if (a.name == called) return &a.value;
  return nullptr;
}

XmlDocument parse_xml(std::string_view bytes) {
  check_bytes(bytes);
  if (bytes.starts_with(byte_order_mark)) bytes.remove_prefix(byte_order_mark.size());
  const XmlScan scan = scan_xml(bytes);
  const XmlSpan& first = scan.nodes.front();
  const auto encoding = declared_encoding(bytes.substr(first.begin, first.end - first.begin));
  if (encoding && *encoding != "utf-8" && *encoding != "us-ascii")
    throw Unreadable{first.line, {}, "The file says that it is " + shown(*encoding) + "; save it as UTF-8."};

  tinyxml2::XMLDocument dom;
  const std::string blanked = without_instructions(bytes, scan);
  if (dom.Parse(blanked.data(), blanked.size()) != tinyxml2::XML_SUCCESS)
    throw Unreadable{dom.ErrorLineNum(), {}, "This is no XML that can be read."};
  XmlDocument document;
  document.space = namespace_of(*dom.RootElement(), prefix_of(dom.RootElement()->Name()));
  document.bare_ampersands = scan.bare_ampersands;
  TreeMaker maker(bytes, scan, document.space);
  for (const auto* node = dom.FirstChild(); node != nullptr; node = node->NextSibling()) {
    maker.take_instructions(document.nodes);
    if (node == dom.RootElement()) document.root = document.nodes.size();
    document.nodes.push_back(maker.make(*node));
  }
  maker.check_all_used();
  return document;
}

std::string place_of(const XmlNode& element) {
  for (const char* key : {"id", "key", "slot"})
    if (const std::string* value = element.attribute(key))
      return "<" + shown(element.name) + " " + key + "=\"" + shown(*value) + "\">";
  return "<" + shown(element.name) + ">";
}

std::string kept_text(const XmlNode& node) {
  std::string text = with_lf(node.written);
  while (node.kind == XmlKind::text && !text.empty() &&
         std::string_view(" \t\n").find(text.back()) != std::string_view::npos)
    text.pop_back();
  if (node.default_space) text.insert(text.find_first_of(" \t\n/>"), " xmlns=\"" + escaped(*node.default_space) + "\"");
  return text;
}

}  // namespace quadrille
