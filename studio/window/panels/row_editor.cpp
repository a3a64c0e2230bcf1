#include "studio/window/panels/row_editor.hpp"

#include <wx/sizer.h>

#include <algorithm>
#include <utility>

#include "studio/window/toolkit/accessible_name.hpp"

namespace quadrille {

RowEditor::RowEditor(wxWindow* parent, RowEditorAnswers answers) : wxPanel(parent), answers_(std::move(answers)) {
  grid_ = new PatternGrid(this, answers_.changed, answers_.focused);
  picture_ = new PatternPicture(this);
  auto* buttons = new wxBoxSizer(wxHORIZONTAL);
  const auto button = [&](const char* label, const char* name, std::function<void()> act) {
    auto* made = new wxButton(this, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxBU_EXACTFIT);
    made->SetLabel(wxString::FromUTF8(label));
    made->SetMinSize(made->GetBestSize() + FromDIP(wxSize(12, 0)));
    set_accessible_name(made, name, "");
    made->Bind(wxEVT_BUTTON, [act](wxCommandEvent&) { act(); });
    buttons->Add(made, wxSizerFlags().Border(wxRIGHT, FromDIP(4)));
  };
  button("Add row", "Add a pattern row after the present one", [this] { grid_->add_row(); });
  button("Remove row", "Remove the present pattern row", [this] { grid_->remove_row(); });
  button("◀", "Turn the present row one place to the left", [this] { grid_->turn_row(-1); });
  button("▶", "Turn the present row one place to the right", [this] { grid_->turn_row(1); });
  auto* across = new wxBoxSizer(wxHORIZONTAL);
  across->Add(grid_, wxSizerFlags());
  across->Add(picture_, wxSizerFlags(1).Expand().Border(wxLEFT, FromDIP(10)));
  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(across, wxSizerFlags().Expand());
  sizer->Add(buttons, wxSizerFlags().Border(wxTOP, FromDIP(4)));
  SetSizer(sizer);
}

void RowEditor::show(const RowGrid& grid, int hand, const std::vector<wxColour>& colours) {
  grid_->show(grid, colours);
  // Twice through the rows, so that it is seen how they join.
  constexpr std::size_t least_clusters = 8;
  const std::size_t clusters = grid.rows.empty() ? 0 : std::max(2 * grid.rows.size(), least_clusters);
  picture_->show(unrolled(grid, hand, static_cast<int>(clusters)), clusters, grid.places, colours);
  if (std::exchange(rows_, grid.rows.size()) != grid.rows.size()) answers_.grown();
}

}  // namespace quadrille
