// A key for files made from a name for people.
#pragma once

#include <string>
#include <string_view>

namespace quadrille {

/// `name` in small ASCII letters and digits, with one '-' for whatever stands between: "Café crème" is "cafe-creme". Latin
/// letters lose their marks (ß is ss, æ is ae, ø is o); of other scripts nothing is left. At most 40 letters; may be
/// empty.
std::string plain_key(std::string_view name);

}  // namespace quadrille
