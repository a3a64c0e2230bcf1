// Spreadsheet files: Office Open XML (ISO/IEC 29500), one sheet for each list.
#pragma once

#include <string>
#include <vector>

#include "sdk/result.hpp"
#include "studio/command/list_table.hpp"

namespace quadrille {

/// The bytes of a workbook: numbers in number cells, text in text cells, which no spreadsheet runs as a formula. The same
/// tables give the same bytes. The error says why there are none.
Result<std::string> xlsx_of(const std::vector<ListTable>& tables);

}  // namespace quadrille
