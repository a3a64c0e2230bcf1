// std::vector must be known before Boost.DLL is.
#include <vector>
//
#define BOOST_DLL_USE_STD_FS
#include <dlfcn.h>

#include <boost/dll/shared_library.hpp>
#include <string>
#include <string_view>

#include "sdk/abi.h"
#include "sdk/quoted.hpp"
#include "studio/host/build_once.hpp"
#include "studio/host/crash_marker.hpp"
#include "studio/host/elf_check.hpp"
#include "studio/host/gate.hpp"
#include "studio/host/limits.hpp"
#include "studio/host/plugin_text.hpp"
#include "studio/host/table_check.hpp"

namespace quadrille {
namespace {

constexpr const char* symbol = "quadrille_pieces_v1";

/// Thrown inside this file only: the whole file is refused.
struct Refusal {
  RefusalReason reason;
  std::string sentence;
};

std::string version(std::uint32_t major, std::uint32_t minor) {
  return std::to_string(major) + "." + std::to_string(minor);
}

void check_versions(std::uint32_t struct_size, std::uint32_t major, std::uint32_t minor) {
  const std::string ours = version(QUADRILLE_ABI_MAJOR, QUADRILLE_ABI_MINOR), its = version(major, minor);
  const std::string sentence = "It is made for version " + its +
                               " of the contract for piece types; this studio takes " +
                               version(QUADRILLE_ABI_MAJOR, 0) + " to " + ours + ".";
  if (major > QUADRILLE_ABI_MAJOR) throw Refusal{RefusalReason::newer_major, sentence};
  if (major < QUADRILLE_ABI_MAJOR) throw Refusal{RefusalReason::other_major, sentence};
  if (minor > QUADRILLE_ABI_MINOR) throw Refusal{RefusalReason::newer_minor, sentence};
  if (struct_size < least_table_size)
    throw Refusal{RefusalReason::struct_too_small, "Its table has " + std::to_string(struct_size) +
                                                       " bytes; at least " + std::to_string(least_table_size) +
                                                       " are needed."};
}

/// All that can be known before anything is loaded.
void check_before_loading(const std::filesystem::path& file) {
  const LibraryLook look = look_into_library(file, symbol);
  if (!look.damage.empty()) throw Refusal{RefusalReason::not_a_library, look.damage};
  if (!look.exported)
    throw Refusal{RefusalReason::no_symbol,
                  std::string("It does not export ") + symbol + ", so it has no piece types."};
  if (!look.first_words || look.symbol_size < 3 * sizeof(std::uint32_t))
    throw Refusal{RefusalReason::struct_too_small,
                  "Its table is shorter than the three fields that every one begins with."};
  const auto& [struct_size, major, minor] = *look.first_words;
  check_versions(struct_size, major, minor);
  if (look.symbol_size < struct_size)
    throw Refusal{RefusalReason::struct_too_small, "Its table has " + std::to_string(look.symbol_size) +
                                                       " bytes where it says that it has " +
                                                       std::to_string(struct_size) + "."};
}

/// What the system itself said of `file`, out of the words that Boost puts around it, and without the file's name, which
/// stands beside every refusal: "message (dlerror system message: file: …): code".
std::string system_words(const std::string& what, const std::filesystem::path& file) {
  constexpr std::string_view opening = "dlerror system message: ";
  const auto begin = what.find(opening), end = what.rfind("): ");
  if (begin == std::string::npos || end == std::string::npos || end < begin + opening.size()) return what;
  const std::string said = what.substr(begin + opening.size(), end - begin - opening.size());
  const std::string name = file.string() + ": ";
  return said.starts_with(name) ? said.substr(name.size()) : said;
}

/// The plugin's table; the library is never unloaded, for its functions and texts are used to the end.
const quadrille_pieces& load(const std::filesystem::path& file) {
  using boost::dll::load_mode::type;
  try {
    // RTLD_NODELETE keeps it when the handle goes; Boost has no name for it.
    boost::dll::shared_library library(
        file, boost::dll::load_mode::rtld_now | boost::dll::load_mode::rtld_local | static_cast<type>(RTLD_NODELETE));
    return library.get<const quadrille_pieces>(symbol);
  } catch (const std::exception& error) {
    throw Refusal{RefusalReason::cannot_load,
                  "The system cannot load it: " + cleaned(system_words(error.what(), file)) + "."};
  } catch (...) {
    throw Refusal{RefusalReason::cannot_load, "It cannot be loaded: it threw something while it was."};
  }
}

struct Table {
  std::string plugin_id, plugin_version;
  std::vector<quadrille_piece_type> types;
};

Table read_table(const quadrille_pieces& pieces) {
  check_versions(pieces.struct_size, pieces.abi_major, pieces.abi_minor);
  const auto bad = [](std::string sentence) { return Refusal{RefusalReason::bad_table, std::move(sentence)}; };
  const auto id = read_text(pieces.plugin_id, most_table_text),
             number = read_text(pieces.plugin_version, most_table_text);
  if (!id || !number || id->empty() || !is_utf8(*id) || !is_utf8(*number))
    throw bad("Its own id or version is missing or no text.");
  if (pieces.type_count == 0 || pieces.types == nullptr) throw bad("It has no piece types in its table.");
  if (pieces.type_count > most_types) throw bad("It has more piece types than the studio takes.");
  if (pieces.type_size < least_type_size)
    throw Refusal{RefusalReason::struct_too_small, "A piece type in its table has " + std::to_string(pieces.type_size) +
                                                       " bytes; at least " + std::to_string(least_type_size) +
                                                       " are needed."};
  if (!is_stride_of<quadrille_piece_type>(pieces.type_size))
    throw bad("Its piece types have a size that no record has.");
  Table table{cleaned(*id), cleaned(*number), {}};
  for (std::uint32_t i = 0; i < pieces.type_count; ++i)
    table.types.push_back(entry_at<quadrille_piece_type>(pieces.types, i, pieces.type_size));
  return table;
}

RefusalReason reason_of(FaultKind kind) {
  switch (kind) {
    case FaultKind::threw:
      return RefusalReason::build_throws;
    case FaultKind::not_finite:
      return RefusalReason::build_not_finite;
    case FaultKind::too_large:
      return RefusalReason::build_too_large;
    case FaultKind::broken:
      break;
  }
  return RefusalReason::build_broken;
}

/// Checks and builds one type; throws Refusal.
PieceType admit_type(const quadrille_piece_type& raw) {
  if (raw.parameter_size < least_parameter_size && raw.parameter_count > 0)
    throw Refusal{RefusalReason::struct_too_small, "A parameter in its table has " +
                                                       std::to_string(raw.parameter_size) + " bytes; at least " +
                                                       std::to_string(least_parameter_size) + " are needed."};
  if (raw.parameter_count > 0 && !is_stride_of<quadrille_parameter>(raw.parameter_size))
    throw Refusal{RefusalReason::bad_table, "Its parameters have a size that no record has."};
  auto type = read_piece_type(raw);
  if (!type) throw Refusal{RefusalReason::bad_table, type.error};
  std::vector<Value> defaults;
  for (const Parameter& parameter : type->parameters) defaults.push_back(parameter.standard);
  const Attempt attempt = build_once(*type, defaults);
  const std::string whose = "The first build of " + quoted(type->id) + " at its defaults failed: ";
  if (attempt.fault) throw Refusal{reason_of(attempt.fault->kind), whose + attempt.fault->sentence};
  if (attempt.built->status != Status::ok)
    throw Refusal{RefusalReason::build_broken, whose + refusal_of(*attempt.built)};
  return std::move(*type.value);
}

}  // namespace

Admission admit(const std::filesystem::path& file, const std::optional<std::filesystem::path>& state_folder,
                bool try_crashed_again) {
  Admission admission;
  try {
    check_before_loading(file);
    Trial trial = Trial::begin(state_folder, file, try_crashed_again);
    if (trial.crashed_before())
      throw Refusal{RefusalReason::crashed_before,
                    "The program ended when it tried this file last, so it is skipped. To try it again, run "
                    "'quadrille pieces --try-again', or put a new copy of the file in its place."};
    const Table table = read_table(load(file));
    for (const quadrille_piece_type& raw : table.types) try {
        PieceType type = admit_type(raw);
        type.file = file;
        type.plugin_id = table.plugin_id;
        type.plugin_version = table.plugin_version;
        admission.types.push_back(std::move(type));
      } catch (const Refusal& refusal) {
        const auto id = read_text(raw.id, 64);
        admission.refused.push_back({file, refusal.reason, refusal.sentence, id ? cleaned(*id) : std::string()});
      }
    trial.survived();
  } catch (const Refusal& refusal) {
    admission.refused.push_back({file, refusal.reason, refusal.sentence, {}});
  }
  return admission;
}

}  // namespace quadrille
