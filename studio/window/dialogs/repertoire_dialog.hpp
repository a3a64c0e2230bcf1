// The repertoire in pictures: to insert, rename and remove the decorator's own pieces.
#pragma once

#include <wx/button.h>
#include <wx/dialog.h>
#include <wx/stattext.h>

#include <functional>
#include <map>
#include <string>
#include <vector>

#include "studio/window/toolkit/table.hpp"

namespace quadrille {

struct RepertoireLine {
  std::string key, name, type_name, price, note;
};

struct RepertoireAnswers {
  std::function<void(const std::string& key)> rename;
  std::function<void(const std::string& key)> remove;
};

/// Pictures of pieces: PNG bytes, by key.
using PiecePictures = std::map<std::string, std::string, std::less<>>;

class RepertoireDialog : public wxDialog {
 public:
  RepertoireDialog(wxWindow* parent, RepertoireAnswers answers);

  /// Pictures that are there already stay with their keys.
  void show(std::vector<RepertoireLine> lines);
  void show_pictures(const PiecePictures& pictures);
  /// Key of the selected entry; empty where none is.
  std::string chosen() const;
  const Table& table() const { return table_; }
  bool has_picture(const std::string& key) const { return pictures_.contains(key); }

  /// Of a picture [DIP].
  static constexpr int picture_width = 112, picture_height = 84;

 private:
  void fill();
  void allow();

  RepertoireAnswers answers_;
  std::vector<RepertoireLine> lines_;
  std::map<std::string, wxBitmapBundle, std::less<>> pictures_;
  wxBitmapBundle blank_;
  std::size_t pictures_shown_ = 0;  ///< how often pictures came: the list then knows that cells are new
  Table table_;
  wxStaticText* hint_;
  wxButton *rename_, *remove_;
};

}  // namespace quadrille
