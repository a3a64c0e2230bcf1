// quadrille count: balloons with spares and packs, supplies, pieces; as text, JSON or table files.
#include <ostream>

#include "studio/command/count_json.hpp"
#include "studio/command/count_tables.hpp"
#include "studio/command/reckon.hpp"
#include "studio/command/verbs.hpp"
#include "studio/command/write_output.hpp"

namespace quadrille {

Exit count(const CountRequest& request, const Console& console) {
  if (!may_write(request.tables, request.event, console)) return Exit::usage;
  auto prepared = prepare(request.event, console, request.house);
  if (!prepared) {
    console.err << prepared.error << '\n';
    return Exit::bad_input;
  }
  PreparedEvent& event = *prepared.value;
  const EventOrder order = order_of(event);
  append(event.findings, findings_of(event, order));
  Exit written = Exit::done;
  if (request.json)
    console.out << printed(json_of(order, event));
  else if (request.tables.csv || request.tables.xlsx)
    written = write_tables(tables_of(order), request.tables, console);
  else
    print_text(order, event, console.out);
  const Exit reported = report(event, console.err);
  return written == Exit::done ? reported : written;
}

}  // namespace quadrille
