// The conformance suite over one piece type, each of its checks told by name.
#pragma once

#include <doctest/doctest.h>

#include "studio/host/conformance.hpp"

namespace quadrille {

inline void check_conforms(const PieceType& type) {
  CAPTURE(type.id);
  const TypeProof proof = prove(type);
  CHECK(proof.checks.size() > 5);
  for (const Check& check : proof.checks) CHECK_MESSAGE(check.passed, check.name, ": ", check.sentence);
}

}  // namespace quadrille
