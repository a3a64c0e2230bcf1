#include "studio/host/builder.hpp"

#include <algorithm>
#include <atomic>
#include <bit>
#include <system_error>
#include <thread>
#include <vector>

#include "studio/host/build_once.hpp"
#include "studio/host/resolve.hpp"

namespace quadrille {
namespace {

constexpr std::size_t rounds_kept = 8;

std::shared_ptr<const BuiltPiece> refused(Status status, Message message) {
  auto built = std::make_shared<BuiltPiece>();
  built->status = status;
  built->piece.messages.push_back(std::move(message));
  return built;
}

/// Builds from resolved values; null where the memory is full. Never throws, for it runs in threads of its own.
std::shared_ptr<const BuiltPiece> build_safely(const PieceType& type, const std::vector<Value>& values) noexcept {
  try {
    return build_once(type, values).built;
  } catch (...) {
    return nullptr;
  }
}

/// Stands for what build_safely could not build.
std::shared_ptr<const BuiltPiece> not_built(const PieceType& type) {
  return refused(Status::internal, {Severity::refusal, "", type.name + " could not be built: the memory is full."});
}

/// Text that differs exactly where type or values do: two pieces of one key are the same piece.
std::string key_of_build(const PieceType& type, const std::vector<Value>& values) {
  std::string key = type.id;
  const auto add_number = [&key](std::uint64_t bits) {
    for (int shift = 0; shift < 64; shift += 8) key += static_cast<char>((bits >> shift) & 0xFF);
  };
  for (const Value& value : values) {
    key += '\0';
    add_number(std::bit_cast<std::uint64_t>(value.number));
    add_number(value.text.size());
    key += value.text;
    add_number(value.list.size());
    for (const double number : value.list) add_number(std::bit_cast<std::uint64_t>(number));
  }
  return key;
}

/// One build to be done, for all pieces that share it.
struct Job {
  const PieceType* type = nullptr;
  std::vector<Value> values;
  std::string key;
  std::vector<std::string> pieces;  ///< ids
  std::shared_ptr<const BuiltPiece> built;
};

/// Does the jobs on all cores; this thread works too, so that it goes on where no other can be started.
void build_all(std::vector<Job*>& jobs) {
  std::atomic<std::size_t> next = 0;
  const auto work = [&] {
    for (std::size_t i = next++; i < jobs.size(); i = next++)
      jobs[i]->built = build_safely(*jobs[i]->type, jobs[i]->values);
  };
  const std::size_t cores = std::max(1u, std::thread::hardware_concurrency());
  std::vector<std::jthread> threads;
  try {
    for (std::size_t i = 1; i < std::min(cores, jobs.size()); ++i) threads.emplace_back(work);
  } catch (const std::system_error&) {
  }
  work();
  threads.clear();  // waits for them
  for (Job* job : jobs)
    if (job->built == nullptr) job->built = not_built(*job->type);
}

/// The event's pieces as jobs, equal ones together; refused values go into `built` at once.
std::vector<Job> jobs_of(const Event& event, const PieceTypes& types, BuiltEvent& built) {
  std::vector<Job> jobs;
  std::unordered_map<std::string, std::size_t> by_key;
  for (const auto& area : event.areas)
    for (const auto& piece : area->pieces) {
      const PieceType* type = types.find(piece->type);
      if (type == nullptr) continue;
      Resolved resolved = resolve(*type, piece->values);
      if (resolved.refusal) {
        built[piece->id] = refused(Status::bad_parameter, std::move(*resolved.refusal));
        continue;
      }
      std::string key = key_of_build(*type, resolved.values);
      const auto [place, fresh] = by_key.emplace(key, jobs.size());
      if (fresh) jobs.push_back({type, std::move(resolved.values), std::move(key), {}, nullptr});
      jobs[place->second].pieces.push_back(piece->id);
    }
  return jobs;
}

}  // namespace

std::shared_ptr<const BuiltPiece> build_piece(const PieceType& type, const ValueMap& values) {
  Resolved resolved = resolve(type, values);
  if (resolved.refusal) return refused(Status::bad_parameter, std::move(*resolved.refusal));
  auto built = build_safely(type, resolved.values);
  return built != nullptr ? built : not_built(type);
}

BuiltEvent EventBuilder::build(const Event& event) {
  BuiltEvent built;
  std::vector<Job> jobs = jobs_of(event, types_, built);
  std::vector<Job*> missing;
  {
    const std::lock_guard lock(mutex_);
    for (Job& job : jobs) {
      const auto kept = kept_.find(job.key);
      if (kept == kept_.end())
        missing.push_back(&job);
      else
        job.built = kept->second.built;
    }
  }
  build_all(missing);
  const std::lock_guard lock(mutex_);
  ++rounds_;
  builds_ += missing.size();
  for (const Job& job : jobs) {
    if (job.built->status == Status::internal)
      kept_.erase(job.key);
    else
      kept_[job.key] = {job.built, rounds_};
    for (const std::string& id : job.pieces) built[id] = job.built;
  }
  std::erase_if(kept_, [this](const auto& entry) { return entry.second.last_used + rounds_kept <= rounds_; });
  return built;
}

std::size_t EventBuilder::builds() const {
  const std::lock_guard lock(mutex_);
  return builds_;
}

}  // namespace quadrille
