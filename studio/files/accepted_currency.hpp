// What a file may say as its currency.
#pragma once

#include <string>
#include <string_view>

namespace quadrille {

/// What is accepted in place of `written`: "EUR, in capitals" for "eur", else "a code of ISO 4217 such as USD, EUR or JPY".
std::string accepted_currency(std::string_view written);

}  // namespace quadrille
