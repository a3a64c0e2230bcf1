// An open file of the system, closed when it goes out of scope.
#pragma once

#include <unistd.h>

namespace quadrille {

class OpenDescriptor {
 public:
  explicit OpenDescriptor(int descriptor) : descriptor_(descriptor) {}
  ~OpenDescriptor() { close(); }
  OpenDescriptor(const OpenDescriptor&) = delete;
  OpenDescriptor& operator=(const OpenDescriptor&) = delete;

  bool is_open() const { return descriptor_ >= 0; }
  int get() const { return descriptor_; }
  /// False where the system reports a fault, which on some file systems is the first word of a failed write.
  bool close() {
    const int closing = descriptor_;
    descriptor_ = -1;
    return closing < 0 || ::close(closing) == 0;
  }

 private:
  int descriptor_;
};

}  // namespace quadrille
