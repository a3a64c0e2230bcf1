#include "studio/disk/file_bytes.hpp"

#include <fcntl.h>
#include <sys/stat.h>

#include <algorithm>

#include "studio/disk/open_descriptor.hpp"
#include "studio/disk/system_error.hpp"

namespace quadrille {

Result<std::string> read_bytes(const std::filesystem::path& path, std::size_t most) {
  using Bytes = Result<std::string>;
  const std::string name = path.string();
  const auto refused = [&](int error) { return Bytes::bad(name + " cannot be read: " + refusal_of(error) + "."); };
  const OpenDescriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
  struct stat status {};
  if (!file.is_open() || ::fstat(file.get(), &status) != 0) return refused(errno);
  if (S_ISDIR(status.st_mode)) return Bytes::bad(name + " is a folder; name a file in it.");
  const auto too_large = [&] {
    return Bytes::bad(name + " is larger than " + std::to_string(most >> 20) + " MiB; that is no file of ours.");
  };
  if (S_ISREG(status.st_mode) && static_cast<std::size_t>(status.st_size) > most) return too_large();

  std::string bytes(S_ISREG(status.st_mode) ? static_cast<std::size_t>(status.st_size) + 1 : std::size_t{1} << 16,
                    '\0');
  std::size_t filled = 0;
  for (;;) {
    if (filled == bytes.size()) bytes.resize(std::min(bytes.size() * 2, most + 1));
    const ssize_t got = ::read(file.get(), bytes.data() + filled, bytes.size() - filled);
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return refused(errno);
    if (got == 0) break;
    filled += static_cast<std::size_t>(got);
    if (filled > most) return too_large();
  }
  bytes.resize(filled);
  return Bytes::good(std::move(bytes));
}

}  // namespace quadrille
