// The dialog "Piece types": what was found, which files were refused and why, and another chance for crashed ones.
#pragma once

#include <wx/button.h>
#include <wx/dialog.h>
#include <wx/textctrl.h>

#include <functional>
#include <memory>

#include "studio/host/piece_type.hpp"
#include "studio/window/toolkit/table.hpp"

namespace quadrille {

class PiecesDialog : public wxDialog {
 public:
  /// `try_again` is called when the user wants crashed files loaded once more; call show with what was found then.
  PiecesDialog(wxWindow* parent, std::function<void()> try_again);

  void show(std::shared_ptr<const PieceTypes> types);

  const Table& found() const { return found_; }
  const Table& refused() const { return refused_; }

 private:
  void show_reason();

  std::shared_ptr<const PieceTypes> types_;
  Table found_, refused_;
  wxTextCtrl* reason_;
  wxButton* again_;
};

}  // namespace quadrille
