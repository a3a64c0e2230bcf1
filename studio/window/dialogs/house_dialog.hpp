// The dialog "House settings": the decorator's own figures, page by page. Everything is changed on a copy; who shows the
// dialog saves it, once, or throws it away.
#pragma once

#include <wx/dialog.h>
#include <wx/listbox.h>
#include <wx/simplebook.h>

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "studio/files/palette_file.hpp"
#include "studio/house_form/house_lists.hpp"
#include "studio/house_form/house_pages.hpp"
#include "studio/window/dialogs/house_fields.hpp"
#include "studio/window/dialogs/house_list_page.hpp"

namespace quadrille {

struct HouseDialogContent {
  House house;
  std::string where;  ///< the file it goes to, or why it cannot be saved
  bool can_be_saved = true;
  std::shared_ptr<const LoadedPalettes> palettes;
  std::optional<JobRecord> this_event;  ///< the open event as a job; none where nothing is open
};

class HouseDialog : public wxDialog {
 public:
  HouseDialog(wxWindow* parent, HouseDialogContent content);

  /// As it was changed.
  const House& house() const { return content_.house; }
  /// What OK does before it ends the dialog: false where something typed cannot be taken; its page is in front then.
  bool settle();

  /// Brings a page to the front: the single figures first, then the lists, in the order of the list at the left.
  void show_page(std::size_t number);
  wxListBox& pages() { return *pages_; }
  HouseFields& fields(HousePage page) { return *fields_[static_cast<std::size_t>(page)]; }
  HouseListPage& list(HouseList list) { return *lists_[static_cast<std::size_t>(list)]; }

 private:
  void add_page(wxWindow* window, const wxString& name);
  void change(House house);
  void change_entry(HouseList list, std::optional<std::size_t> row);
  void remove_entry(HouseList list, std::size_t row);
  void add_this_event();

  HouseDialogContent content_;
  wxListBox* pages_ = nullptr;
  wxSimplebook* book_ = nullptr;
  std::vector<HouseFields*> fields_;
  std::vector<HouseListPage*> lists_;
};

}  // namespace quadrille
