// quadrille quote: what the client is asked and what the job earns; as text, JSON or table files; and issuing it.
#include <ostream>
#include <system_error>

#include "studio/command/quote_json.hpp"
#include "studio/command/quote_text.hpp"
#include "studio/command/reckon.hpp"
#include "studio/command/verbs.hpp"
#include "studio/command/write_output.hpp"
#include "studio/quote/quote_findings.hpp"

namespace quadrille {
namespace {

/// Where the event with the issued quote goes.
std::filesystem::path target_of(const QuoteRequest& request) {
  return request.out.empty() ? request.event : request.out;
}

/// False, with a sentence, where the event may not be saved there.
bool may_issue(const QuoteRequest& request, const Console& console) {
  const auto target = target_of(request);
  for (const auto& file : {request.tables.csv, request.tables.xlsx})
    if (file && *file == target) {
      console.err << target.string() << " cannot be both the event with the quote and a table.\n";
      return false;
    }
  std::error_code not_there;
  if (request.out.empty() || std::filesystem::equivalent(request.out, request.event, not_there)) return true;
  return may_write({&request.out, 1}, request.event, console);
}

/// Freezes the quote in the event and saves it; `prepared` then holds the event as it was saved.
Exit issue_into(PreparedEvent& prepared, const QuotedEvent& quoted, const QuoteFigures& figures,
                const QuoteRequest& request, const Console& console) {
  OpenedEvent& opened = prepared.opened;
  const auto target = target_of(request);
  std::error_code not_there;
  if (opened.read_only && std::filesystem::equivalent(target, request.event, not_there)) {
    console.err << request.event.string()
                << ": it is of a newer version of the format and not saved over; '--out FILE' saves it elsewhere.\n";
    return Exit::bad_input;
  }
  if (!may_be_issued(quoted)) {
    console.err << "The quote was not issued, and the event is as it was: mend the problems first.\n";
    return Exit::problems;
  }
  Event event = issue(opened.event, quoted, prepared.house.house, figures, request.number, request.date);
  if (const auto fault = save_event(target, event, &opened)) {
    console.err << *fault << '\n';
    return Exit::no_output;
  }
  opened.event = std::move(event);
  console.err << "The quote was issued, and the event saved to " << target.string() << ".\n";
  return Exit::done;
}

}  // namespace

Exit quote(const QuoteRequest& request, const Console& console) {
  if (!may_write(request.tables, request.event, console)) return Exit::usage;
  if (request.issue && !may_issue(request, console)) return Exit::usage;
  auto opened = prepare(request.event, console, request.house);
  if (!opened) {
    console.err << opened.error << '\n';
    return Exit::bad_input;
  }
  PreparedEvent& prepared = *opened.value;
  const EventOrder order = order_of(prepared);
  const DayPlan day = plan_of(prepared, order.count);
  const QuoteInput input = quote_input(prepared, order, day);
  const QuotedEvent quoted = quote_event(input);
  const QuoteFigures figures = figures_of(input, quoted);
  append(prepared.findings, quoted.findings);

  Exit done = request.issue ? issue_into(prepared, quoted, figures, request, console) : Exit::done;
  const auto& issued = prepared.opened.event.issued;
  std::optional<QuoteChanges> changes;
  if (issued) {
    changes = quote_changes(*issued, quoted.quote, figures);
    append(prepared.findings, issued_findings(*issued, quoted.quote, *changes, request.date));
  }
  if (request.json)
    console.out << printed(json_of(quoted, prepared, changes, request.date));
  else if (request.tables.csv || request.tables.xlsx) {
    const Exit written = write_tables(tables_of(quoted), request.tables, console);
    if (done == Exit::done) done = written;
  } else
    print_text(quoted, prepared, changes, console.out);
  const Exit reported = report(prepared, console.err);
  return done == Exit::done ? reported : done;
}

}  // namespace quadrille
