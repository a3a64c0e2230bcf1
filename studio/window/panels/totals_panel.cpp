// Two lists side by side under one headline.
#include "studio/window/panels/totals_panel.hpp"

#include <wx/sizer.h>
#include <wx/splitter.h>

#include "studio/form/colour_choices.hpp"
#include "studio/takeoff/print.hpp"
#include "studio/window/toolkit/table.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

TableRow row_of(const BalloonLine& line, const Study& study) {
  const Colour* colour = find_colour(study.palettes->palettes, line.colour);
  const auto number = [](std::int64_t n) { return shown(std::to_string(n)); };
  TableRow row;
  row.cells = {shown(line.colour_name),
               colour ? shown(std::string(finish_in_words(colour->finish))) : wxString(),
               shown(print_nominal(line.nominal_in)),
               shown(print_inflated(line.inflated_m, lengths_in(study.event.units))),
               number(line.used),
               number(line.spares),
               number(line.order),
               shown(print_packs(line))};
  if (colour) {
    row.swatch = make_swatch(wxColour(colour->red, colour->green, colour->blue));
    row.swatch_key = line.colour.palette + "/" + line.colour.colour;
  }
  return row;
}

wxString sum_of(const EventCount& count) {
  const std::string pieces = std::to_string(count.pieces.size()) + (count.pieces.size() == 1 ? " piece" : " pieces");
  return shown(std::to_string(count.total_balloons) + (count.total_balloons == 1 ? " balloon in " : " balloons in ") +
               pieces);
}

}  // namespace

TotalsPanel::TotalsPanel(wxWindow* parent) : wxPanel(parent) {
  headline_ = new wxStaticText(this, wxID_ANY, "");
  headline_->SetFont(GetFont().Bold());
  auto* lists =
      new wxSplitterWindow(this, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxSP_LIVE_UPDATE | wxSP_NOBORDER);
  balloons_ = make_table(lists,
                         {{"Colour", 150, false, true},
                          {"Finish", 76},
                          {"Size", 54, true},
                          {"Inflated to", 90, true},
                          {"Used", 56, true},
                          {"Spares", 68, true},
                          {"To buy", 66, true},
                          {"Packs", 0}},
                         "Balloons by colour and size");
  supplies_ = make_table(lists, {{"Quantity", 86, true}, {"Supplies", 0}}, "Supplies");
  lists->SetSize(FromDIP(wxSize(1200, 200)));  // some room until there is the real one
  lists->SetMinimumPaneSize(FromDIP(160));
  lists->SetSashGravity(0.62);
  lists->SplitVertically(balloons_.list, supplies_.list, -FromDIP(486));

  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(headline_, wxSizerFlags().Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(lists, wxSizerFlags(1).Expand());
  SetSizer(sizer);
  lay_out_with_room(this);
}

void TotalsPanel::show(const Study* study) {
  std::vector<TableRow> balloons, supplies;
  sum_.clear();
  if (study) {
    for (const BalloonLine& line : study->order.count.balloons) balloons.push_back(row_of(line, *study));
    for (const SupplyLine& line : study->order.count.supplies)
      supplies.push_back({{shown(print_quantity(line, lengths_in(study->event.units))),
                           shown(line.name.empty() ? line.key : line.name)},
                          {},
                          ""});
    sum_ = sum_of(study->order.count);
  }
  balloons_.model->set_rows(std::move(balloons));
  supplies_.model->set_rows(std::move(supplies));
  say();
}

void TotalsPanel::set_stale(bool stale) {
  stale_ = stale;
  say();
}

void TotalsPanel::say() {
  wxString text = sum_;
  if (stale_) text += (text.empty() ? "" : "   ") + wxString::FromUTF8("updating…");
  headline_->SetLabelText(text);
}

}  // namespace quadrille
