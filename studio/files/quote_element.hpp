// Reads and writes <quote>: the quote as it was given to the client, frozen in the event's file.
#pragma once

#include <string>
#include <string_view>

#include "studio/files/element_reader.hpp"

namespace quadrille {

/// `currency` is the event's, for a quote that names none. Sums that do not add up, and dates that are none, are
/// warnings; the figures stay as they are written, since they are what the client was told. Throws Unreadable where an
/// amount is missing or cannot be meant.
IssuedQuote read_quote(const XmlNode& element, Reading& reading, std::string_view currency);

/// The element's lines at this depth. Charges stand in their order, figures by key.
std::string quote_lines(const IssuedQuote& issued, int depth);

}  // namespace quadrille
