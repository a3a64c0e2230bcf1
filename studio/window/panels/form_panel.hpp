// The form of the selected pieces: name, colours and every parameter that they share, in native controls, with a word of
// help at the foot about the field at hand.
#pragma once

#include <wx/panel.h>
#include <wx/scrolwin.h>
#include <wx/weakref.h>

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "studio/files/palette_file.hpp"
#include "studio/window/panels/form_content.hpp"
#include "studio/window/panels/form_head.hpp"
#include "studio/window/panels/form_row.hpp"
#include "studio/window/panels/pattern_picture.hpp"
#include "studio/window/panels/slot_rows.hpp"

namespace quadrille {

class FormPanel : public wxPanel {
 public:
  FormPanel(wxWindow* parent, FormAnswers answers);

  /// Nothing: no piece is selected. The controls stay as long as the fields are the same; what is being typed stays too.
  void show(std::optional<FormContent> content, const LoadedPalettes* palettes);

  /// Commits what is being typed.
  void settle();

  /// Puts the keyboard into the field of this parameter, by its key or an earlier one, or of this slot ("slot A"), and
  /// scrolls to it. False where the form has none; the form itself then has the keyboard where it can.
  bool focus_field(std::string_view key);

  /// The control of the field, or null: a text field, a choice or a box.
  wxWindow* input(std::string_view key) const;
  /// The whole row of the field, or null.
  const FormRow* row(std::string_view key) const;
  /// The sentence under the field; empty where what stands there is taken.
  wxString fault(std::string_view key) const;
  /// The button that leads back to the default, or null.
  wxButton* usual_button(std::string_view key) const;
  /// Null while nothing or several pieces are selected.
  wxTextCtrl* name_field() const { return head_ ? head_->name() : nullptr; }
  /// Null while nothing is selected.
  const FormHead* head() const { return head_.get(); }
  /// The buttons that open the choice of a colour, slot by slot.
  const std::vector<wxButton*>& colours() const;
  /// The pattern as it is built; null where the type has no pattern.
  const PatternPicture* picture() const { return picture_; }
  /// What is said at the foot.
  wxString help() const { return help_text_; }

 private:
  bool same_fields(const FormContent& content) const;
  void make_anew();
  void make(const FormContent& content);
  void fill(const FormContent& content);
  int help_height(int lines) const;
  void say_help(const wxString& text);
  void lay_out_fields();
  void scroll_to(const wxWindow& window);
  int text_width() const;
  std::string focused_key() const;
  FormRow* row_of(std::string_view key) const;

  FormAnswers answers_;
  std::optional<FormContent> content_;
  std::vector<Palette> palettes_;
  wxScrolledWindow* fields_;
  wxStaticText* help_;
  wxString help_text_;
  std::unique_ptr<FormHead> head_;
  std::unique_ptr<SlotRows> slots_;
  std::vector<std::unique_ptr<FormRow>> rows_;
  PatternPicture* picture_ = nullptr;
  bool made_later_ = false;         ///< the fields have changed, and their controls follow after the event at hand
  bool laid_later_ = false;         ///< so does their layout
  bool help_changed_ = false;       ///< in height, and the panel was not laid out since
  wxWeakRef<wxWindow> seen_later_;  ///< what is to be scrolled to once they are laid out
  std::string focus_later_;         ///< the field that is to have the keyboard once they are there
};

}  // namespace quadrille
