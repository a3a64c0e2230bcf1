#include "studio/window/job/standing_worker.hpp"

#include <algorithm>
#include <exception>
#include <utility>

namespace quadrille {
namespace {

constexpr std::size_t most_known = 500;

/// One piece of the area and what it stands in.
struct Subject {
  const Area* area = nullptr;
  const PlacedPiece* placed = nullptr;
  std::shared_ptr<const BuiltPiece> built;
};

const Area* area_of(const Study& study, const std::string& id) {
  for (const auto& area : study.event.areas)
    if (area->id == id) return &*area;
  return nullptr;
}

/// Nothing where the piece was not built: there is nothing to reckon.
std::optional<Subject> subject_of(const Study& study, const Area& area, const PlacedPiece& placed) {
  const auto found = study.built.find(placed.id);
  if (found == study.built.end() || found->second->status != Status::ok) return std::nullopt;
  return Subject{&area, &placed, found->second};
}

StandingBasis basis_of(const Study& study, const Subject& subject) {
  StandingBasis basis{subject.built,          *subject.placed,        subject.area->site, subject.area->structures,
                      subject.area->walkways, study.event.assumptions};
  PlacedPiece& placed = basis.placed;
  placed.id.clear();
  placed.name.clear();
  placed.colours.clear();
  placed.values.clear();  // they are in what was built
  placed.note.clear();
  placed.price_minor.reset();
  placed.last_built.reset();
  placed.preserved = {};
  placed.locked = placed.hidden = false;
  basis.site.preserved = {};
  // Where nothing else stands in the area it is the same everywhere.
  if (basis.structures.empty() && basis.walkways.empty()) placed.x_m = placed.y_m = 0;
  return basis;
}

bool falls_short(const PieceStanding& standing) {
  return standing.outdoors && standing.forecast_known && standing.verdict != Verdict::fine;
}

PieceStanding failed(const Subject& subject, const std::exception& error) {
  PieceStanding standing;
  standing.id = subject.placed->id;
  standing.area = subject.area->id;
  standing.outdoors = subject.area->site.surroundings == Surroundings::outdoors;
  standing.reason = "It could not be reckoned: " + std::string(error.what()) + ".";
  return standing;
}

PieceStanding reckoned(const Study& study, const Subject& subject) {
  try {
    return stand(study.event, *subject.area, *subject.placed, subject.built->piece);
  } catch (const std::exception& error) {
    return failed(subject, error);
  }
}

std::vector<LineAdvice> advised(const Study& study, const Subject& subject, const PieceStanding& standing) {
  try {
    return advise(study.event, *subject.area, *subject.placed, subject.built->piece, standing);
  } catch (const std::exception&) {
    return {};  // the piece's own answer stands; of lines there is nothing to say
  }
}

/// Those of the area that were built, `first` before all others.
std::vector<Subject> subjects_of(const Study& study, const Area& area, const std::string& first) {
  std::vector<Subject> subjects;
  for (const auto& placed : area.pieces)
    if (auto subject = subject_of(study, area, *placed)) subjects.push_back(std::move(*subject));
  std::ranges::stable_partition(subjects, [&](const Subject& subject) { return subject.placed->id == first; });
  return subjects;
}

}  // namespace

StandingWorker::StandingWorker(StandingWorkerAnswers answers)
    : answers_(std::move(answers)),
      pieces_([this](const StandingQuestion& question, const Stale& stale) { reckon(question, stale); }),
      gusts_([this](const GustQuestion& question, const Stale& stale) { reckon(question, stale); }) {}

StandingWorker::Known* StandingWorker::known_on(const StandingBasis& basis) {
  const auto found = std::ranges::find(known_, basis, &Known::basis);
  return found != known_.end() ? &*found : nullptr;
}

StandingWorker::Known& StandingWorker::keep(Known known) {
  if (known_.size() >= most_known) known_.pop_front();
  return known_.emplace_back(std::move(known));
}

void StandingWorker::tell(std::uint64_t revision, const PlacedPiece& placed, const Known& known) {
  auto report = std::make_shared<StandingReport>();
  report->revision = revision;
  report->piece = placed.id;
  report->standing = known.standing;
  report->standing.id = placed.id;
  report->standing.name = placed.name;
  report->advised = known.advice.has_value();
  if (known.advice) report->advice = *known.advice;
  answers_.piece(std::move(report));
}

void StandingWorker::reckon(const StandingQuestion& question, const Stale& stale) {
  const Study& study = *question.study;
  const Area* const area = area_of(study, question.area);
  if (area == nullptr && !question.everywhere) return;
  const std::vector<Subject> subjects = area ? subjects_of(study, *area, question.first) : std::vector<Subject>();
  for (const Subject& subject : subjects)
    if (const Known* known = known_on(basis_of(study, subject))) tell(study.revision, *subject.placed, *known);
  const auto stand_one = [&](const Subject& subject) {
    StandingBasis basis = basis_of(study, subject);
    Known* known = known_on(basis);
    if (known == nullptr) known = &keep({std::move(basis), reckoned(study, subject), {}});
    if (!falls_short(known->standing)) known->advice.emplace();
    if (!stale()) tell(study.revision, *subject.placed, *known);
  };
  const auto advise_one = [&](const Subject& subject) {
    Known* known = known_on(basis_of(study, subject));
    if (known == nullptr) return;
    if (!known->advice) known->advice = advised(study, subject, known->standing);
    if (!stale()) tell(study.revision, *subject.placed, *known);
  };
  const bool selected = !subjects.empty() && subjects.front().placed->id == question.first;
  if (selected && !stale()) stand_one(subjects.front());
  if (selected && !stale() && !question.everywhere) advise_one(subjects.front());
  for (const Subject& subject : subjects)
    if (!stale()) stand_one(subject);
  if (question.everywhere) {
    for (const auto& other : study.event.areas)
      if (other->id != question.area)
        for (const Subject& subject : subjects_of(study, *other, ""))
          if (!stale()) stand_one(subject);
    return;
  }
  for (const Subject& subject : subjects)
    if (!stale()) advise_one(subject);
}

void StandingWorker::tell(const GustQuestion& question, GustState state) {
  auto report = std::make_shared<GustReport>();
  report->revision = question.study->revision;
  report->piece = question.piece;
  report->asked_deg = question.direction_deg;
  report->state = std::move(state);
  answers_.gust(std::move(report));
}

void StandingWorker::reckon(const GustQuestion& question, const Stale& stale) {
  const Study& study = *question.study;
  const Area* const area = area_of(study, question.area);
  const PlacedPiece* const placed = find_piece(study.event, question.piece);
  if (area == nullptr || placed == nullptr) return;
  const auto subject = subject_of(study, *area, *placed);
  if (!subject || subject->built->piece.frame.nodes.empty() || subject->built->piece.supports.empty()) return;
  try {
    StandingBasis basis = basis_of(study, *subject);
    if (!series_ || series_->piece != question.piece || !(series_->basis == basis)) {
      series_.reset();
      series_ = Series{question.study, question.piece, std::move(basis),
                       std::make_unique<GustSeries>(study.event, *area, *placed, subject->built->piece)};
    }
    tell(question, series_->gusts->from(question.gust_m_s, question.direction_deg.value_or(question.first_deg)));
    if (question.direction_deg) return;
    if (auto all = series_->gusts->all_round(question.gust_m_s, stale)) tell(question, std::move(*all));
  } catch (const std::exception& error) {
    GustState state;
    state.gust_m_s = question.gust_m_s;
    state.reason = "It could not be reckoned: " + std::string(error.what()) + ".";
    tell(question, std::move(state));
  }
}

}  // namespace quadrille
