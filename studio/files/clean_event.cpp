#include "studio/files/clean_event.hpp"

#include <algorithm>
#include <initializer_list>
#include <utility>

#include "studio/xml/xml_text.hpp"

namespace quadrille {
namespace {

void clean(std::initializer_list<std::string*> texts) {
  for (std::string* text : texts) *text = clean_text(*text);
}

void clean_piece(PlacedPiece& piece) {
  clean({&piece.id, &piece.name, &piece.type, &piece.note});
  for (ColourReference& colour : piece.colours) clean({&colour.palette, &colour.colour});
  for (SecuringLine& line : piece.lines) clean({&line.tie, &line.structure, &line.cord});
  ValueMap values;
  for (auto& [key, value] : piece.values) {
    clean({&value.text});
    values.emplace(clean_text(key), std::move(value));
  }
  piece.values = std::move(values);
}

void clean_area(Area& area) {
  clean({&area.id, &area.name});
  for (Structure& structure : area.structures) clean({&structure.id, &structure.name, &structure.allowed_by});
  for (Walkway& walkway : area.walkways) clean({&walkway.id, &walkway.name});
  for (auto& piece : area.pieces) piece.edit(clean_piece);
}

void clean_issued(IssuedQuote& issued) {
  clean({&issued.number, &issued.date, &issued.valid_until, &issued.quote.currency});
  for (QuoteLine& line : issued.quote.lines) clean({&line.piece, &line.text});
  std::map<std::string, std::string, std::less<>> figures;
  for (const auto& [key, value] : issued.figures) figures.emplace(clean_text(key), clean_text(value));
  issued.figures = std::move(figures);
}

void forget_kept(Area& area) {
  area.preserved = {};
  area.site.preserved = {};
  if (area.backdrop) area.backdrop->preserved = {};
  for (Structure& structure : area.structures) structure.preserved = {};
  for (Walkway& walkway : area.walkways) walkway.preserved = {};
  const auto keeps = [](const PlacedPiece& piece) {
    return piece.preserved != Preserved{} ||
           std::ranges::any_of(piece.lines, [](const SecuringLine& line) { return line.preserved != Preserved{}; });
  };
  for (auto& piece : area.pieces) {
    if (!keeps(*piece)) continue;
    piece.edit([](PlacedPiece& placed) {
      placed.preserved = {};
      for (SecuringLine& line : placed.lines) line.preserved = {};
    });
  }
}

}  // namespace

Event with_clean_texts(Event event) {
  clean({&event.title, &event.client, &event.venue, &event.date, &event.load_in_from, &event.ready_by,
         &event.strike_from, &event.currency});
  for (std::string& palette : event.palettes) clean({&palette});
  std::map<std::string, double, std::less<>> assumptions;
  for (const auto& [key, number] : event.assumptions) assumptions.emplace(clean_text(key), number);
  event.assumptions = std::move(assumptions);
  std::set<std::string, std::less<>> ticked;
  for (const std::string& key : event.ticked) ticked.insert(clean_text(key));
  event.ticked = std::move(ticked);
  if (event.issued) clean_issued(*event.issued);
  for (auto& area : event.areas) area.edit(clean_area);
  return event;
}

Event without_kept(Event event) {
  event.preserved = {};
  if (event.issued) event.issued->preserved = {};
  for (auto& area : event.areas) area.edit(forget_kept);
  return event;
}

}  // namespace quadrille
