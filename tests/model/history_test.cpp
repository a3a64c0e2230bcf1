// Undo and redo: nothing is lost, one drag is one step, and snapshots never change behind one's back.
#include "studio/model/history.hpp"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <string>
#include <vector>

#include "sample_event.hpp"
#include "studio/model/edits.hpp"

using namespace quadrille;

namespace {

/// One edit of any kind on any piece or area, among them ids that are not there and edits that change nothing.
Event any_edit(const Event& event) {
  const std::string piece = "p" + std::to_string(*rc::gen::inRange(1, 7));
  const std::string area = "a" + std::to_string(*rc::gen::inRange(1, 4));
  const double number = *rc::gen::inRange(0, 4);
  switch (*rc::gen::inRange(0, 9)) {
    case 0:
      return moved(event, piece, number, 0);
    case 1:
      return with_value(event, piece, "span", Value::of_number(Kind::length, number));
    case 2:
      return without_value(event, piece, "span");
    case 3:
      return with_colour(event, piece, static_cast<std::size_t>(number), {"garden", "sky"});
    case 4:
      return renamed(event, piece, "Name " + std::to_string(*rc::gen::inRange(0, 3)));
    case 5:
      return with_piece(event, area, sample_piece(free_id(event, "p"), number));
    case 6:
      return without_piece(event, piece);
    case 7: {
      Area area_added;
      area_added.id = free_id(event, "a");
      return with_area(event, area_added);
    }
    default:
      break;
  }
  Site site;
  site.gust_m_s = number;
  return with_site(event, area, site);
}

/// Does something that a person could do next.
void any_act(History& history) {
  const std::string name = *rc::gen::element<std::string>("Move", "Stretch", "Colour");
  switch (*rc::gen::inRange(0, 7)) {
    case 0:
      return history.undo();
    case 1:
      return history.redo();
    case 2:
      return history.settle();
    case 3:
      return history.mark_saved();
    case 4:
    case 5:
      return history.amend(name, any_edit(history.event()));
    default:
      return history.commit(name, any_edit(history.event()));
  }
}

Event at(double x_m) { return moved(sample_event(), "p1", x_m, 0); }

}  // namespace

TEST_CASE("after any acts, undoing all gives the start and redoing all the end") {
  CHECK(rc::check("undo all, redo all", [] {
    const Event start = sample_event();
    History history(start);
    const int acts = *rc::gen::inRange(0, 30);
    for (int i = 0; i < acts; ++i) any_act(history);
    while (history.can_redo()) history.redo();
    const Event end = deep_copy(history.event());
    std::size_t steps = 0;
    for (; history.can_undo(); ++steps) history.undo();
    RC_ASSERT(history.event() == deep_copy(start));
    for (; history.can_redo(); --steps) history.redo();
    RC_ASSERT(steps == 0u);
    RC_ASSERT(history.event() == end);
  }));
}

TEST_CASE("every state comes back exactly as it was, in order, both ways") {
  CHECK(rc::check("walk back and forth", [] {
    History history(sample_event());
    std::vector<Event> states{deep_copy(history.event())};
    const int edits = *rc::gen::inRange(0, 15);
    for (int i = 0; i < edits; ++i) {
      const Event next = any_edit(history.event());
      history.commit("Edit", next);
      if (!(next == states.back())) states.push_back(deep_copy(next));
    }
    for (std::size_t i = states.size() - 1; i > 0; --i) {
      history.undo();
      RC_ASSERT(history.event() == states[i - 1]);
    }
    RC_ASSERT(!history.can_undo());
    for (std::size_t i = 1; i < states.size(); ++i) {
      history.redo();
      RC_ASSERT(history.event() == states[i]);
    }
    RC_ASSERT(!history.can_redo());
  }));
}

TEST_CASE("undo and redo at the ends do nothing") {
  History history(at(0));
  history.undo();
  history.redo();
  CHECK(history.event() == at(0));
  CHECK(history.undo_name().empty());
  CHECK(history.redo_name().empty());
}

TEST_CASE("steps bear their names") {
  History history(at(0));
  history.commit("Move", at(1));
  history.commit("Move again", at(2));
  history.undo();
  CHECK(history.undo_name() == "Move");
  CHECK(history.redo_name() == "Move again");
}

TEST_CASE("a commit after an undo forgets what was undone") {
  History history(at(0));
  history.commit("Move", at(1));
  history.commit("Move", at(2));
  history.undo();
  history.commit("Other", at(9));
  CHECK(!history.can_redo());
  history.undo();
  CHECK(history.event() == at(1));
}

TEST_CASE("an event equal to the present is no step, and leaves what was undone") {
  History history(at(0));
  history.commit("Nothing", at(0));
  CHECK(!history.can_undo());
  history.commit("Move", at(1));
  history.undo();
  history.commit("Nothing", at(0));
  CHECK(history.can_redo());
}

TEST_CASE("a drag is one step, however many moves it took") {
  History history(at(0));
  for (int i = 1; i <= 50; ++i) history.amend("Move", at(i));
  history.settle();
  CHECK(history.event() == at(50));
  history.undo();
  CHECK(history.event() == at(0));
  CHECK(!history.can_undo());
  history.redo();
  CHECK(history.event() == at(50));
}

TEST_CASE("two drags of one name are two steps") {
  // Without an end to the first, the second would have grown into it and undo would have jumped back over both.
  History history(at(0));
  history.amend("Move", at(1));
  history.settle();
  history.amend("Move", at(2));
  history.undo();
  CHECK(history.event() == at(1));
}

TEST_CASE("a drag does not grow into a step that was made otherwise") {
  History history(at(0));
  history.commit("Move", at(1));
  history.amend("Move", at(2));
  history.undo();
  CHECK(history.event() == at(1));

  history.amend("Move", at(3));  // after an undo: a step of its own, and what was undone is forgotten
  CHECK(!history.can_redo());
  history.amend("Stretch", at(4));
  history.undo();
  CHECK(history.event() == at(3));
}

TEST_CASE("a drag that begins without moving does not grow into the step before it") {
  History history(at(0));
  history.commit("Move", at(1));
  history.amend("Move", at(1));
  history.amend("Move", at(2));
  history.undo();
  CHECK(history.event() == at(1));
}

TEST_CASE("a drag back to where it began is no step") {
  History history(at(0));
  history.amend("Move", at(1));
  history.amend("Move", at(0));
  CHECK(!history.can_undo());
  history.amend("Move", at(2));
  history.undo();
  CHECK(history.event() == at(0));
}

TEST_CASE("changes are told against what was saved, whichever way one came there") {
  History history(at(0));
  CHECK(!history.has_changes());
  history.commit("Move", at(1));
  CHECK(history.has_changes());
  history.mark_saved();
  CHECK(!history.has_changes());
  history.undo();
  CHECK(history.has_changes());
  history.redo();
  CHECK(!history.has_changes());
  history.commit("Move", at(0));
  history.commit("Move", at(1));
  CHECK(!history.has_changes());  // the same event as on disk
}

TEST_CASE("snapshots share the pieces that did not change") {
  History history(at(0));
  const Event before = history.event();
  history.commit("Move", moved(history.event(), "p1", 7, 0));
  const Event& after = history.event();
  CHECK(after.areas[1].shares_with(before.areas[1]));
  CHECK(after.areas[0]->pieces[1].shares_with(before.areas[0]->pieces[1]));
}
