// What the command says about itself, and about arguments that cannot be meant: our own sentences, with the words that
// would be accepted.
#pragma once

#include <CLI/App.hpp>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace quadrille {

/// One verb for people.
struct VerbText {
  const CLI::App* parser = nullptr;
  std::string_view operands;  ///< as one types them: "EVENT --out FILE"
  std::string_view example;   ///< the whole line
};

/// What the program is for and what its verbs do, a line each; with units and exit status where `in_full`.
std::string print_overview(std::span<const VerbText> verbs, bool in_full);

/// How the verb is typed, what each word means, and an example.
std::string print_help(const VerbText& verb);

/// The sentence about a word that is no verb.
std::string unknown_verb(const std::string& word, std::span<const VerbText> verbs);

/// The sentence about `words` that the verb does not take: options that it does not have, or words too many.
std::string unexpected(const VerbText& verb, const std::vector<std::string>& words);

/// The sentence about what stopped the verb's parser: something needed is missing, an option stands twice or without
/// its value.
std::string stopped(const VerbText& verb, const CLI::ParseError& error);

/// "--paper can be a4, letter or a3, not 'b5'."; empty where `given` is one of `accepted`.
std::string not_one_of(std::string_view option, std::string_view given, const std::vector<std::string>& accepted);

}  // namespace quadrille
