// What the outline shows, and the tree model that hands it to the native control.
#pragma once

#include <wx/dataview.h>

#include <memory>
#include <string>
#include <vector>

#include "studio/model/event.hpp"
#include "studio/model/finding.hpp"
#include "studio/takeoff/count.hpp"

namespace quadrille {

/// One line of the tree; `remarks` is in words, "1 problem, 2 warnings".
struct OutlineLine {
  std::string id, name, balloons, remarks;
  bool operator==(const OutlineLine&) const = default;
};
struct OutlineArea {
  OutlineLine line;
  std::vector<OutlineLine> pieces;
  bool operator==(const OutlineArea&) const = default;
};

/// The lines for `event`; a piece that `count` does not know (yet) has no number, one that it knows as not built says so
/// in its place.
std::vector<OutlineArea> outline_of(const Event& event, const EventCount& count, const Findings& findings);

class OutlineModel : public wxDataViewModel {
 public:
  enum Column : unsigned { column_name, column_balloons, column_remarks, column_end };

  /// True where the tree keeps its shape and only texts change.
  bool set_areas(std::vector<OutlineArea> areas);
  const std::vector<OutlineArea>& areas() const { return areas_; }

  /// The item of an area, or of a piece in it where `piece` is not empty; none where there is no such thing.
  wxDataViewItem item_of(const std::string& area, const std::string& piece) const;
  /// Ids of the area and, where it is one, of the piece.
  std::pair<std::string, std::string> ids_of(const wxDataViewItem& item) const;

 private:
  /// What an item points at. Kept apart from the lines so that items stay good while texts change.
  struct Node {
    std::size_t area = 0, piece = 0;
    bool is_area = true;
  };
  const OutlineLine& line_of(const Node& node) const;

  unsigned int GetColumnCount() const override { return column_end; }
  wxString GetColumnType(unsigned int) const override { return "string"; }
  void GetValue(wxVariant& value, const wxDataViewItem& item, unsigned int column) const override;
  bool SetValue(const wxVariant&, const wxDataViewItem&, unsigned int) override { return false; }
  wxDataViewItem GetParent(const wxDataViewItem& item) const override;
  bool IsContainer(const wxDataViewItem& item) const override;
  bool HasContainerColumns(const wxDataViewItem&) const override { return true; }
  unsigned int GetChildren(const wxDataViewItem& item, wxDataViewItemArray& children) const override;

  std::vector<OutlineArea> areas_;
  std::vector<std::unique_ptr<Node>> nodes_;     ///< all, for ownership
  std::vector<Node*> area_nodes_;                ///< by area
  std::vector<std::vector<Node*>> piece_nodes_;  ///< by area and piece
};

}  // namespace quadrille
