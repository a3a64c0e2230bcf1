// Text set by Pango, in points, without hinting, so that it takes the same room on every device.
#include "studio/paint/text.hpp"

#include <pango/pangocairo.h>

#include <algorithm>
#include <cmath>
#include <memory>

#include "sdk/vec.hpp"

namespace quadrille {
namespace {

// Families that have good figures, the first that is there; the last is always there.
constexpr const char* families = "Nimbus Sans,Liberation Sans,Noto Sans,DejaVu Sans,Sans";

struct Unref {
  void operator()(gpointer object) const { g_object_unref(object); }
  void operator()(char* text) const { g_free(text); }
  void operator()(PangoFontDescription* font) const { pango_font_description_free(font); }
  void operator()(PangoAttrList* list) const { pango_attr_list_unref(list); }
  void operator()(cairo_font_options_t* options) const { cairo_font_options_destroy(options); }
};
template <class T>
using Owned = std::unique_ptr<T, Unref>;

Owned<PangoContext> new_context() {
  Owned<PangoContext> context(pango_font_map_create_context(pango_cairo_font_map_get_default()));
  pango_cairo_context_set_resolution(context.get(), 72);
  // The user's language would choose other glyphs and widths; a sheet is the same for everybody.
  pango_context_set_language(context.get(), pango_language_from_string("en"));
  Owned<cairo_font_options_t> options(cairo_font_options_create());
  cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias(options.get(), CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options(context.get(), options.get());
  pango_context_set_round_glyph_positions(context.get(), FALSE);
  return context;
}

/// Forbids breaks inside measures. The text keeps its plain blanks, so that it is found and copied as people type it.
void keep_measures_together(PangoLayout* layout, const std::string& text) {
  const auto blanks = blanks_in_measures(text);
  if (blanks.empty()) return;
  const Owned<PangoAttrList> list(pango_attr_list_new());
  for (const std::size_t at : blanks) {
    PangoAttribute* attribute = pango_attr_allow_breaks_new(FALSE);
    attribute->start_index = static_cast<guint>(at), attribute->end_index = static_cast<guint>(at + 2);
    pango_attr_list_insert(list.get(), attribute);
  }
  pango_layout_set_attributes(layout, list.get());
}

Owned<PangoLayout> new_layout(const std::string& text, const TextStyle& style) {
  const auto context = new_context();
  Owned<PangoLayout> layout(pango_layout_new(context.get()));
  const Owned<PangoFontDescription> font(pango_font_description_new());
  pango_font_description_set_family(font.get(), families);
  pango_font_description_set_weight(font.get(), style.face == Face::bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_font_description_set_size(font.get(), static_cast<gint>(std::lround(style.size_pt * PANGO_SCALE)));
  pango_layout_set_font_description(layout.get(), font.get());
  const std::string shown = printable(text);
  pango_layout_set_single_paragraph_mode(layout.get(), TRUE);
  pango_layout_set_text(layout.get(), shown.data(), static_cast<int>(shown.size()));
  keep_measures_together(layout.get(), shown);
  // Text that runs from right to left still stands in a column that the page aligned, so the sense is turned round.
  const bool rtl = pango_layout_get_direction(layout.get(), 0) == PANGO_DIRECTION_RTL;
  PangoAlignment align = PANGO_ALIGN_CENTER;
  if (style.across == Across::left) align = rtl ? PANGO_ALIGN_RIGHT : PANGO_ALIGN_LEFT;
  if (style.across == Across::right) align = rtl ? PANGO_ALIGN_LEFT : PANGO_ALIGN_RIGHT;
  pango_layout_set_alignment(layout.get(), align);
  return layout;
}

int pango_units(double millimetres) {
  return static_cast<int>(std::floor(std::clamp(millimetres, 0.0, 100000.0) / millimetres_per_point * PANGO_SCALE));
}
double from_pango(double units) { return units / PANGO_SCALE * millimetres_per_point; }

/// Wraps and shortens the layout to a box.
void confine(PangoLayout* layout, double width, int height_or_lines) {
  pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_width(layout, pango_units(width));
  pango_layout_set_height(layout, height_or_lines);
  pango_layout_set_ellipsize(layout, PANGO_ELLIPSIZE_END);
}

/// The layout of a mark and where its origin lies, in the mark's reading frame.
struct Placed {
  Owned<PangoLayout> layout;
  double x = 0, y = 0;
};

Placed place(const TextMark& mark) {
  const Rect& box = mark.box;
  const double width = mark.style.turned ? box.height : box.width, height = mark.style.turned ? box.width : box.height;
  Placed placed{new_layout(mark.text, mark.style), 0, 0};
  confine(placed.layout.get(), width, pango_units(height));
  PangoRectangle logical;
  pango_layout_get_extents(placed.layout.get(), nullptr, &logical);
  const double spare = height - from_pango(logical.height);
  if (mark.style.down == Down::middle) placed.y = spare / 2;
  if (mark.style.down == Down::bottom) placed.y = spare;
  return placed;
}

/// Fills the text as paths, taken at a large size and brought back. Cairo sets glyphs to whole pixels in pictures,
/// which spoils their spacing, and keeps outlines to a 64th of the page's unit in SVG, which is coarse in millimetres.
void fill_outlines(cairo_t* cairo, PangoLayout* layout) {
  constexpr double enlarged = 50;
  cairo_surface_t* surface = cairo_recording_surface_create(CAIRO_CONTENT_ALPHA, nullptr);
  cairo_t* scratch = cairo_create(surface);
  cairo_scale(scratch, enlarged, enlarged);
  pango_cairo_layout_path(scratch, layout);
  cairo_path_t* path = cairo_copy_path(scratch);
  cairo_new_path(cairo);
  cairo_append_path(cairo, path);
  cairo_fill(cairo);
  cairo_path_destroy(path);
  cairo_destroy(scratch);
  cairo_surface_destroy(surface);
}

Rect on_page(const TextMark& mark, const Placed& placed, const PangoRectangle& r) {
  const double x = placed.x + from_pango(r.x), y = placed.y + from_pango(r.y);
  const double width = from_pango(r.width), height = from_pango(r.height);
  if (!mark.style.turned) return {mark.box.x + x, mark.box.y + y, width, height};
  return {mark.box.x + y, mark.box.bottom() - x - width, height, width};
}

}  // namespace

std::string printable(const std::string& text) {
  const Owned<char> valid(g_utf8_make_valid(text.data(), static_cast<gssize>(text.size())));
  std::string result(valid.get());
  for (char& c : result)
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) c = ' ';
  return result;
}

double capital_middle(const TextStyle& style) {
  const auto layout = new_layout("H", style);
  PangoRectangle ink;
  pango_layout_get_extents(layout.get(), &ink, nullptr);
  return from_pango(ink.y + ink.height / 2.0);
}

double text_width(const std::string& text, const TextStyle& style) {
  const auto layout = new_layout(text, style);
  PangoRectangle logical;
  pango_layout_get_extents(layout.get(), nullptr, &logical);
  // A hair more, so that a box of this width is not a rounding too narrow.
  return from_pango(logical.width) + 0.05;
}

double text_height(const std::string& text, const TextStyle& style, double width, int most_lines) {
  const auto layout = new_layout(text, style);
  confine(layout.get(), width, -most_lines);
  PangoRectangle logical;
  pango_layout_get_extents(layout.get(), nullptr, &logical);
  return from_pango(logical.height) + 0.05;
}

SetText set_text(const TextMark& mark) {
  const Placed placed = place(mark);
  PangoRectangle ink, logical;
  pango_layout_get_extents(placed.layout.get(), &ink, &logical);
  return {on_page(mark, placed, ink), on_page(mark, placed, logical), pango_layout_get_line_count(placed.layout.get()),
          pango_layout_is_ellipsized(placed.layout.get()) != FALSE};
}

void paint_text(cairo_t* cairo, const TextMark& mark) {
  const Placed placed = place(mark);
  cairo_save(cairo);
  if (mark.style.turned) {
    cairo_translate(cairo, mark.box.x, mark.box.bottom());
    cairo_rotate(cairo, -pi / 2);
  } else {
    cairo_translate(cairo, mark.box.x, mark.box.y);
  }
  cairo_translate(cairo, placed.x, placed.y);
  cairo_scale(cairo, millimetres_per_point, millimetres_per_point);
  const Ink& ink = mark.style.ink;
  cairo_set_source_rgba(cairo, ink.red, ink.green, ink.blue, ink.opacity);
  cairo_move_to(cairo, 0, 0);
  if (cairo_surface_get_type(cairo_get_target(cairo)) == CAIRO_SURFACE_TYPE_PDF)
    pango_cairo_show_layout(cairo, placed.layout.get());  // keeps the text selectable
  else
    fill_outlines(cairo, placed.layout.get());
  cairo_restore(cairo);
}

void letter_path(cairo_t* cairo, char letter, double height) {
  TextStyle style;
  style.size_pt = 100;
  style.face = Face::bold;
  const auto layout = new_layout(std::string(1, letter), style);
  PangoRectangle ink;
  pango_layout_get_extents(layout.get(), &ink, nullptr);
  // Every capital is set at the same size: scaled by the height of an H, centred by its own ink.
  const auto measure = new_layout("H", style);
  PangoRectangle capital;
  pango_layout_get_extents(measure.get(), &capital, nullptr);
  const double points = PANGO_SCALE, scale = height / (capital.height / points);
  cairo_save(cairo);
  cairo_scale(cairo, scale, scale);
  cairo_move_to(cairo, -(ink.x + ink.width / 2.0) / points, -(ink.y + ink.height / 2.0) / points);
  pango_cairo_layout_path(cairo, layout.get());
  cairo_restore(cairo);
}

}  // namespace quadrille
