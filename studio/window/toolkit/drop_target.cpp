// One event is open at a time, so of several files the first is taken.
#include "studio/window/toolkit/drop_target.hpp"

#include <utility>

#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

class FileDrop : public wxFileDropTarget {
 public:
  FileDrop(wxEvtHandler* owner, std::function<void(const std::filesystem::path&)> open)
      : owner_(owner), open_(std::move(open)) {}

  bool OnDropFiles(wxCoord, wxCoord, const wxArrayString& files) override {
    if (files.empty()) return false;
    owner_->CallAfter([open = open_, file = path_of(files[0])] { open(file); });
    return true;
  }

 private:
  wxEvtHandler* owner_;
  std::function<void(const std::filesystem::path&)> open_;
};

}  // namespace

wxDropTarget* make_drop_target(wxEvtHandler* owner, std::function<void(const std::filesystem::path&)> open) {
  return new FileDrop(owner, std::move(open));
}

}  // namespace quadrille
