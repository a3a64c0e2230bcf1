// quadrille draw: an event's sheet as PDF, SVG or PNG.
#include <algorithm>
#include <map>
#include <optional>
#include <ostream>

#include "studio/command/prepare.hpp"
#include "studio/command/verbs.hpp"
#include "studio/command/write_output.hpp"
#include "studio/drawing/sheet.hpp"

namespace quadrille {
Exit draw(const DrawRequest& request, const Console& console) {
  const auto format = format_of(request.out);
  if (!format) {
    console.err << sentence_about_ending(request.out) << '\n';
    return Exit::usage;
  }
  const auto prepared = prepare(request.event, console);
  if (!prepared) {
    console.err << prepared.error << '\n';
    return Exit::bad_input;
  }
  const Event& event = prepared->opened.event;
  if (event.areas.empty()) {
    console.err << request.event.string() << ": the event has no area, so there is nothing to draw; it needs at least "
                << "one area with a piece.\n";
    return Exit::bad_input;
  }
  if (request.area)
    if (const auto area = find_area(event, *request.area); !area) {
      console.err << area.error << '\n';
      return Exit::usage;
    }
  static const std::map<std::string, Paper> papers{
      {"a4", Paper::a4}, {"letter", Paper::letter}, {"a3", Paper::a3}, {"tabloid", Paper::tabloid}};
  const std::optional<Paper> paper = request.paper.empty() ? std::nullopt : std::optional(papers.at(request.paper));
  const EventCount total = count_event(event, prepared->built, prepared->palettes.palettes);
  const auto pages = elevation_sheet({event, prepared->built, total, prepared->palettes.palettes},
                                     {paper, request.units, request.area, request.letters});
  const Exit written = write_drawing(pages, request.out, *format, {event.title, event.date}, request.event, console);
  const Exit reported = report(*prepared, console.err);
  return written == Exit::done ? reported : written;
}

}  // namespace quadrille
