#include "studio/host/resolve.hpp"

#include <map>

#include "sdk/quoted.hpp"
#include "sdk/value_text.hpp"
#include "studio/model/near_word.hpp"

namespace quadrille {

std::string no_such_parameter(const PieceType& type, std::string_view key) {
  std::vector<std::string> keys;
  for (const Parameter& p : type.parameters) keys.push_back(p.key);
  const auto meant = near_word(key, keys);
  std::string sentence = type.name + " has no parameter " + quoted(key) + ": ";
  if (meant) sentence += "did you mean " + *meant + "? It takes ";
  if (!meant) sentence += "it takes ";
  for (std::size_t i = 0; i < keys.size(); ++i) sentence += (i == 0 ? "" : ", ") + keys[i];
  return sentence + (keys.empty() ? "none." : ".");
}

Resolved resolve(const PieceType& type, const ValueMap& values) {
  const auto refused = [](std::string key, std::string sentence) {
    return Resolved{{}, Message{Severity::refusal, std::move(key), std::move(sentence)}};
  };
  std::map<const Parameter*, std::string> given;
  Resolved resolved;
  for (const Parameter& p : type.parameters) resolved.values.push_back(p.standard);
  for (const auto& [key, value] : values) {
    const Parameter* p = type.find(key);
    if (p == nullptr) return refused(key, no_such_parameter(type, key));
    if (const auto [other, fresh] = given.emplace(p, key); !fresh)
      return refused(p->key, quoted(other->second) + " and " + quoted(key) + " are the same parameter of " + type.name +
                                 ": one of them would be accepted.");
    if (std::string fault = fault_of_value(*p, value); !fault.empty()) {
      Resolved refusal = refused(p->key, std::move(fault));
      if (const auto nearest = nearest_accepted(*p, value)) refusal.refusal->remedy = print_setting(p->key, *nearest);
      return refusal;
    }
    resolved.values[static_cast<std::size_t>(p - type.parameters.data())] = in_one_form(value);
  }
  return resolved;
}

}  // namespace quadrille
