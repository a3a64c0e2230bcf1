// Sentences and help, made from what the parser knows.
#include "studio/command/usage.hpp"

#include <algorithm>

#include "sdk/quantity.hpp"
#include "sdk/quoted.hpp"
#include "studio/command/table.hpp"
#include "studio/model/near_word.hpp"

namespace quadrille {
namespace {

constexpr std::string_view about =
    "Quadrille draws, counts and checks the balloon décor of an event, and builds single pieces.\n";

constexpr std::string_view conventions =
    "EVENT is the file that the studio saves, such as party.quadrille.\n"
    "Lengths and masses carry their unit: 20ft, 8'6\", 2.4m, 230mm, 9in, 10kg, 22lb; a bare number is metres or kg.\n"
    "Results go to the standard output, remarks to the standard error.\n"
    "The exit status is 0 when all went well, 1 when the event has problems, 2 when the words cannot be meant,\n"
    "3 when a file could not be read or used, 4 when one could not be written, and 5 when the program itself failed.\n";

/// "a4, letter or a3".
std::string list_of(const std::vector<std::string>& words, const char* last = " or ") {
  std::string list;
  for (std::size_t i = 0; i < words.size(); ++i) list += (i == 0 ? "" : i + 1 == words.size() ? last : ", ") + words[i];
  return list;
}

std::string did_you_mean(const std::string& word, const std::vector<std::string>& words) {
  const auto meant = near_word(word, words);
  return meant ? " Did you mean " + *meant + "?" : "";
}

bool is_option(const CLI::Option& option) { return !option.get_positional(); }

bool takes_value(const CLI::Option& option) { return option.get_items_expected_max() > 0; }

/// "--out FILE", "EVENT", "--json".
std::string typed_as(const CLI::Option& option) {
  if (!is_option(option)) return option.get_type_name();
  const std::string name = "--" + option.get_lnames().front();
  return takes_value(option) ? name + " " + option.get_type_name() : name;
}

std::vector<const CLI::Option*> options_of(const VerbText& verb) {
  std::vector<const CLI::Option*> options;
  for (const CLI::Option* option : verb.parser->get_options())
    if (option != verb.parser->get_help_ptr()) options.push_back(option);
  return options;
}

std::vector<std::string> flag_names(const VerbText& verb) {
  std::vector<std::string> names;
  for (const CLI::Option* option : options_of(verb))
    if (is_option(*option)) names.push_back("--" + option->get_lnames().front());
  return names;
}

std::string example_of(const VerbText& verb) { return " For example: " + std::string(verb.example); }

/// Its description within a sentence.
std::string meaning_of(const CLI::Option& option) {
  std::string text = option.get_description();
  if (!text.empty()) text.front() = to_lower(text.front());
  return text;
}

std::string line_of(const VerbText& verb) {
  return "quadrille " + verb.parser->get_name() + (verb.operands.empty() ? "" : " ") + std::string(verb.operands);
}

/// Rows of two columns, without heads.
std::string print_rows(const std::vector<std::vector<std::string>>& rows) {
  const std::string table = print_table({"", ""}, rows);
  return table.substr(table.find('\n') + 1);
}

}  // namespace

std::string print_overview(std::span<const VerbText> verbs, bool in_full) {
  std::vector<std::vector<std::string>> rows;
  for (const VerbText& verb : verbs) rows.push_back({line_of(verb), verb.parser->get_description()});
  std::string text = std::string(about) + "\n" + print_rows(rows) + "\n";
  if (in_full) text += std::string(conventions) + "\n";
  return text + "'quadrille draw --help' says all about drawing, and so for the others.\n" +
         (in_full ? "" : "'quadrille --help' says more. The window is another program, quadrille-studio.\n");
}

std::string print_help(const VerbText& verb) {
  std::vector<std::vector<std::string>> rows;
  for (const CLI::Option* option : options_of(verb)) rows.push_back({typed_as(*option), option->get_description()});
  rows.push_back({"--help", "Print this and end"});
  return line_of(verb) + "\n\n" + verb.parser->get_description() + ".\n\n" + print_rows(rows) +
         "\nFor example: " + std::string(verb.example) + "\n";
}

std::string unknown_verb(const std::string& word, std::span<const VerbText> verbs) {
  std::vector<std::string> names;
  for (const VerbText& verb : verbs) names.push_back(verb.parser->get_name());
  if (word.starts_with('-'))
    return "There is no option " + quoted(word) + "; say first what to do: " + list_of(names) + ".";
  return "There is no command " + quoted(word) + "; there are " + list_of(names, " and ") + "." +
         did_you_mean(word, names) + " 'quadrille --help' says what they do.";
}

std::string unexpected(const VerbText& verb, const std::vector<std::string>& words) {
  const std::string name = verb.parser->get_name();
  const auto option = std::ranges::find_if(words, [](const std::string& w) { return w.size() > 1 && w[0] == '-'; });
  if (option != words.end()) {
    const std::string typed = option->substr(0, option->find('='));
    const auto names = flag_names(verb);
    return name + " has no option " + quoted(typed) + "; it has " + list_of(names, " and ") + "." +
           did_you_mean(typed, names);
  }
  std::string list;
  for (const std::string& word : words) list += (list.empty() ? "" : ", ") + quoted(word);
  return name + " does not know what to do with " + list + ": it is typed as '" + line_of(verb) + "'.";
}

std::string stopped(const VerbText& verb, const CLI::ParseError& error) {
  const std::string name = verb.parser->get_name(), said = error.what();
  for (const CLI::Option* option : options_of(verb)) {
    const bool blamed = said.starts_with(option->get_name() + ":");
    if (takes_value(*option) && option->get_items_expected_max() == 1 && option->count() > 1)
      return typed_as(*option) + " stands " + std::to_string(option->count()) + " times; give it once.";
    if (blamed && takes_value(*option) && is_option(*option))
      return "--" + option->get_lnames().front() + " needs a word after it, " + meaning_of(*option) + "." +
             example_of(verb);
  }
  for (const CLI::Option* option : options_of(verb))
    if (option->get_required() && option->count() == 0)
      return name + " needs " + typed_as(*option) + ", " + meaning_of(*option) + "." + example_of(verb);
  return name + " cannot be typed like this." + example_of(verb);
}

std::string not_one_of(std::string_view option, std::string_view given, const std::vector<std::string>& accepted) {
  const std::string word(given);
  if (std::ranges::find(accepted, word) != accepted.end()) return {};
  return "--" + std::string(option) + " can be " + list_of(accepted) + ", not " + quoted(word) + "." +
         did_you_mean(word, accepted);
}

}  // namespace quadrille
