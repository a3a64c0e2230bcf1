// Several sheets of an event into a folder, a PDF each. Knows no toolkit.
#pragma once

#include <cstddef>
#include <filesystem>
#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "studio/paper/sheet.hpp"
#include "studio/window/job/newest.hpp"
#include "studio/window/job/study.hpp"

namespace quadrille {

struct SheetExport {
  std::shared_ptr<const Study> study;
  std::vector<std::string> kinds;  ///< keys out of sheet_kinds(); others are passed over
  Paper paper = Paper::a4;
  std::filesystem::path folder;
  std::string name;  ///< what the files' names begin with: "spring-fair"
};

/// The files it would write, in the order of the kinds: "FOLDER/spring-fair-client.pdf".
std::vector<std::filesystem::path> files_of(const SheetExport& wanted);

/// "Spring fair!" becomes "spring-fair": letters, digits and what is beyond ASCII stay. "event" where nothing would.
std::string file_stem_of(const std::string& title);

struct SheetProgress {
  double share = 0;   ///< 0 to 1
  std::string doing;  ///< "Reckoning how the pieces stand: 3 of 8"
};

struct SheetsExported {
  std::vector<std::filesystem::path> files;  ///< that were written
  std::string fault;                         ///< why not all were; empty where they were, or where it was given up
  bool given_up = false;                     ///< then nothing was written at all
};

/// Makes all sheets first and writes them then, each by the one safe routine, so that giving up leaves nothing behind.
/// Nothing is written where one of the files holds an event, a house or a palette. `told` may be called on several threads.
/// Never throws.
SheetsExported export_sheets(const SheetExport& wanted, const Stale& given_up,
                             const std::function<void(const SheetProgress&)>& told);

}  // namespace quadrille
