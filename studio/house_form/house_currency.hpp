// The house in another currency.
#pragma once

#include <string_view>

#include "sdk/result.hpp"
#include "studio/model/house.hpp"

namespace quadrille {

/// The house with another currency (ISO 4217) and the same figures as people read them: 25.00 USD becomes 25.00 EUR,
/// or 25 JPY. Nothing is converted; what a currency with fewer digits cannot hold is rounded. Fails with a sentence for a
/// code that is none, and where an amount would become too large.
Result<House> with_currency(House house, std::string_view code);

}  // namespace quadrille
