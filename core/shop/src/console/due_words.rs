//! How a task stands, in words with its amount.

use maud::Markup;
use sumpbook_daybook::text::Arg;
use sumpbook_trade::Tenths;

use super::mark;
use super::words::Words;
use crate::campaign::CampaignSaid;
use crate::due::{DueRow, PartRow};

/// "past due 6.1 h", "due today, 429.2 h left", "coming up, 2.8 h left, 40 days left", with its tag.
pub(super) fn state(words: &Words, row: &DueRow) -> Markup {
    mark::tag(&row.state, &said(words, row))
}

fn said(words: &Words, row: &DueRow) -> String {
    let hours = row.hours_left.as_deref().and_then(|left| left.parse::<f64>().ok());
    // Past due begins a whole tenth beyond (R1).
    let over = hours
        .filter(|left| *left <= -0.1)
        .map(|left| words.with("due-hours", &[("hours", Arg::Text(&tenth(words, -left)))]));
    let over_days = row
        .days_left
        .filter(|left| *left < 0)
        .map(|left| words.with("due-days", &[("days", Arg::Count(left.saturating_neg()))]));
    let past: Vec<String> = [over, over_days].into_iter().flatten().collect();
    let head = words.t(&format!("due-{}", row.state));
    let mut said = match row.state.as_str() {
        "past-due" => format!("{head} {}", past.join(&words.t("and"))),
        _ => head,
    };
    if let Some(why) = &row.called_by {
        said.push_str(", ");
        said.push_str(&words.t(&format!("called-by-{why}")));
    }
    if row.waiting_for.is_some() {
        said.push_str(", ");
        said.push_str(&words.t("due-waiting"));
    }
    if let Some(since) = row.laid_up_since {
        let when = words.short_day_at(since);
        said.push_str("; ");
        said.push_str(&words.with("due-laid-up", &[("when", Arg::Text(&when))]));
    }
    said
}

/// Hours left, never rosier than they are: rounded down to a tenth.
pub(super) fn hours_left(words: &Words, row: &DueRow) -> String {
    let Some(left) = row.hours_left.as_deref().and_then(|left| left.parse::<f64>().ok()) else {
        return words.t("none-dash");
    };
    let mut said = tenth(words, left);
    if is_bound(row) {
        // Used at most is left at least.
        said = words.with("at-least-left", &[("hours", Arg::Text(&said))]);
    }
    if row.counts_weighted {
        said = format!("{said} ({})", words.t("weighted"));
    }
    if row.higher_of_disputed {
        said = format!("{said} ({})", words.t("due-higher-of-disputed"));
    }
    if row.across_unanswered_jump {
        said = format!("{said} ({})", words.t("due-across-jump"));
    }
    said
}

/// Whether hours that are counted or estimated leave something open: then what is left is a bound.
pub(super) fn is_bound(row: &DueRow) -> bool {
    row.at_most && row.hours_left_at_most.is_some() && row.hours_left_at_most != row.hours_left
}

/// Hours to a tenth, rounded down: "33.1", "2,254.0".
pub(super) fn tenth(words: &Words, hours: f64) -> String {
    words.hours(Tenths((tenth_down(hours) * 10.0).round() as i64))
}

fn tenth_down(hours: f64) -> f64 {
    // The text has at most four places: what is a whole tenth must not lose one to binary.
    (hours * 10.0 + 1e-6).floor() / 10.0
}

/// The last good day by its calendar. What is called for now has none to wait for.
pub(super) fn last_good_day(words: &Words, row: &DueRow) -> String {
    let day = row.last_good_day.filter(|_| row.called_by.is_none());
    day.map_or_else(|| words.t("none-dash"), |day| words.short_day(day))
}

/// What is left on both clocks, the nearer first: "33.1 h left, 109 days left"; nothing of one past its end.
pub(super) fn left(words: &Words, row: &DueRow) -> String {
    let hours = row.hours_left.as_deref().and_then(|left| left.parse::<f64>().ok());
    let hours = hours.filter(|left| *left > -0.1).map(|left| {
        let mut left = tenth(words, left.max(0.0));
        if is_bound(row) {
            left = words.with("at-least-left", &[("hours", Arg::Text(&left))]);
        }
        let said = words.with("left-hours", &[("hours", Arg::Text(&left))]);
        if row.counts_weighted { format!("{said} ({})", words.t("weighted")) } else { said }
    });
    let days = row.days_left.filter(|left| *left >= 0).map(|left| {
        let by = row.last_good_day.map_or_else(String::new, |day| words.short_day(day));
        words.with("left-days", &[("days", Arg::Count(left)), ("day", Arg::Text(&by))])
    });
    let both = if row.runs_out_first == "calendar" { [days, hours] } else { [hours, days] };
    words.listed(both.into_iter().flatten())
}

/// Which clock runs out first, and when the hours likely do: "hours, likely Thu 5 Nov (Mon 2 Nov to Mon 9 Nov)".
pub(super) fn first(words: &Words, row: &DueRow) -> String {
    let first = words.t(&format!("first-{}", row.runs_out_first));
    let Some(forecast) = row.forecast else { return first };
    let (key, open) = match row.runs_out_first.as_str() {
        "hours" => ("likely-between", "likely-open"),
        _ => ("hours-likely-between", "hours-likely-open"),
    };
    let (earliest, likely) = (words.short_day(forecast.earliest), words.short_day(forecast.likely));
    let latest = forecast.latest.map(|day| words.short_day(day));
    let args = [
        ("first", Arg::Text(&first)),
        ("earliest", Arg::Text(&earliest)),
        ("likely", Arg::Text(&likely)),
        ("latest", Arg::Text(latest.as_deref().unwrap_or_default())),
    ];
    let said = words.with(if latest.is_some() { key } else { open }, &args);
    let said = match forecast.gone_by {
        true => words.with("likely-gone-by", &[("said", Arg::Text(&said))]),
        false => said,
    };
    if row.runs_out_first == "hours" { said } else { words.listed([first, said]) }
}

/// "at this pace likely 5 Nov 2026, between 2 Nov 2026 and 9 Nov 2026".
pub(super) fn forecast(words: &Words, row: &DueRow) -> Option<String> {
    let forecast = row.forecast?;
    let (earliest, likely) = (words.short_day(forecast.earliest), words.short_day(forecast.likely));
    let latest = forecast.latest.map(|day| words.short_day(day));
    let key = if latest.is_some() { "forecast-likely" } else { "forecast-open" };
    let said = words.with(
        key,
        &[
            ("earliest", Arg::Text(&earliest)),
            ("likely", Arg::Text(&likely)),
            ("latest", Arg::Text(latest.as_deref().unwrap_or_default())),
        ],
    );
    Some(if forecast.gone_by { format!("{said} {}", words.t("forecast-gone-by")) } else { said })
}

/// What a campaign asks and what it locks: "change the scavenge line; locks air after its last good day".
pub(super) fn campaign(words: &Words, campaign: &CampaignSaid) -> String {
    let locks = campaign_locks(words, &campaign.locks, campaign.stop);
    match &campaign.paper {
        Some(paper) => {
            let paper = words.with("campaign-paper-said", &[("paper", Arg::Text(paper))]);
            words.listed([campaign.words.clone(), paper, locks])
        }
        None => words.listed([campaign.words.clone(), locks]),
    }
}

/// "locks air after its last good day", "the maker says stop: air is locked", "locks nothing".
pub(super) fn campaign_locks(words: &Words, locks: &str, stop: bool) -> String {
    let part = words.t(&format!("severity-{locks}"));
    match (locks, stop) {
        ("note", _) => words.t("campaign-locks-nothing"),
        (_, true) => words.with("campaign-locks-now", &[("part", Arg::Text(&part))]),
        (_, false) => words.with("campaign-locks-after", &[("part", Arg::Text(&part))]),
    }
}

/// The part waited for and when it is promised.
pub(super) fn part(words: &Words, part: Option<&PartRow>) -> String {
    let Some(part) = part else { return words.t("none-dash") };
    match part.promised {
        Some(day) => {
            let day = words.short_day(day);
            words.with("part-promised", &[("part", Arg::Text(&part.part)), ("day", Arg::Text(&day))])
        }
        None => part.part.clone(),
    }
}

/// That something waits for a part: the defect it is for where it is one.
pub(super) fn waits(words: &Words, row: &PartRow) -> String {
    let waits = words.with("waiting-part", &[("part", Arg::Text(&part(words, Some(row))))]);
    match &row.defect {
        Some((item, place)) => format!("{}: {waits}", words.item(item, place.as_deref())),
        None => waits,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_left_is_rounded_down_and_a_whole_tenth_stays() {
        assert_eq!(tenth_down(2.85), 2.8);
        assert_eq!(tenth_down(2.8), 2.8);
        assert_eq!(tenth_down(33.1), 33.1);
        assert_eq!(tenth_down(0.09), 0.0);
    }
}
