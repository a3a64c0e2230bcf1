// The house's single figures, page by page: what stands in each field, and what was typed into it.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "sdk/result.hpp"
#include "studio/house_form/house_field.hpp"
#include "studio/model/house.hpp"

namespace quadrille {

enum class HousePage { business, prices, crew_and_travel, rates, reckoning };

/// In the order in which they are shown.
inline constexpr HousePage house_pages[] = {HousePage::business, HousePage::prices, HousePage::crew_and_travel,
                                            HousePage::rates, HousePage::reckoning};

/// "Prices", "Rates of work"…
std::string_view name_of(HousePage page);

/// The page's fields as the house has them. Defaults are those of the standard house of its currency; what is of no
/// house in particular (name, currency) has none.
std::vector<HouseFieldGroup> page_of(const House& house, HousePage page);

/// What was typed into the field of `key`. A field's own text leaves the house as it is, though the figure may have been
/// rounded to be shown. Fails with a sentence that says what would be accepted; an unknown key is a programmer's mistake
/// (std::invalid_argument). A new currency keeps every figure as people read it: 25.00 USD becomes 25 JPY.
Result<House> with_house_field(const House& house, HousePage page, std::string_view key, std::string_view text);

/// The field back at its default; the house as it is where it has none.
House with_house_default(const House& house, HousePage page, std::string_view key);

}  // namespace quadrille
