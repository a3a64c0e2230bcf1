// The page Findings: everything there is to say about the event, where it leads, and what one click mends.
#include <algorithm>
#include <iterator>
#include <utility>

#include "studio/form/remedies.hpp"
#include "studio/form/selection_words.hpp"
#include "studio/form/site_form.hpp"
#include "studio/host/piece_type.hpp"
#include "studio/window/job/document.hpp"
#include "studio/window/job/standing_worker.hpp"
#include "studio/window/job/study.hpp"
#include "studio/window/main_window.hpp"
#include "studio/window/panels/findings_panel.hpp"
#include "studio/window/panels/form_panel.hpp"
#include "studio/window/panels/site_panel.hpp"
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
  const wxWindow* const page = strip_->GetCurrentPage();
  const bool looked_at = page == findings_ || (page == site_ && led_to_site_);
  show_page(*findings_);
  findings_->step(looked_at ? by : 0);
  findings_->go_to_selected();
}

/// What is about wind, lines or the outlet has its field on the page Site. False where the finding is about something
/// else, or one change to the piece is known to mend it.
bool MainWindow::go_to_site(const Finding& finding) {
  const Area* const here = area();
  if (here == nullptr || finding.change || !is_of_site(finding)) return false;
  const bool of_wind = finding.key == "gust", of_lines = finding.key == "lines";
  // Where a gust is forecast, lines make the piece bear it, and not another forecast.
  const bool to_lines = of_lines || (of_wind && here->site.gust_m_s && may_tie());
  const PlacedPiece* const piece = to_lines ? find_piece(*here, finding.piece) : nullptr;
  const bool tied = piece != nullptr && !piece->lines.empty();
  site_object_ = tied ? std::optional(SiteObject{SiteObjectKind::line, piece->id, 0}) : std::nullopt;
  show_page(*site_);
  show_site();
  led_to_site_ = true;
  to_lines ? site_->focus_lines() : site_->focus_field(of_wind ? "gust" : "outlet");
  return true;
}

void MainWindow::go_to(const Finding& finding) {
  if (!finding.area.empty()) select(finding.area, finding.piece);
  if (go_to_site(finding) || finding.piece.empty()) return;
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
