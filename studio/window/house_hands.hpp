// The house that serves: read from its file, shown in the settings, and saved with the care of an event.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>

#include "studio/files/house_place.hpp"

class wxFrame;

namespace quadrille {

class EventDesk;
struct JobRecord;

class HouseHands {
 public:
  /// `frame` owns the dialogs; both outlive this.
  HouseHands(EventDesk& desk, wxFrame& frame) : desk_(desk), frame_(frame) {}

  /// Its stock, prices and rates count for the open event. Null before the first load().
  const std::shared_ptr<const LoadedHouse>& loaded() const { return house_; }
  /// Reads it from the disk; where no file is there, the standard house of the open event's currency serves.
  void load();
  /// As load(), for an event that is open already: it is reckoned anew where other figures came of it.
  void refresh();
  void show_settings();
  /// Saves the house in place of the present one and reckons the open event anew. False where that failed or was declined;
  /// the user has then been told.
  bool save(const House& house);
  /// Changes the house file as it is on the disk now, and reckons the open event anew. Returns a sentence where that failed.
  std::optional<std::string> change(const std::function<House(House)>& change);

 private:
  std::optional<JobRecord> job_of_event() const;

  EventDesk& desk_;
  wxFrame& frame_;
  std::shared_ptr<const LoadedHouse> house_;
};

}  // namespace quadrille
