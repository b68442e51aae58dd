//! Oil use in a word: "1.0x its usual", "2.1x its usual since Tue 3 Nov", "too little known".

use sumpbook_daybook::text::Arg;

use super::words::Words;
use crate::oil_use::OilUse;

/// The word; with that it lies over the limit, where it does.
pub(super) fn said(words: &Words, oil: Option<&OilUse>) -> String {
    let Some(oil) = oil else { return words.t("oil-unknown-use") };
    let times = oil.times_tenths.map(|times| format!("{:.1}", times as f64 / 10.0));
    let since = oil.since.map(|day| words.short_day(day));
    let rate = oil.ml_per_hour_hundredths.map(|rate| format!("{:.2}", rate as f64 / 100.0));
    let head = match (times, since) {
        (Some(times), Some(since)) => {
            words.with("oil-times-since", &[("times", Arg::Text(&times)), ("since", Arg::Text(&since))])
        }
        (Some(times), None) => words.with("oil-times", &[("times", Arg::Text(&times))]),
        (None, _) => words.t("oil-unknown-use"),
    };
    // What is usual is not known yet: the figure stands alone.
    let rate = rate.filter(|_| oil.times_tenths.is_none());
    let rate = rate.map(|rate| words.with("oil-rate", &[("rate", Arg::Text(&rate))]));
    let over = oil.over_limit.then(|| words.t("oil-over-limit"));
    words.listed([Some(head), rate, over].into_iter().flatten())
}
