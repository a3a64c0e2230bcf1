// What the system refused, in words that do not depend on the locale.
#pragma once

#include <cerrno>
#include <string>
#include <system_error>

namespace quadrille {

/// A clause for an errno value, e.g. "the disk is full".
inline std::string refusal_of(int error) {
  switch (error) {
    case ENOENT:
      return "there is no such file or folder";
    case EACCES:
    case EPERM:
      return "permission is refused";
    case EROFS:
      return "the disk is read-only";
    case ENOSPC:
      return "the disk is full";
    case EDQUOT:
      return "the disk quota is used up";
    case EFBIG:
      return "the file would be larger than the system allows";
    case EISDIR:
      return "it is a folder";
    case ENOTDIR:
      return "a part of the path is no folder";
    case ENAMETOOLONG:
      return "the name is too long";
    case ELOOP:
      return "its symbolic links lead in a circle";
    case EIO:
      return "the disk reports a fault";
    default:
      return std::generic_category().message(error);
  }
}

}  // namespace quadrille
