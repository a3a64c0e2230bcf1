// House files: XML in the namespace urn:quadrille:house:1, extension .quadrille-house.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

#include "sdk/result.hpp"
#include "studio/model/finding.hpp"
#include "studio/model/house.hpp"

namespace quadrille {

/// A house as it was read.
struct OpenedHouse {
  House house;
  std::string bytes;       ///< the file as it was
  bool read_only = false;  ///< written by a newer major version: it may be used, not saved over
  Findings findings;       ///< what was not understood, each with its place in the file, and what is not said
};

/// Reads a house from `bytes`. `name` stands for the file in messages. What the file does not say is as the standard
/// house of its currency has it, and told in a note: a single figure, or a list as a whole. A list that is there counts
/// as it stands, so that <supplies/> is an empty stockroom. Only bytes that are no house, or hold a figure that cannot be
/// meant (no currency of ISO 4217, a negative price, a rate or pack of 0, a key that stands twice), give an error: one
/// sentence with line, element and what is accepted.
Result<OpenedHouse> read_house(std::string bytes, std::string_view name);

/// Reads the file at `path`, at most 256 MiB. Errors as read_house, and: no such file, a folder, no permission.
Result<OpenedHouse> open_house(const std::filesystem::path& path);

/// The house as a file of this version. All prices, supplies, inflators and failure rates are written, standard ones
/// too: the price list can be read, and means the same when a later version has other standards. Rates are only what the
/// house holds, the decorator's own. Lists of which the standard house has none are left out where they are empty.
std::string write_house(const House& house);

/// Saves to `path` by the one safe routine, with the previous version kept; a folder that is missing is made. Where
/// `house` equals `opened->house`, the bytes are those that were read. Returns a sentence where it failed; the file is
/// then as it was. Without `opened`, a file at `path` that cannot be read is not replaced.
std::optional<std::string> save_house(const std::filesystem::path& path, const House& house,
                                      const OpenedHouse* opened = nullptr);

}  // namespace quadrille
