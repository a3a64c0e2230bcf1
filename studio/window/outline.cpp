// The tree pane.
#include "studio/window/outline.hpp"

#include <wx/sizer.h>

#include <utility>

#include "studio/window/accessible_name.hpp"
#include "studio/window/table.hpp"
#include "studio/window/wx_text.hpp"

namespace quadrille {

Outline::Outline(wxWindow* parent, OutlineAnswers answers) : wxPanel(parent), answers_(std::move(answers)) {
  tree_ = new wxDataViewCtrl(this, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxDV_SINGLE | wxBORDER_NONE);
  model_ = new OutlineModel;
  tree_->AssociateModel(model_);
  model_->DecRef();  // the tree holds it now
  const auto add_column = [this](const wxString& title, unsigned column, int width, wxAlignment align) {
    auto* renderer = new wxDataViewTextRenderer("string", wxDATAVIEW_CELL_INERT, align);
    if (column == OutlineModel::column_name) renderer->EnableEllipsize(wxELLIPSIZE_END);
    tree_->AppendColumn(new wxDataViewColumn(title, renderer, column, FromDIP(width), align, wxDATAVIEW_COL_RESIZABLE));
  };
  add_column("Areas and pieces", OutlineModel::column_name, 172, wxALIGN_LEFT);
  add_column("Balloons", OutlineModel::column_balloons, 80, wxALIGN_RIGHT);
  add_column("Remarks", OutlineModel::column_remarks, 84, wxALIGN_LEFT);
  set_accessible_name(tree_, "Outline", "Areas and their pieces, with balloons and remarks");

  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(tree_, wxSizerFlags(1).Expand());
  SetSizer(sizer);
  lay_out_with_room(this);

  tree_->Bind(wxEVT_DATAVIEW_SELECTION_CHANGED, [this](wxDataViewEvent& event) {
    if (telling_) answer(event.GetItem(), answers_.picked);
  });
  tree_->Bind(wxEVT_DATAVIEW_ITEM_ACTIVATED,
              [this](wxDataViewEvent& event) { answer(event.GetItem(), answers_.opened); });
}

void Outline::answer(const wxDataViewItem& item,
                     const std::function<void(const std::string&, const std::string&)>& to) const {
  if (!item.IsOk()) return;
  const auto [area, piece] = model_->ids_of(item);
  to(area, piece);
}

void Outline::show(std::vector<OutlineArea> areas) {
  telling_ = false;
  if (!model_->set_areas(std::move(areas)))
    for (const OutlineArea& area : model_->areas()) tree_->Expand(model_->item_of(area.line.id, ""));
  telling_ = true;
  select(area_, piece_);
}

void Outline::select(const std::string& area, const std::string& piece) {
  area_ = area, piece_ = piece;
  const wxDataViewItem item = model_->item_of(area, piece);
  if (item == tree_->GetSelection()) return;
  telling_ = false;
  tree_->UnselectAll();
  if (item.IsOk()) {
    tree_->Select(item);
    tree_->EnsureVisible(item);
  }
  telling_ = true;
}

}  // namespace quadrille
