// Where this checkout and its build lie. Only one file is compiled with the answer, so that all others are the same in
// every checkout.
#pragma once

#include <filesystem>
#include <string>

namespace quadrille {

/// A path in the checkout: source_place("examples/lantern-fair.quadrille").
std::string source_place(const std::filesystem::path& inside = {});

/// A path in the build folder: build_place("pieces").
std::string build_place(const std::filesystem::path& inside = {});

}  // namespace quadrille
