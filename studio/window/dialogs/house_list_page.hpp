// A list of the house on its page: a table with Add, Change and Remove; of the finished jobs also what they teach.
#pragma once

#include <wx/button.h>
#include <wx/panel.h>

#include <functional>
#include <optional>
#include <string>

#include "studio/house_form/house_lists.hpp"
#include "studio/window/toolkit/table.hpp"

namespace quadrille {

struct HouseListAnswers {
  std::function<void(std::optional<std::size_t> row)> change;  ///< none: add one
  std::function<void(std::size_t row)> remove;
  std::function<void()> add_this_event;  ///< empty where there is no event to take
  std::function<void()> use_learned;
};

class HouseListPage : public wxPanel {
 public:
  HouseListPage(wxWindow* parent, HouseList list, const House& house, const std::vector<Palette>& palettes,
                HouseListAnswers answers);

  void show(const House& house, const std::vector<Palette>& palettes);
  void select(std::size_t row);
  const Table& table() const { return table_; }
  /// Of the finished jobs' page; without a list on the others.
  const Table& learned() const { return learned_; }
  wxButton& add() { return *add_; }
  wxButton& change() { return *change_; }
  wxButton& remove() { return *remove_; }
  /// Null on the pages of other lists.
  wxButton* add_this_event() { return this_event_; }
  wxButton* use_learned() { return use_; }

 private:
  void show_state();

  HouseList list_;
  HouseListAnswers answers_;
  Table table_, learned_;
  wxButton *add_ = nullptr, *change_ = nullptr, *remove_ = nullptr, *this_event_ = nullptr, *use_ = nullptr;
};

}  // namespace quadrille
