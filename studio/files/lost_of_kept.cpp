#include "studio/files/lost_of_kept.hpp"

#include "studio/xml/xml_text.hpp"

namespace quadrille {
namespace {

class Search {
 public:
  explicit Search(std::string_view bytes) : bytes_(bytes) {}

  void in(const Preserved& kept) {
    in(kept, [](const std::string& inside) { return inside.empty(); });
  }
  /// Looks for what was kept in elements that stay, by their addresses.
  template <class Stays>
  void in(const Preserved& kept, Stays stays) {
    for (const Preserved::Attribute& attribute : kept.attributes) {
      if (!stays(attribute.inside)) continue;
      const std::string begin = " " + attribute.name + "=\"";
      const std::string whole = begin + escaped(clean_text(attribute.value)) + "\"";
      // A word that is not known gives way where the user chose another; its attribute stays.
      look_for(attribute.name.find(':') == std::string::npos ? begin : whole, whole.substr(1));
    }
    for (const Preserved::Node& node : kept.nodes)
      if (node.stands_for.empty() && (stays(node.inside) || node.inside == "/")) look_for(node.xml, node.xml);
  }
  const std::optional<std::string>& lost() const { return lost_; }

 private:
  void look_for(std::string_view text, const std::string& called) {
    if (lost_) return;
    // What is kept comes in about the order of the file: from the start each time, thousands would take minutes.
    std::size_t found = bytes_.find(text, at_);
    if (found == std::string_view::npos) found = bytes_.find(text);
    if (found == std::string_view::npos)
      lost_ = called;
    else
      at_ = found;
  }

  std::string_view bytes_;
  std::size_t at_ = 0;  // where the last one was found
  std::optional<std::string> lost_;
};

}  // namespace

std::optional<std::string> lost_of_kept(const Event& event, std::string_view bytes) {
  Search search(bytes);
  search.in(event.preserved);
  if (event.issued) search.in(event.issued->preserved);
  for (const auto& area : event.areas) {
    search.in(area->preserved);
    search.in(area->site.preserved);
    if (area->backdrop)
      search.in(area->backdrop->preserved,
                [](const std::string& inside) { return inside.empty() || inside == "picture"; });
    for (const Structure& structure : area->structures) search.in(structure.preserved);
    for (const Walkway& walkway : area->walkways) search.in(walkway.preserved);
    for (const auto& piece : area->pieces) {
      search.in(piece->preserved);
      for (const SecuringLine& line : piece->lines) search.in(line.preserved);
    }
  }
  return search.lost();
}

std::optional<std::string> lost_of_kept(const House& house, std::string_view bytes) {
  Search search(bytes);
  // Lists and prices have no key in their addresses, and are written as long as something was kept in them.
  search.in(house.preserved, [](const std::string& inside) { return inside.find(':') == std::string::npos; });
  const auto in_all = [&](const auto& entries) {
    for (const auto& entry : entries) search.in(entry.preserved);
  };
  in_all(house.inflators);
  in_all(house.failures);
  in_all(house.balloons);
  in_all(house.supplies);
  in_all(house.kits);
  in_all(house.repertoire);
  in_all(house.packings);
  in_all(house.jobs);
  return search.lost();
}

}  // namespace quadrille
