// An invented event and palette on disk, for the tests of the command.
#pragma once

#include <string>

#include "program.hpp"

namespace quadrille {

inline constexpr std::string_view garden_palette =
    R"(<?xml version="1.0" encoding="UTF-8"?>
<palette xmlns="urn:quadrille:palette:1" version="1.0" reader="1.0" key="garden" name="Garden" currency="USD">
  <packs key="usual">
    <pack nominal-in="5" count="50" price-minor="390"/>
    <pack nominal-in="11" count="100" price-minor="990"/>
  </packs>
  <colour key="fern" name="Fern" srgb="#3f7f4f" finish="matte" packs="usual"/>
  <colour key="poppy" name="=Poppy, &quot;red&quot;" srgb="#c8402f" finish="pearl" packs="usual"/>
</palette>
)";

/// Two arches of 33 quads in two colours, in two areas, of which nothing is to be warned. `extra` goes into the first piece.
inline std::string event_text(const std::string& extra = {}) {
  const auto piece = [](const std::string& id, const std::string& more) {
    return "    <piece id=\"" + id + "\" name=\"Arch " + id + "\" type=\"arch\" x-m=\"2\" y-m=\"0\">\n" +
           "      <set key=\"rod-diameter\" length=\"0.014\"/>\n"
           "      <set key=\"rod-length\" length=\"6.6\"/>\n"
           "      <set key=\"span\" length=\"2.7\"/>\n"
           "      <set key=\"clusters\" count=\"33\"/>\n" +
           more +
           "      <colour slot=\"A\" palette=\"garden\" key=\"fern\"/>\n"
           "      <colour slot=\"B\" palette=\"garden\" key=\"poppy\"/>\n"
           "    </piece>\n";
  };
  return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
         "<event xmlns=\"urn:quadrille:event:1\" version=\"1.0\" reader=\"1.0\" units=\"metric\" currency=\"USD\">\n"
         "  <job title=\"Harvest supper\"/>\n"
         "  <palette key=\"garden\"/>\n"
         "  <area id=\"a1\" name=\"Barn\"><site outlet-m=\"6\"/>\n" +
         piece("p1", extra) + "  </area>\n  <area id=\"a2\" name=\"Yard\"><site outlet-m=\"6\"/>\n" + piece("p2", "") +
         "  </area>\n</event>\n";
}

/// Puts the palette and the event into `folder`; returns the event's file.
inline std::string put_scene(const Folder& folder, const std::string& event = event_text()) {
  put_file(folder.path() / "palettes" / "garden.xml", garden_palette);
  put_file(folder.path() / "supper.quadrille", event);
  return folder / "supper.quadrille";
}

}  // namespace quadrille
