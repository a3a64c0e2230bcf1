// abi.h is also C++17 and C++20: compiled once as each, by itself, with every extension refused.
#include "abi_layout.h"

static_assert(QUADRILLE_ABI_MAJOR == 1u);
