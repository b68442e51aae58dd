//! What the rules say of a walk's figures, each by its name.

use sumpbook_daybook::text::Arg;

use super::words::Words;
use crate::sheet::key;
use sumpbook_daybook::screen::walk_rules::RuleSaid;

/// "keeps the rule, at most 3 psi: United States, driver test (modernized)", "no verdict by ..: the governor's cut-out is
/// not known"
pub(super) fn verdict(words: &Words, row: &RuleSaid) -> String {
    let rule = words.t(&format!("rule-set-{}", row.set));
    let Some((is, limit)) = row.is.zip(row.limit.as_deref()) else {
        let fact =
            row.missing.map_or_else(|| words.t("not-said"), |fact| words.t(&format!("fact-{}", key(&fact))));
        return words.with("rule-missing", &[("rule", Arg::Text(&rule)), ("fact", Arg::Text(&fact))]);
    };
    let limit = words.with(&format!("rule-is-{}", key(&is)), &[("limit", Arg::Text(limit))]);
    let text = match row.keeps {
        Some(true) => "rule-kept",
        Some(false) => "rule-not-kept",
        None => "rule-no-verdict",
    };
    words.with(text, &[("rule", Arg::Text(&rule)), ("limit", Arg::Text(&limit))])
}
