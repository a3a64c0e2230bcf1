// What stands in place of the drawing while no event is open: the ways in.
#pragma once

#include <wx/button.h>
#include <wx/panel.h>
#include <wx/sizer.h>

#include <filesystem>
#include <functional>
#include <vector>

namespace quadrille {

struct StartAnswers {
  std::function<void()> begin, open;                         ///< a new event; one of a file
  std::function<void(const std::filesystem::path&)> sample;  ///< a copy of a sample
  std::function<void(const std::filesystem::path&)> recent;  ///< one that was open before
};

class StartPage : public wxPanel {
 public:
  StartPage(wxWindow* parent, StartAnswers answers, const std::vector<std::filesystem::path>& samples);

  void show_recent(const std::vector<std::filesystem::path>& files);
  wxButton& begin_button() { return *begin_; }
  /// In the order in which they stand.
  const std::vector<wxButton*>& samples() const { return samples_; }
  const std::vector<wxButton*>& recent() const { return recent_; }

 private:
  wxButton* add_way(const wxString& label, const wxString& words, std::function<void()> way, wxSizer* to);

  StartAnswers answers_;
  wxButton* begin_;
  wxBoxSizer* recent_room_;
  std::vector<wxButton*> samples_, recent_;
};

}  // namespace quadrille
