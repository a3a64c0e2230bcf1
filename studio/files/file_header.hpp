// The root element of a file of ours: its namespace, its version, and whether it may be written back.
#pragma once

#include <string>
#include <string_view>

#include "studio/files/element_reader.hpp"
#include "studio/xml/xml_tree.hpp"

namespace quadrille {

/// The version this program writes. A file's `reader` names the oldest version that may write it back without harm.
inline constexpr int file_major = 1, file_minor = 0;

struct FileKind {
  std::string_view element;  ///< name of the root element
  std::string_view space;    ///< its namespace, up to the major version
  std::string_view called;   ///< "an event file"
};
inline constexpr FileKind event_kind{"event", "urn:quadrille:event:", "an event file"};
inline constexpr FileKind palette_kind{"palette", "urn:quadrille:palette:", "a palette file"};

struct FileHeader {
  bool newer = false;      ///< written by a newer version
  bool read_only = false;  ///< and this version would do harm by writing it back
};

/// Throws Unreadable where the root element is not that of `kind`. Returns the major version that the namespace names.
int check_root(const XmlDocument& document, const FileKind& kind);

/// Reads the version attributes of the root element and reports what follows from them. `space_major` is from
/// check_root. Throws Unreadable where a version cannot be meant.
FileHeader read_header(ElementReader& root, int space_major);

}  // namespace quadrille
