// The colours that were chosen last, remembered from one start to the next. Knows no toolkit.
#pragma once

#include <filesystem>
#include <vector>

#include "studio/model/event.hpp"
#include "studio/window/recent_lines.hpp"

namespace quadrille {

/// Newest first. `memory` is the file they are kept in, a palette's key and a colour's key a line with a tab between;
/// empty = they are forgotten at the end. The palettes may have lost some of them since.
class RecentColours {
 public:
  static constexpr std::size_t most = 12;

  explicit RecentColours(std::filesystem::path memory);

  std::vector<ColourReference> colours() const;
  /// Puts the colour on top; "no colour" is none. That it cannot be written down is no fault worth telling.
  void chosen(const ColourReference& colour);

 private:
  RecentLines kept_;
};

/// Where they are kept: "recent-colours" in the user's state folder; empty where there is none.
std::filesystem::path recent_colours_memory();

}  // namespace quadrille
