// The host's end of the sink: takes a plugin's records, checks each, and keeps them as owned values.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "sdk/abi.h"
#include "sdk/built.hpp"
#include "studio/host/fault.hpp"
#include "studio/host/record_check.hpp"

namespace quadrille {

/// Takes what one build pushes. Records shorter than ours are filled up with zeros, of longer ones the rest is passed
/// over. At the first fault it takes no more and answers so; messages pushed before stay. Texts are made clean UTF-8.
class Sink {
 public:
  /// What the plugin receives; lives as long as this.
  quadrille_sink record() { return {sizeof(quadrille_sink), 0, this, &Sink::push}; }
  const std::optional<Fault>& fault() const { return fault_; }
  /// The records taken so far; the sink is empty then.
  Piece take() { return std::move(piece_); }

 private:
  static std::int32_t push(void* self, std::uint32_t kind, const void* records, std::size_t count,
                           std::size_t record_size) noexcept;
  void dispatch(std::uint32_t kind, const void* records, std::size_t count, std::size_t record_size);
  template <class Record, class Item>
  void take_all(const char* name, const void* records, std::size_t count, std::size_t record_size,
                std::vector<Item>& into, std::size_t most);
  void fail(FaultKind kind, std::string sentence);

  Piece piece_;
  std::optional<Fault> fault_;
  Fault memory_full_{FaultKind::too_large, "the memory is full."};
  std::size_t text_bytes_ = 0;
};

}  // namespace quadrille
