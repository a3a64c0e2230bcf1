// Facts in native fields, one beneath the other: label, field, unit; under it what is wrong with what was typed.
#pragma once

#include <wx/scrolwin.h>
#include <wx/stattext.h>

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "studio/form/facts.hpp"

namespace quadrille {

class FactRows : public wxScrolledWindow {
 public:
  /// The user typed `text` into the field of `key`, or chose it. Returns the sentence of what is wrong with it; nothing
  /// where it was taken.
  using Typed = std::function<std::optional<std::string>(const std::string& key, const std::string& text)>;

  FactRows(wxWindow* parent, Typed typed);

  /// Shows `fields`, which are of the thing that `of` names. The controls stay as long as both are the same, and what is
  /// being typed, or was refused, stays in them.
  void show(FactFields fields, const std::string& of, bool may_edit);
  /// Commits what is being typed. False where a field still holds what was refused.
  bool settle();
  /// Puts the keyboard into the first field that holds what was refused.
  void focus_fault();

  /// The control of the field, or null: a text field or a choice.
  wxWindow* input(std::string_view key) const;
  /// The sentence under the field; empty where what stands there is taken.
  wxString fault(std::string_view key) const;
  wxString note(std::string_view key) const;

 private:
  struct Row {
    std::string key;
    FactKind kind = FactKind::text;
    wxWindow* input = nullptr;
    wxStaticText *unit = nullptr, *note = nullptr, *fault = nullptr;
    wxString shown_text;              ///< what stood in it when it was last filled
    std::vector<std::string> labels;  ///< of its choices
  };

  bool same_rows(const FactFields& fields, const std::string& of) const;
  void make_anew();
  void make_row(const FactField& field);
  wxWindow* make_input(const FactField& field, std::size_t row);
  void fill();
  void fill_row(Row& row, const FactField& field);
  void commit(std::size_t row, const std::string& text);
  void take_text(std::size_t row);
  void say(wxStaticText& line, const std::string& sentence, int indent = 0);

  Typed typed_;
  FactFields fields_;
  std::string of_;
  bool may_edit_ = true;
  std::vector<Row> rows_;
  bool made_later_ = false;  ///< the fields have changed, and their controls follow after the event at hand
  bool telling_ = true;      ///< false while the program fills the controls
};

}  // namespace quadrille
