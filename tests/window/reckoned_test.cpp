// The pages Day plan and Quote on a screen: what they say is what is reckoned outside the window, and a quote is given.
#include <algorithm>

#include "studio/labour/day_words.hpp"
#include "studio/quote/quote_words.hpp"
#include "studio/window/dialogs/issue_dialog.hpp"
#include "studio/window/job/document.hpp"
#include "studio/window/panels/plan_panel.hpp"
#include "studio/window/panels/quote_panel.hpp"
#include "studio/window/toolkit/wx_text.hpp"
#include "toolkit.hpp"

namespace quadrille {
namespace {

/// harvest_event() with a day and a house's usual figures; the tower of an unknown type is left out, since nothing of it
/// can be priced.
Event dated_event() {
  Event event = harvest_event();
  event.areas.pop_back();
  event.date = "2027-09-18", event.load_in_from = "07:00", event.ready_by = "11:00", event.strike_from = "22:00";
  event.terms.crew = 2, event.terms.travel_m = 14'000;
  return event;
}

DayPlan plan_outside(const Study& study) {
  return plan_event(study.event, study.built, study.order.count, standard_house());
}

}  // namespace

TEST_CASE("the day plan lists every task with its clock, and the chart has the numbers of most") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder, dated_event()));
  window->show_page(window->plan());
  const DayPlan plan = plan_outside(*window->study());
  const auto& rows = window->plan().tasks().model->rows();
  REQUIRE(rows.size() == plan.tasks.size());
  REQUIRE(!rows.empty());
  for (std::size_t i = 0; i < rows.size(); ++i) {
    CHECK(text_of(rows[i].cells[1]) == print_moment(plan.tasks[i].start));
    CHECK(text_of(rows[i].cells[4]) == plan.tasks[i].task.text);
    CHECK((text_of(rows[i].cells[6]) == "none") == plan.tasks[i].critical);
  }
  CHECK(window->plan().headline().StartsWith("Crew of 2; at the venue from "));
  CHECK(window->plan().headline().Contains("to be ready by 11:00"));
  // Most tasks' numbers stand in the chart: a bar too short for its number has none.
  REQUIRE(window.pump_until([&] { return !window->plan().chart().marks().empty(); }));
  std::size_t numbered = 0;
  for (std::size_t number = 1; number <= plan.tasks.size(); ++number)
    numbered += std::ranges::any_of(window->plan().chart().marks(), [&](const Mark& mark) {
      const auto* text = std::get_if<TextMark>(&mark.shape);
      return text != nullptr && text->text == std::to_string(number);
    });
  CHECK(2 * numbered > plan.tasks.size());
}

TEST_CASE("the quote says what the client is asked and what it earns; given, it is kept and compared, and undone") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder, dated_event()));
  window->show_page(window->quote());
  const QuotePanel& panel = window->quote();
  const Study before = *window->study();
  const Quote& quote = before.quoted.quote;
  REQUIRE(panel.lines().model->rows().size() > quote.lines.size());
  for (std::size_t i = 0; i < quote.lines.size(); ++i)
    CHECK(text_of(panel.lines().model->rows()[i].cells[4]) == print_figure(quote.lines[i].total_minor(), "USD"));
  CHECK(panel.earnings().model->rows().size() == earnings_lines(before.quoted).size());
  CHECK(text_of(panel.headline()) == print_money(quote.total_minor, "USD"));
  CHECK(panel.issued() == "No quote has been given yet.");
  REQUIRE(window->quote().issue_button().IsEnabled());

  REQUIRE(window->issue_quote("2027-06-01", "Q-17"));
  CHECK(!window->issue_quote("2027-06-01", "Q-18"));  // the figures of the changed event are still under way
  window.settle();
  REQUIRE(window->document()->event().issued);
  CHECK(window->document()->event().issued->quote == quote);
  CHECK(window->document()->event().issued->valid_until == "2027-07-01");  // 30 days from 1 June
  CHECK(panel.issued().StartsWith("Issued as Q-17 on 2027-06-01, valid until 2027-07-01: "));
  CHECK(!panel.issued().Contains("another"));

  // A dearer piece changes what would be asked today, and not what was given.
  window->select("a1", "p1");
  window->move_selected(3);
  window.settle();
  CHECK(window->document()->event().issued->quote == quote);
  window->undo();
  window->undo();
  window.settle();
  CHECK(!window->document()->event().issued);
  window->redo();
  window.settle();
  CHECK(window->document()->event().issued->number == "Q-17");
}

TEST_CASE("the dialog takes the day and the number, and says until when the quote holds") {
  OpenWindow window;
  IssueDialog dialog(&*window.reference(), "465.00 USD", "2027-12-15", 30, Units::metric);
  CHECK(dialog.date() == "2027-12-15");
  dialog.number_field().ChangeValue("  7/2027 ");
  CHECK(dialog.number() == "7/2027");
  const auto labels = dialog.GetChildren();
  CHECK(std::ranges::any_of(labels, [](wxWindow* child) { return child->GetLabel().StartsWith("14 January 2028"); }));
  dialog.date_field().SetValue("1/2/2028");
  CHECK(dialog.date() == "2028-02-01");
  CHECK(dialog.FindWindow(wxID_OK)->IsEnabled());
  dialog.date_field().SetValue("soon");
  CHECK(dialog.date().empty());
  CHECK(!dialog.FindWindow(wxID_OK)->IsEnabled());
  Dialogs answers({wxID_CANCEL});
  CHECK(dialog.ShowModal() == wxID_CANCEL);
}

}  // namespace quadrille
