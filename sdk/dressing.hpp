// Dressing a line with clusters: all that a piece type of clusters needs from the SDK in one include. Its parameters and
// their reading, what to refuse and to warn of, the facts, and the work.
#pragma once

#include "sdk/cluster_work.hpp"
#include "sdk/dressing_checks.hpp"
#include "sdk/dressing_facts.hpp"
#include "sdk/dressing_values.hpp"
