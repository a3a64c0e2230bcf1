#include "studio/window/job/recovery_writer.hpp"

#include <exception>
#include <utility>

namespace quadrille {

RecoveryWriter::RecoveryWriter(std::filesystem::path folder, std::function<void(std::string)> told)
    : told_(std::move(told)),
      journal_(std::move(folder)),
      newest_(std::make_unique<Newest<State>>([this](const State& state, const Stale&) { work(state); })) {}

void RecoveryWriter::work(const State& state) {
  std::optional<std::string> fault;
  try {
    if (state)
      fault = journal_.keep(state());
    else
      journal_.forget();
  } catch (const std::exception& error) {
    fault = error.what();
  }
  if (fault && !failed_) told_(*fault);
  failed_ = fault.has_value();
}

void RecoveryWriter::end(const State& last) {
  newest_.reset();
  work(last);
}

}  // namespace quadrille
