//! Dated papers in words, each with the warning its days ask for.

use sumpbook_daybook::text::Arg;

use super::words::Words;
use crate::papers::DatedPaper;

/// "annual inspection holds until 12 March 2027", "runs out ..., 9 days left", "ran out ...", "not on record".
pub(super) fn said(words: &Words, paper: &DatedPaper) -> String {
    let name = words.or_plain(&format!("paper-{}", paper.paper), &paper.paper);
    let day = paper.holds_until.map_or_else(String::new, |day| words.plain_day(day));
    let days = paper.days_left.unwrap_or_default().saturating_abs();
    let args = [("paper", Arg::Text(&name)), ("day", Arg::Text(&day)), ("days", Arg::Count(days))];
    words.with(&format!("paper-{}", paper.state), &args)
}
