// "A stranger could build from it": the cluster chart is read off the printed page, and what it says is laid and compared
// with the piece it was printed for.
#include <doctest/doctest.h>

#include <cstdlib>
#include <sstream>

#include "studio/build_sheet/build_sheet.hpp"
#include "studio/paint/output.hpp"
#include "tests/making/laid.hpp"
#include "tests/paint/picture.hpp"
#include "tests/paper/sheets.hpp"

using namespace quadrille;

namespace {

/// A row of the chart as a reader takes it: the first of the clusters it is for, the last, every how many; letters; turns.
struct ReadRow {
  int first = 0, last = 0, every = 0;
  std::string letters, turn;
};

bool is_number(const std::string& word) {
  return !word.empty() && word.find_first_not_of("0123456789") == std::string::npos;
}

bool is_letters(const std::string& word, std::size_t size) {
  return word.size() == size && word.find_first_not_of("ABCDEF") == std::string::npos;
}

/// The words of the chart, from its heading to the next.
std::vector<std::string> chart_words(const std::string& text) {
  std::vector<std::string> words;
  const std::size_t from = text.find("Cluster chart"), to = text.find("Running marks", from);
  REQUIRE(from != std::string::npos);
  REQUIRE(to != std::string::npos);
  std::istringstream stream(text.substr(from, to - from));
  for (std::string word; stream >> word;) words.push_back(word);
  return words;
}

/// "1, 5, 9 … 41" or "1–41" or "7", as the words before a row's letters.
void read_numbers(std::vector<std::string> words, ReadRow& row) {
  std::vector<int> numbers;
  bool goes_on = false;
  for (std::string word : words) {
    if (const auto dash = word.find("–"); dash != std::string::npos) {
      row = {std::atoi(word.c_str()), std::atoi(word.substr(dash + 3).c_str()), 1, row.letters, row.turn};
      return;
    }
    if (word.ends_with(',')) word.pop_back();
    if (word == "…") goes_on = true;
    if (is_number(word)) numbers.push_back(std::atoi(word.c_str()));
  }
  REQUIRE_FALSE(numbers.empty());
  row.first = numbers.front(), row.last = numbers.back();
  row.every = numbers.size() > 1 ? numbers[1] - numbers[0] : 1;
  if (!goes_on)
    for (std::size_t i = 1; i < numbers.size(); ++i) CHECK(numbers[i] - numbers[i - 1] == row.every);
}

std::vector<ReadRow> read_chart(const std::string& text, std::size_t size) {
  const std::vector<std::string> words = chart_words(text);
  std::vector<ReadRow> rows;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (!is_letters(words[i], size)) continue;
    std::size_t from = i;
    const auto belongs = [](std::string word) {
      if (word.ends_with(',')) word.pop_back();
      return is_number(word) || word == "…" || word.find("–") != std::string::npos;
    };
    while (from > 0 && belongs(words[from - 1])) --from;
    ReadRow row;
    row.letters = words[i];
    read_numbers({words.begin() + static_cast<std::ptrdiff_t>(from), words.begin() + static_cast<std::ptrdiff_t>(i)},
                 row);
    for (std::size_t j = i + 1; j < words.size() && !is_letters(words[j], size); ++j) row.turn += words[j] + " ";
    rows.push_back(row);
  }
  return rows;
}

/// The turn that is printed, in radians: positive to the right.
double printed_turn(const std::string& text) {
  const std::size_t at = text.find(" turn");
  if (at == std::string::npos || text.find("not turned") != std::string::npos) return 0;
  const std::size_t from = text.rfind(' ', at - 1) + 1;
  const double above = std::atof(text.c_str() + from), below = std::atof(text.c_str() + text.find('/', from) + 1);
  return (text.find("left", at) == at + 6 ? -1 : 1) * above / below * 2 * pi;
}

/// Lays what was read and compares it with the piece, balloon by balloon.
void check_read_back(const Piece& piece, const std::vector<ReadRow>& rows) {
  std::vector<const ReadRow*> by_cluster(piece.clusters.size(), nullptr);
  for (const ReadRow& row : rows)
    for (int number = row.first; number <= row.last; number += row.every) {
      REQUIRE(number <= static_cast<int>(by_cluster.size()));
      CHECK(by_cluster[static_cast<std::size_t>(number - 1)] == nullptr);
      by_cluster[static_cast<std::size_t>(number - 1)] = &row;
    }
  double angle = 0;  // "balloon 1 to the front"
  for (std::size_t i = 0; i < by_cluster.size(); ++i) {
    REQUIRE(by_cluster[i] != nullptr);
    const ReadRow& row = *by_cluster[i];
    if (i == 0) CHECK(has(row.turn, "balloon 1 to the front"));
    if (i > 0) angle += printed_turn(row.turn);
    for (std::size_t place = 0; place < row.letters.size(); ++place) {
      const double at = angle + 2 * pi * static_cast<double>(place) / static_cast<double>(row.letters.size());
      CHECK(laid::slot_towards(piece, i, at) == row.letters[place] - 'A');
    }
  }
}

std::string printed(const Folder& folder, const Piece& piece, Paper paper) {
  sample::Job job = changed([&](sample::Job& changing, Area& area) {
    area.pieces[0].edit([](PlacedPiece& placed) {
      placed.colours.clear();
      for (const char* colour : {"lagoon", "brass", "chalk", "ink", "dew", "rosewood"})
        placed.colours.push_back({"studio", colour});
    });
    changing.built["p1"] = sample::built(piece);
  });
  const EventCount count = job.count();
  SheetOptions options;
  options.paper = paper;
  const auto pdf = to_pdf(build_sheet({job.event, job.built, count, job.palettes}, options), {"Chart", "2027-06-19"});
  REQUIRE(pdf);
  return output_of("pdftotext -raw '" + folder.write("chart.pdf", *pdf) + "' -");
}

}  // namespace

TEST_CASE("the chart that is read off the PDF gives the piece back, balloon by balloon") {
  const Folder folder;
  for (const PatternKind kind :
       {PatternKind::solid, PatternKind::spiral, PatternKind::zigzag, PatternKind::stripes, PatternKind::diamond})
    for (int size = 2; size <= 6; ++size)
      for (const int hand : {1, -1}) {
        CAPTURE(static_cast<int>(kind));
        CAPTURE(size);
        CAPTURE(hand);
        const int slots = kind == PatternKind::solid ? 1 : 3;
        const PatternPlan plan = laid::plan_of(kind, size, slots, hand, 3);
        const Piece piece = size % 2 == 0 ? laid::half_circle(plan, 41) : laid::pole(plan, 14);
        check_read_back(piece, read_chart(printed(folder, piece, Paper::a4), static_cast<std::size_t>(size)));
      }
}

TEST_CASE("a chart in which nothing repeats is read back whole, over several columns and pages") {
  const Folder folder;
  PatternPlan plan = laid::plan_of(PatternKind::rows, 4, 4);
  std::uint32_t state = 7;  // any sequence without a repeat
  for (int i = 0; i < 130; ++i) {
    SlotRow row;
    for (int place = 0; place < 4; ++place) {
      state = state * 1664525u + 1013904223u;
      row.push_back(state >> 30);
    }
    plan.rows.push_back(row);
  }
  const Piece piece = laid::half_circle(plan, 130);
  check_read_back(piece, read_chart(printed(folder, piece, Paper::letter), 4));
}
