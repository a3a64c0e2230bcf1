#include "studio/disk/file_lock.hpp"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>

#include <utility>

namespace quadrille {

FileLock::FileLock(std::filesystem::path path, int descriptor) : path_(std::move(path)), file_(descriptor) {}

std::unique_ptr<FileLock> FileLock::take(const std::filesystem::path& path) {
  std::unique_ptr<FileLock> lock(new FileLock(path, ::open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0600)));
  if (!lock->file_.is_open() || ::flock(lock->file_.get(), LOCK_EX | LOCK_NB) != 0) return nullptr;
  // Between opening and locking its holder may have removed it: then this is the lock of nothing.
  struct stat held {
  }, there{};
  const bool same = ::fstat(lock->file_.get(), &held) == 0 && ::stat(path.c_str(), &there) == 0 &&
                    held.st_ino == there.st_ino && held.st_dev == there.st_dev;
  return same ? std::move(lock) : nullptr;
}

void FileLock::remove() { ::unlink(path_.c_str()); }

}  // namespace quadrille
