// The photo behind an area: bringing one in, laying it to scale and in place, and picking colours from it.
#pragma once

#include <cstddef>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string_view>

#include "sdk/vec.hpp"
#include "studio/model/backdrop.hpp"
#include "studio/paint/display_list.hpp"

class wxFrame;

namespace quadrille {

class Canvas;
class CanvasMode;
class EventDesk;

class PhotoHands {
 public:
  /// `frame` owns the dialogs; all three outlive this.
  PhotoHands(EventDesk& desk, wxFrame& frame, Canvas& canvas);
  ~PhotoHands();

  /// That of the area that is shown, or null.
  const Backdrop* photo() const;
  /// Puts the picture behind the area that is shown. False where it cannot be read or kept; the user has been told.
  bool add(const std::filesystem::path& file);
  bool add(std::string_view bytes);
  void choose();
  /// The picture on the clipboard, or the file that stands there; false where there is none.
  bool paste();
  /// Takes a dropped picture; false where the file is none, or there is no area to put it behind.
  bool take_dropped(const std::filesystem::path& file);

  void begin_calibration();
  /// Gives the photo the scale at which the spots are `length_m` apart; `fixed` stays in place. False where that cannot be;
  /// the user has been told.
  bool calibrate(PictureSpot fixed, PictureSpot other, double length_m);
  void begin_moving();
  void fade();
  void lock(bool locked);
  void hide(bool hidden);
  void remove();
  void begin_picking_colour();
  /// Shows which palette colours look like the photo there, and puts the chosen one on a slot of the piece selected last.
  void pick_colour(PictureSpot spot);

  /// Ends what is under way on the canvas.
  void end_mode();
  /// Ends it where the photo is no longer to be seen.
  void follow();

 private:
  bool may_edit(bool its_place);
  void ask_calibration(PictureSpot fixed, PictureSpot other);
  void drag(Point2 by_m);
  void step(Point2 by_m);
  void unhide();
  void begin_mode();
  bool goes_on(std::size_t number) const;
  std::function<void()> mode_over();

  EventDesk& desk_;
  wxFrame& frame_;
  Canvas& canvas_;
  std::optional<Point2> from_;        ///< where the photo's corner lay when a drag of it began [m]
  std::unique_ptr<CanvasMode> mode_;  ///< while the canvas is there for the photo alone
  std::size_t begun_ = 0;             ///< how many modes were begun
};

}  // namespace quadrille
