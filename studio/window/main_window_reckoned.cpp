// The pages Day plan and Quote: what is shown on them, and giving a quote.
#include <utility>

#include "studio/quote/issue.hpp"
#include "studio/quote/quote_findings.hpp"
#include "studio/window/dialogs/issue_dialog.hpp"
#include "studio/window/house_hands.hpp"
#include "studio/window/job/document.hpp"
#include "studio/window/job/study.hpp"
#include "studio/window/job/worker.hpp"
#include "studio/window/main_window.hpp"
#include "studio/window/panels/plan_panel.hpp"
#include "studio/window/panels/quote_panel.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {

/// What the worker is asked about the event as it is now.
Question MainWindow::question() const {
  return {revision_, document_->event(), document_->palettes(), house_hands_->loaded(), document_->opened_findings(),
          today()};
}

/// Has the worker look at the event as it is now.
void MainWindow::reckon() {
  if (document_ && worker_) worker_->ask(question());  // none while the window closes
}

/// After a change to what counts for the event beside itself, such as the house.
void MainWindow::reckon_anew() {
  if (!document_) return;
  ++revision_;
  reckon();
  show_stale();
}

void MainWindow::make_reckoned_pages() {
  plan_ = new PlanPanel(strip_);
  quote_ = new QuotePanel(strip_, [this] { ask_and_issue(); });
  strip_->AddPage(plan_, "Day plan");
  strip_->AddPage(quote_, "Quote");
}

void MainWindow::show_reckoned() {
  plan_->show(study_);
  quote_->show(study_.get(), document_ && !document_->read_only());
}

void MainWindow::ask_and_issue() {
  if (!document_ || !study_ || updating()) return;
  const Quote& quote = study_->quoted.quote;
  IssueDialog dialog(this, print_money(quote.total_minor, quote.currency), today(),
                     study_->house->house.pricing.valid_days, document_->event().units);
  if (dialog.ShowModal() == wxID_OK) issue_quote(dialog.date(), dialog.number());
}

bool MainWindow::issue_quote(const std::string& date, const std::string& number) {
  if (!document_ || document_->read_only() || !study_ || updating() || !may_be_issued(study_->quoted)) return false;
  commit("Issue quote", issue(document_->event(), study_->quoted, study_->house->house, study_->figures, number, date));
  SetStatusText(shown("The quote was issued; it is kept when the event is saved."));
  return true;
}

}  // namespace quadrille
