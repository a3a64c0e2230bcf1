// Documents written to memory: Cairo reports success on a full disk, so no file is ever given to it.
#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <cairo.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <map>
#include <memory>
#include <string_view>

#include "sdk/number.hpp"
#include "studio/model/calendar.hpp"
#include "studio/paint/output.hpp"
#include "studio/paint/painter.hpp"
#include "studio/paint/pdf_outline.hpp"
#include "studio/paint/text.hpp"

namespace quadrille {
namespace {

struct Destroy {
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
  void operator()(cairo_t* cairo) const { cairo_destroy(cairo); }
};
using Surface = std::unique_ptr<cairo_surface_t, Destroy>;
using Context = std::unique_ptr<cairo_t, Destroy>;
using Bytes = Result<std::string>;

cairo_status_t append(void* bytes, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

/// A context that is in error paints nothing more, and the surface does not hear of it: both must be asked.
Bytes finished(cairo_status_t painted, cairo_status_t written, std::string bytes, const char* what) {
  const cairo_status_t status = painted == CAIRO_STATUS_SUCCESS ? written : painted;
  if (status == CAIRO_STATUS_SUCCESS) return Bytes::good(std::move(bytes));
  return Bytes::bad(std::string("The ") + what + " could not be made: " + cairo_status_to_string(status) + ".");
}

void describe(cairo_surface_t* surface, const DocumentInfo& info) {
  // Without a date of its own the document would bear the clock's, and equal input would give other bytes.
  const std::string date = (is_date(info.date) ? info.date : "2000-01-01") + "T00:00:00Z";
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, printable(info.title).c_str());
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATOR, "Quadrille");
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE, date.c_str());
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_MOD_DATE, date.c_str());
}

/// Cairo names shared forms and pictures by a count that runs through the whole process ("surface42", "image43"); here
/// they are counted anew, so that equal pages give equal bytes. Names stand after a quote or '#', so that no picture's
/// bytes are taken for one.
std::string with_own_numbers(const std::string& svg) {
  constexpr std::string_view words[] = {"surface", "image"};
  std::map<std::string, std::size_t> numbers;
  std::string result;
  std::size_t from = 0;
  for (std::size_t at = svg.find_first_of("\"#"); at != std::string::npos; at = svg.find_first_of("\"#", from)) {
    const std::string_view rest = std::string_view(svg).substr(at + 1);
    const auto word = std::ranges::find_if(words, [&](std::string_view w) { return rest.starts_with(w); });
    const std::size_t start = at + 1 + (word == std::end(words) ? 0 : word->size());
    const std::size_t end = std::min(svg.find_first_not_of("0123456789", start), svg.size());
    result.append(svg, from, start - from);
    if (word != std::end(words) && end > start)
      result += std::to_string(numbers.try_emplace(svg.substr(start, end - start), numbers.size()).first->second);
    from = word != std::end(words) ? end : start;
  }
  return result.append(svg, from);
}

}  // namespace

Bytes to_pdf(std::span<const Page> pages, const DocumentInfo& info) {
  if (pages.empty()) return Bytes::bad("There is no page to write.");
  std::string bytes;
  const auto points = [](double millimetres) { return millimetres / millimetres_per_point; };
  const Surface surface(
      cairo_pdf_surface_create_for_stream(append, &bytes, points(pages.front().width), points(pages.front().height)));
  describe(surface.get(), info);
  cairo_status_t painted = CAIRO_STATUS_SUCCESS;
  {
    BalloonStamps stamps;
    const Context cairo(cairo_create(surface.get()));
    for (const Page& page : pages) {
      cairo_pdf_surface_set_size(surface.get(), points(page.width), points(page.height));
      cairo_save(cairo.get());
      cairo_scale(cairo.get(), 1 / millimetres_per_point, 1 / millimetres_per_point);
      paint_page(cairo.get(), page, stamps);
      cairo_restore(cairo.get());
      cairo_show_page(cairo.get());
    }
    add_outline(surface.get(), pages);
    painted = cairo_status(cairo.get());
    cairo_surface_finish(surface.get());
  }
  return finished(painted, cairo_surface_status(surface.get()), std::move(bytes), "PDF");
}

Bytes to_svg(const Page& page) {
  std::string bytes;
  // The size is given in millimetres as it stands: Cairo only names the unit, it does not convert.
  const Surface surface(cairo_svg_surface_create_for_stream(append, &bytes, page.width, page.height));
  cairo_svg_surface_set_document_unit(surface.get(), CAIRO_SVG_UNIT_MM);
  cairo_status_t painted = CAIRO_STATUS_SUCCESS;
  {
    BalloonStamps stamps;
    const Context cairo(cairo_create(surface.get()));
    paint_page(cairo.get(), page, stamps);
    cairo_show_page(cairo.get());
    painted = cairo_status(cairo.get());
    cairo_surface_finish(surface.get());
  }
  return finished(painted, cairo_surface_status(surface.get()), with_own_numbers(bytes), "SVG");
}

Bytes to_png(const Page& page, double dots_per_inch) {
  if (!(dots_per_inch >= 30 && dots_per_inch <= 1200)) return Bytes::bad("A picture needs 30 to 1200 dots per inch.");
  const double scale = dots_per_inch / 25.4, longest = 32767;
  const double width = std::round(page.width * scale), height = std::round(page.height * scale);
  if (width > longest || height > longest)
    return Bytes::bad("At " + print_number(dots_per_inch) + " dots per inch this page is " +
                      print_fixed(std::max(width, height), 0) +
                      " pixels long; a picture can have 32767. Fewer dots per inch will do.");
  const Surface surface(
      cairo_image_surface_create(CAIRO_FORMAT_RGB24, static_cast<int>(width), static_cast<int>(height)));
  cairo_status_t painted = cairo_surface_status(surface.get());
  if (painted == CAIRO_STATUS_SUCCESS) {
    BalloonStamps stamps;
    const Context cairo(cairo_create(surface.get()));
    cairo_set_source_rgb(cairo.get(), 1, 1, 1);
    cairo_paint(cairo.get());
    cairo_scale(cairo.get(), scale, scale);
    paint_page(cairo.get(), page, stamps);
    painted = cairo_status(cairo.get());
  }
  std::string bytes;
  const cairo_status_t written = cairo_surface_write_to_png_stream(surface.get(), append, &bytes);
  return finished(painted, written, std::move(bytes), "picture");
}

}  // namespace quadrille
