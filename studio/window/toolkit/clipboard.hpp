// The system's clipboard: bytes of a format of our own beside text for everybody.
#pragma once

#include <optional>
#include <string>

class wxTextEntry;

namespace quadrille {

/// Puts both there; false where the clipboard is held by somebody else.
bool put_on_clipboard(const std::string& format, const std::string& bytes, const std::string& text);

/// The bytes of the format; nothing where the clipboard does not hold it or cannot be opened.
std::optional<std::string> taken_from_clipboard(const std::string& format);

/// The text field that has the keyboard, to which cutting, copying and pasting then belong; else null.
wxTextEntry* focused_text();

}  // namespace quadrille
