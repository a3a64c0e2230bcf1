// The page Findings: everything there is to say about the event, where it leads, and what one click mends.
#include <algorithm>
#include <iterator>
#include <utility>

#include "studio/form/remedies.hpp"
#include "studio/form/selection_words.hpp"
#include "studio/host/piece_type.hpp"
#include "studio/window/job/document.hpp"
#include "studio/window/job/standing_worker.hpp"
#include "studio/window/job/study.hpp"
#include "studio/window/main_window.hpp"
#include "studio/window/panels/findings_panel.hpp"
#include "studio/window/panels/form_panel.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {

void MainWindow::make_findings(wxNotebook* strip) {
  findings_ = new FindingsPanel(strip, {[this](const Finding& finding) {
                                          if (!finding.piece.empty()) select(finding.area, finding.piece);
                                        },
                                        [this](const Finding& finding) { go_to(finding); },
                                        [this](const Findings& findings) { apply_remedy(findings); },
                                        [this](const Findings& findings) {
                                          if (!document_ || document_->read_only() || !types_) return std::string();
                                          return remedy_in_words(document_->event(), findings, types_->tables());
                                        }});
}

/// What the study found, and how the pieces stand as far as that is known of the event as it is now.
void MainWindow::show_findings() {
  if (!study_ || !document_) return findings_->show(nullptr, {}, 0);
  std::vector<PieceStanding> answers;
  std::size_t waiting = 0;
  for (const auto& here : study_->event.areas)
    for (const auto& placed : here->pieces) {
      const auto built = study_->built.find(placed->id);
      if (built == study_->built.end() || built->second->status != Status::ok) continue;
      const auto report = reports_.find(placed->id);
      if (report != reports_.end() && report->second->revision == study_->revision)
        answers.push_back(report->second->standing);
      else
        ++waiting;
    }
  Findings all = study_->findings;
  if (!answers.empty())
    std::ranges::move(standing_findings(study_->event, study_->built, answers), std::back_inserter(all));
  const bool looked_at = strip_->GetCurrentPage() == findings_;
  findings_->show(study_.get(), std::move(all), looked_at ? waiting : 0);
  const std::size_t found = findings_->told_count();
  const wxString title = found == 0 ? wxString("Findings") : wxString("Findings (") << found << ")";
  const auto page = static_cast<std::size_t>(strip_->FindPage(findings_));
  if (strip_->GetPageText(page) != title) strip_->SetPageText(page, title);
}

/// To the finding after or before the selected one, and to what it is about.
void MainWindow::step_finding(int by) {
  if (!document_ || findings_->told_count() == 0) return;
  // The first step leads to what is selected already, where its page was not in front.
  const bool looked_at = strip_->GetCurrentPage() == findings_;
  show_page(*findings_);
  findings_->step(looked_at ? by : 0);
  findings_->go_to_selected();
}

void MainWindow::go_to(const Finding& finding) {
  if (!finding.area.empty()) select(finding.area, finding.piece);
  if (finding.piece.empty()) return;
  const bool changes = finding.change && finding.change->piece == finding.piece;
  if (!form_->focus_field(finding.key) && !(changes && form_->focus_field(finding.change->key)))
    SetStatusText("The form has no field for that; the sentence below the list says what would mend it.");
}

void MainWindow::apply_remedy(const Findings& findings) {
  if (!document_ || document_->read_only() || !types_ || findings.empty()) return;
  const ParameterTables tables = types_->tables();
  const std::string words = remedy_in_words(document_->event(), findings, tables);
  if (words.empty()) return SetStatusText("No change is known that mends this for certain.");
  Event mended = with_remedies(document_->event(), findings, tables);
  PieceIds pieces;
  for (const Finding& finding : findings) pieces.push_back(finding.piece);
  // The words of several pieces say how many already.
  commit(words + (pieces.size() == 1 ? ": " + step_subject(document_->event(), pieces) : std::string()),
         std::move(mended));
}

}  // namespace quadrille
