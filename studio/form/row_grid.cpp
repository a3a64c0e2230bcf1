#include "studio/form/row_grid.hpp"

#include <algorithm>
#include <utility>

#include "sdk/pattern_ring.hpp"
#include "sdk/row_text.hpp"

namespace quadrille {
namespace {

constexpr int least_places = 1, most_places = 12;

}  // namespace

int places_in(const ParameterTable& table, const ValueMap& values) {
  const Parameter* size = find_parameter(table, "cluster-size");
  if (size == nullptr || size->kind != Kind::count) return 4;
  return std::clamp(static_cast<int>(value_of(values, *size).number), least_places, most_places);
}

Result<RowGrid> grid_of(std::string_view text, int places) {
  RowGrid grid;
  grid.places = std::clamp(places, least_places, most_places);
  const auto words = row_words(text);
  if (!words) return Result<RowGrid>::bad(words.error);
  for (const std::string& word : *words) {
    SlotRow row;
    for (const char letter : word) row.push_back(static_cast<std::uint32_t>(letter - 'A'));
    row.resize(static_cast<std::size_t>(grid.places), row.back());
    grid.rows.push_back(std::move(row));
  }
  return Result<RowGrid>::good(std::move(grid));
}

RowGrid grid_of(const std::vector<LaidCluster>& laid, int places, int hand) {
  RowGrid grid;
  grid.places = std::clamp(places, least_places, most_places);
  for (std::size_t i = 0; i < laid.size(); ++i) {
    const LaidCluster& cluster = laid[i];
    if (cluster.slots.size() != static_cast<std::size_t>(grid.places)) return {grid.places, {}};
    // As it is laid, against the same cluster turned on and on to one hand; both stand in the same creases.
    const int ahead = (cluster.half_steps - (hand < 0 ? -1 : 1) * static_cast<int>(i)) / 2;
    grid.rows.push_back(cluster.slots);
    grid = rotated(std::move(grid), i, ahead);
  }
  std::size_t period = 1;
  const auto repeats = [&](std::size_t n) {
    return std::equal(grid.rows.begin() + static_cast<std::ptrdiff_t>(n), grid.rows.end(), grid.rows.begin());
  };
  while (period < grid.rows.size() && !repeats(period)) ++period;
  grid.rows.resize(std::min(period, grid.rows.size()));
  return grid;
}

std::string text_of(const RowGrid& grid) {
  std::string text;
  for (const SlotRow& row : grid.rows) {
    if (!text.empty()) text += ' ';
    for (const std::uint32_t slot : row) text += slot_letter(slot);
  }
  return text;
}

RowGrid with_grid_row(RowGrid grid, std::size_t row) {
  if (grid.rows.empty())
    grid.rows.emplace_back(static_cast<std::size_t>(grid.places), 0u);
  else if (row < grid.rows.size())
    grid.rows.insert(grid.rows.begin() + static_cast<std::ptrdiff_t>(row + 1), SlotRow(grid.rows[row]));
  return grid;
}

RowGrid without_grid_row(RowGrid grid, std::size_t row) {
  if (row < grid.rows.size()) grid.rows.erase(grid.rows.begin() + static_cast<std::ptrdiff_t>(row));
  return grid;
}

RowGrid with_slot(RowGrid grid, std::size_t row, std::size_t place, std::uint32_t slot) {
  if (row < grid.rows.size() && place < grid.rows[row].size() && slot < static_cast<std::uint32_t>(most_slots))
    grid.rows[row][place] = slot;
  return grid;
}

RowGrid rotated(RowGrid grid, std::size_t row, int by) {
  if (row >= grid.rows.size() || grid.rows[row].empty()) return grid;
  SlotRow& slots = grid.rows[row];
  const int size = static_cast<int>(slots.size()), left = ((-by % size) + size) % size;
  std::rotate(slots.begin(), slots.begin() + left, slots.end());
  return grid;
}

RowGrid rotated_all(RowGrid grid, int by) {
  for (std::size_t row = 0; row < grid.rows.size(); ++row) grid = rotated(std::move(grid), row, by);
  return grid;
}

int slots_in(const RowGrid& grid) {
  std::uint32_t most = 0;
  for (const SlotRow& row : grid.rows)
    for (const std::uint32_t slot : row) most = std::max(most, slot + 1);
  return static_cast<int>(most);
}

Event with_grid(Event event, const Form& form, const ParameterTables& tables, std::string_view key,
                const RowGrid& grid) {
  event = with_field(std::move(event), form, tables, key, Value::of_text(Kind::rows, text_of(grid)));
  for (const std::string& id : form.pieces) {
    const PlacedPiece* piece = find_piece(event, id);
    const auto table = piece ? tables.find(piece->type) : tables.end();
    if (table == tables.end() || table->second == nullptr) continue;
    const auto slots = std::ranges::find(*table->second, Kind::slots, &Parameter::kind);
    if (slots == table->second->end() || value_of(piece->values, *slots).number >= slots_in(grid)) continue;
    const Form own = form_of(event, {id}, tables);
    const Value number = Value::of_number(Kind::slots, slots_in(grid));
    event = with_field(std::move(event), own, tables, slots->key, number);
  }
  return event;
}

Event with_rows_begun(Event event, const Form& form, const ParameterTables& tables, std::string_view key,
                      const BuiltEvent& built) {
  for (const std::string& id : form.pieces) {
    const PlacedPiece* const piece = find_piece(event, id);
    const auto table = piece ? tables.find(piece->type) : tables.end();
    if (table == tables.end() || table->second == nullptr) continue;
    const Parameter* const choice = find_parameter(*table->second, key);
    if (choice == nullptr || choice->kind != Kind::choice) continue;
    const Parameter* const rows = find_parameter(*table->second, value_of(piece->values, *choice).text);
    if (rows == nullptr || rows->kind != Kind::rows || !value_of(piece->values, *rows).text.empty()) continue;
    const auto made = built.find(id);
    if (made == built.end() || made->second == nullptr || made->second->status != Status::ok) continue;
    const Parameter* const hand = find_parameter(*table->second, "hand");
    const bool left = hand != nullptr && value_of(piece->values, *hand).text == "left";
    const RowGrid grid =
        grid_of(laid_clusters(made->second->piece), places_in(*table->second, piece->values), left ? -1 : 1);
    if (grid.rows.empty()) continue;
    const Form own = form_of(event, {id}, tables);
    event = with_field(std::move(event), own, tables, rows->key, Value::of_text(Kind::rows, text_of(grid)));
  }
  return event;
}

std::vector<PatternCell> unrolled(const std::vector<LaidCluster>& laid) {
  std::vector<PatternCell> cells;
  for (std::size_t row = 0; row < laid.size(); ++row) {
    const int n = static_cast<int>(laid[row].slots.size());
    const std::size_t first = cells.size();
    for (int place = 0; place < n; ++place) {
      const int half_steps = ((laid[row].half_steps + 2 * place) % (2 * n) + 2 * n) % (2 * n);
      const auto at = static_cast<std::size_t>(place);
      cells.push_back({row, at, half_steps / 2.0, laid[row].slots[at]});
    }
    std::sort(cells.begin() + static_cast<std::ptrdiff_t>(first), cells.end(),
              [](const PatternCell& a, const PatternCell& b) { return a.across < b.across; });
  }
  return cells;
}

std::vector<PatternCell> unrolled(const RowGrid& grid, int hand, int clusters) {
  if (grid.rows.empty() || clusters <= 0) return {};
  std::vector<LaidCluster> laid;
  for (int i = 0; i < clusters; ++i)
    laid.push_back({(hand < 0 ? -1 : 1) * i, grid.rows[static_cast<std::size_t>(i) % grid.rows.size()]});
  return unrolled(laid);
}

std::vector<PatternCell> unrolled(const Piece& piece) { return unrolled(laid_clusters(piece)); }

}  // namespace quadrille
