#include "studio/window/panels/plan_panel.hpp"

#include <wx/dcclient.h>
#include <wx/sizer.h>
#include <wx/splitter.h>

#include <algorithm>
#include <utility>

#include "studio/labour/day_words.hpp"
#include "studio/paint/painter.hpp"
#include "studio/sheets/day_chart.hpp"
#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/words.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

constexpr double margin_mm = 3;

/// The blocks one below the other, without columns or pages. Returns their height.
double set_below_each_other(const std::vector<Block>& blocks, double width, Marks& marks) {
  double y = margin_mm;
  for (std::size_t i = 0; i < blocks.size(); ++i) {
    if (i > 0) y += blocks[i].gap;
    for (const std::vector<Row>* rows : {&blocks[i].head, &blocks[i].rows})
      for (const Row& row : *rows) {
        if (row.draw) row.draw(marks, {margin_mm, y, width, row.height});
        y += row.height;
      }
  }
  return y + margin_mm;
}

/// At home the clock begins at 0:00, when somebody begins: it is said which day that is.
std::string where_of(const PlannedTask& planned, const Event& event) {
  const std::string place = place_in(planned, event);
  const bool before = planned.start.clock.empty() && planned.start.day < 0;
  return place.empty() && before ? "The day before" : place;
}

TableRow row_of(std::size_t number, const PlannedTask& planned, const Event& event) {
  return {{shown(std::to_string(number)), shown(print_moment(planned.start)), shown(print_moment(planned.end)),
           shown(print_people(planned)), shown(planned.task.text), shown(where_of(planned, event)),
           shown(print_slack(planned))},
          {},
          ""};
}

}  // namespace

DayChart::DayChart(wxWindow* parent) : wxScrolledCanvas(parent, wxID_ANY) {
  SetBackgroundStyle(wxBG_STYLE_PAINT);
  set_accessible_name(this, "Chart of the day", "The list beside it says the same in words");
  Bind(wxEVT_PAINT, [this](wxPaintEvent&) { paint(); });
  Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
    if (GetClientSize().x != laid_out_for_) lay_out();
    event.Skip();
  });
}

double DayChart::pixels_per_mm() const { return FromDIP(1000) / 1000.0 * 96 / 25.4; }

void DayChart::show(std::shared_ptr<const Study> study) {
  study_ = std::move(study);
  lay_out();
}

void DayChart::lay_out() {
  laid_out_for_ = GetClientSize().x;
  marks_.clear();
  height_mm_ = 0;
  const double width = laid_out_for_ / pixels_per_mm() - 2 * margin_mm;
  constexpr double least_mm = 40;
  if (study_ && width >= least_mm && !study_->plan.tasks.empty())
    height_mm_ = set_below_each_other(chart_blocks_of_day(study_->plan, study_->event, width), width, marks_);
  const int step = FromDIP(16);
  SetScrollbars(0, step, 0, static_cast<int>(height_mm_ * pixels_per_mm()) / step + 1, 0, 0, true);
  Refresh();
}

void DayChart::paint() {
  wxPaintDC dc(this);
  dc.SetBackground(*wxWHITE_BRUSH);
  dc.Clear();
  DoPrepareDC(dc);
  auto* cairo = static_cast<cairo_t*>(dc.GetImpl()->GetCairoContext());
  if (cairo != nullptr) paint_marks(cairo, marks_, stamps_, pixels_per_mm());
}

PlanPanel::PlanPanel(wxWindow* parent) : wxPanel(parent) {
  headline_ = new wxStaticText(this, wxID_ANY, "");
  headline_->SetFont(GetFont().Bold());
  auto* halves =
      new wxSplitterWindow(this, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxSP_LIVE_UPDATE | wxSP_NOBORDER);
  tasks_ = make_table(halves,
                      {{"No.", 40, true},
                       {"From", 60, true},
                       {"To", 60, true},
                       {"Who", 52},
                       growing({"What", 268}),
                       growing({"Where", 104}),
                       {"Slack", 64, true}},
                      "Tasks of the day");
  chart_ = new DayChart(halves);
  halves->SetSize(FromDIP(wxSize(1200, 200)));  // some room until there is the real one
  halves->SetMinimumPaneSize(FromDIP(160));
  halves->SetSashGravity(0.5);
  halves->SplitVertically(tasks_.list, chart_, FromDIP(640));
  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(headline_, wxSizerFlags().Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(halves, wxSizerFlags(1).Expand());
  SetSizer(sizer);
  lay_out_with_room(this);
}

void PlanPanel::show(std::shared_ptr<const Study> study) {
  std::vector<TableRow> rows;
  words_.clear();
  if (study) {
    const DayPlan& plan = study->plan;
    for (std::size_t i = 0; i < plan.tasks.size(); ++i) rows.push_back(row_of(i + 1, plan.tasks[i], study->event));
    words_ = shown(plan_in_words(plan, study->event));
    if (plan.short_s > 0) words_ += shown(" It does not fit: " + print_duration(plan.short_s) + " are missing.");
  }
  tasks_.model->set_rows(std::move(rows));
  chart_->show(std::move(study));
  say();
}

void PlanPanel::set_stale(bool stale) {
  stale_ = stale;
  say();
}

void PlanPanel::say() {
  wxString text = words_;
  if (stale_) text += (text.empty() ? "" : "   ") + wxString::FromUTF8("updating…");
  if (headline_->GetLabel() != text) headline_->SetLabelText(text);
}

}  // namespace quadrille
