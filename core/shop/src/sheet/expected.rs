//! Who is expected out, who has reported, and who has not (R8, R9).

use std::collections::BTreeSet;

use chrono::NaiveDate;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::day::{DayStatus, Heading};

use super::record::{ExpectedRow, MissingRow, NotReported};
use super::unit_day::UnitDay;
use super::{Read, Yard, trainee, words};
use crate::ShopError;

pub(super) fn not_reported(ledger: &Ledger, yard: &Yard, read: &Read) -> Result<NotReported, ShopError> {
    let (mut rows, mut reported, mut due_out, mut not_expected) = (vec![], vec![], vec![], vec![]);
    let mut expected = 0usize;
    for unit in &read.units {
        let row = expected_row(ledger, yard, unit)?;
        if unit.status != Some(DayStatus::Out) {
            not_expected.push(row);
            continue;
        }
        expected = expected.saturating_add(1);
        match unit.day.heading {
            Heading::NotReported => rows.push(missing(ledger, yard, unit, read)),
            Heading::DueOut { .. } => due_out.push(row),
            _ => reported.push(row),
        }
    }
    Ok(NotReported { count: rows.len(), expected, rows, reported, due_out, not_expected })
}

/// A unit's line.
pub(super) fn expected_row(ledger: &Ledger, yard: &Yard, unit: &UnitDay) -> Result<ExpectedRow, ShopError> {
    let (mut at, mut until, mut who) = (None, None, None);
    let (state, mut said) = match unit.day.heading {
        Heading::Done { at: signed, person, .. } => {
            at = Some(yard.stamp(signed));
            who = yard.name_of(ledger, person);
            ("done".to_owned(), format!("done {}", yard.clock(yard.stamp(signed))))
        }
        Heading::Covered(span) => {
            let (from, to) = (yard.stamp(span.from), yard.stamp(span.to));
            (at, until, who) = (Some(from), Some(to), yard.name_of(ledger, span.person));
            let day = |at: sumpbook_trade::Stamp| at.moment().format("%a %H:%M").to_string();
            ("covered".to_owned(), format!("covered {}-{}", day(from), day(to)))
        }
        Heading::DueOut { at: from } => {
            at = Some(yard.stamp(from));
            ("due-out".to_owned(), format!("due out {}", yard.clock(yard.stamp(from))))
        }
        Heading::NotReported => ("not-reported".to_owned(), "not reported".to_owned()),
        Heading::NotExpected(_) if unit.laid_up.is_some() => {
            at = unit.laid_up.map(|since| yard.stamp(since));
            let since = at.map_or_else(String::new, |at| at.moment().format(" since %-d %b %Y").to_string());
            ("laid-up".to_owned(), format!("laid up{since}"))
        }
        Heading::NotExpected(_) => {
            let word = words::status_word(unit.status);
            (word.clone(), word.replace('-', " "))
        }
    };
    let reported = matches!(unit.day.heading, Heading::Done { .. } | Heading::Covered(_));
    let again = unit.expected.filter(|from| reported && *from > yard.cut());
    let due_again = again.map(|from| yard.stamp(from));
    let trainee_alone = match unit.day.heading {
        Heading::Done { entry, person, .. } => trainee::alone(ledger, person, entry)?,
        Heading::Covered(span) => trainee::alone(ledger, span.person, span.entry)?,
        _ => false,
    };
    if trainee_alone {
        said.push_str(", signed by a trainee alone");
    }
    Ok(ExpectedRow { unit: unit.door.clone(), state, at, until, who, due_again, trainee_alone, said })
}

fn missing(ledger: &Ledger, yard: &Yard, unit: &UnitDay, read: &Read) -> MissingRow {
    let exchanged = unit.phone.and_then(|phone| read.heard.get(&phone.0).copied());
    let roster = unit.as_known();
    let out_on = |day: NaiveDate| matches!(roster.status_on(day), Some((DayStatus::Out, _)));
    let mut days = BTreeSet::new();
    for (held, closed) in &read.closings {
        // A sheet that was closed after something was heard tells of no silence.
        let heard_after = exchanged.is_some_and(|heard| heard > held.received_ms);
        let first = closed.version == 1 && closed.day < yard.day;
        if first && !heard_after && out_on(closed.day) && !day_heard(yard, exchanged, closed.day) {
            days.insert(closed.day);
        }
    }
    let quiet = !day_heard(yard, exchanged, yard.day);
    MissingRow {
        unit: unit.door.clone(),
        expected: unit.expected.map(|at| yard.stamp(at)),
        phone: unit.phone.map(|phone| yard.phone(ledger, phone)),
        last_heard: exchanged.map(|ms| yard.stamp_ms(ms)),
        quiet_days: quiet.then(|| days.len().saturating_add(1)),
    }
}

/// Whether the last exchange lies on this day of the yard or after it.
fn day_heard(yard: &Yard, last: Option<i64>, day: NaiveDate) -> bool {
    last.is_some_and(|ms| yard.day_of(yard.stamp_ms(ms).moment()) >= day)
}
