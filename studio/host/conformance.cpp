#include "studio/host/conformance.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <ctime>
#include <system_error>
#include <thread>

#include "sdk/number.hpp"
#include "sdk/overlap.hpp"
#include "sdk/quantity.hpp"
#include "sdk/quoted.hpp"
#include "studio/host/build_once.hpp"
#include "studio/host/fingerprint.hpp"
#include "studio/host/gate.hpp"
#include "studio/host/resolve.hpp"

namespace quadrille {
namespace {

/// Processor time of this thread.
double processor_seconds() {
  timespec now{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

struct Timed {
  Attempt attempt;
  double seconds = 0;
};

/// One build beside the default one.
struct Case {
  const Parameter* parameter = nullptr;
  Value value;
  std::string words;  ///< "'span' at 12 m"
};

/// Runs the checks of one type.
class Prover {
 public:
  Prover(const PieceType& type, const TimeBudget& budget) : type_(type), budget_(budget) {
    for (const Parameter& parameter : type.parameters) defaults_.push_back(parameter.standard);
  }

  TypeProof run() {
    table();
    first_ = build(defaults_);
    built("defaults", first_, "the defaults", nullptr, budget_.at_defaults);
    for (const Case& c : limits()) prove_case("limits", c);
    for (const Case& c : choices()) prove_case("choices", c);
    deterministic();
    for (const auto& [name, looked_at] : looked_at_) proof_.checks.push_back(result(name, looked_at));
    return std::move(proof_);
  }

 private:
  Timed build(const std::vector<Value>& values) const {
    const double start = processor_seconds();
    Attempt attempt = build_once(type_, values);
    return {std::move(attempt), processor_seconds() - start};
  }

  void wrong(const std::string& check, const std::string& sentence) {
    const auto place = std::ranges::find(wrong_, check, &Check::name);
    if (place == wrong_.end())
      wrong_.push_back({check, false, sentence});
    else if (place->sentence.size() < 2000)
      place->sentence += " " + sentence;
  }

  Check result(const std::string& check, const std::string& looked_at) const {
    const auto place = std::ranges::find(wrong_, check, &Check::name);
    return place == wrong_.end() ? Check{check, true, looked_at} : *place;
  }

  void table() {
    for (const Parameter& p : type_.parameters) {
      if (p.hint.empty() || p.group.empty()) wrong("table", quoted(p.key) + " has no hint or no group.");
      if (const std::string fault = fault_of_value(p, p.standard); !fault.empty()) wrong("table", fault);
    }
    if (type_.description.empty()) wrong("table", "The piece type has no description.");
  }

  std::vector<Case> limits() const {
    std::vector<Case> cases;
    for (const Parameter& p : type_.parameters)
      for (const double limit : {p.hard_min, p.hard_max}) {
        if (is_number(p.kind)) {
          const Value value = Value::of_number(p.kind, limit == 0 ? 0.0 : limit);
          cases.push_back({&p, value, quoted(p.key) + " at " + in_words(p.kind, limit)});
        }
        if (p.kind != Kind::path) continue;
        for (std::size_t i = 0; i < std::min<std::size_t>(3, p.standard.list.size()); ++i) {
          Value value = p.standard;
          value.list[i] = limit;
          cases.push_back({&p, value, quoted(p.key) + " with a coordinate at " + in_words(Kind::length, limit)});
        }
      }
    return cases;
  }

  std::vector<Case> choices() const {
    std::vector<Case> cases;
    for (const Parameter& p : type_.parameters)
      for (const Choice& choice : p.choices)
        cases.push_back({&p, Value::of_text(p.kind, choice.key), quoted(p.key) + " at " + choice.key});
    return cases;
  }

  void prove_case(const std::string& check, const Case& c) {
    std::vector<Value> values = defaults_;
    values[static_cast<std::size_t>(c.parameter - type_.parameters.data())] = c.value;
    built(check, build(values), c.words, c.parameter, budget_.at_limits);
  }

  /// What holds for every build; `parameter` is the one that was set, or null.
  void built(const std::string& check, const Timed& timed, const std::string& where, const Parameter* parameter,
             double seconds) {
    const BuiltPiece& piece = *timed.attempt.built;
    if (timed.seconds > seconds)
      wrong("time",
            where + " took " + print_fixed(timed.seconds, 2) + " s; " + print_number(seconds) + " s are given.");
    if (timed.attempt.fault && timed.attempt.fault->kind == FaultKind::not_finite)
      wrong("finite", where + ": " + timed.attempt.fault->sentence);
    if (piece.status != Status::ok) {
      if (parameter == nullptr || !refuses_well(piece, *parameter))
        wrong(check, where + ": " + (timed.attempt.fault ? timed.attempt.fault->sentence : refusal_of(piece)));
      return;
    }
    if (const std::string fault = fault_of_totals(type_, piece.piece); !fault.empty())
      wrong("totals", where + ": " + fault);
    const std::array numbers{piece.box.width_m(), piece.box.height_m(), piece.box.depth_m(), piece.spine_m};
    const auto measure = [](double number) { return std::isfinite(number) && number >= 0; };
    if (!std::ranges::all_of(numbers, measure) || !(piece.hidden_share >= 0 && piece.hidden_share <= 1))
      wrong("finite", where + ": a measure is not finite or below 0.");
    if (check == "limits") return;  // at its limits a type may pack as tight as the decorator asks
    if (const double overlap = deepest_overlap(piece.piece.balloons).share; overlap > deepest_press)
      wrong("overlap", where + ": two balloons overlap by " + print_fixed(overlap * 100, 0) + " % of the smaller one.");
  }

  /// A refusal that blames `set`, or another parameter of the type in a sentence that names either of them.
  bool refuses_well(const BuiltPiece& piece, const Parameter& set) const {
    if (piece.status == Status::internal) return false;
    return std::ranges::any_of(piece.piece.messages, [&](const Message& message) {
      if (message.severity != Severity::refusal || message.text.empty()) return false;
      const Parameter* blamed = type_.find(message.key);
      return blamed == &set || (blamed != nullptr && (names(message.text, *blamed) || names(message.text, set)));
    });
  }

  static bool names(const std::string& sentence, const Parameter& parameter) {
    const std::string text = in_lower_case(sentence);
    return text.find(in_lower_case(parameter.key)) != std::string::npos ||
           text.find(in_lower_case(parameter.label)) != std::string::npos;
  }

  void deterministic() {
    const std::string bytes = bytes_of(first_.attempt.built->piece);
    if (bytes_of(build(defaults_).attempt.built->piece) != bytes)
      wrong("deterministic", "A build after others differs from the first one.");
    std::array<std::string, 2> at_once;
    try {
      const std::jthread other([&] { at_once[1] = bytes_of(build(defaults_).attempt.built->piece); });
      at_once[0] = bytes_of(build(defaults_).attempt.built->piece);
    } catch (const std::system_error&) {
      return wrong("deterministic", "Not checked in two threads: no second one could be started.");
    }
    if (at_once[0] != bytes || at_once[1] != bytes)
      wrong("deterministic", "Two builds at once in two threads differ from one by itself.");
  }

  const PieceType& type_;
  const TimeBudget& budget_;
  std::vector<Value> defaults_;
  Timed first_;
  TypeProof proof_;
  std::vector<Check> wrong_;
  const std::vector<std::pair<std::string, std::string>> looked_at_{
      {"table", "Texts and defaults are there and sound."},
      {"defaults", "It builds at its defaults."},
      {"limits", "At every limit it builds, or refuses and says what to blame."},
      {"choices", "With every choice it builds, or refuses and says what to blame."},
      {"deterministic", "Builds one after the other and at once give the same bytes."},
      {"finite", "All numbers are finite."},
      {"overlap",
       "No two balloons overlap deeper than " + print_fixed(deepest_press * 100, 0) + " % of the smaller one."},
      {"totals", "Counts, clusters, spine and facts agree with the geometry."},
      {"time", "Every build kept within its time."}};
};

}  // namespace

bool TypeProof::passed() const { return std::ranges::all_of(checks, &Check::passed); }

bool ProofReport::passed() const {
  return refused.empty() && std::ranges::all_of(types, [](const TypeProof& proof) { return proof.passed(); });
}

TypeProof prove(const PieceType& type, const TimeBudget& budget) {
  TypeProof proof = Prover(type, budget).run();
  proof.type = type.id;
  return proof;
}

ProofReport prove_file(const std::filesystem::path& file, const TimeBudget& budget) {
  std::error_code unknown;
  const std::filesystem::path full = std::filesystem::absolute(file, unknown);
  Admission admission = admit(unknown ? file : full, std::nullopt, false);
  ProofReport report{file, std::move(admission.refused), {}};
  for (const PieceType& type : admission.types) report.types.push_back(prove(type, budget));
  return report;
}

}  // namespace quadrille
