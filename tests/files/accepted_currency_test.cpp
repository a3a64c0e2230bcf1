// A currency that is not written as one.
#include "studio/files/accepted_currency.hpp"

#include <doctest/doctest.h>

namespace quadrille {
namespace {

TEST_CASE("a currency in small letters is told to want capitals") {
  CHECK(accepted_currency("eur") == "EUR, in capitals");
  CHECK(accepted_currency("Usd") == "USD, in capitals");
  for (const char* const none : {"", "EUR", "euro", "xau", "e"})
    CHECK(accepted_currency(none) == "a code of ISO 4217 such as USD, EUR or JPY");
}

}  // namespace
}  // namespace quadrille
