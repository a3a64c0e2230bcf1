// One entry of a list of the house, in a form of its own.
#pragma once

#include <wx/dialog.h>

#include <optional>
#include <vector>

#include "studio/house_form/house_lists.hpp"
#include "studio/window/dialogs/house_fields.hpp"

namespace quadrille {

class HouseEntryDialog : public wxDialog {
 public:
  /// Entry `row` of the list; none: a new one. `house` and `palettes` must outlive the dialog.
  HouseEntryDialog(wxWindow* parent, const House& house, HouseList list, std::optional<std::size_t> row,
                   const std::vector<Palette>& palettes);

  HouseFields& fields() { return *fields_; }
  /// The house with the entry as it was typed; nothing before it was accepted.
  const std::optional<House>& changed() const { return changed_; }
  /// What OK does: false where a field cannot be taken; it is said there.
  bool accept();

 private:
  const House& house_;
  HouseList list_;
  std::optional<std::size_t> row_;
  const std::vector<Palette>& palettes_;
  HouseFields* fields_ = nullptr;
  std::optional<House> changed_;
};

}  // namespace quadrille
