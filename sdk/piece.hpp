// Everything a piece type needs: include this, write a table and a `Piece build(const Values&)`, and export it.
//
//   constexpr quadrille_parameter parameters[] = {...};        // see parameter.hpp
//   quadrille::Piece build(const quadrille::Values& values) {...}
//   constexpr quadrille_piece_type types[] = {
//       quadrille::piece_type<parameters, build>("hoop", "Hoop", "A round frame, fully or partly dressed.")};
//   QUADRILLE_PIECES("example.hoop", "1.0.0", types)
//
// build may throw: BadParameter or Infeasible to refuse, anything else is reported as an internal error of the type.
#pragma once

#include <algorithm>
#include <cstddef>
#include <exception>
#include <memory>
#include <new>
#include <span>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "sdk/abi.h"
#include "sdk/built.hpp"
#include "sdk/parameter.hpp"
#include "sdk/records.hpp"
#include "sdk/value.hpp"

namespace quadrille {

/// Thrown by build: one parameter's value cannot be used, whatever the others are.
class BadParameter : public std::runtime_error {
 public:
  /// `key`: the parameter to blame. `sentence`: what is wrong and what would be accepted. `remedy`: one change that is
  /// known to mend it, "key=value" in its written form; empty where none is.
  BadParameter(std::string key, const std::string& sentence, std::string remedy = {})
      : std::runtime_error(sentence), key_(std::move(key)), remedy_(std::move(remedy)) {}
  const std::string& key() const { return key_; }
  const std::string& remedy() const { return remedy_; }

 private:
  std::string key_, remedy_;
};

/// Thrown by build: the values contradict each other or nature. `key` names the one best changed. What was built so far
/// may go along, so that people see why: it is shown, but never counted or ordered.
class Infeasible : public std::runtime_error {
 public:
  Infeasible(std::string key, const std::string& sentence, Piece so_far = {}, std::string remedy = {})
      : std::runtime_error(sentence),
        key_(std::move(key)),
        remedy_(std::move(remedy)),
        so_far_(std::make_shared<Piece>(std::move(so_far))) {}
  const std::string& key() const { return key_; }
  const std::string& remedy() const { return remedy_; }
  const Piece& so_far() const { return *so_far_; }

 private:
  std::string key_, remedy_;
  std::shared_ptr<const Piece> so_far_;  // shared, so that copying the exception cannot throw
};

/// One entry of a MIX parameter.
struct MixEntry {
  double nominal_in = 0, inflated_m = 0, share = 0;
};

/// The values of one build, by key. Asking for a key that the table does not have, or as another kind, is a mistake of
/// the piece type and throws std::logic_error.
class Values {
 public:
  Values(std::span<const quadrille_parameter> table, std::span<const quadrille_value> values)
      : table_(table), values_(values) {
    if (table.size() != values.size()) throw std::logic_error("one value per parameter is needed");
  }

  /// Of a length [m], angle [rad], mass [kg], ratio, balloon [in].
  double number(std::string_view key) const {
    const quadrille_value& value = find(key);
    if (!is_number(static_cast<Kind>(value.kind))) throw std::logic_error("not a number: " + std::string(key));
    return value.number;
  }
  /// Of a count, slots or flag: within ±(2^31 − 1), beyond which the studio admits no count.
  int whole(std::string_view key) const { return static_cast<int>(std::clamp(number(key), -most_whole, most_whole)); }
  std::uint32_t seed(std::string_view key) const { return static_cast<std::uint32_t>(number(key)); }
  /// True where a number or text stands at its parameter's default.
  bool is_standard(std::string_view key) const {
    for (std::size_t i = 0; i < table_.size(); ++i)
      if (key == table_[i].key)
        return is_text(static_cast<Kind>(table_[i].kind)) ? text(key) == table_[i].default_text
                                                          : number(key) == table_[i].default_number;
    throw std::logic_error("no parameter has the key " + std::string(key));
  }
  bool flag(std::string_view key) const { return number(key) != 0; }
  /// Of a choice (its key) or rows.
  std::string_view text(std::string_view key) const {
    const quadrille_value& value = find(key);
    if (!is_text(static_cast<Kind>(value.kind))) throw std::logic_error("not a text: " + std::string(key));
    return value.text;
  }
  /// Points of a path, m.
  std::vector<Vec3> path(std::string_view key) const {
    std::vector<Vec3> points;
    const auto list = triples(key, Kind::path);
    for (std::size_t i = 0; i + 2 < list.size(); i += 3) points.emplace_back(list[i], list[i + 1], list[i + 2]);
    return points;
  }
  std::vector<MixEntry> mix(std::string_view key) const {
    std::vector<MixEntry> entries;
    const auto list = triples(key, Kind::mix);
    for (std::size_t i = 0; i + 2 < list.size(); i += 3) entries.push_back({list[i], list[i + 1], list[i + 2]});
    return entries;
  }

 private:
  static constexpr double most_whole = 2147483647;

  const quadrille_value& find(std::string_view key) const {
    for (std::size_t i = 0; i < table_.size(); ++i)
      if (key == table_[i].key) return values_[i];
    throw std::logic_error("no parameter has the key " + std::string(key));
  }
  std::span<const double> triples(std::string_view key, Kind kind) const {
    const quadrille_value& value = find(key);
    if (value.kind != static_cast<std::uint32_t>(kind)) throw std::logic_error("another kind: " + std::string(key));
    return {value.list, value.list_count};
  }

  std::span<const quadrille_parameter> table_;
  std::span<const quadrille_value> values_;
};

/// Pushes values into a sink as records; stops as soon as the studio takes no more.
class Pusher {
 public:
  explicit Pusher(const quadrille_sink& sink) : sink_(sink) {}

  template <class Item>
  void push(std::uint32_t record, const std::vector<Item>& items) {
    if (items.empty() || !open_) return;
    std::vector<decltype(to_record(items.front()))> records;
    records.reserve(items.size());
    for (const Item& item : items) records.push_back(to_record(item));
    open_ = sink_.push(sink_.self, record, records.data(), records.size(), sizeof(records.front())) == 0;
  }

  void push(const Piece& piece) {
    push(QUADRILLE_RECORD_BALLOON, piece.balloons);
    push(QUADRILLE_RECORD_CLUSTER, piece.clusters);
    push(QUADRILLE_RECORD_SPINE_POINT, piece.spine);
    push(QUADRILLE_RECORD_FRAME_NODE, piece.frame.nodes);
    push(QUADRILLE_RECORD_FRAME_MEMBER, piece.frame.members);
    push(QUADRILLE_RECORD_SUPPORT, piece.supports);
    push(QUADRILLE_RECORD_TIE_POINT, piece.tie_points);
    push(QUADRILLE_RECORD_SUPPLY, piece.supplies);
    push(QUADRILLE_RECORD_WORK, piece.work);
    push(QUADRILLE_RECORD_ANCHORING, piece.anchoring);
    push(QUADRILLE_RECORD_MESSAGE, piece.messages);
    push(QUADRILLE_RECORD_FACT, piece.facts);
  }

  /// As much of `piece` as memory allows: it only shows why something was refused.
  void push_what_fits(const Piece& piece) noexcept {
    try {
      push(piece);
    } catch (...) {
      open_ = false;
    }
  }

  void refuse(const char* key, const char* sentence, const char* remedy = "") noexcept {
    const quadrille_message message{QUADRILLE_REFUSAL, 0, key, sentence, remedy};
    sink_.push(sink_.self, QUADRILLE_RECORD_MESSAGE, &message, 1, sizeof message);
  }

 private:
  const quadrille_sink& sink_;
  bool open_ = true;
};

/// The one guard between C++ and C: calls `build`, pushes what it returns, and turns whatever it throws into a status,
/// a parameter key and a sentence.
inline std::int32_t build_guarded(Piece (*build)(const Values&), std::span<const quadrille_parameter> table,
                                  std::span<const quadrille_value> values, const quadrille_sink& sink) noexcept {
  Pusher pusher(sink);
  try {
    pusher.push(build(Values(table, values)));
    return QUADRILLE_OK;
  } catch (const BadParameter& refusal) {
    pusher.refuse(refusal.key().c_str(), refusal.what(), refusal.remedy().c_str());
    return QUADRILLE_BAD_PARAMETER;
  } catch (const Infeasible& refusal) {
    pusher.push_what_fits(refusal.so_far());
    pusher.refuse(refusal.key().c_str(), refusal.what(), refusal.remedy().c_str());
    return QUADRILLE_INFEASIBLE;
  } catch (const std::bad_alloc&) {
    pusher.refuse("", "The memory is full: ask for fewer or larger balloons, or close other programs.");
    return QUADRILLE_INTERNAL;
  } catch (const std::exception& error) {
    pusher.refuse("", error.what());
    return QUADRILLE_INTERNAL;
  } catch (...) {
    pusher.refuse("", "The piece type failed without saying why.");
    return QUADRILLE_INTERNAL;
  }
}

/// A row for the plugin's table of piece types. `table` and `build` as described at the top of this file.
template <const auto& table, Piece (*build)(const Values&)>
constexpr quadrille_piece_type piece_type(const char* id, const char* name, const char* description) {
  return {id,
          name,
          description,
          std::data(table),
          static_cast<std::uint32_t>(std::size(table)),
          sizeof(quadrille_parameter),
          [](const quadrille_value* values, std::uint32_t count, const quadrille_sink* sink) -> std::int32_t {
            return build_guarded(build, table, {values, count}, *sink);
          }};
}

}  // namespace quadrille

/// Exports the plugin's table; use it once, at namespace scope of one source file. `types` is a constexpr array.
#define QUADRILLE_PIECES(plugin_id, plugin_version, types)                               \
  extern "C" QUADRILLE_EXPORT const quadrille_pieces quadrille_pieces_v1;                \
  extern "C" const quadrille_pieces quadrille_pieces_v1 = {sizeof(quadrille_pieces),     \
                                                           QUADRILLE_ABI_MAJOR,          \
                                                           QUADRILLE_ABI_MINOR,          \
                                                           std::size(types),             \
                                                           sizeof(quadrille_piece_type), \
                                                           0,                            \
                                                           plugin_id,                    \
                                                           plugin_version,               \
                                                           types};
