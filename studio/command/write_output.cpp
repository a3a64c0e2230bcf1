// The bytes are made in memory and then written by the one safe routine.
#include "studio/command/write_output.hpp"

#include <cstddef>
#include <ostream>

#include "studio/command/xlsx.hpp"
#include "studio/disk/safe_write.hpp"
#include "studio/files/own_file.hpp"

namespace quadrille {

bool may_write(std::span<const std::filesystem::path> outputs, const std::filesystem::path& event,
               const Console& console) {
  const auto fault = would_replace(event, outputs);
  if (fault) console.err << *fault << '\n';
  return !fault;
}

Exit write_drawing(std::span<const Page> pages, const std::filesystem::path& file, DrawingFormat format,
                   const DocumentInfo& info, const std::filesystem::path& event, const Console& console) {
  const auto files = drawing_files(file, format, pages.size());
  if (!may_write(files, event, console)) return Exit::usage;
  if (files.size() > 1)
    console.err << "The drawing has " << files.size() << " pages and such a file holds one: they go to "
                << files.front().string() << " to " << files.back().string()
                << ". '--area NAME' draws a single area, and a PDF holds all of them.\n";
  for (std::size_t i = 0; i < files.size(); ++i) {
    const auto bytes = drawing_bytes(pages, i, format, info);
    if (!bytes) {
      console.err << files[i].string() << ": " << bytes.error << '\n';
      return Exit::no_output;
    }
    const Exit written = write_output(files[i], *bytes, console);
    if (written != Exit::done) return written;
  }
  return Exit::done;
}

Exit write_output(const std::filesystem::path& file, std::string_view bytes, const Console& console) {
  const auto fault = safe_write(file, bytes, Backup::none);
  if (!fault) return Exit::done;
  console.err << *fault << '\n';
  return Exit::no_output;
}

Exit write_tables(const std::vector<ListTable>& tables, const TableOutputs& outputs, const Console& console) {
  if (outputs.csv)
    if (const Exit written = write_output(*outputs.csv, csv_of(tables), console); written != Exit::done) return written;
  if (!outputs.xlsx) return Exit::done;
  const auto bytes = xlsx_of(tables);
  if (bytes) return write_output(*outputs.xlsx, *bytes, console);
  console.err << outputs.xlsx->string() << ": " << bytes.error << '\n';
  return Exit::no_output;
}

bool may_write(const TableOutputs& outputs, const std::filesystem::path& event, const Console& console) {
  std::vector<std::filesystem::path> files;
  for (const auto& file : {outputs.csv, outputs.xlsx})
    if (file) files.push_back(*file);
  if (files.size() == 2 && files[0] == files[1]) {
    console.err << "--csv and --xlsx name the same file; give each its own.\n";
    return false;
  }
  return may_write(files, event, console);
}

}  // namespace quadrille
