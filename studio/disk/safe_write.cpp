#include "studio/disk/safe_write.hpp"

#include <fcntl.h>
#include <stdio.h>
#include <sys/stat.h>

#include "studio/disk/file_bytes.hpp"
#include "studio/disk/open_descriptor.hpp"
#include "studio/disk/system_error.hpp"

namespace quadrille {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t any_size = std::size_t{1} << 50;

/// Thrown inside this file; `what` is a clause.
struct Refused {
  std::string what;
};
[[noreturn]] void refuse(int error) { throw Refused{refusal_of(error)}; }

/// Where the chain of symbolic links from `path` ends, whether or not something is there.
fs::path end_of_links(fs::path path) {
  constexpr int most_links = 40;  // as many as Linux follows
  for (int i = 0; i < most_links; ++i) {
    std::error_code error;
    const fs::path target = fs::read_symlink(path, error);
    if (error) return path;
    path = path.parent_path() / target;
  }
  refuse(ELOOP);
}

fs::path folder_of(const fs::path& file) { return file.has_parent_path() ? file.parent_path() : fs::path("."); }

void write_all(int file, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t written = ::write(file, bytes.data(), bytes.size());
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) refuse(errno);
    bytes.remove_prefix(static_cast<std::size_t>(written));
  }
}

/// A new file beside `target`, taken away again unless it is renamed.
class TemporaryFile {
 public:
  explicit TemporaryFile(const fs::path& target) : path_(free_name(target)), file_(create(path_)) {
    if (!file_.is_open()) refuse(errno);
  }
  ~TemporaryFile() {
    if (!path_.empty()) ::unlink(path_.c_str());
  }
  TemporaryFile(const TemporaryFile&) = delete;
  TemporaryFile& operator=(const TemporaryFile&) = delete;

  void fill(std::string_view bytes, const struct stat* like) {
    if (like != nullptr) {
      // The owner may only be kept by the superuser; failing that the file becomes ours.
      [[maybe_unused]] const int ignored = ::fchown(file_.get(), like->st_uid, like->st_gid);
      if (::fchmod(file_.get(), like->st_mode & 07777) != 0) refuse(errno);
    }
    write_all(file_.get(), bytes);
    if (::fsync(file_.get()) != 0) refuse(errno);
    if (!file_.close()) refuse(errno);
  }
  void rename_to(const fs::path& target) {
    if (::rename(path_.c_str(), target.c_str()) != 0) refuse(errno);
    path_.clear();
  }

 private:
  static int create(const fs::path& path) {
    return ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
  }
  static fs::path free_name(const fs::path& target) {
    // Not made from the target's name, which may already be as long as a name can be.
    const std::string stem = ".quadrille-" + std::to_string(::getpid()) + "-";
    for (int number = 1;; ++number) {
      fs::path name = target.parent_path() / (stem + std::to_string(number) + ".part");
      struct stat status {};
      if (::lstat(name.c_str(), &status) != 0) return name;
    }
  }

  fs::path path_;
  OpenDescriptor file_;
};

void sync_folder(const fs::path& target) {
  const OpenDescriptor open(::open(folder_of(target).c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (open.is_open()) ::fsync(open.get());  // some file systems cannot; the file's own bytes are on the disk already
}

/// "name~"; of a name that is already as long as a name can be, as much as leaves room for the mark.
fs::path backup_of(const fs::path& target) {
  const long longest = ::pathconf(folder_of(target).c_str(), _PC_NAME_MAX);
  std::string name = target.filename().string();
  if (longest > 1 && name.size() >= static_cast<std::size_t>(longest)) {
    std::size_t end = static_cast<std::size_t>(longest) - 1;
    while (end > 1 && (static_cast<unsigned char>(name[end]) & 0xC0) == 0x80) --end;  // not inside a character
    name.resize(end);
  }
  return target.parent_path() / (name + "~");
}

void keep_previous(const fs::path& target, std::string_view bytes, const struct stat& status) {
  const auto previous = read_bytes(target, any_size);
  if (!previous) throw Refused{"the previous version cannot be read"};
  if (*previous == bytes) return;
  const fs::path backup = backup_of(target);
  try {
    TemporaryFile copy(target);
    copy.fill(*previous, &status);
    copy.rename_to(backup);
  } catch (const Refused& refused) {
    throw Refused{"the previous version cannot be kept as " + backup.string() + ", since " + refused.what};
  }
}

void write_into(const fs::path& device, std::string_view bytes) {
  OpenDescriptor file(::open(device.c_str(), O_WRONLY | O_CLOEXEC));
  if (!file.is_open()) refuse(errno);
  write_all(file.get(), bytes);
  if (!file.close()) refuse(errno);
}

void write(const fs::path& path, std::string_view bytes, Backup backup) {
  const fs::path target = end_of_links(path);
  struct stat status {};
  const bool exists = ::stat(target.c_str(), &status) == 0;
  if (!exists && errno != ENOENT) refuse(errno);
  if (!exists && !fs::is_directory(folder_of(target)))
    throw Refused{"there is no folder " + folder_of(target).string()};
  if (exists && S_ISDIR(status.st_mode)) refuse(EISDIR);
  if (exists && !S_ISREG(status.st_mode)) return write_into(target, bytes);
  if (exists && ::access(target.c_str(), W_OK) != 0) throw Refused{"it is write-protected"};
  TemporaryFile fresh(target);
  fresh.fill(bytes, exists ? &status : nullptr);
  if (exists && backup == Backup::keep_previous) keep_previous(target, bytes, status);
  fresh.rename_to(target);
  sync_folder(target);
}

}  // namespace

std::optional<std::string> safe_write(const fs::path& path, std::string_view bytes, Backup backup) {
  try {
    write(path, bytes, backup);
    return std::nullopt;
  } catch (const Refused& refused) {
    std::error_code unknown;
    return path.string() + " cannot be written: " + refused.what + "." +
           (fs::exists(path, unknown) ? " What stood there before is unharmed." : "");
  }
}

}  // namespace quadrille
