// The list and the sentence below it.
#include "studio/window/findings_panel.hpp"

#include <wx/sizer.h>
#include <wx/statline.h>

#include <algorithm>
#include <utility>

#include "studio/model/finding_words.hpp"
#include "studio/window/accessible_name.hpp"
#include "studio/window/table.hpp"
#include "studio/window/words.hpp"
#include "studio/window/wx_text.hpp"

namespace quadrille {

FindingsPanel::FindingsPanel(wxWindow* parent, std::function<void(const Finding&)> picked)
    : wxPanel(parent), picked_(std::move(picked)) {
  table_ = make_table(this, {{"Weight", 90}, {"Where", 220}, {"What was found", 0}}, "Findings");
  details_ = new wxTextCtrl(this, wxID_ANY, "", wxDefaultPosition, FromDIP(wxSize(-1, 56)),
                            wxTE_MULTILINE | wxTE_READONLY | wxTE_NO_VSCROLL | wxBORDER_NONE);
  set_accessible_name(details_, "The selected finding in full", "");
  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(table_.list, wxSizerFlags(1).Expand());
  sizer->Add(new wxStaticLine(this), wxSizerFlags().Expand());
  sizer->Add(details_, wxSizerFlags().Expand().Border(wxALL, FromDIP(6)));
  SetSizer(sizer);
  lay_out_with_room(this);
  table_.list->Bind(wxEVT_DATAVIEW_ITEM_ACTIVATED, [this](wxDataViewEvent&) {
    if (const int row = table_.selected(); row >= 0) picked_(findings_[static_cast<std::size_t>(row)]);
  });
  table_.list->Bind(wxEVT_DATAVIEW_SELECTION_CHANGED, [this](wxDataViewEvent&) {
    show_details();
    if (const int row = table_.selected(); telling_ && row >= 0) picked_(findings_[static_cast<std::size_t>(row)]);
  });
}

void FindingsPanel::show(const Study* study) {
  const int row_before = table_.selected();
  const Finding before = row_before >= 0 ? findings_[static_cast<std::size_t>(row_before)] : Finding();
  findings_ = study ? study->findings : Findings();
  std::ranges::stable_sort(findings_, std::greater(), &Finding::weight);
  std::vector<TableRow> rows;
  sentences_.clear();
  for (const Finding& finding : findings_) {
    sentences_.push_back(sentence_of(finding, study->event));
    rows.push_back({{shown(std::string(weight_text(finding.weight))), shown(place_text(finding, study->event)),
                     shown(finding.text)},
                    {},
                    ""});
  }
  // One is always selected: a native list that gets the focus without would select its first by itself, and the drawing
  // would jump to it.
  telling_ = false;
  table_.model->set_rows(std::move(rows));
  const auto same = std::ranges::find(findings_, before);
  const auto row = same == findings_.end() ? 0 : same - findings_.begin();
  if (!findings_.empty()) table_.list->Select(table_.model->GetItem(static_cast<unsigned int>(row)));
  telling_ = true;
  show_details();
}

void FindingsPanel::show_details() {
  const int row = table_.selected();
  std::string text = findings_.empty() ? "Nothing to say about this event." : "Select a finding to read it in full.";
  if (row >= 0 && row < static_cast<int>(sentences_.size())) text = sentences_[static_cast<std::size_t>(row)];
  if (details_->GetValue() != shown(text)) details_->ChangeValue(shown(text));
}

}  // namespace quadrille
