// The pages Standing and Checklist: what is asked for them, and the ticks that they make.
#include <algorithm>
#include <utility>

#include "sdk/quoted.hpp"
#include "studio/model/edits.hpp"
#include "studio/standing/checklist.hpp"
#include "studio/window/canvas/canvas.hpp"
#include "studio/window/job/document.hpp"
#include "studio/window/job/standing_worker.hpp"
#include "studio/window/job/study.hpp"
#include "studio/window/main_window.hpp"
#include "studio/window/panels/checklist_panel.hpp"
#include "studio/window/panels/findings_panel.hpp"
#include "studio/window/panels/site_panel.hpp"
#include "studio/window/panels/standing_panel.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

/// The first words of a sentence, as many as a menu has room for.
std::string beginning_of(const std::string& sentence) {
  constexpr std::size_t most = 40;
  if (sentence.size() <= most) return sentence;
  const std::size_t blank = sentence.rfind(' ', most);
  std::string begun = sentence.substr(0, blank == std::string::npos ? most : blank);
  while (!begun.empty() && (begun.back() == ',' || begun.back() == ':' || begun.back() == ';')) begun.pop_back();
  return begun + "…";
}

}  // namespace

void MainWindow::make_standing_pages() {
  standing_ = new StandingPanel(
      strip_, {[this](const std::string& piece) { select(area_, piece); },
               [this](double gust_m_s, std::optional<double> direction_deg, double first_deg) {
                 if (standing_worker_ && study_ && standing_is_shown())
                   standing_worker_->ask(GustQuestion{study_, area_, lead(), gust_m_s, direction_deg, first_deg});
               },
               [this](const GustReport* report) { show_bent(report); },
               [this] {
                 if (!may_edit_event()) return;
                 show_page(*site_);
                 site_->offer_advice();
               }});
  checklist_ = new ChecklistPanel(strip_, [this](const ChecklistLine& line, bool done) { tick(line, done); });
  strip_->AddPage(standing_, "Standing");
  strip_->AddPage(checklist_, "Checklist");
  strip_->Bind(wxEVT_NOTEBOOK_PAGE_CHANGED, [this](wxBookCtrlEvent& event) {
    event.Skip();
    ask_standing();
    show_standing();
    show_findings();
  });
  // Answers come on the worker's threads and are handed over as plain values.
  standing_worker_ = std::make_unique<StandingWorker>(
      StandingWorkerAnswers{[this](auto report) { CallAfter([this, report] { receive(report); }); },
                            [this](auto report) { CallAfter([this, report] { standing_->take(report); }); }});
}

void MainWindow::show_page(const wxWindow& panel) {
  const int page = strip_->FindPage(&panel);
  if (page != wxNOT_FOUND) strip_->SetSelection(static_cast<std::size_t>(page));
}

bool MainWindow::standing_is_shown() const {
  const wxWindow* page = strip_->GetCurrentPage();
  return page == standing_ || page == checklist_ || page == site_ || page == findings_;
}

/// Nothing is reckoned that nobody looks at.
void MainWindow::ask_standing() {
  const bool worth_it = study_ && document_ && study_->revision == revision_ && standing_is_shown();
  const bool everywhere = strip_->GetCurrentPage() == findings_;
  if (worth_it && standing_worker_) standing_worker_->ask(StandingQuestion{study_, area_, lead(), everywhere});
}

void MainWindow::receive(std::shared_ptr<const StandingReport> report) {
  if (!standing_worker_) return;  // the window is closing, and what was under way still comes in
  if (!document_ || !study_ || report->revision != study_->revision) return;
  reports_[report->piece] = report;
  const bool of_lead = report->piece == lead();
  standing_->take(std::move(report));
  show_checklist();
  if (of_lead) show_site();
  if (strip_->GetCurrentPage() == findings_) show_findings();
}

void MainWindow::show_standing() {
  standing_->show(area(), document_ ? document_->event().units : Units::feet, study_);
  show_checklist();
}

void MainWindow::show_checklist() {
  const Area* here = area();
  if (here == nullptr || !study_ || strip_->GetCurrentPage() != checklist_) return;
  std::vector<PieceStanding> answers;
  bool waiting = false;
  for (const auto& placed : here->pieces) {
    const auto built = study_->built.find(placed->id);
    if (built == study_->built.end() || built->second->status != Status::ok) continue;
    const auto report = reports_.find(placed->id);
    if (report != reports_.end()) answers.push_back(report->second->standing);
    waiting = waiting || report == reports_.end() || report->second->revision != revision_;
  }
  checklist_->show(document_->event(), area_, quadrille::checklist(document_->event(), study_->built, answers),
                   waiting);
}

/// The selected piece as it stands in the gust of the slider, while its page is in front.
void MainWindow::show_bent(const GustReport* report) {
  const PlacedPiece* placed = document_ ? find_piece(document_->event(), lead()) : nullptr;
  const bool wanted = report != nullptr && placed != nullptr && report->piece == lead() && study_ &&
                      strip_->GetCurrentPage() == standing_ && !placed->hidden;
  const auto built = wanted ? study_->built.find(lead()) : BuiltEvent::const_iterator();
  if (!wanted || built == study_->built.end() || report->state.deflected.empty())
    return canvas_->show_bent(std::nullopt);
  canvas_->show_bent(deflection_of(placed->x_m, built->second->piece, report->state.deflected, report->state.balloons));
}

void MainWindow::tick(const ChecklistLine& line, bool done) {
  if (!may_edit_event()) return;
  commit((done ? "Tick “" : "Clear “") + beginning_of(line.text) + "”", with_tick(document_->event(), line.key, done));
  show_checklist();  // at once; the wind levels follow
}

}  // namespace quadrille
