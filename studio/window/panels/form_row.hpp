// One field of the form: its label, its control, its unit, the way back to what is usual, and what is wrong below.
#pragma once

#include <wx/button.h>
#include <wx/sizer.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>

#include <functional>
#include <optional>
#include <string>

#include "studio/window/panels/form_content.hpp"

namespace quadrille {

class ListEditor;
class RowEditor;

/// What a field needs of the form that it is part of.
struct FormRowAnswers {
  const FormAnswers* to_owner = nullptr;      ///< lives as long as the form
  std::function<void(const wxString&)> help;  ///< what is to be said of the field that has the focus or the pointer
  std::function<void()> grown;                ///< the field needs more or less room
};

/// Its controls belong to the window they are made in. It must outlive their events.
class FormRow {
 public:
  FormRow(wxScrolledWindow* parent, wxSizer& rows, const Field& field, FormRowAnswers answers);
  FormRow(const FormRow&) = delete;
  FormRow& operator=(const FormRow&) = delete;

  const std::string& key() const { return key_; }
  /// Shows what stands in the field; what is being typed, or was refused, stays until it is taken or given up.
  void fill(const Field& field, const FormContent& content, const std::vector<wxColour>& colours);
  /// Commits what is being typed.
  void take_text();
  /// From now on it tells nobody anything: its controls are about to go.
  void silence() { telling_ = false; }

  wxWindow* input() const { return input_; }
  wxButton* usual() const { return usual_; }
  ListEditor* list() const { return list_; }
  RowEditor* rows() const { return pattern_; }
  /// Where the keyboard begins in this field.
  wxWindow* first() const;
  /// The sentence under the field; empty where what stands there is taken.
  wxString fault() const;
  /// Wraps the sentence to this width [px].
  void wrap(int width);

 private:
  wxWindow* make_input(wxScrolledWindow* parent, const Field& field);
  void make_editors(wxWindow* parent, wxSizer& rows);
  void commit(const std::string& text);
  void say_fault(const std::string& sentence);
  void tell_help_of(wxWindow* window);

  std::string key_;
  Kind kind_;
  FormRowAnswers answers_;
  wxWindow* input_ = nullptr;
  wxButton* usual_ = nullptr;
  wxStaticText *label_ = nullptr, *unit_ = nullptr, *fault_ = nullptr;
  ListEditor* list_ = nullptr;      ///< for paths and mixes
  RowEditor* pattern_ = nullptr;    ///< for pattern rows
  wxString shown_text_;             ///< what stood in it when it was last filled
  std::optional<bool> shown_flag_;  ///< what its box showed then; nothing: they differ
  std::string fault_text_;
  wxString help_;
  int width_ = 0;
  bool telling_ = true;  ///< false while the program fills the controls
};

}  // namespace quadrille
