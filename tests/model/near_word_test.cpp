// Which words are offered for a mistyped one.
#include "studio/model/near_word.hpp"

#include <doctest/doctest.h>

#include <vector>

namespace quadrille {
namespace {

const std::vector<std::string> colours{"rose", "lilac", "night-blue", "sunflower"};

TEST_CASE("a slip of a letter or two is recognized") {
  // Slips counted by hand: r-o-z-e one changed, lillac one put in, sunflwer one left out, nightblu two left out.
  CHECK(near_word("roze", colours) == "rose");
  CHECK(near_word("lillac", colours) == "lilac");
  CHECK(near_word("sunflwer", colours) == "sunflower");
  CHECK(near_word("nightblu", colours) == "night-blue");
  CHECK(near_word("rsoe", colours) == "rose");    // neighbours swapped
  CHECK(near_word("lialc", colours) == "lilac");  // and again
}

TEST_CASE("another word is no slip: \"nope\" was once answered with \"Did you mean rose?\"") {
  CHECK_FALSE(near_word("nope", colours));  // two of four letters
  CHECK_FALSE(near_word("", colours));
  CHECK_FALSE(near_word("ro", colours));
  CHECK_FALSE(near_word("daisies", colours));
  CHECK_FALSE(near_word(std::string(1000, 'r'), colours));
  CHECK_FALSE(near_word("rose", {}));
}

TEST_CASE("of several near words the nearest is taken, and of equally near ones the first") {
  const std::vector<std::string> words{"spam", "span", "spin"};
  CHECK(near_word("span", words) == "span");
  CHECK(near_word("spun", words) == "span");
}

}  // namespace
}  // namespace quadrille
