#include "studio/window/toolkit/clipboard.hpp"

#include <wx/clipbrd.h>
#include <wx/dataobj.h>
#include <wx/textentry.h>
#include <wx/window.h>

#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {

bool put_on_clipboard(const std::string& format, const std::string& bytes, const std::string& text) {
  wxClipboardLocker clipboard;
  if (!clipboard) return false;
  auto* own = new wxCustomDataObject(wxDataFormat(shown(format)));
  own->SetData(bytes.size(), bytes.data());
  auto* both = new wxDataObjectComposite;
  both->Add(own, true);
  both->Add(new wxTextDataObject(shown(text)));
  return wxTheClipboard->SetData(both);  // the clipboard owns it now
}

std::optional<std::string> taken_from_clipboard(const std::string& format) {
  wxClipboardLocker clipboard;
  const wxDataFormat wanted(shown(format));
  if (!clipboard || !wxTheClipboard->IsSupported(wanted)) return std::nullopt;
  wxCustomDataObject own(wanted);
  if (!wxTheClipboard->GetData(own) || own.GetData() == nullptr) return std::nullopt;
  return std::string(static_cast<const char*>(own.GetData()), own.GetSize());
}

wxTextEntry* focused_text() { return dynamic_cast<wxTextEntry*>(wxWindow::FindFocus()); }

}  // namespace quadrille
