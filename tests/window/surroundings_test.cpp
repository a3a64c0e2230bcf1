// The window in other surroundings: on a dense screen, in a dark theme, in a language that is written from the right.
#include <wx/settings.h>

#include <cmath>

#include "studio/model/edits.hpp"
#include "studio/window/panels/form_panel.hpp"
#include "studio/window/panels/outline.hpp"
#include "toolkit.hpp"

namespace quadrille {
namespace {

bool asked_for(const char* variable) { return std::getenv(variable) != nullptr; }

/// Relative luminance: WCAG 2.1, definition of that name.
double luminance(const wxColour& colour) {
  const auto linear = [](unsigned char part) {
    const double share = part / 255.0;
    return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
  };
  return 0.2126 * linear(colour.Red()) + 0.7152 * linear(colour.Green()) + 0.0722 * linear(colour.Blue());
}

/// Contrast ratio: WCAG 2.1, definition of that name.
double contrast(const wxColour& one, const wxColour& other) {
  const double a = luminance(one), b = luminance(other);
  return (std::max(a, b) + 0.05) / (std::min(a, b) + 0.05);
}

void collect_texts(wxWindow& window, std::vector<wxStaticText*>& texts) {
  if (auto* text = dynamic_cast<wxStaticText*>(&window); text != nullptr && text->IsShownOnScreen())
    texts.push_back(text);
  for (wxWindow* child : window.GetChildren()) collect_texts(*child, texts);
}

}  // namespace

TEST_CASE("the surroundings are those that were asked for") {
  OpenWindow window;
  CHECK(wxSystemSettings::GetAppearance().IsDark() == asked_for("QUADRILLE_TEST_DARK"));
  CHECK(window->GetContentScaleFactor() == (asked_for("GDK_SCALE") ? 2 : 1));
  const auto direction = asked_for("QUADRILLE_TEST_RIGHT_TO_LEFT") ? wxLayout_RightToLeft : wxLayout_LeftToRight;
  CHECK(window->GetLayoutDirection() == direction);
}

TEST_CASE("the drawing is never mirrored: what is further along stands further to the right") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  Canvas& canvas = window->canvas();
  CHECK(canvas.GetLayoutDirection() == wxLayout_LeftToRight);
  const auto on_screen = [&](double along_m) {
    const Point2 at = canvas.view().to_pixels(along_m, 0);
    return canvas.ClientToScreen(wxPoint(wxRound(at.x), wxRound(at.y))).x;
  };
  CHECK(on_screen(2) > on_screen(1));
  // The pane of the outline is at the side where reading begins.
  const int outline = window->outline().GetScreenPosition().x, drawing = canvas.GetScreenPosition().x;
  CHECK((outline < drawing) == !asked_for("QUADRILLE_TEST_RIGHT_TO_LEFT"));
}

TEST_CASE("every text stands out from what is behind it") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  window->select("a1", "p1");
  Toolkit::instance().turn();
  std::vector<wxStaticText*> texts;
  collect_texts(*window.reference().get(), texts);
  CHECK(texts.size() > 5);
  for (wxStaticText* text : texts) {
    if (!text->IsEnabled()) continue;  // the criterion is not for what cannot be used as things stand
    const wxColour fore = text->GetForegroundColour(), back = text->GetParent()->GetBackgroundColour();
    // WCAG 2.1, success criterion 1.4.3: at least 4.5 to 1.
    CHECK_MESSAGE(contrast(fore, back) >= 4.5, text->GetLabel().utf8_string());
  }
}

}  // namespace quadrille
