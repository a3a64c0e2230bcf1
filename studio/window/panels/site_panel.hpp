// The page Site: what is known of the shown area, the area from above, and a list of what stands there with its lines. What
// is selected in the list or on the plan has its fields on the left; with nothing selected these are the area's own.
#pragma once

#include <wx/button.h>
#include <wx/panel.h>
#include <wx/stattext.h>

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "studio/form/site_form.hpp"
#include "studio/model/built_event.hpp"
#include "studio/model/site_object.hpp"
#include "studio/window/panels/floor_plan_view.hpp"
#include "studio/window/toolkit/fact_rows.hpp"
#include "studio/window/toolkit/table.hpp"

namespace quadrille {

/// What may be added to an area beside pieces.
enum class SiteAddition { structure, walkway, outlet, line };

/// What the panel tells its owner.
struct SitePanelAnswers {
  /// Of the object, or of the area itself where that is nothing; returns what is wrong.
  std::function<std::optional<std::string>(const std::optional<SiteObject>& object, const std::string& key,
                                           const std::string& text)>
      typed;
  std::function<void(const std::optional<SiteObject>& object)> picked;
  /// As FloorPlanAnswers has it.
  std::function<void(const SiteObject& object, SiteGrip grip, double right_m, double back_m, bool fine)> dragged;
  std::function<void()> let_go;
  /// At this place; nothing: wherever the owner thinks best.
  std::function<void(SiteAddition what, const std::optional<SitePlace>& place)> added;
  std::function<void()> removed;                    ///< the selected object
  std::function<void(std::size_t advice)> advised;  ///< the advised lines with this index
  std::function<void(const std::optional<SitePlace>&)> pointing;
};

/// What the panel shows.
struct SiteContent {
  std::string area, name;  ///< id and name of the area
  FactFields area_fields;
  std::optional<SiteObject> selected;  ///< one that is there
  std::string selected_name;
  FactFields object_fields;  ///< of what is selected
  std::vector<SiteRow> rows;
  FloorPlan plan;
  std::string words;                      ///< beside what is selected on the plan
  std::string securing;                   ///< how the selected piece stands, one sentence; empty: no piece is selected
  std::vector<std::string> advice;        ///< the advised sets of lines, in words
  bool may_edit = true, may_tie = false;  ///< `may_tie`: a piece with tie points is selected
  Units units = Units::feet;
};

class SitePanel : public wxPanel {
 public:
  SitePanel(wxWindow* parent, SitePanelAnswers answers);

  /// Nothing: there is no area.
  void show(std::optional<SiteContent> content);
  /// Commits what is being typed.
  void settle() { fields_->settle(); }

  /// Puts the keyboard into the field of `key`, one of the area's or of what is selected; scrolls to it.
  void focus_field(std::string_view key);
  /// Puts the keyboard to where the selected piece is tied: the list, while one of its lines is selected there, else the
  /// advised lines, or what can be added while none are known.
  void focus_lines();
  /// Asks which of the advised sets of lines the selected piece is to have.
  void offer_advice();

  FactRows& fields() { return *fields_; }
  FloorPlanView& plan() { return *plan_; }
  const Table& objects() const { return objects_; }
  wxButton& add_button() { return *add_; }
  wxButton& remove_button() { return *remove_; }
  wxButton& advice_button() { return *advice_; }
  wxString heading() const { return heading_->GetLabel(); }
  wxString securing() const { return securing_->GetLabel(); }

 private:
  void lay_out();
  void fill_objects();
  void offer_additions(const std::optional<SitePlace>& place);

  SitePanelAnswers answers_;
  std::optional<SiteContent> content_;
  wxStaticText *heading_ = nullptr, *securing_ = nullptr;
  FactRows* fields_ = nullptr;
  FloorPlanView* plan_ = nullptr;
  Table objects_;
  wxButton *add_ = nullptr, *remove_ = nullptr, *advice_ = nullptr;
  bool telling_ = true;  ///< false while the selection is set by the program
};

}  // namespace quadrille
