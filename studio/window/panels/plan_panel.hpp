// The day plan: its tasks by the clock, and the same as a chart.
#pragma once

#include <wx/panel.h>
#include <wx/scrolwin.h>
#include <wx/stattext.h>

#include <memory>

#include "studio/paint/balloon_stamps.hpp"
#include "studio/paint/display_list.hpp"
#include "studio/window/job/study.hpp"
#include "studio/window/toolkit/table.hpp"

namespace quadrille {

/// The chart that is printed on the day sheet, as wide as there is room.
class DayChart : public wxScrolledCanvas {
 public:
  explicit DayChart(wxWindow* parent);
  /// Null: nothing.
  void show(std::shared_ptr<const Study> study);
  const Marks& marks() const { return marks_; }

 private:
  void lay_out();
  void paint();
  double pixels_per_mm() const;

  std::shared_ptr<const Study> study_;
  Marks marks_;
  double height_mm_ = 0;
  int laid_out_for_ = 0;  ///< width in pixels
  BalloonStamps stamps_;
};

class PlanPanel : public wxPanel {
 public:
  explicit PlanPanel(wxWindow* parent);

  /// Shows the plan of `study`; null: nothing.
  void show(std::shared_ptr<const Study> study);
  /// Says beside the headline that newer figures are being worked out.
  void set_stale(bool stale);

  const Table& tasks() const { return tasks_; }
  const DayChart& chart() const { return *chart_; }
  wxString headline() const { return headline_->GetLabel(); }

 private:
  void say();

  wxStaticText* headline_;
  Table tasks_;
  DayChart* chart_;
  wxString words_;
  bool stale_ = false;
};

}  // namespace quadrille
