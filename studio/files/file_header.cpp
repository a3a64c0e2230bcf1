#include "studio/files/file_header.hpp"

#include <algorithm>
#include <optional>

#include "sdk/number.hpp"
#include "studio/xml/unreadable.hpp"

namespace quadrille {
namespace {

struct Version {
  int major = file_major, minor = 0;
  auto operator<=>(const Version&) const = default;
};

std::optional<int> small_number(std::string_view digits) {
  const auto number = parse_whole(digits);
  if (!number || *number < 0 || *number > 9999) return std::nullopt;
  return static_cast<int>(*number);
}

Version newest_of(const FileKind& kind) { return {file_major, kind.minor}; }

std::string text_of(const Version& version) {
  return std::to_string(version.major) + "." + std::to_string(version.minor);
}

Version read_version(ElementReader& root, std::string_view attribute, const FileKind& kind) {
  const std::string written = root.text(attribute);
  if (written.empty()) return {};
  const std::size_t point = written.find('.');
  const auto major = small_number(std::string_view(written).substr(0, point));
  const auto minor =
      point == std::string::npos ? std::nullopt : small_number(std::string_view(written).substr(point + 1));
  if (!major || !minor || *major < 1)
    root.fail(std::string(attribute) + "=\"" + shown(written) + "\" is no version; accepted is one such as \"1.0\".");
  const Version version{*major, *minor};
  // A newer version stays what it is: what it added is kept too.
  if (version > newest_of(kind)) root.kept().attributes.push_back({std::string(attribute), written, {}});
  return version;
}

}  // namespace

int check_root(const XmlDocument& document, const FileKind& kind) {
  const XmlNode& root = document.nodes[document.root];
  const std::string first_space = std::string(kind.space) + "1";
  if (root.name != kind.element)
    throw Unreadable{root.line, place_of(root),
                     "This is not " + std::string(kind.called) + ", whose root element is <" +
                         std::string(kind.element) + " xmlns=\"" + first_space + "\">."};
  const std::string_view space = document.space;
  const auto major = space.starts_with(kind.space) ? small_number(space.substr(kind.space.size())) : std::nullopt;
  if (!major || *major < 1)
    throw Unreadable{
        root.line, place_of(root),
        (space.empty() ? std::string("It has no namespace") : "Its namespace is \"" + shown(space) + "\"") +
            "; that of " + std::string(kind.called) + " is xmlns=\"" + first_space + "\"."};
  return *major;
}

FileHeader read_header(ElementReader& root, const FileKind& kind, int space_major) {
  const Version newest = newest_of(kind);
  const Version version = read_version(root, "version", kind), reader = read_version(root, "reader", kind);
  FileHeader header;
  header.read_only = std::max({version.major, reader.major, space_major}) > file_major || reader > newest;
  header.newer = header.read_only || version > newest;
  root.reading().newer = header.newer;
  const std::string written = text_of({std::max(version.major, space_major), version.minor});
  const std::string ours = text_of(newest);
  if (header.read_only)
    root.report(Weight::warning, "newer-version", root.element(), "version",
                "It was written in version " + written + " of the format; this program knows " + ours +
                    " and opens it for looking only.",
                "Use the newer program to change it, or save a copy from there in an older version.");
  else if (header.newer)
    root.report(
        Weight::note, "newer-version", root.element(), "version",
        "It was written in version " + written + " of the format, newer than " + ours + "; what is not known is kept.",
        {});
  return header;
}

void keep_outside(const XmlDocument& document, Preserved& kept) {
  const std::string root(document.nodes[document.root].name);
  for (std::size_t i = 0; i < document.nodes.size(); ++i) {
    const std::string text = kept_text(document.nodes[i]);
    if (i == document.root || text.starts_with("<?xml ")) continue;
    kept.nodes.push_back({i < document.root ? root : "", text, "/"});
  }
}

void note_bare_ampersands(const XmlDocument& document, Reading& reading) {
  for (const int line : document.bare_ampersands)
    reading.add({Weight::note,
                 "bare-ampersand",
                 {},
                 {},
                 {},
                 "Line " + std::to_string(line) + ": a & stands alone and is taken as it is.",
                 "Write &amp; for it."});
}

void write_header(ElementWriter& root, const FileKind& kind, int minor) {
  root.text("xmlns", std::string(kind.space) + std::to_string(file_major));
  root.text("version", root.kept_or("version", true, text_of({file_major, minor})));
  root.text("reader", root.kept_or("reader", true, text_of({file_major, 0})));
}

std::string whole_file(ElementWriter& root, const Kept& kept) {
  std::string bytes = line_of("<?xml version=\"1.0\" encoding=\"UTF-8\"?>", 0);
  std::string below;
  for (const Preserved::Node* node : kept.inside("/").nodes)
    (node->before.empty() ? below : bytes) += line_of(node->xml, 0);
  return bytes + root.finish() + below;
}

}  // namespace quadrille
