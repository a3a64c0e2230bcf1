// JSON as the command prints it: keys in the order written, shortest round-trip numbers, no locale.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

namespace quadrille {

using Json = nlohmann::ordered_json;

/// One object with a line end, indented; bytes that are no UTF-8 become U+FFFD.
inline std::string printed(const Json& json) { return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n"; }

/// The same on one line, for large lists.
inline std::string printed_compact(const Json& json) {
  return json.dump(-1, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace quadrille
