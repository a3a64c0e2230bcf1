// quadrille pieces: the piece types there are, and the plugin files that were refused.
#include <ostream>

#include "studio/command/pieces_text.hpp"
#include "studio/command/prepare.hpp"
#include "studio/command/verbs.hpp"
#include "studio/host/discovery.hpp"

namespace quadrille {

Exit pieces(const PiecesRequest& request, const Console& console) {
  const PieceTypes types = find_types(console, request.try_again);
  if (request.json)
    console.out << printed(json_of(types));
  else
    print_text(types, console.out);
  if (types.types.empty()) {
    console.err << "No piece type was found. Plugin files (*.so) are looked for in:\n";
    for (const auto& folder : standard_search_plan(console.executable).folders)
      console.err << "  " << folder.string() << '\n';
  }
  return Exit::done;
}

}  // namespace quadrille
