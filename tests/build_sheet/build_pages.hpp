// Build sheets of pieces that tests make.
#pragma once

#include <utility>
#include <vector>

#include "studio/build_sheet/build_sheet.hpp"
#include "tests/paper/sheets.hpp"

namespace quadrille {

inline std::vector<Page> build(const sample::Job& job, const SheetOptions& options = {}) {
  const EventCount count = job.count();
  return build_sheet({job.event, job.built, count, job.palettes}, options);
}

inline sample::Job with_piece(Piece piece) {
  return changed([&](sample::Job& job, Area& area) {
    area.pieces[0].edit([](PlacedPiece& placed) {
      placed.colours = {{"studio", "lagoon"}, {"studio", "brass"}, {"studio", "chalk"}, {"studio", "ink"}};
    });
    job.built["p1"] = sample::built(std::move(piece));
  });
}

/// An arch with lines to stakes, a dead weight and a structure, in a garden.
inline sample::Job secured_arch() {
  return changed([](sample::Job& job, Area& area) {
    area.site.surroundings = Surroundings::outdoors, area.site.ground = Ground::grass;
    Structure post;
    post.id = "s1", post.name = "A gate post with a long name that somebody gave it", post.x_m = 5, post.height_m = 2;
    area.structures.push_back(post);
    secure_first(job, area,
                 {{Severity::warning, "tightness", "At a tightness of 0.80 the packing is forced.", Topic::other}});
  });
}

}  // namespace quadrille
