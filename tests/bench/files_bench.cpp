// How reading and saving events grows with what they keep, beside tinyxml2 parsing and printing the same bytes in the
// same run, and how soon monstrous files are refused. Looking for each kept thing from the start of the file once made this grow with the square of their number.
#include <tinyxml2.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <string>

#include "studio/files/event_file.hpp"

using namespace quadrille;

namespace {

std::string event_with_unknown(int elements) {
  std::string bytes =
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
      "<event xmlns=\"urn:quadrille:event:1\" version=\"1.0\" reader=\"1.0\" units=\"feet\" currency=\"USD\">\n";
  for (int i = 0; i < elements; ++i) bytes += "  <x" + std::to_string(i) + "/>\n";
  return bytes + "</event>\n";
}

/// Least seconds of five runs.
template <class Work>
double least_seconds(Work work) {
  double least = 1e300;
  for (int round = 0; round < 5; ++round) {
    const auto start = std::chrono::steady_clock::now();
    work();
    least = std::min(least, std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count());
  }
  return least;
}

double read_edit_write(const std::string& bytes) {
  return least_seconds([&] {
    Event event = read_event(bytes, "f")->event;
    event.title = "edited";
    if (write_event(event).size() <= bytes.size()) std::puts("something was lost");
  });
}

double parse_and_print(const std::string& bytes) {
  return least_seconds([&] {
    tinyxml2::XMLDocument document;
    document.Parse(bytes.data(), bytes.size());
    tinyxml2::XMLPrinter printer;
    document.Print(&printer);
    if (printer.CStrSize() <= 1) std::puts("nothing was printed");
  });
}

/// How soon 200 MB of the same, over and over, are refused.
void refuse_monsters() {
  std::printf("\n%9s %10s   200 MB refused\n", "of", "seconds");
  for (const std::string repeated : {"<a>", "<a/>", "&", "<!", "<!---->", "</", "a", "\n"}) {
    std::string bytes = "<event xmlns=\"urn:quadrille:event:1\">";
    while (bytes.size() < 200'000'000) bytes += repeated;
    const auto start = std::chrono::steady_clock::now();
    if (read_event(std::move(bytes), "f").error.empty()) std::puts("it was read");
    const double seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
    std::printf("%9s %10.4f\n", repeated == "\n" ? "line ends" : repeated.c_str(), seconds);
  }
}

}  // namespace

int main() {
  std::printf("%9s %10s %8s %10s %6s\n", "elements", "seconds", "growth", "tinyxml2", "ratio");
  double last_seconds = 0, last_elements = 0;
  for (const int elements : {1000, 4000, 16'000, 64'000, 250'000}) {
    const std::string bytes = event_with_unknown(elements);
    const double seconds = read_edit_write(bytes), floor = parse_and_print(bytes);
    std::printf("%9d %10.4f %8.2f %10.4f %6.1f\n", elements, seconds,
                last_elements > 0 ? std::log(seconds / last_seconds) / std::log(elements / last_elements) : 0.0, floor,
                seconds / floor);
    last_seconds = seconds, last_elements = elements;
  }
  refuse_monsters();
  return 0;
}
