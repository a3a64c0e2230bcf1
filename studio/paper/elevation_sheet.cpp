// The elevation sheet: one page per area with its drawing and key, and the tables of the whole event.
#include <string>
#include <vector>

#include "studio/paper/document.hpp"
#include "studio/paper/sheet.hpp"

namespace quadrille {

std::vector<Page> elevation_sheet(const SheetInput& input, const SheetOptions& options) {
  const Event& event = input.event;
  const Setting setting{input, options, options.units.value_or(event.units),
                        options.paper.value_or(usual_paper(event.units))};
  SheetDocument document = area_document(setting, "Elevation");
  if (event.areas.size() > 1 && !options.area && input.count.total_balloons > 0) {
    const std::size_t columns = columns_for(document, 72);
    const double width = columns_in(document.content(), columns).front().width;
    add_table_pages(document, whole_event(setting, width, " in all areas"), {}, columns, "All areas",
                    {"All areas", "All areas", "", 1, 1});
  }
  return finished(std::move(document));
}

}  // namespace quadrille
