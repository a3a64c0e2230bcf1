// Independent jobs on all hardware threads.
#pragma once

#include <cstddef>
#include <functional>

namespace quadrille {

/// Calls job(0) … job(jobs − 1), each once, in any order, on as many threads as the machine has (at most 16). Returns when
/// all are done. What a job throws is thrown here again, of several the one with the least number. A job that writes its
/// answer to a place of its own gives the same result on any number of threads.
void share_out(std::size_t jobs, const std::function<void(std::size_t)>& job);

}  // namespace quadrille
