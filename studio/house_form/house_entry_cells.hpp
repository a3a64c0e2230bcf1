// The fields of each kind of entry in the house's lists, bound to the entry.
#pragma once

#include <span>
#include <vector>

#include "studio/house_form/house_cell.hpp"
#include "studio/model/house.hpp"
#include "studio/model/palette.hpp"

namespace quadrille {

/// What an entry's fields must know besides the entry.
struct HouseEntryContext {
  const House& house;
  std::span<const Palette> palettes;
};

std::vector<HouseCell> cells_of(BalloonStock& stock, const HouseEntryContext& context);
std::vector<HouseCell> cells_of(SupplyStock& supply, const HouseEntryContext& context);
std::vector<HouseCell> cells_of(FrameKit& kit, const HouseEntryContext& context);
std::vector<HouseCell> cells_of(Inflator& inflator, const HouseEntryContext& context);
std::vector<HouseCell> cells_of(FailureRate& failure, const HouseEntryContext& context);
std::vector<HouseCell> cells_of(PackingCalibration& packing, const HouseEntryContext& context);
/// Of each rate that the job's plan has, the time that a watch said.
std::vector<HouseCell> cells_of(JobRecord& job, const HouseEntryContext& context);

/// "Coral (House palette)"; the keys where no palette has it.
std::string name_of(const ColourReference& colour, std::span<const Palette> palettes);
/// "50 for 14.00; 100 for 24.00"
std::string packs_text(const std::vector<Pack>& packs, const std::string& currency);
/// "rod-glass-fibre 4; sleeve 3"
std::string parts_text(const std::vector<FrameKit::Part>& parts);
/// "12.5 min"
std::string minutes_text(double seconds);
/// The label of a rate, or its key where nothing knows it.
std::string label_of_rate(std::string_view key);

}  // namespace quadrille
