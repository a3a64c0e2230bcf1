// quadrille pieces --prove: the conformance suite over one plugin file, for whoever writes it.
#include <ostream>
#include <system_error>

#include "studio/command/json.hpp"
#include "studio/command/verbs.hpp"
#include "studio/host/conformance.hpp"

namespace quadrille {
namespace {

Json json_of(const ProofReport& report) {
  Json json{{"file", report.file.string()},
            {"passed", report.passed()},
            {"refused", Json::array()},
            {"types", Json::array()}};
  for (const RefusedFile& refused : report.refused)
    json["refused"].push_back({{"reason", key_of(refused.reason)}, {"sentence", refused.sentence}});
  for (const TypeProof& proof : report.types) {
    Json checks = Json::array();
    for (const Check& check : proof.checks)
      checks.push_back({{"name", check.name}, {"passed", check.passed}, {"sentence", check.sentence}});
    json["types"].push_back({{"id", proof.type}, {"passed", proof.passed()}, {"checks", checks}});
  }
  return json;
}

void print_text(const ProofReport& report, std::ostream& out) {
  for (const RefusedFile& refused : report.refused)
    out << "refused  " << key_of(refused.reason) << ": " << refused.sentence << '\n';
  for (const TypeProof& proof : report.types) {
    out << proof.type << '\n';
    for (const Check& check : proof.checks)
      out << (check.passed ? "  pass  " : "  FAIL  ") << check.name << ": " << check.sentence << '\n';
  }
  out << (report.passed() ? "It holds to the contract.\n" : "It does not hold to the contract.\n");
}

}  // namespace

Exit prove(const ProveRequest& request, const Console& console) {
  std::error_code unknown;
  if (!std::filesystem::is_regular_file(request.plugin, unknown)) {
    console.err << request.plugin.string() << ": there is no such file; name a plugin library (*.so).\n";
    return Exit::bad_input;
  }
  const ProofReport report = prove_file(request.plugin);
  if (request.json)
    console.out << printed(json_of(report));
  else
    print_text(report, console.out);
  return report.passed() ? Exit::done : Exit::problems;
}

}  // namespace quadrille
