// The questions that a new event begins with.
#include "studio/window/dialogs/new_event_dialog.hpp"

#include "studio/window/job/study.hpp"
#include "toolkit.hpp"

namespace quadrille {

TEST_CASE("a new event has the day that was chosen, and none where none was") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  NewEventDialog dialog(window.reference().get(), window->document()->palettes(), window->study()->types);
  REQUIRE(dialog.answers());
  CHECK(dialog.answers()->date.empty());
  // Days other than in the American order once vanished from the field without a word.
  for (const char* day : {"19 June 2027", "6/19/2027", "19.6.2027", "2027-06-19"}) {
    dialog.date_field().SetValue(day);
    REQUIRE(dialog.answers());
    CHECK(dialog.answers()->date == "2027-06-19");
  }
  dialog.date_field().SetValue("19 Juneuary");
  CHECK(!dialog.answers());
  dialog.date_field().SetValue("June 19th, 2027");
  CHECK(dialog.answers()->date == "2027-06-19");
  CHECK(dialog.answers()->colours.size() == 2);
  dialog.colours()[1]->SetSelection(0);
  CHECK(dialog.answers()->colours.size() == 1);
  CHECK(dialog.answers()->surroundings == Surroundings::indoors);
  dialog.outdoors().SetValue(true);
  CHECK(dialog.answers()->surroundings == Surroundings::outdoors);
  CHECK(dialog.answers()->units == Units::feet);
}

}  // namespace quadrille
