// Our UTF-8 text and file names to the toolkit's strings and back.
#pragma once

#include <wx/string.h>

#include <filesystem>
#include <string>

namespace quadrille {

/// `text` for the screen. Bytes that are no UTF-8 are shown as '?', so that a strange name never becomes an empty one.
wxString shown(const std::string& text);

/// UTF-8.
std::string text_of(const wxString& text);

/// The file that a dialog or a drop names.
std::filesystem::path path_of(const wxString& text);

}  // namespace quadrille
