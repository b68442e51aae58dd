//! `due`: what runs out first.

use std::path::Path;

use super::CommandError;
use super::args::Due;
use super::campaign;
use super::day_sheet::Words;
use super::exchange::known_at;
use super::found::open;
use super::out::Said;
use crate::campaign::CampaignSaid;
use crate::due::{DueRow, due_list};
use crate::papers::DatedPaper;
use crate::table::table;

/// The due list of the fleet.
///
/// # Errors
/// As any read.
pub(super) fn due(folder: &Path, args: &Due) -> Result<Said, CommandError> {
    let mut shop = open(folder)?;
    let (then, now) = known_at(&mut shop, args.as_of)?;
    let ledger = then.as_ref().unwrap_or(&shop.ledger);
    let list = due_list(ledger, now)?;
    let words = Words::new(ledger.fleet(), ledger.fleet().yard_day(now));
    let known = now.moment().format("%a %-d %b %Y %H:%M");
    let rows = if args.all { list.rows.clone() } else { near(&list.rows) };
    let known_units = ledger.fleet().trucks.len();
    let (what, below) = match (args.all, rows.is_empty()) {
        (true, _) => ("Every task", due_rows(&words, &rows)),
        (false, true) if known_units == 0 => ("No unit is known", String::new()),
        (false, true) => ("Nothing is due or coming up within 30 days or 50 hours", String::new()),
        (false, false) => (NEAR, due_rows(&words, &rows)),
    };
    let laid_up = if args.all { list.laid_up.clone() } else { near(&list.laid_up) };
    let laid_up = match laid_up.as_slice() {
        [] => String::new(),
        rows => format!("\n{LAID_UP}\n{}", due_rows(&words, rows)),
    };
    let mut near_papers = String::new();
    papers(&words, &list.papers, &mut near_papers);
    let near_papers = match near_papers.is_empty() {
        true => near_papers,
        false => format!("\nPapers\n{near_papers}"),
    };
    let more = if args.all { "" } else { "\n--all shows every task." };
    let standing: Vec<_> = list.campaigns.iter().filter(|row| row.withdrawn.is_none()).cloned().collect();
    let campaigns = match standing.is_empty() {
        true => String::new(),
        false => format!("\n\nMakers' campaigns\n{}", campaign::told(&words, &standing).trim_end()),
    };
    Said::new(format!("{what}, as known at {known}\n{below}{laid_up}{near_papers}{more}{campaigns}"), &list)
}

/// "     TH-03: annual inspection ran out on Fri 20 Nov", a line a paper.
pub(super) fn papers(words: &Words, papers: &[DatedPaper], text: &mut String) {
    text.extend(papers.iter().map(|paper| {
        let name = paper.paper.replace('-', " ");
        let day = words.day(paper.holds_until);
        let left = paper.days_left.unwrap_or_default();
        let said = match left {
            ..0 => format!("ran out on {day}"),
            0 => format!("runs out today, {day}"),
            1 => format!("runs out: 1 day left, until {day}"),
            left => format!("runs out: {left} days left, until {day}"),
        };
        format!("     {}: {name} {said}\n", paper.unit)
    }));
}

/// Head of the tasks of sets that are laid up.
pub(super) const LAID_UP: &str = "Laid up; their clocks ran on";

/// What [`near`] leaves, as a head.
pub(super) const NEAR: &str = "Past due, due, coming up, or within 30 days or 50 hours";

/// Rows that somebody must think of within a month, in the list's order.
pub(super) fn near(rows: &[DueRow]) -> Vec<DueRow> {
    const DAYS: i64 = 30;
    const HOURS: f64 = 50.0;
    let hours = |row: &DueRow| row.hours_left.as_deref().and_then(|left| left.parse::<f64>().ok());
    let is_near = |row: &&DueRow| {
        row.state != "far-off"
            || row.campaign.is_some()
            || row.days_left.is_some_and(|left| left <= DAYS)
            || hours(row).is_some_and(|left| left <= HOURS)
    };
    rows.iter().filter(is_near).cloned().collect()
}

/// Tasks as rows of a table.
pub(super) fn due_rows(words: &Words, rows: &[DueRow]) -> String {
    let any = rows.iter().any(|row| row.campaign.is_some());
    let rows = rows.iter().map(|row| {
        let mut hours = row.hours_left.clone().unwrap_or_else(|| "-".to_owned());
        if row.at_most && row.hours_left.is_some() && row.hours_left != row.hours_left_at_most {
            hours.insert_str(0, "at least ");
        }
        if let Some(likely) = &row.hours_left_likely {
            hours.push_str(&format!(" (estimate: likely {likely}"));
            hours.extend(row.hours_left_at_most.iter().map(|most| format!(", at most {most}")));
            hours.push(')');
        }
        if row.counts_weighted {
            hours.push_str(" weighted");
        }
        if row.higher_of_disputed {
            hours.push_str(" (higher of disputed)");
        }
        if row.across_unanswered_jump {
            hours.push_str(" (across an unanswered jump)");
        }
        let part = row
            .waiting_for
            .as_ref()
            .map_or_else(String::new, |part| format!("{}, promised {}", part.part, words.day(part.promised)));
        [
            row.unit.clone(),
            words.task(&row.task),
            hours,
            words.day(row.last_good_day),
            first(words, row),
            // The amounts of what is not yet due stand in their own columns.
            match row.state.as_str() {
                _ if row.laid_up_since.is_some() => row.said.clone(),
                "coming-up" => "coming up".to_owned(),
                "far-off" => "far off".to_owned(),
                _ => row.said.clone(),
            },
            part,
            row.campaign.as_ref().map_or_else(String::new, asks),
        ]
    });
    if any {
        let heads = ["Unit", "Task", "Hours left", "Last good day", "First to run out", "State", "Part"];
        let [unit, task, hours, day, first, state, part] = heads;
        return table([unit, task, hours, day, first, state, part, "Maker's campaign"], rows);
    }
    let rows = rows
        .map(|[unit, task, hours, day, first, state, part, _]| [unit, task, hours, day, first, state, part]);
    table(["Unit", "Task", "Hours left", "Last good day", "First to run out", "State", "Part"], rows)
}

/// "change the scavenge line; locks air after its last good day"
fn asks(campaign: &CampaignSaid) -> String {
    let locks = campaign.locks.replace('-', " ");
    match (campaign.locks.as_str(), campaign.stop) {
        ("note", _) => campaign.words.clone(),
        (_, true) => format!("{}; the maker says stop, locks {locks}", campaign.words),
        (_, false) => format!("{}; locks {locks} after its last good day", campaign.words),
    }
}

/// "hours, likely 5 Nov (2 Nov to 9 Nov)", "by the calendar, pace unknown".
fn first(words: &Words, row: &DueRow) -> String {
    let first = match row.runs_out_first.as_str() {
        "unknown" => "by the calendar, pace unknown",
        first => first,
    };
    let Some(forecast) = row.forecast else { return first.to_owned() };
    let likely = words.day(Some(forecast.likely));
    let from = words.day(Some(forecast.earliest));
    let band = match forecast.latest {
        Some(latest) => format!("{from} to {}", words.day(Some(latest))),
        None => format!("not before {from}"),
    };
    let hours = if row.runs_out_first == "hours" { "" } else { "hours " };
    let gone_by = if forecast.gone_by { ", gone by with no hours told since" } else { "" };
    format!("{first}, {hours}likely {likely} ({band}){gone_by}")
}
