#include "studio/command/xlsx.hpp"

#include <xlsxwriter.h>

#include <algorithm>
#include <string_view>

#include "studio/disk/file_bytes.hpp"
#include "studio/disk/temporary_folder.hpp"

namespace quadrille {
namespace {

constexpr std::size_t longest_text = 32'767;   // bytes are at least as many as the characters a cell may have
constexpr double narrowest = 8, widest = 60;   // columns, in characters
constexpr std::time_t no_clock = 946'684'800;  // 2000-01-01, so that the same lists give the same bytes

/// `text` cut at `longest_text` bytes, at the beginning of a character, without what XML cannot hold.
std::string cell_text(std::string_view text) {
  std::size_t end = std::min(text.size(), longest_text);
  while (end < text.size() && end > 0 && (text[end] & 0xC0) == 0x80) --end;
  std::string kept(text.substr(0, end));
  std::ranges::replace_if(
      kept, [](char c) { return static_cast<unsigned char>(c) < 0x20 && c != '\t' && c != '\n'; }, ' ');
  return kept;
}

class Workbook {
 public:
  Workbook(const std::string& file, std::string folder) : folder_(std::move(folder)) {
    lxw_workbook_options options{};
    options.tmpdir = folder_.data();
    book_ = workbook_new_opt(file.c_str(), &options);
    if (book_ == nullptr) return;
    lxw_doc_properties properties{};
    properties.created = no_clock;
    workbook_set_properties(book_, &properties);
    bold_ = workbook_add_format(book_);
    format_set_bold(bold_);
    for (std::size_t decimals = 0; decimals < std::size(fixed_); ++decimals) {
      fixed_[decimals] = workbook_add_format(book_);
      format_set_num_format(fixed_[decimals], decimals == 0 ? "0" : ("0." + std::string(decimals, '0')).c_str());
    }
  }

  void add(const ListTable& table) {
    if (book_ == nullptr) return;
    lxw_worksheet* const sheet = workbook_add_worksheet(book_, table.name.c_str());
    if (sheet == nullptr) return note(LXW_ERROR_SHEETNAME_ALREADY_USED);
    for (std::size_t i = 0; i < table.heads.size(); ++i) {
      const auto column = static_cast<lxw_col_t>(i);
      std::size_t width = table.heads[i].size();
      for (const auto& row : table.rows) width = std::max(width, row[i].text.size());
      worksheet_set_column(sheet, column, column, std::clamp(static_cast<double>(width) + 1, narrowest, widest),
                           nullptr);
      note(worksheet_write_string(sheet, 0, column, table.heads[i].c_str(), bold_));
      for (std::size_t k = 0; k < table.rows.size(); ++k)
        write(sheet, static_cast<lxw_row_t>(k + 1), column, table.rows[k][i]);
    }
    worksheet_freeze_panes(sheet, 1, 0);
  }

  /// Null, or what went wrong.
  const char* close() {
    if (book_ == nullptr) return "the memory is full";
    const lxw_error closed = workbook_close(book_);
    if (error_ == LXW_NO_ERROR) error_ = closed;
    return error_ == LXW_NO_ERROR ? nullptr : lxw_strerror(error_);
  }

 private:
  void write(lxw_worksheet* sheet, lxw_row_t row, lxw_col_t column, const Cell& cell) {
    const bool is_fixed = cell.decimals >= 0 && static_cast<std::size_t>(cell.decimals) < std::size(fixed_);
    if (cell.number)
      note(worksheet_write_number(sheet, row, column, *cell.number,
                                  is_fixed ? fixed_[static_cast<std::size_t>(cell.decimals)] : nullptr));
    else if (!cell.text.empty())
      note(worksheet_write_string(sheet, row, column, cell_text(cell.text).c_str(), nullptr));
  }

  void note(lxw_error error) {
    if (error_ == LXW_NO_ERROR) error_ = error;
  }

  std::string folder_;
  lxw_workbook* book_ = nullptr;
  lxw_format* bold_ = nullptr;
  lxw_format* fixed_[5] = {};  // by decimals
  lxw_error error_ = LXW_NO_ERROR;
};

}  // namespace

Result<std::string> xlsx_of(const std::vector<ListTable>& tables) {
  const TemporaryFolder folder;
  if (folder.path().empty())
    return Result<std::string>::bad(
        "no folder for temporary files could be made; name one that can be written in "
        "TMPDIR.");
  const std::string file = (folder.path() / "book.xlsx").string();
  Workbook book(file, folder.path().string());
  for (const ListTable& table : tables) book.add(table);
  if (const char* fault = book.close())
    return Result<std::string>::bad("the spreadsheet could not be made (" + std::string(fault) + ").");
  return read_bytes(file);
}

}  // namespace quadrille
