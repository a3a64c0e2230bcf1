#include "studio/files/accepted_currency.hpp"

#include "studio/model/money.hpp"

namespace quadrille {

std::string accepted_currency(std::string_view written) {
  std::string capitals(written);
  for (char& letter : capitals)
    if (letter >= 'a' && letter <= 'z') letter = static_cast<char>(letter - 'a' + 'A');
  if (capitals != written && minor_digits(capitals)) return capitals + ", in capitals";
  return "a code of ISO 4217 such as USD, EUR or JPY";
}

}  // namespace quadrille
