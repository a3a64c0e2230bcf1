// What a step does to several pieces: names, locks, new names.
#include "studio/arrange/selection.hpp"

#include "venue.hpp"

using namespace quadrille;
using namespace quadrille::testing;

TEST_CASE("a step is called after its one piece, or after how many there are") {
  Venue venue;
  venue.block("p", 0, 1).block("q", 2, 1);
  CHECK(step_name("Remove", venue.event, {"p"}) == "Remove Piece p");
  CHECK(step_name("Remove", venue.event, {"p", "q"}) == "Remove 2 pieces");
  CHECK(step_name("Remove", renamed(venue.event, "p", ""), {"p"}) == "Remove piece");
  CHECK(step_name("Remove", venue.event, {"p", "nobody"}) == "Remove Piece p");
}

TEST_CASE("locked pieces are set apart, and it is said") {
  Venue venue;
  venue.block("p", 0, 1).block("q", 2, 1).block("r", 4, 1);
  venue.event = with_lock(venue.event, {"q"}, true);
  const Grasp held = grasp(venue.event, {"r", "q", "p", "nobody"});
  CHECK(held.free == PieceIds{"r", "p"});
  CHECK(held.locked == PieceIds{"q"});
  CHECK(left_out_words(venue.event, held.locked) == "Piece q is locked and was left out.");
  CHECK(left_out_words(venue.event, {"p", "q"}) == "2 locked pieces were left out.");
  CHECK(left_out_words(venue.event, {}).empty());
  venue.event = with_hidden(venue.event, {"r"}, true);
  CHECK(hidden_in(venue.area()) == PieceIds{"r"});
}

TEST_CASE("several pieces get one name, with numbers from the left; their own names are not in the way") {
  Venue venue;
  venue.block("p", 5, 1).block("q", 2, 1).block("r", 9, 1).block("s", 0, 1);
  const Event event = renamed_all(renamed(venue.event, "r", "Column"), {"p", "q", "r"}, "Column");
  CHECK(find_piece(event, "q")->name == "Column");
  CHECK(find_piece(event, "p")->name == "Column 2");
  CHECK(find_piece(event, "r")->name == "Column 3");
  const Event taken = renamed_all(renamed(venue.event, "s", "Column"), {"p", "q"}, "Column");
  CHECK(find_piece(taken, "q")->name == "Column 2");
  CHECK(find_piece(taken, "p")->name == "Column 3");
  CHECK(find_piece(renamed_all(venue.event, {"p"}, "Piece q"), "p")->name ==
        "Piece q");  // one may be called like another
  CHECK(find_piece(renamed_all(venue.event, {"p", "q"}, ""), "q")->name.empty());
}
