// The work of an event as tasks: from pulling the lists at home to putting everything away again.
#pragma once

#include <vector>

#include "studio/labour/task.hpp"
#include "studio/model/built_event.hpp"
#include "studio/model/event.hpp"
#include "studio/model/finding.hpp"
#include "studio/model/house.hpp"
#include "studio/takeoff/count.hpp"

namespace quadrille {

/// How the decorator means to work.
struct WorkOptions {
  bool prepare_clusters = false;  ///< inflate, tie and make clusters indoors the day before, and bring them made
  bool operator==(const WorkOptions&) const = default;
};

struct Labour {
  std::vector<Task> tasks;  ///< in the order in which one person would do them
  Findings findings;        ///< what had to be taken for granted: a note each
};

/// The tasks of an event for the house's rates, inflator and load. Balloons are counted as they are built, whatever
/// work a piece type asks for; clusters, frames and all other work are the piece type's own units. A piece whose type
/// is not available has the balloons and clusters of its last build and no frame; pieces that are hidden or were
/// refused have none. An event without any piece to build has no tasks.
///
/// At home the day before: pull what is on the lists, fill ballast, load the vehicle. For each area: carry in by trips
/// of what one person carries, unpack, set up the inflator, with its cord where one reaches the outlet. (The way that
/// all this is carried is that of the tools: they are in every area's load, and once in the vehicle's.) For each piece:
/// join its frame, place and ballast its bases, raise it; inflate and tie (one task, since a balloon is tied as it
/// comes off the nozzle), make, mount, hang, fill; tie clusters to the frame, and outdoors to each other where the
/// piece type asks for it; rig its lines. By area, before anybody comes: take up the cord, clear up, a last check.
/// After the event: take clusters down and burst them, take lines off, lower the frame, part it, pack; sweep, empty
/// ballast water, carry out, hand over; put away at home. Sand comes back in its containers.
///
/// Findings: "vehicle-distance-unknown", "travel-unknown", "no-inflator", "work-without-rate", "counted-as-last"
/// (notes); "heavy-item", "vehicle-full" (warnings).
Labour tasks_of(const Event& event, const BuiltEvent& built, const EventCount& count, const House& house,
                const WorkOptions& options = {});

/// Seconds of all tasks by rate key: what a watch is held against.
SecondsByRate seconds_by_rate(const std::vector<Task>& tasks);

}  // namespace quadrille
