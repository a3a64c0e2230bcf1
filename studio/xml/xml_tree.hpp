// An XML file as a tree of plain values, each node with its line and its text as written.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "studio/xml/xml_scan.hpp"

namespace quadrille {

struct XmlAttribute {
  std::string name, value;  ///< name as written, with its prefix
  int line = 0;
};

struct XmlNode {
  XmlKind kind = XmlKind::element;
  bool own = false;  ///< an element in the namespace of the root element
  int line = 0;
  std::string_view name;     ///< of an element, without its prefix; a part of `written`
  std::string_view written;  ///< as it stands in the bytes the tree was made from, which must outlive it
  std::optional<std::string> default_space;  ///< of an element: the default namespace around it ("" = none), where it
                                             ///< is not the root's, matters to it, and is not declared on it
  std::vector<XmlAttribute> attributes;
  std::vector<XmlNode> children;

  /// The attribute's value, or null.
  const std::string* attribute(std::string_view called) const;
};

struct XmlDocument {
  std::string space;           ///< namespace of the root element
  std::vector<XmlNode> nodes;  ///< instructions, comments and the root element
  std::size_t root = 0;        ///< which of them
  std::vector<int> bare_ampersands;
};

/// Throws Unreadable where `bytes` is no XML that can be read: see scan_xml, and bad bytes, another encoding, no bytes.
/// A byte order mark is skipped.
XmlDocument parse_xml(std::string_view bytes);

/// `<piece id="p1">`: how an element is named in sentences.
std::string place_of(const XmlNode& element);

/// The node's text as written, with LF, and with its namespace declared where that stood elsewhere.
std::string kept_text(const XmlNode& node);

}  // namespace quadrille
