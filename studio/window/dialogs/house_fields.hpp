// The house's figures as native controls: label, field, unit, what is accepted, and the way back to the default.
#pragma once

#include <wx/button.h>
#include <wx/scrolwin.h>
#include <wx/stattext.h>

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "studio/house_form/house_field.hpp"

namespace quadrille {

struct HouseFieldsAnswers {
  /// What was typed or chosen; a sentence where it cannot be taken.
  std::function<std::optional<std::string>(const std::string& key, const std::string& text)> typed;
  std::function<void(const std::string& key)> back_to_default;
};

class HouseFields : public wxScrolledWindow {
 public:
  /// Without `typed`, what stands in the fields is only read by texts().
  HouseFields(wxWindow* parent, HouseFieldsAnswers answers);

  /// Makes the fields, or shows their new texts and choices where they are the same ones; what was refused stays as it
  /// was typed.
  void show(const std::vector<HouseFieldGroup>& groups);
  /// Says what is wrong with a field, beneath it; empty: nothing is.
  void say_fault(std::string_view key, const std::string& sentence);
  /// Takes what is typed and not taken yet. False where something cannot be taken: the focus is there then.
  bool settle();
  /// What stands in the fields, by key.
  std::map<std::string, std::string> texts() const;

  /// The control of a field, and what is said beneath it; null and empty where there is none.
  wxWindow* input(std::string_view key) const;
  wxButton* default_button(std::string_view key) const;
  wxString fault(std::string_view key) const;
  /// Writes into the field as a user does, without leaving it.
  void type(std::string_view key, const std::string& text);

 private:
  struct Row {
    std::string key;
    wxWindow* input = nullptr;
    wxStaticText* beside = nullptr;
    wxButton* usual = nullptr;  ///< hidden where the default stands, or there is none
    wxStaticText* fault = nullptr;
    wxString shown_text;
  };
  void make(const std::vector<HouseFieldGroup>& groups);
  void make_row(const HouseField& field, wxSizer& grid);
  wxWindow* make_input(const HouseField& field, std::size_t row);
  void fill(Row& row, const HouseField& field);
  bool take(std::size_t row);
  void say(Row& row, const std::string& sentence);
  Row* find(std::string_view key);
  const Row* find(std::string_view key) const;

  HouseFieldsAnswers answers_;
  std::vector<Row> rows_;
  int label_width_ = 0;  ///< [pixels], of the longest label
};

}  // namespace quadrille
