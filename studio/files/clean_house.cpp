#include "studio/files/clean_house.hpp"

#include <initializer_list>
#include <utility>

#include "studio/xml/xml_text.hpp"

namespace quadrille {
namespace {

void clean(std::initializer_list<std::string*> texts) {
  for (std::string* text : texts) *text = clean_text(*text);
}

template <class Map>
void clean_keys(Map& map) {
  Map cleaned;
  for (auto& [key, value] : map) cleaned.emplace(clean_text(key), std::move(value));
  map = std::move(cleaned);
}

void clean_piece(RepertoirePiece& piece) {
  clean({&piece.key, &piece.name, &piece.type, &piece.note});
  for (ColourReference& colour : piece.colours) clean({&colour.palette, &colour.colour});
  for (auto& [key, value] : piece.values) clean({&value.text});
  clean_keys(piece.values);
}

}  // namespace

House with_clean_texts(House house) {
  clean({&house.name, &house.contact, &house.currency, &house.inflator});
  clean_keys(house.rates);
  for (Inflator& inflator : house.inflators) clean({&inflator.key, &inflator.name, &inflator.source});
  for (BalloonStock& stock : house.balloons) clean({&stock.colour.palette, &stock.colour.colour});
  for (SupplyStock& supply : house.supplies) clean({&supply.key, &supply.name, &supply.kept_where});
  for (FrameKit& kit : house.kits) {
    clean({&kit.key, &kit.name, &kit.kept_where});
    for (FrameKit::Part& part : kit.parts) clean({&part.supply});
  }
  for (RepertoirePiece& piece : house.repertoire) clean_piece(piece);
  for (PackingCalibration& packing : house.packings) clean({&packing.date, &packing.note});
  for (JobRecord& job : house.jobs) {
    clean({&job.date, &job.title});
    clean_keys(job.planned_s);
    clean_keys(job.actual_s);
  }
  return house;
}

House without_kept(House house) {
  const auto forget = [](auto& entries) {
    for (auto& entry : entries) entry.preserved = {};
  };
  house.preserved = {};
  forget(house.inflators);
  forget(house.failures);
  forget(house.balloons);
  forget(house.supplies);
  forget(house.kits);
  forget(house.repertoire);
  forget(house.packings);
  forget(house.jobs);
  return house;
}

}  // namespace quadrille
