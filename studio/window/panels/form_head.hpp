// The head of the form: what is selected, its name, whether it is locked and hidden.
#pragma once

#include <wx/checkbox.h>
#include <wx/sizer.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>

#include <optional>

#include "studio/window/panels/form_content.hpp"

namespace quadrille {

/// Its controls belong to the window they are made in.
class FormHead {
 public:
  /// Of one piece with the field of its name, of several with their names to read.
  FormHead(wxWindow* parent, wxSizer& rows, bool several, const FormAnswers& answers);
  FormHead(const FormHead&) = delete;
  FormHead& operator=(const FormHead&) = delete;

  void fill(const FormContent& content);
  /// Wraps the names to this width [px].
  void wrap(int width);
  /// Commits the name that is being typed.
  void take_name();
  /// From now on it tells nobody anything: its controls are about to go.
  void silence() { telling_ = false; }

  wxTextCtrl* name() const { return name_; }
  wxCheckBox* locked() const { return locked_; }
  wxCheckBox* hidden() const { return hidden_; }
  wxString heading() const { return heading_->GetLabelText(); }

 private:
  const FormAnswers& answers_;
  wxStaticText* heading_;
  wxTextCtrl* name_ = nullptr;     ///< of one piece
  wxStaticText* names_ = nullptr;  ///< of several
  wxCheckBox *locked_, *hidden_;
  wxString shown_name_;
  std::optional<bool> shown_locked_, shown_hidden_;  ///< nothing: the pieces differ
  bool telling_ = true;
};

}  // namespace quadrille
