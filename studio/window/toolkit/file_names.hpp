// Names of files as a save dialog gives them.
#pragma once

#include <filesystem>

class wxWindow;

namespace quadrille {

/// Whether there is a file or a folder of this name; false where that cannot be told.
bool is_there(const std::filesystem::path& file);

/// "F" becomes "F.quadrille"; a name with any ending stays as it was typed.
std::filesystem::path with_ending(std::filesystem::path file, const char* ending);

/// The dialog asked about the name as it was typed, not about the one it becomes. False where a file of that one would be
/// replaced and the user declines.
bool may_become(wxWindow* parent, const std::filesystem::path& typed, const std::filesystem::path& file);

/// What a sample is called: "Lantern fair" for "lantern-fair.quadrille".
std::string sample_title(const std::filesystem::path& file);

}  // namespace quadrille
