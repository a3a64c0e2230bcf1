// What a page holds: a flat list of marks in millimetres, which one painter turns into PDF, SVG, PNG or pixels.
// Frame: origin at the page's top left corner, x to the right, y down. Marks are painted in the order of the list.
#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "studio/model/backdrop.hpp"
#include "studio/model/palette.hpp"

namespace quadrille {

struct Point2 {
  double x = 0, y = 0;
  bool operator==(const Point2&) const = default;
};

/// A rectangle; `width` and `height` are never negative.
struct Rect {
  double x = 0, y = 0, width = 0, height = 0;
  double right() const { return x + width; }
  double bottom() const { return y + height; }
  Point2 middle() const { return {x + width / 2, y + height / 2}; }
  bool operator==(const Rect&) const = default;
};

/// sRGB and opacity, each 0 to 1.
struct Ink {
  double red = 0, green = 0, blue = 0, opacity = 1;
  bool operator==(const Ink&) const = default;
};

/// How a line is drawn: width and dash lengths in millimetres; no dashes = an unbroken line.
struct Pen {
  Ink ink;
  double width = 0.18;
  std::vector<double> dashes;
  bool round = false;  ///< round ends and corners
};

/// One step of a path: `move` and `line` use `to`; `curve` is a cubic Bézier by way of `first` and `second`.
struct PathStep {
  enum class Kind { move, line, curve, close };
  Kind kind = Kind::move;
  Point2 to, first, second;
};

using PathSteps = std::vector<PathStep>;

/// A path that is filled, stroked, or both, the filling first.
struct PathMark {
  PathSteps steps;
  std::vector<Ink> fill;    ///< none or one
  std::vector<Pen> stroke;  ///< none or more, drawn in this order over the same path
};

/// A polygon filled with parallel lines `spacing` apart that rise to the right by `angle` radians.
struct HatchMark {
  std::vector<Point2> outline;
  double spacing = 2, angle = 0.7853981633974483;
  Pen pen;
};

/// A balloon as it is tied: a ball with a light from the upper left, tapering to `neck` where that lies outside the
/// ball. In a key, a swatch of its colour.
struct BalloonMark {
  Point2 centre;
  double radius = 1;
  Point2 neck;
  Ink ink;
  Finish finish = Finish::matte;
  char letter = 0;            ///< of its slot, A…Z; 0 = none
  double letter_share = 0.6;  ///< the letter's height as a share of the radius, to a hundredth
};

/// A picture that fills `box`; what lies outside `seen` is cut off. One that cannot be read is an empty frame.
struct PictureMark {
  Rect box, seen;
  Shared<StoredPicture> picture;
  double fade = 0;  ///< towards white paper, 0 to 1
};

enum class Across { left, centre, right };
enum class Down { top, middle, bottom };
enum class Face { regular, bold };

struct TextStyle {
  double size_pt = 9;
  Face face = Face::regular;
  Ink ink;
  Across across = Across::left;
  Down down = Down::top;
  bool turned = false;  ///< runs upwards, to be read from the right side of the page
};

/// Text that stays inside `box`: it wraps at words to as many lines as the box is high, and what is too long ends in an
/// ellipsis. A box is at least one line high (see text.hpp).
struct TextMark {
  Rect box;
  std::string text;  ///< UTF-8; control characters are shown as blanks, faulty bytes as the replacement character
  TextStyle style;
};

/// What a mark is part of, for those who look something up on a page (tests; a screen reader's description).
enum class Part {
  drawing,
  backdrop,
  line,  ///< that secures a piece
  figure,
  floor,
  site,
  dimension,
  scale_bar,
  heading,
  title_block,
  key,
  totals,
  supplies,
  note
};

struct Mark {
  Part part = Part::drawing;
  std::variant<PathMark, HatchMark, BalloonMark, TextMark, PictureMark> shape;
};

using Marks = std::vector<Mark>;

struct Page {
  double width = 210, height = 297;  ///< mm
  double margin = 12;                ///< mm; nothing is drawn outside it
  std::string name;                  ///< for people: what the page shows
  std::string sheet;  ///< for people: which of several sheets in one document it belongs to; empty = the only
  double scale = 0;   ///< 1 : scale, of the drawing on it; 0 where there is none
  Marks marks;
};

/// Paths of the common shapes.
PathSteps line_path(Point2 from, Point2 to);
PathSteps rect_path(const Rect& rect);
PathSteps polygon_path(const std::vector<Point2>& corners);
PathSteps polyline_path(const std::vector<Point2>& points);
PathSteps circle_path(Point2 centre, double radius);

/// Marks of one filling, one pen, or both.
Mark filled_mark(Part part, PathSteps steps, const Ink& fill);
Mark stroked_mark(Part part, PathSteps steps, const Pen& pen);
Mark shape_mark(Part part, PathSteps steps, const Ink& fill, const Pen& pen);

}  // namespace quadrille
