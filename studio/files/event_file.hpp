// Event files: XML in the namespace urn:quadrille:event:1, extension .quadrille.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

#include "sdk/result.hpp"
#include "studio/model/event.hpp"
#include "studio/model/finding.hpp"

namespace quadrille {

/// An event as it was read.
struct OpenedEvent {
  Event event;
  std::string bytes;       ///< the file as it was
  bool read_only = false;  ///< written by a newer major version: it may be looked at, not saved over
  Findings findings;       ///< what was not understood, each with its place in the file
};

/// Reads an event from `bytes`. `name` stands for the file in messages. As much is read as can be; only bytes that are
/// no event at all, or whose numbers or ids cannot be meant, give an error: one sentence with line, element and remedy.
Result<OpenedEvent> read_event(std::string bytes, std::string_view name);

/// Reads the file at `path`, at most 256 MiB. Errors as read_event, and: no such file, a directory, no permission.
Result<OpenedEvent> open_event(const std::filesystem::path& path);

/// The event as a file of this version: one element per line, fixed attribute order, LF, shortest round-trip numbers.
std::string write_event(const Event& event);

/// Saves to `path` by the one safe routine (see safe_write.hpp). Where `event` equals `opened->event`, the bytes are
/// those that were read. Returns a sentence where it failed; the file is then as it was.
std::optional<std::string> save_event(const std::filesystem::path& path, const Event& event,
                                      const OpenedEvent* opened = nullptr);

}  // namespace quadrille
