#include "studio/window/toolkit/list_room.hpp"

#include "studio/window/toolkit/gtk_function.hpp"

namespace quadrille {
namespace {

constexpr int padding = 6;  // [DIP], of a cell, and between a picture and its text

#ifdef __WXGTK__
/// Of the toolkit's question for a tip at a place [px] of the list's view.
int answer_tip(void* /*view*/, int x, int y, int /*by_keyboard*/, void* tip, void* of) {
  const auto& list = *static_cast<const wxDataViewCtrl*>(of);
  wxDataViewItem item;
  wxDataViewColumn* column = nullptr;
  list.HitTest(wxPoint(x, y), item, column);
  if (!item.IsOk() || column == nullptr) return 0;
  const wxString text = cut_text(list, item, *column);
  const auto say = gtk_function<void (*)(void* tip, const char* text)>("gtk_tooltip_set_text");
  if (text.empty() || say == nullptr) return 0;
  say(tip, text.utf8_str());
  return 1;
}
#endif

}  // namespace

void let_grow([[maybe_unused]] wxDataViewColumn& column) {
#ifdef __WXGTK__
  if (const auto expand = gtk_function<void (*)(void* column, int on)>("gtk_tree_view_column_set_expand"))
    expand(column.GetGtkHandle(), 1);
#endif
}

wxString cut_text(const wxDataViewCtrl& list, const wxDataViewItem& item, const wxDataViewColumn& column) {
  wxVariant value;
  list.GetModel()->GetValue(value, item, column.GetModelColumn());
  int room = list.GetItemRect(item, &column).width - list.FromDIP(padding);
  wxString text;
  if (value.GetType() == "wxDataViewIconText") {
    wxDataViewIconText both;
    both << value;
    text = both.GetText();
    if (const wxBitmapBundle& picture = both.GetBitmapBundle(); picture.IsOk())
      room -= picture.GetPreferredLogicalSizeFor(&list).x + list.FromDIP(padding);
  } else if (value.GetType() == "string") {
    text = value.GetString();
  }
  return list.GetTextExtent(text).x > room ? text : wxString();
}

void show_cut_texts([[maybe_unused]] wxDataViewCtrl* list) {
#ifdef __WXGTK__
  using Connect = unsigned long (*)(void* of, const char* signal, void (*answer)(), void* with, void* end, int flags);
  const auto has_tips = gtk_function<void (*)(void* widget, int on)>("gtk_widget_set_has_tooltip");
  const auto connect = gtk_function<Connect>("g_signal_connect_data");
  if (has_tips == nullptr || connect == nullptr) return;
  has_tips(list->GtkGetTreeView(), 1);
  connect(list->GtkGetTreeView(), "query-tooltip", reinterpret_cast<void (*)()>(&answer_tip), list, nullptr, 0);
#endif
}

}  // namespace quadrille
