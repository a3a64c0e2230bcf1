// The dialog "Print": choose a sheet and its paper, leaf through its pages as they will be, print them. The pages are made
// away from the main thread.
#pragma once

#include <wx/button.h>
#include <wx/choice.h>
#include <wx/dialog.h>
#include <wx/stattext.h>

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include "studio/paint/balloon_stamps.hpp"
#include "studio/paper/sheet.hpp"
#include "studio/window/job/newest.hpp"
#include "studio/window/job/sheet_pages.hpp"
#include "studio/window/job/study.hpp"

namespace quadrille {

class PrintDialog : public wxDialog {
 public:
  PrintDialog(wxWindow* parent, std::shared_ptr<const Study> study, Paper paper);

  ~PrintDialog() override;

  /// Shows the sheet with this number in sheet_kinds(), from its first page, as soon as its pages are made.
  void choose_sheet(int sheet);
  void choose_paper(Paper paper);
  /// To the page that many further on; it stops at the first and the last.
  void turn(int by);
  /// Those that are shown; none while they are being made.
  const std::vector<Page>& pages() const { return pages_; }
  int page() const { return page_; }
  bool making() const { return shown_ != asked_; }

 private:
  struct Wanted {
    std::uint64_t number = 0;
    std::size_t sheet = 0;  ///< in sheet_kinds()
    Paper paper = Paper::a4;
  };
  void make_pages();
  void make(const Wanted& wanted, const Stale& stale);
  void receive(std::uint64_t number, std::shared_ptr<const std::vector<Page>> pages, const std::string& fault);
  void show_page();
  void paint();
  void print();

  std::shared_ptr<const Study> study_;
  std::vector<Page> pages_;
  int page_ = 0;
  BalloonStamps stamps_;
  wxChoice* sheet_ = nullptr;
  wxChoice* paper_ = nullptr;
  wxWindow* preview_ = nullptr;
  wxStaticText* place_ = nullptr;
  wxButton *back_ = nullptr, *next_ = nullptr, *print_ = nullptr;
  std::string fault_;                       ///< why the pages could not be made
  std::uint64_t asked_ = 0, shown_ = 0;     ///< numbers of what was wanted last, and of what is shown
  SheetMaker maker_;                        ///< the maker's thread's alone
  std::unique_ptr<Newest<Wanted>> newest_;  ///< last, so that all it uses is there before it starts
};

}  // namespace quadrille
