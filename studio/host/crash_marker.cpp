#include "studio/host/crash_marker.hpp"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <chrono>
#include <cstdint>
#include <system_error>
#include <thread>
#include <utility>

namespace quadrille {
namespace {

constexpr std::size_t most_identity = 16'384;

/// Size, time of change and path: what a marker holds. Empty where the file cannot be looked at.
std::string identity_of(const std::filesystem::path& file) {
  struct stat status {};
  if (::stat(file.c_str(), &status) != 0) return {};
  const std::string identity = std::to_string(status.st_size) + " " + std::to_string(status.st_mtim.tv_sec) + "." +
                               std::to_string(status.st_mtim.tv_nsec) + " " + file.string() + "\n";
  return identity.size() <= most_identity ? identity : std::string();
}

/// A short name for a path, the same on every machine: FNV-1a, 64 bits (Fowler, Noll, Vo; constants from memory). Two
/// paths of one name only make the files forget each other: the identity inside tells them apart.
std::string short_name(const std::string& path) {
  std::uint64_t hash = 14695981039346656037ull;
  for (const char c : path) hash = (hash ^ static_cast<unsigned char>(c)) * 1099511628211ull;
  std::string name;
  for (int shift = 60; shift >= 0; shift -= 4) name += "0123456789abcdef"[(hash >> shift) & 0xF];
  return name;
}

std::string content_of(int descriptor) {
  std::string content(most_identity + 1, '\0');
  const ssize_t got = ::pread(descriptor, content.data(), content.size(), 0);
  content.resize(got > 0 ? static_cast<std::size_t>(got) : 0);
  return content;
}

std::string content_of(const std::filesystem::path& file) {
  const int descriptor = ::open(file.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK);
  if (descriptor < 0) return {};
  std::string content = content_of(descriptor);
  ::close(descriptor);
  return content;
}

bool sync_folder(const std::filesystem::path& folder) {
  const int descriptor = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (descriptor < 0) return false;
  const bool synced = ::fsync(descriptor) == 0;
  ::close(descriptor);
  return synced;
}

bool write_whole(int descriptor, const std::string& text) {
  return ::ftruncate(descriptor, 0) == 0 &&
         ::pwrite(descriptor, text.data(), text.size(), 0) == static_cast<ssize_t>(text.size()) &&
         ::fsync(descriptor) == 0;
}

/// True where `path` still names the file that is open as `descriptor`.
bool still_names(const std::filesystem::path& path, int descriptor) {
  struct stat by_path {
  }, by_descriptor{};
  return ::stat(path.c_str(), &by_path) == 0 && ::fstat(descriptor, &by_descriptor) == 0 &&
         by_path.st_ino == by_descriptor.st_ino && by_path.st_dev == by_descriptor.st_dev;
}

/// Opens and locks the marker, alone; -1 where that cannot be done in five seconds. The kernel gives the lock back when
/// its process ends, so a marker that is not locked is one left behind.
int lock(const std::filesystem::path& marker) {
  const auto last = std::chrono::steady_clock::now() + std::chrono::seconds(5);
  do {
    const int descriptor = ::open(marker.c_str(), O_RDWR | O_CREAT | O_CLOEXEC | O_NONBLOCK, 0600);
    if (descriptor < 0) return -1;
    const bool locked = ::flock(descriptor, LOCK_EX | LOCK_NB) == 0, waits = !locked && errno == EWOULDBLOCK;
    if (locked && still_names(marker, descriptor)) return descriptor;
    ::close(descriptor);
    if (!locked && !waits) {  // a file system without locks: no marker is kept there
      ::unlink(marker.c_str());
      return -1;
    }
    std::this_thread::sleep_for(std::chrono::milliseconds(20));
  } while (std::chrono::steady_clock::now() < last);
  return -1;
}

}  // namespace

Trial Trial::begin(const std::optional<std::filesystem::path>& state_folder, const std::filesystem::path& file,
                   bool try_again) {
  Trial trial;
  if (!state_folder) return trial;
  trial.identity_ = identity_of(file);
  const std::filesystem::path folder = *state_folder / "pieces";
  trial.known_ = folder / (short_name(file.string()) + ".known");
  trial.marker_ = folder / (short_name(file.string()) + ".trying");
  if (trial.identity_.empty() || content_of(trial.known_) == trial.identity_) return trial;

  std::error_code failed;
  std::filesystem::create_directories(folder, failed);
  trial.descriptor_ = lock(trial.marker_);
  if (trial.descriptor_ < 0) return trial;
  if (content_of(trial.known_) == trial.identity_) {  // another process has proved it while this one waited
    trial.remove_marker();
  } else if (content_of(trial.descriptor_) == trial.identity_ && !try_again) {
    trial.crashed_before_ = true;
  } else if (!write_whole(trial.descriptor_, trial.identity_) || !sync_folder(folder)) {
    trial.remove_marker();  // a full disk: better no marker than half of one
  }
  return trial;
}

void Trial::survived() {
  if (descriptor_ < 0 || crashed_before_) return;
  // Written aside and renamed, so that a reader in another process never sees half of it.
  const std::filesystem::path aside = known_.string() + "." + std::to_string(::getpid());
  const int descriptor = ::open(aside.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0600);
  if (descriptor >= 0) {
    const bool written = write_whole(descriptor, identity_);
    ::close(descriptor);
    if (!written || ::rename(aside.c_str(), known_.c_str()) != 0) ::unlink(aside.c_str());
  }
  remove_marker();
}

void Trial::remove_marker() {
  ::unlink(marker_.c_str());
  ::close(std::exchange(descriptor_, -1));
}

Trial::Trial(Trial&& other) noexcept
    : marker_(std::move(other.marker_)),
      known_(std::move(other.known_)),
      identity_(std::move(other.identity_)),
      descriptor_(std::exchange(other.descriptor_, -1)),
      crashed_before_(other.crashed_before_) {}

Trial::~Trial() {
  if (descriptor_ < 0) return;
  if (crashed_before_)
    ::close(descriptor_);
  else
    remove_marker();
}

}  // namespace quadrille
