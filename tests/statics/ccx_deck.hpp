// Writes a frame of square rods as a deck for CalculiX, runs it and reads what it printed. Used where ccx is on the path.
#pragma once

#include <unistd.h>

#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <initializer_list>
#include <locale>
#include <map>
#include <optional>
#include <sstream>
#include <string>
#include <vector>

#include "sdk/number.hpp"
#include "studio/statics/frame_model.hpp"

namespace quadrille {

/// A square section; the same on both sides. CalculiX makes one brick of a B31 element's section, which cannot warp: its
/// torsion constant is the polar moment a⁴/6 (not the 0.1406 a⁴ of a square that warps freely).
struct SquareRod {
  double side_m = 0.01, young_pa = 40e9, poisson = 0.25;
  double shear_pa() const { return young_pa / (2 * (1 + poisson)); }
  double axial_n() const { return young_pa * side_m * side_m; }
  double bending_nm2() const { return young_pa * side_m * side_m * side_m * side_m / 12; }
  double torsion_nm2() const { return shear_pa() * side_m * side_m * side_m * side_m / 6; }
  double shear_n() const { return shear_pa() * side_m * side_m; }
};

/// What CalculiX found. Feet stand on stiff stubs of `stub_m` below them, hinged at the foot and held sideways at their
/// lower ends, so that the moment at a foot is the stub's side force times its length.
struct CcxAnswer {
  std::map<int, Vec3> shifts;     ///< by node, ours from 0
  std::vector<Vec3> foot_forces;  ///< N, on the frame
  std::vector<Vec3> foot_moments;
  std::vector<double> lines_n;  ///< force of each line, pulling or pushing
  double seconds = 0;
};

inline constexpr double stub_m = 0.5;

inline bool has_ccx() { return std::system("command -v ccx >/dev/null 2>&1") == 0; }

inline std::string ccx_row(std::initializer_list<std::string> cells) {
  std::string row;
  for (const std::string& cell : cells) row += (row.empty() ? "" : ",") + cell;
  return row + "\n";
}

inline std::string ccx_point(int number, const Vec3& at) {
  return ccx_row({std::to_string(number), print_fixed(at.x(), 12), print_fixed(at.y(), 12), print_fixed(at.z(), 12)});
}

/// `model`: feet clamped, lines of one stiffness from nodes themselves to anchors, which here push as well as pull: leave
/// out those that go slack. `increments`: of the load.
inline std::string ccx_deck(const FrameModel& model, const FrameLoads& loads, const SquareRod& rod, int increments) {
  const auto text = [](auto number) { return std::to_string(number); };
  const std::string side = print_fixed(rod.side_m, 9) + "," + print_fixed(rod.side_m, 9) + "\n0.,1.,0.\n";
  std::string deck = "*NODE,NSET=ALL\n", feet, stubs;
  for (std::size_t i = 0; i < model.nodes.size(); ++i) deck += ccx_point(static_cast<int>(i + 1), model.nodes[i]);
  for (std::size_t i = 0; i < model.supports.size(); ++i)
    deck += ccx_point(static_cast<int>(10001 + i), model.nodes[model.supports[i].node] - Vec3(0, 0, stub_m));
  for (std::size_t i = 0; i < model.cables.size(); ++i)
    deck += ccx_point(static_cast<int>(20001 + i), model.cables[i].to.at);
  deck += "*ELEMENT,TYPE=B31,ELSET=ROD\n";
  for (std::size_t i = 0; i < model.elements.size(); ++i)
    deck += ccx_row({text(i + 1), text(model.elements[i].from + 1), text(model.elements[i].to + 1)});
  deck += "*ELEMENT,TYPE=B31,ELSET=STUB\n";
  for (std::size_t i = 0; i < model.supports.size(); ++i) {
    deck += ccx_row({text(10001 + i), text(10001 + i), text(model.supports[i].node + 1)});
    feet += (i > 0 ? "," : "") + text(model.supports[i].node + 1);
    stubs += (i > 0 ? "," : "") + text(10001 + i);
  }
  if (!model.cables.empty()) deck += "*ELEMENT,TYPE=T3D2,ELSET=LINE\n";
  for (std::size_t i = 0; i < model.cables.size(); ++i)
    deck += ccx_row({text(20001 + i), text(*model.cables[i].from.node + 1), text(20001 + i)});
  const std::string poisson = "," + print_fixed(rod.poisson, 3) + "\n";
  deck += "*MATERIAL,NAME=M\n*ELASTIC\n" + print_fixed(rod.young_pa, 3) + poisson +
          "*BEAM SECTION,ELSET=ROD,MATERIAL=M,SECTION=RECT\n" + side + "*MATERIAL,NAME=MS\n*ELASTIC\n" +
          print_fixed(rod.young_pa * 1e6, 3) + poisson + "*BEAM SECTION,ELSET=STUB,MATERIAL=MS,SECTION=RECT\n" + side;
  if (!model.cables.empty())
    deck += "*MATERIAL,NAME=ML\n*ELASTIC\n" + print_fixed(model.cables[0].axial_stiffness_n / 1e-5, 3) +
            ",0.3\n*SOLID SECTION,ELSET=LINE,MATERIAL=ML\n1e-5\n";
  deck += "*NSET,NSET=FEET\n" + feet + "\n*NSET,NSET=STUBS\n" + stubs + "\n*BOUNDARY\n";
  for (std::size_t i = 0; i < model.supports.size(); ++i)
    deck += ccx_row({text(model.supports[i].node + 1), "1", "3"}) + ccx_row({text(10001 + i), "1", "2"}) +
            ccx_row({text(10001 + i), "6", "6"});
  std::string anchors;
  for (std::size_t i = 0; i < model.cables.size(); ++i) {
    deck += ccx_row({text(20001 + i), "1", "3"});
    anchors += (i > 0 ? "," : "") + text(20001 + i);
  }
  if (!anchors.empty()) deck += "*NSET,NSET=ANCHOR\n" + anchors + "\n";
  deck += "*STEP,NLGEOM,INC=500\n*STATIC\n" + print_fixed(1.0 / increments, 6) + ",1.\n*CLOAD\n";
  for (const Push& push : loads.pushes)
    for (int axis = 0; axis < 3; ++axis)
      if (push.force_n[axis] != 0)
        deck += ccx_row({text(push.node + 1), text(axis + 1), print_fixed(push.force_n[axis], 12)});
  for (const char* set : {"ALL", "FEET", "STUBS", "ANCHOR"})
    if (set != std::string("ANCHOR") || !model.cables.empty())
      deck +=
          std::string("*NODE PRINT,NSET=") + set + ",FREQUENCY=1000\n" + (set == std::string("ALL") ? "U\n" : "RF\n");
  return deck + "*END STEP\n";
}

/// Nothing where ccx did not come to the end of the step.
inline std::optional<CcxAnswer> run_ccx(const FrameModel& model, const FrameLoads& loads, const SquareRod& rod,
                                        int increments = 10) {
  namespace fs = std::filesystem;
  const fs::path folder = fs::temp_directory_path() / ("quadrille-ccx-" + std::to_string(::getpid()));
  fs::create_directories(folder);
  std::ofstream(folder / "frame.inp") << ccx_deck(model, loads, rod, increments);
  const auto start = std::chrono::steady_clock::now();
  const int status =
      std::system(("cd '" + folder.string() + "' && OMP_NUM_THREADS=1 ccx frame >frame.log 2>&1").c_str());
  CcxAnswer answer;
  answer.seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
  std::ifstream file(folder / "frame.dat");
  std::string line, set;
  std::map<std::string, std::map<int, Vec3>> printed;  // each set is printed again at later times: the last stays
  double time = 0;
  while (std::getline(file, line)) {
    std::istringstream words(line);
    words.imbue(std::locale::classic());
    if (const auto at = line.find("for set "); at != std::string::npos) {
      std::istringstream head(line.substr(at + 8));
      head.imbue(std::locale::classic());
      std::string skip;
      head >> set >> skip >> skip >> time;
      continue;
    }
    int node = 0;
    Vec3 value;
    if (words >> node >> value.x() >> value.y() >> value.z()) printed[set][node] = value;
  }
  file.close();
  fs::remove_all(folder);
  if (status != 0 || time < 0.999) return std::nullopt;
  for (const auto& [node, shift] : printed["ALL"]) answer.shifts[node - 1] = shift;
  for (std::size_t i = 0; i < model.supports.size(); ++i) {
    const Vec3 stub = printed["STUBS"][static_cast<int>(10001 + i)];
    answer.foot_forces.push_back(printed["FEET"][static_cast<int>(model.supports[i].node + 1)] + stub);
    answer.foot_moments.push_back(Vec3(0, 0, -stub_m).cross(stub));
  }
  for (std::size_t i = 0; i < model.cables.size(); ++i)
    answer.lines_n.push_back(printed["ANCHOR"][static_cast<int>(20001 + i)].norm());
  return answer;
}

}  // namespace quadrille
