// Whether this is the build with the sanitizers, in which everything takes some ten times as long. Long tests look at a
// sample there: what they assert is held by the release build, and what a sanitizer finds it finds in the sample too.
#pragma once

namespace quadrille {

#if defined(__SANITIZE_ADDRESS__)
inline constexpr bool sanitized = true;
#else
inline constexpr bool sanitized = false;
#endif

}  // namespace quadrille
