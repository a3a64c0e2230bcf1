// Ballast containers as one fills them: how much goes into each, and on which foot it will stand.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "studio/model/built_event.hpp"
#include "studio/model/event.hpp"
#include "studio/model/house.hpp"

namespace quadrille {

/// Where some of the containers go.
struct ContainerPlace {
  std::string piece;                   ///< id
  std::optional<std::size_t> support;  ///< in the piece's supports; nothing for ballast that no support bears
  std::int64_t containers = 0;
  bool operator==(const ContainerPlace&) const = default;
};

/// Containers that are all filled alike.
struct FilledContainers {
  double each_kg = 0;  ///< to the gram; of water as many litres, to within 0.3 % up to 25 °C
  std::int64_t containers = 0;
  std::vector<ContainerPlace> places;  ///< in the order of the event
  bool operator==(const FilledContainers&) const = default;
};

/// The ballast of every built piece that is not hidden, the ballast of one support shared equally over as few containers
/// as hold it; the fullest first. All containers together are the supply "ballast-container", and all filling is
/// "ballast-water" or "ballast-sand".
std::vector<FilledContainers> containers_to_fill(const Event& event, const BuiltEvent& built, const House& house);

}  // namespace quadrille
