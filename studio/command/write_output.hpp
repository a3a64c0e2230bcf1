// Where a verb's drawings and tables go: into files, in the one safe way, and never over an event.
#pragma once

#include <filesystem>
#include <span>
#include <string_view>

#include "studio/command/list_table.hpp"
#include "studio/command/verbs.hpp"
#include "studio/paint/drawing_file.hpp"

namespace quadrille {

/// True where `outputs` may be written. Says why not on console.err where one of them is `event` (empty = there is
/// none) or holds another event or a palette; the status is then Exit::usage.
bool may_write(std::span<const std::filesystem::path> outputs, const std::filesystem::path& event,
               const Console& console);

/// Writes the pages, at least one: all into one PDF; an SVG or PNG holds one page, so that several are numbered, which
/// is said on console.err. Returns Exit::done; Exit::usage where may_write says no; Exit::no_output after a sentence.
Exit write_drawing(std::span<const Page> pages, const std::filesystem::path& file, DrawingFormat format,
                   const DocumentInfo& info, const std::filesystem::path& event, const Console& console);

/// Replaces `file` by `bytes` in the one safe way. Returns Exit::done, or Exit::no_output after a sentence.
Exit write_output(const std::filesystem::path& file, std::string_view bytes, const Console& console);

/// Writes the lists to the files that are asked for. Returns Exit::done, or Exit::no_output after a sentence.
Exit write_tables(const std::vector<ListTable>& tables, const TableOutputs& outputs, const Console& console);

/// may_write for these.
bool may_write(const TableOutputs& outputs, const std::filesystem::path& event, const Console& console);

}  // namespace quadrille
