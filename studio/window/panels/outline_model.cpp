// Lines of the outline, and the tree model over them.
#include "studio/window/panels/outline_model.hpp"

#include <algorithm>
#include <utility>

#include "studio/takeoff/print.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

std::string counted(std::ptrdiff_t number, const std::string& word) {
  if (number == 0) return {};
  return std::to_string(number) + " " + word + (number == 1 ? "" : "s");
}

/// "1 problem, 2 warnings" of the findings that `belongs` picks; notes are left to the findings' list.
template <class Belongs>
std::string remarks_of(const Findings& findings, Belongs belongs) {
  const auto number = [&](Weight weight) {
    return std::ranges::count_if(findings, [&](const Finding& f) { return f.weight == weight && belongs(f); });
  };
  const std::string problems = counted(number(Weight::problem), "problem");
  const std::string warnings = counted(number(Weight::warning), "warning");
  return problems + (problems.empty() || warnings.empty() ? "" : ", ") + warnings;
}

std::string state_of(const PlacedPiece& piece) {
  if (piece.hidden) return piece.locked ? " (hidden, locked)" : " (hidden)";
  return piece.locked ? " (locked)" : "";
}

}  // namespace

std::vector<OutlineArea> outline_of(const Event& event, const EventCount& count, const Findings& findings) {
  std::vector<OutlineArea> areas;
  for (const auto& area : event.areas) {
    OutlineArea shown_area;
    shown_area.line.id = area->id;
    shown_area.line.name = area->name.empty() ? "Unnamed area" : area->name;
    shown_area.line.remarks =
        remarks_of(findings, [&](const Finding& f) { return f.area == area->id && f.piece.empty(); });
    for (const auto& piece : area->pieces) {
      OutlineLine line{piece->id, (piece->name.empty() ? "Unnamed piece" : piece->name) + state_of(*piece), "", ""};
      const auto counted_piece = std::ranges::find(count.pieces, piece->id, &PieceCount::id);
      if (counted_piece != count.pieces.end())
        line.balloons =
            counted_piece->not_built ? print_state(*counted_piece) : std::to_string(counted_piece->balloons);
      line.remarks = remarks_of(findings, [&](const Finding& f) { return f.piece == piece->id; });
      shown_area.pieces.push_back(std::move(line));
    }
    areas.push_back(std::move(shown_area));
  }
  return areas;
}

bool OutlineModel::set_areas(std::vector<OutlineArea> areas) {
  const auto same_ids = [](const OutlineLine& a, const OutlineLine& b) { return a.id == b.id; };
  const bool same_shape = std::ranges::equal(areas, areas_, [&](const OutlineArea& a, const OutlineArea& b) {
    return same_ids(a.line, b.line) && std::ranges::equal(a.pieces, b.pieces, same_ids);
  });
  if (same_shape) {
    const auto old = std::exchange(areas_, std::move(areas));
    for (std::size_t i = 0; i < areas_.size(); ++i) {
      if (areas_[i].line != old[i].line) ItemChanged(wxDataViewItem(area_nodes_[i]));
      for (std::size_t j = 0; j < areas_[i].pieces.size(); ++j)
        if (areas_[i].pieces[j] != old[i].pieces[j]) ItemChanged(wxDataViewItem(piece_nodes_[i][j]));
    }
    return true;
  }
  const auto old_nodes = std::exchange(nodes_, {});  // alive until the control has let go of them
  areas_ = std::move(areas);
  area_nodes_.clear();
  piece_nodes_.clear();
  const auto add = [this](Node node) {
    nodes_.push_back(std::make_unique<Node>(node));
    return nodes_.back().get();
  };
  for (std::size_t i = 0; i < areas_.size(); ++i) {
    area_nodes_.push_back(add({i, 0, true}));
    piece_nodes_.emplace_back();
    for (std::size_t j = 0; j < areas_[i].pieces.size(); ++j) piece_nodes_.back().push_back(add({i, j, false}));
  }
  Cleared();
  return false;
}

wxDataViewItem OutlineModel::item_of(const std::string& area, const std::string& piece) const {
  for (std::size_t i = 0; i < areas_.size(); ++i) {
    if (areas_[i].line.id != area) continue;
    if (piece.empty()) return wxDataViewItem(area_nodes_[i]);
    for (std::size_t j = 0; j < areas_[i].pieces.size(); ++j)
      if (areas_[i].pieces[j].id == piece) return wxDataViewItem(piece_nodes_[i][j]);
  }
  return {};
}

std::pair<std::string, std::string> OutlineModel::ids_of(const wxDataViewItem& item) const {
  if (!item.IsOk()) return {};
  const Node& node = *static_cast<const Node*>(item.GetID());
  return {areas_[node.area].line.id, node.is_area ? "" : line_of(node).id};
}

const OutlineLine& OutlineModel::line_of(const Node& node) const {
  return node.is_area ? areas_[node.area].line : areas_[node.area].pieces[node.piece];
}

void OutlineModel::GetValue(wxVariant& value, const wxDataViewItem& item, unsigned int column) const {
  const OutlineLine& line = line_of(*static_cast<const Node*>(item.GetID()));
  value = shown(column == column_name ? line.name : column == column_balloons ? line.balloons : line.remarks);
}

wxDataViewItem OutlineModel::GetParent(const wxDataViewItem& item) const {
  if (!item.IsOk()) return {};
  const Node& node = *static_cast<const Node*>(item.GetID());
  return node.is_area ? wxDataViewItem() : wxDataViewItem(area_nodes_[node.area]);
}

bool OutlineModel::IsContainer(const wxDataViewItem& item) const {
  return !item.IsOk() || static_cast<const Node*>(item.GetID())->is_area;
}

unsigned int OutlineModel::GetChildren(const wxDataViewItem& item, wxDataViewItemArray& children) const {
  const auto& nodes = item.IsOk() ? piece_nodes_[static_cast<const Node*>(item.GetID())->area] : area_nodes_;
  for (Node* node : nodes) children.Add(wxDataViewItem(node));
  return static_cast<unsigned int>(nodes.size());
}

}  // namespace quadrille
