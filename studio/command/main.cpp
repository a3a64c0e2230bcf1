// The command line's entry: arguments as the system gives them, bytes untouched, no locale.
#include <iostream>
#include <string>
#include <vector>

#include "studio/command/run.hpp"

int main(int count, char** arguments) {
  std::ios::sync_with_stdio(false);
  const std::vector<std::string> words(arguments + (count > 0 ? 1 : 0), arguments + count);
  return quadrille::run(words, std::cout, std::cerr, "/proc/self/exe");
}
