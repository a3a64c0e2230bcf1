#include "studio/window/panels/site_panel.hpp"

#include <wx/menu.h>
#include <wx/sizer.h>
#include <wx/splitter.h>

#include <algorithm>
#include <utility>

#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/kept_pane.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

constexpr int fields_width = 312, list_width = 522;  // [DIP]

}  // namespace

SitePanel::SitePanel(wxWindow* parent, SitePanelAnswers answers) : wxPanel(parent), answers_(std::move(answers)) {
  lay_out();
  objects_.list->Bind(wxEVT_DATAVIEW_SELECTION_CHANGED, [this](wxDataViewEvent&) {
    const int row = objects_.selected();
    if (!telling_ || !content_ || row < 0) return;
    const auto index = static_cast<std::size_t>(row);  // the first one is the place itself
    answers_.picked(index == 0 || index > content_->rows.size() ? std::nullopt
                                                                : std::optional(content_->rows[index - 1].object));
  });
  objects_.list->Bind(wxEVT_CHAR_HOOK, [this](wxKeyEvent& event) {
    const bool removes = event.GetKeyCode() == WXK_DELETE || event.GetKeyCode() == WXK_NUMPAD_DELETE;
    if (removes && !event.HasAnyModifiers() && remove_->IsEnabled()) return answers_.removed();
    event.Skip();
  });
  show(std::nullopt);
}

void SitePanel::lay_out() {
  const int border = FromDIP(6);
  const long style = wxSP_LIVE_UPDATE | wxSP_NOBORDER;
  auto* outer = new wxSplitterWindow(this, wxID_ANY, wxDefaultPosition, wxDefaultSize, style);
  auto* left = new wxPanel(outer);
  auto* inner = new wxSplitterWindow(outer, wxID_ANY, wxDefaultPosition, wxDefaultSize, style);
  auto* right = new wxPanel(inner);
  heading_ =
      new wxStaticText(left, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxST_ELLIPSIZE_END | wxST_NO_AUTORESIZE);
  heading_->SetFont(GetFont().Bold());
  fields_ = new FactRows(left, [this](const std::string& key, const std::string& text) -> std::optional<std::string> {
    return content_ ? answers_.typed(content_->selected, key, text) : std::nullopt;
  });
  auto* on_left = new wxBoxSizer(wxVERTICAL);
  on_left->Add(heading_, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(10)));
  on_left->Add(fields_, wxSizerFlags(1).Expand());
  left->SetSizer(on_left);

  plan_ = new FloorPlanView(inner, {[this](const auto& object) { answers_.picked(object); },
                                    [this](const SiteObject& object, SiteGrip grip, double right_m, double back_m,
                                           bool fine) { answers_.dragged(object, grip, right_m, back_m, fine); },
                                    [this] { answers_.let_go(); }, [this] { answers_.removed(); },
                                    [this](const SitePlace& place) { offer_additions(place); },
                                    [this](const auto& place) { answers_.pointing(place); }});
  objects_ = make_table(right, {growing({"What", 140}), growing({"Where", 226}), {"Measures, slope", 152}},
                        "What stands at the place, and lines");
  add_ = new wxButton(right, wxID_ANY, wxString::FromUTF8("&Add…"));
  remove_ = new wxButton(right, wxID_ANY, "&Remove");
  advice_ = new wxButton(right, wxID_ANY, wxString::FromUTF8("Use advised &lines…"));
  add_->SetToolTip("A structure, a walkway, the outlet or a line");
  remove_->SetToolTip("Take what is selected away");
  advice_->SetToolTip("Tie the selected piece with the lines that the standing check found best");
  add_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { offer_additions(std::nullopt); });
  remove_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { answers_.removed(); });
  advice_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { offer_advice(); });
  securing_ =
      new wxStaticText(right, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxST_ELLIPSIZE_END | wxST_NO_AUTORESIZE);
  auto* buttons = new wxBoxSizer(wxHORIZONTAL);
  for (wxButton* button : {add_, remove_, advice_})
    buttons->Add(button, wxSizerFlags().CentreVertical().Border(wxRIGHT, border));
  auto* on_right = new wxBoxSizer(wxVERTICAL);
  on_right->Add(objects_.list, wxSizerFlags(1).Expand());
  on_right->Add(securing_, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT | wxTOP, border));
  on_right->Add(buttons, wxSizerFlags().Border(wxALL, border));
  right->SetSizer(on_right);
  lay_out_with_room(right);

  outer->SetSize(FromDIP(wxSize(1240, 240)));  // some room until there is the real one
  inner->SetSize(FromDIP(wxSize(900, 240)));
  outer->SetMinimumPaneSize(FromDIP(200)), inner->SetMinimumPaneSize(FromDIP(200));
  inner->SplitVertically(plan_, right, -FromDIP(list_width));
  keep_second_pane(inner, FromDIP(list_width), 0.4);
  outer->SplitVertically(left, inner, FromDIP(fields_width));
  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(outer, wxSizerFlags(1).Expand());
  SetSizer(sizer);
  lay_out_with_room(this);
}

void SitePanel::show(std::optional<SiteContent> content) {
  content_ = std::move(content);
  const bool there = content_.has_value();
  wxString heading = "There is no area", securing;
  if (there) {
    const std::string& name = content_->selected ? content_->selected_name : content_->name;
    heading = shown(name.empty() ? "The place" : name);
    securing = shown(content_->securing);
  }
  if (heading_->GetLabel() != heading) heading_->SetLabelText(heading);
  if (securing_->GetLabel() != securing) securing_->SetLabelText(securing);
  if (there) {
    const SiteObject* const object = content_->selected ? &*content_->selected : nullptr;
    std::string of = content_->area;
    if (object)
      of +=
          "/" + object->id + "/" + std::to_string(static_cast<int>(object->kind)) + "/" + std::to_string(object->line);
    fields_->show(object ? content_->object_fields : content_->area_fields, of, content_->may_edit);
    plan_->show(content_->plan, content_->units, content_->area);
    plan_->select(content_->selected, content_->words);
  } else {
    fields_->show({}, "", false);
    plan_->show(std::nullopt, Units::feet, "");
    plan_->select(std::nullopt, "");
  }
  fill_objects();
  const bool may = there && content_->may_edit;
  add_->Enable(may);
  remove_->Enable(may && content_->selected && content_->selected->kind != SiteObjectKind::piece);
  advice_->Enable(may && !content_->advice.empty());
}

void SitePanel::fill_objects() {
  telling_ = false;
  std::vector<TableRow> rows;
  int selected = 0;
  if (content_) {
    rows.push_back({{shown(content_->name.empty() ? "The place" : content_->name), "the place itself", ""}, {}, ""});
    for (const SiteRow& row : content_->rows) {
      if (content_->selected == row.object) selected = static_cast<int>(rows.size());
      rows.push_back({{shown(row.what), shown(row.where), shown(row.measures)}, {}, ""});
    }
    const bool is_piece = content_->selected && content_->selected->kind == SiteObjectKind::piece;
    if (is_piece) selected = -1;
  }
  const auto count = static_cast<int>(rows.size());
  objects_.model->set_rows(std::move(rows));
  if (selected < 0)
    objects_.list->UnselectAll();
  else if (selected < count && objects_.selected() != selected)
    objects_.list->Select(objects_.model->GetItem(static_cast<unsigned>(selected)));
  telling_ = true;
}

void SitePanel::offer_additions(const std::optional<SitePlace>& place) {
  if (!content_ || !content_->may_edit) return;
  wxMenu menu;
  const std::pair<SiteAddition, const char*> additions[] = {{SiteAddition::structure, "Add a &structure"},
                                                            {SiteAddition::walkway, "Add a &walkway"},
                                                            {SiteAddition::outlet, "Note the &outlet"},
                                                            {SiteAddition::line, "Add a &line to the selected piece"}};
  for (const auto& [what, label] : additions) {
    wxMenuItem* const item = menu.Append(wxID_ANY, label);
    if (what == SiteAddition::line) item->Enable(content_->may_tie);
    menu.Bind(
        wxEVT_MENU, [this, what = what, place](wxCommandEvent&) { answers_.added(what, place); }, item->GetId());
  }
  if (place && remove_->IsEnabled()) {
    menu.AppendSeparator();
    wxMenuItem* const item = menu.Append(wxID_ANY, "&Remove");
    menu.Bind(
        wxEVT_MENU, [this](wxCommandEvent&) { answers_.removed(); }, item->GetId());
  }
  PopupMenu(&menu);
}

void SitePanel::focus_field(std::string_view key) {
  if (wxWindow* const input = fields_->input(key)) input->SetFocus();
}

void SitePanel::focus_lines() {
  if (content_ && content_->selected && content_->selected->kind == SiteObjectKind::line)
    objects_.list->SetFocus();
  else
    (advice_->IsEnabled() ? advice_ : add_)->SetFocus();
}

void SitePanel::offer_advice() {
  if (!content_ || content_->advice.empty()) return;
  wxMenu menu;
  for (std::size_t i = 0; i < content_->advice.size(); ++i) {
    wxMenuItem* const item = menu.Append(wxID_ANY, wxControl::EscapeMnemonics(shown(content_->advice[i])));
    menu.Bind(
        wxEVT_MENU, [this, i](wxCommandEvent&) { answers_.advised(i); }, item->GetId());
  }
  PopupMenu(&menu);
}

}  // namespace quadrille
