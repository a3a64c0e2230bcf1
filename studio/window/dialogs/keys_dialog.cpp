#include "studio/window/dialogs/keys_dialog.hpp"

#include <wx/sizer.h>

namespace quadrille {

KeysDialog::KeysDialog(wxWindow* parent, const std::vector<std::pair<wxString, wxString>>& keys)
    : wxDialog(parent, wxID_ANY, "Keys", wxDefaultPosition, wxDefaultSize, wxDEFAULT_DIALOG_STYLE | wxRESIZE_BORDER) {
  table_ = make_table(this, {{"What it does", 330}, {"Keys", 0}}, "Keys and what they do");
  std::vector<TableRow> rows;
  for (const auto& [what, key] : keys) rows.push_back({{what, key}, {}, ""});
  table_.model->set_rows(std::move(rows));
  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(table_.list, wxSizerFlags(1).Expand());
  sizer->Add(CreateStdDialogButtonSizer(wxCLOSE), wxSizerFlags().Expand().Border(wxALL, FromDIP(8)));
  SetEscapeId(wxID_CLOSE);
  SetSizer(sizer);
  SetSize(FromDIP(wxSize(820, 560)));
}

}  // namespace quadrille
