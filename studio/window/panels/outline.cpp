// The tree pane.
#include "studio/window/panels/outline.hpp"

#include <wx/sizer.h>

#include <algorithm>
#include <utility>

#include "studio/window/commands/commands.hpp"
#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/list_room.hpp"
#include "studio/window/toolkit/menu_keys.hpp"
#include "studio/window/toolkit/table.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

bool is_one_of(const PieceIds& pieces, const std::string& id) { return std::ranges::find(pieces, id) != pieces.end(); }

}  // namespace

Outline::Outline(wxWindow* parent, OutlineAnswers answers) : wxPanel(parent), answers_(std::move(answers)) {
  tree_ = new wxDataViewCtrl(this, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxDV_MULTIPLE | wxBORDER_NONE);
  model_ = new OutlineModel;
  tree_->AssociateModel(model_);
  model_->DecRef();  // the tree holds it now
  const auto add_column = [this](const wxString& title, unsigned column, int width, wxAlignment align) {
    auto* renderer = new wxDataViewTextRenderer("string", wxDATAVIEW_CELL_INERT, align);
    // A name keeps its end, where it is told that the piece is locked or hidden.
    if (column == OutlineModel::column_name) renderer->EnableEllipsize(wxELLIPSIZE_MIDDLE);
    if (column == OutlineModel::column_remarks) renderer->EnableEllipsize(wxELLIPSIZE_END);
    tree_->AppendColumn(new wxDataViewColumn(title, renderer, column, FromDIP(width), align, wxDATAVIEW_COL_RESIZABLE));
  };
  add_column("Areas and pieces", OutlineModel::column_name, 190, wxALIGN_LEFT);
  add_column("Balloons", OutlineModel::column_balloons, 84, wxALIGN_RIGHT);
  add_column("Remarks", OutlineModel::column_remarks, 84, wxALIGN_LEFT);
  let_grow(*tree_->GetColumn(0));
  show_cut_texts(tree_);
  set_accessible_name(tree_, "Outline", "Areas and their pieces, with balloons and remarks");

  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(tree_, wxSizerFlags(1).Expand());
  SetSizer(sizer);
  lay_out_with_room(this);

  tree_->Bind(wxEVT_DATAVIEW_SELECTION_CHANGED, [this](wxDataViewEvent& event) {
    if (!telling_) return;
    if (event.GetItem().IsOk()) touched_area_ = model_->ids_of(event.GetItem()).first;
    tell_later();
  });
  tree_->Bind(wxEVT_DATAVIEW_ITEM_ACTIVATED, [this](wxDataViewEvent& event) {
    if (!event.GetItem().IsOk()) return;
    const auto [area, piece] = model_->ids_of(event.GetItem());
    answers_.opened(area, piece);
  });
  Bind(wxEVT_CHAR_HOOK, &Outline::take_key, this);
  leave_keys_to_menus(tree_);
}

void Outline::take_key(wxKeyEvent& event) {
  const int key = event.GetKeyCode();
  const bool removes = key == WXK_DELETE || key == WXK_NUMPAD_DELETE, hides = key == WXK_SPACE;
  if (event.HasAnyModifiers() || (!removes && !hides)) return event.Skip();
  wxCommandEvent command(wxEVT_MENU, removes ? int{wxID_DELETE} : int{command_hide});
  ProcessWindowEvent(command);  // goes up to the window
}

/// One click may change the selection in several steps: what is told is what it comes to.
void Outline::tell_later() {
  if (std::exchange(to_tell_, true)) return;
  CallAfter([this] {
    to_tell_ = false;
    tell();
  });
}

PieceIds Outline::selected_in(const std::string& area) const {
  wxDataViewItemArray items;
  tree_->GetSelections(items);
  PieceIds ids;
  for (const wxDataViewItem& item : items) {
    const auto [of, piece] = model_->ids_of(item);
    if (of == area && !piece.empty()) ids.push_back(piece);
  }
  return ids;
}

/// Pieces of the area in which the selection was changed; those that were selected before stay before the others.
void Outline::tell() {
  wxDataViewItemArray items;
  tree_->GetSelections(items);
  std::string area = touched_area_;
  const auto holds_some = [&] {
    return std::ranges::any_of(items, [&](const wxDataViewItem& item) { return model_->ids_of(item).first == area; });
  };
  if (!items.empty() && !holds_some()) area = model_->ids_of(items.front()).first;
  if (area.empty()) area = area_;
  const PieceIds now = selected_in(area);
  PieceIds ordered = area == area_ ? pieces_ : PieceIds{};
  std::erase_if(ordered, [&](const std::string& id) { return !is_one_of(now, id); });
  for (const std::string& id : now)
    if (!is_one_of(ordered, id)) ordered.push_back(id);
  answers_.picked(area, ordered);
}

void Outline::show(std::vector<OutlineArea> areas) {
  telling_ = false;
  const bool same_shape = model_->set_areas(std::move(areas));
  if (!same_shape)
    for (const OutlineArea& area : model_->areas()) tree_->Expand(model_->item_of(area.line.id, ""));
  telling_ = true;
  if (!to_tell_ || !same_shape) select(area_, PieceIds(pieces_));  // what was just picked is not undone
}

void Outline::select(const std::string& area, const PieceIds& pieces) {
  area_ = touched_area_ = area;
  pieces_ = pieces;
  wxDataViewItemArray wanted, present;
  for (const std::string& id : pieces_)
    if (const wxDataViewItem item = model_->item_of(area, id); item.IsOk()) wanted.push_back(item);
  if (pieces_.empty())
    if (const wxDataViewItem item = model_->item_of(area, ""); item.IsOk()) wanted.push_back(item);
  tree_->GetSelections(present);
  const auto is_there = [&](const wxDataViewItem& item) { return std::ranges::find(present, item) != present.end(); };
  if (wanted.size() == present.size() && std::ranges::all_of(wanted, is_there)) return;
  telling_ = false;
  tree_->UnselectAll();
  for (const wxDataViewItem& item : wanted) tree_->Select(item);
  if (!wanted.empty()) tree_->EnsureVisible(wanted.back());
  telling_ = true;
}

}  // namespace quadrille
