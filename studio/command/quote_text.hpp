// A quote for people: what the client is asked, and beneath it what only the decorator sees; and as tables.
#pragma once

#include <iosfwd>
#include <optional>
#include <vector>

#include "studio/command/list_table.hpp"
#include "studio/command/prepare.hpp"
#include "studio/quote/changes.hpp"

namespace quadrille {

/// `changes` as in quote_json.hpp.
void print_text(const QuotedEvent& quoted, const PreparedEvent& prepared, const std::optional<QuoteChanges>& changes,
                std::ostream& out);

/// The lines, the sums, and what each piece costs.
std::vector<ListTable> tables_of(const QuotedEvent& quoted);

}  // namespace quadrille
