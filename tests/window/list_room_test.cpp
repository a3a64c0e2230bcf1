// The room of a native list.
#include "studio/window/toolkit/list_room.hpp"

#include <wx/frame.h>
#include <wx/sizer.h>

#include "studio/window/toolkit/table.hpp"
#include "toolkit.hpp"

namespace quadrille {

TEST_CASE("a column that grows takes the room that is over, and what is cut all the same is told whole") {
  Toolkit& toolkit = Toolkit::instance();
  wxWeakRef<wxFrame> frame(new wxFrame(nullptr, wxID_ANY, "Lists"));
  Table table = make_table(frame, {growing({"What", 100}), {"Where", 80}, {"Slack", 60, true}}, "Lists");
  const wxString task = "Fill 46 containers with 460 kg of water", place = "Hall";
  table.model->set_rows({{{task, place, "none"}, {}, ""}});
  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(table.list, wxSizerFlags(1).Expand());
  frame->SetSizer(sizer);
  const wxDataViewItem row = table.model->GetItem(0);
  const auto width = [&](unsigned column) { return table.list->GetItemRect(row, table.list->GetColumn(column)).width; };
  const auto cut = [&](unsigned column) { return cut_text(*table.list, row, *table.list->GetColumn(column)); };
  frame->SetClientSize(frame->FromDIP(wxSize(250, 120)));
  frame->Show();
  REQUIRE(toolkit.pump_until([&] { return width(0) > 0; }));
  CHECK(cut(0) == task);  // longer than 100 pixels in any font that can be read
  CHECK(cut(1).empty());
  const int narrow = width(0), where = width(1), slack = width(2);
  frame->SetClientSize(frame->FromDIP(wxSize(850, 120)));
  REQUIRE(toolkit.pump_until([&] { return width(0) > narrow; }));
  CHECK(width(0) - narrow >= frame->FromDIP(550));  // of the 600 that came to it, but for borders
  CHECK(width(1) == where);
  CHECK(width(2) == slack);
  CHECK(cut(0).empty());
  frame->Destroy();
  REQUIRE(toolkit.pump_until([&] { return frame == nullptr; }));
}

}  // namespace quadrille
