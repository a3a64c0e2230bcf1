// A hand on the canvas: presses, drags and keys, given straight to it, and where its pieces can be taken hold of.
#pragma once

#include "studio/window/canvas/canvas.hpp"
#include "toolkit.hpp"

namespace quadrille {

inline double place_of(const Event& event, std::string_view id) {
  const PlacedPiece* piece = find_piece(event, id);
  REQUIRE(piece != nullptr);
  return piece->x_m;
}

/// A balloon of the piece, in pixels of the canvas: somewhere to take hold of it.
inline wxPoint grip_of(Canvas& canvas, const std::string& id) {
  REQUIRE(canvas.scene());
  const Scene& scene = *canvas.scene();
  // The nearest balloon is the last painted, so that no other lies over its centre.
  for (auto item = scene.items.rbegin(); item != scene.items.rend(); ++item)
    if (const auto* balloon = std::get_if<SceneBalloon>(&item->shape))
      if (scene.pieces[balloon->piece].id == id) {
        const wxPoint at = canvas.to_window({balloon->x_m, balloon->z_m});
        if (canvas.paper().Contains(at)) return at;
      }
  FAIL("the piece has no balloon on the paper");
  return {};
}

enum HeldKeys : unsigned { no_key = 0, shift_key = 1, control_key = 2, alt_key = 4 };

/// The mouse and the keyboard of somebody who works on the canvas. Not the display's own pointer: the toolkit keeps
/// motions back until it paints again, which under a display that nobody looks at may be never.
class Hand {
 public:
  explicit Hand(Canvas& canvas) : canvas_(canvas) {}

  void press(wxPoint at, unsigned keys = no_key) { mouse(wxEVT_LEFT_DOWN, at, keys); }
  void move(wxPoint to, unsigned keys = no_key) { mouse(wxEVT_MOTION, to, keys); }
  void release(wxPoint at, unsigned keys = no_key) { mouse(wxEVT_LEFT_UP, at, keys); }
  void press_middle(wxPoint at) { mouse(wxEVT_MIDDLE_DOWN, at, no_key); }
  void release_middle(wxPoint at) { mouse(wxEVT_MIDDLE_UP, at, no_key); }
  void click(wxPoint at, unsigned keys = no_key) {
    press(at, keys);
    release(at, keys);
  }
  /// As the toolkit tells a double click: the second press comes as one.
  void double_click(wxPoint at) {
    click(at);
    mouse(wxEVT_LEFT_DCLICK, at, no_key);
    release(at);
  }
  /// In four steps; the button stays down.
  void pull(wxPoint from, wxPoint to, unsigned keys = no_key) {
    press(from, keys);
    for (int step = 1; step <= 4; ++step) move(from + (to - from) * step / 4, keys);
  }
  void drag(wxPoint from, wxPoint to, unsigned keys = no_key) {
    pull(from, to, keys);
    release(to, keys);
  }
  /// Down, and up again.
  void key(int code, unsigned keys = no_key) {
    key_down(code, keys);
    key_up(code);
  }
  void key_down(int code, unsigned keys = no_key) { key_event(wxEVT_KEY_DOWN, code, keys); }
  void key_up(int code) { key_event(wxEVT_KEY_UP, code, no_key); }

 private:
  template <class Event>
  static void hold(Event& event, unsigned keys) {
    event.SetShiftDown((keys & shift_key) != 0);
    event.SetControlDown((keys & control_key) != 0);
    event.SetAltDown((keys & alt_key) != 0);
  }
  void mouse(wxEventType type, wxPoint at, unsigned keys) {
    wxMouseEvent event(type);
    event.SetPosition(at);
    hold(event, keys);
    canvas_.ProcessWindowEvent(event);
  }
  void key_event(wxEventType type, int code, unsigned keys) {
    wxKeyEvent event(type);
    event.m_keyCode = code;
    hold(event, keys);
    canvas_.ProcessWindowEvent(event);
  }
  Canvas& canvas_;
};

}  // namespace quadrille
