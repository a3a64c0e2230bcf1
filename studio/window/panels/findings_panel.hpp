// Findings: everything there is to say about the event, worst first and alike ones once, with the selected one in full
// below, and what a click mends.
#pragma once

#include <wx/button.h>
#include <wx/panel.h>
#include <wx/textctrl.h>

#include <cstddef>
#include <functional>
#include <string>
#include <vector>

#include "studio/model/finding.hpp"
#include "studio/model/finding_words.hpp"
#include "studio/window/job/study.hpp"
#include "studio/window/toolkit/table.hpp"

namespace quadrille {

/// What the page tells its owner, and asks.
struct FindingsAnswers {
  std::function<void(const Finding&)> picked;                ///< it was selected
  std::function<void(const Finding&)> go_to;                 ///< the user wants to get at what it is about
  std::function<void(const Findings&)> apply;                ///< the user wants these mended
  std::function<std::string(const Findings&)> remedy_words;  ///< what apply would do; empty: nothing is known
};

class FindingsPanel : public wxPanel {
 public:
  FindingsPanel(wxWindow* parent, FindingsAnswers answers);

  /// `all` are of the study's event, and `waiting` pieces are still being reckoned. Without a study the page is empty.
  void show(const Study* study, Findings all, std::size_t waiting);

  const Table& table() const { return table_; }
  /// Sentences in the list.
  std::size_t told_count() const { return told_.size(); }
  /// The selected sentence in full.
  wxString details() const { return details_->GetValue(); }
  wxButton& go_button() { return *go_; }
  wxButton& apply_button() { return *apply_; }
  /// What is told by the selected row; empty where none is selected.
  Findings selected() const;
  /// As Enter on the row, and as the button.
  void go_to_selected();
  void apply_selected();
  /// Selects the row that is `by` rows further down, as far as there are rows.
  void step(int by);

 private:
  Findings of_row(int row) const;
  void show_details();
  void show_menu();

  FindingsAnswers answers_;
  Findings findings_;              ///< sorted by weight
  std::vector<ToldFinding> told_;  ///< row by row
  Table table_;
  wxTextCtrl* details_;
  wxButton *go_, *apply_;
  bool telling_ = true;  ///< false while the selection is set by the program
  bool picked_ = false;  ///< a finding, by hand or by its key, since the event was opened
};

}  // namespace quadrille
