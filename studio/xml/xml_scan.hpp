// Walks once over the bytes of an XML file before a parser sees them: it bounds what the parser will have to hold, and
// tells where each node's own text begins and ends, so that what is not understood can be given back as it was written.
#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

namespace quadrille {

/// Deepest nesting of elements that is read.
inline constexpr std::size_t deepest_nesting = 64;
/// Most elements and attributes together that are read.
inline constexpr std::size_t most_xml_parts = 500'000;

enum class XmlKind { element, comment, text, instruction };

/// One node; [begin, end) in the scanned bytes.
struct XmlSpan {
  XmlKind kind = XmlKind::element;
  std::size_t begin = 0, end = 0;
  int line = 0;
};

struct XmlScan {
  std::vector<XmlSpan> nodes;        ///< in document order; blank text is none
  std::vector<int> bare_ampersands;  ///< lines where a '&' begins no reference
};

/// `bytes` is valid UTF-8 without forbidden characters. Throws Unreadable where it is no well-formed XML, nests too
/// deep, has too many parts, or declares a document type.
XmlScan scan_xml(std::string_view bytes);

}  // namespace quadrille
