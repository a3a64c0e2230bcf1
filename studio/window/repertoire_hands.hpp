// The repertoire: pieces kept in the house file, and put into events from there.
#pragma once

#include <wx/weakref.h>

#include <cstdint>
#include <functional>
#include <optional>
#include <string>

#include "studio/model/built_event.hpp"
#include "studio/window/dialogs/repertoire_dialog.hpp"

class wxFrame;

namespace quadrille {

class EventDesk;
class HouseHands;
struct Event;
struct House;

class RepertoireHands {
 public:
  /// Builds the pieces of `event` away from the main thread and hands them to `use` there.
  using BuildAside = std::function<void(Event event, std::function<void(const BuiltEvent&)> use)>;

  /// `frame` owns the dialogs; all but `build` outlive this.
  RepertoireHands(EventDesk& desk, HouseHands& house, wxFrame& frame, BuildAside build);
  ~RepertoireHands();

  /// Keeps the piece that was selected last. False where that failed; the user has then been told.
  bool keep(const std::string& name, std::optional<std::int64_t> price_minor);
  /// Puts the piece of this key into the middle of what is shown, and selects it.
  void insert(const std::string& key);
  void ask_and_keep();
  void choose_and_insert();

 private:
  bool change(const std::function<House(House)>& change);
  void show();
  void show_pictures();
  void rename(const std::string& key);
  void remove(const std::string& key);

  EventDesk& desk_;
  HouseHands& house_;
  wxFrame& frame_;
  BuildAside build_;
  wxWeakRef<RepertoireDialog> dialog_;  ///< while it is open
};

}  // namespace quadrille
