// The root element of a file of ours and what stands beside it: namespace, version, and whether it may be written back.
#pragma once

#include <string>
#include <string_view>

#include "studio/files/element_reader.hpp"
#include "studio/files/element_writer.hpp"
#include "studio/xml/xml_tree.hpp"

namespace quadrille {

/// The major version that this program knows. A file's `reader` names the oldest version that may write it back without
/// harm: 1.0 for all so far, since that keeps what it does not know.
inline constexpr int file_major = 1;

struct FileKind {
  std::string_view element;  ///< name of the root element
  std::string_view space;    ///< its namespace, up to the major version
  std::string_view called;   ///< "an event file"
  int minor = 0;             ///< newest minor version that this program knows
};
inline constexpr FileKind event_kind{"event", "urn:quadrille:event:", "an event file", 1};
inline constexpr FileKind palette_kind{"palette", "urn:quadrille:palette:", "a palette file"};
inline constexpr FileKind house_kind{"house", "urn:quadrille:house:", "a house file"};

struct FileHeader {
  bool newer = false;      ///< written by a newer version
  bool read_only = false;  ///< and this version would do harm by writing it back
};

/// Throws Unreadable where the root element is not that of `kind`. Returns the major version that the namespace names.
int check_root(const XmlDocument& document, const FileKind& kind);

/// Reads the version attributes of the root element and reports what follows from them. `space_major` is from
/// check_root. Throws Unreadable where a version cannot be meant.
FileHeader read_header(ElementReader& root, const FileKind& kind, int space_major);

/// Keeps what stands beside the root element, such as comments above it.
void keep_outside(const XmlDocument& document, Preserved& kept);

/// A note for each '&' that stands alone.
void note_bare_ampersands(const XmlDocument& document, Reading& reading);

/// The first attributes of a root element: namespace, version, reader. `minor` is the oldest version that can hold what
/// the file says; a newer one that was read stays.
void write_header(ElementWriter& root, const FileKind& kind, int minor = 0);

/// The whole file: declaration, what was kept above the root element, the root element, what was kept below it.
std::string whole_file(ElementWriter& root, const Kept& kept);

}  // namespace quadrille
