// The background worker without a window.
#include "studio/window/job/worker.hpp"

#include <condition_variable>
#include <mutex>
#include <vector>

#include "scratch.hpp"
#include "studio/window/job/document.hpp"
#include "tests/places.hpp"

namespace quadrille {
namespace {

/// What a worker answered, waited for with an upper bound.
class Answers {
 public:
  WorkerAnswers take() {
    return {[this](auto types) { keep(types_, types); }, [this](auto study) { keep(studies_, study); }};
  }
  bool wait(std::size_t types, std::size_t studies) {
    std::unique_lock lock(mutex_);
    return came_.wait_for(lock, std::chrono::seconds(30),
                          [&] { return types_.size() >= types && studies_.size() >= studies; });
  }
  std::vector<std::shared_ptr<const Study>> studies() {
    const std::lock_guard lock(mutex_);
    return studies_;
  }
  std::vector<std::shared_ptr<const PieceTypes>> types() {
    const std::lock_guard lock(mutex_);
    return types_;
  }

 private:
  template <class Kept, class Answer>
  void keep(Kept& kept, Answer answer) {
    const std::lock_guard lock(mutex_);
    kept.push_back(std::move(answer));
    came_.notify_all();
  }
  std::mutex mutex_;
  std::condition_variable came_;
  std::vector<std::shared_ptr<const PieceTypes>> types_;
  std::vector<std::shared_ptr<const Study>> studies_;
};

SearchPlan plan_with(std::vector<std::filesystem::path> folders) {
  SearchPlan plan;
  plan.folders = std::move(folders);
  return plan;
}

Question question(std::uint64_t revision) {
  return {revision, harvest_event(), std::make_shared<const LoadedPalettes>(), nullptr, {}, "2027-06-01"};
}

const std::filesystem::path pieces = build_place("pieces");

}  // namespace

TEST_CASE("the worker finds the piece types, then studies what it is asked") {
  Answers answers;
  Worker worker(plan_with({pieces}), answers.take());
  worker.ask(question(7));
  REQUIRE(answers.wait(1, 1));
  CHECK(answers.types()[0]->find("arch") != nullptr);
  const Study& study = *answers.studies()[0];
  CHECK(study.revision == 7);
  CHECK(study.built.size() == 2);  // the third is of a type that nobody has
  CHECK(study.order.count.pieces.size() == 3);
}

TEST_CASE("of many questions the last is always answered, and in rising order") {
  Answers answers;
  Worker worker(plan_with({pieces}), answers.take());
  for (std::uint64_t revision = 1; revision <= 200; ++revision) worker.ask(question(revision));
  std::size_t number = 1;
  while (answers.wait(1, number) && answers.studies().back()->revision != 200) number = answers.studies().size() + 1;
  const auto studies = answers.studies();
  CHECK(studies.back()->revision == 200);
  for (std::size_t i = 1; i < studies.size(); ++i) CHECK(studies[i]->revision > studies[i - 1]->revision);
}

TEST_CASE("a worker that is taken down while it has work answers no more") {
  Answers answers;
  {
    Worker worker(plan_with({pieces}), answers.take());
    for (std::uint64_t revision = 1; revision <= 50; ++revision) worker.ask(question(revision));
  }
  const std::size_t number = answers.studies().size();
  CHECK(number <= 50);
}

TEST_CASE("refused plugin files become findings with the file's name") {
  ScratchFolder folder;
  put(folder / "letter.so", "Dear all, this is no library.");
  Answers answers;
  Worker worker(plan_with({folder / "."}), answers.take());
  worker.ask(question(1));
  REQUIRE(answers.wait(1, 1));
  bool told = false;
  for (const Finding& finding : answers.studies()[0]->findings)
    told = told || (finding.code == "plugin-not-a-library" && finding.text.find("letter.so") != std::string::npos);
  CHECK(told);
}

TEST_CASE("looking for piece types anew studies the last question again") {
  ScratchFolder folder;
  Answers answers;
  Worker worker(plan_with({folder / "."}), answers.take());
  worker.ask(question(1));
  REQUIRE(answers.wait(1, 1));
  CHECK(answers.studies()[0]->built.empty());
  std::filesystem::copy(pieces / "arch.so", folder / "arch.so");
  worker.reload(false);
  REQUIRE(answers.wait(2, 2));
  CHECK(answers.studies()[1]->built.size() == 2);
}

}  // namespace quadrille
