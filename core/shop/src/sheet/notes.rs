//! What displays said, who knew, and what went away by itself (R5, R6).

use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::state::{NoteNow, ServiceNow, UnitState};
use sumpbook_trade::Stamp;
use sumpbook_trade::clock::Programme;
use sumpbook_trade::notes::Ack;
use sumpbook_trade::record::NoteKind;

use super::rows::{AnsweredBy, ReminderRow};
use super::unit_day::UnitDay;
use super::{Yard, words};

/// Notes of the day, notes answered or gone on it, and reminders that still stand with no service since.
pub(super) fn reminders(ledger: &Ledger, yard: &Yard, units: &[UnitDay]) -> Vec<ReminderRow> {
    let mut rows = Vec::new();
    for unit in units {
        let programme = ledger.fleet().programme_of(unit.state.truck);
        let notes = unit.state.notes.iter().filter(|note| concerns(yard, (&unit.state, programme), note));
        rows.extend(notes.map(|note| row(ledger, yard, (unit, programme), note)));
    }
    rows.sort_by(|a, b| (a.shown, &a.unit).cmp(&(b.shown, &b.unit)));
    rows
}

fn concerns(yard: &Yard, (state, programme): (&UnitState, &Programme), note: &NoteNow) -> bool {
    let today = |at: chrono::DateTime<chrono::FixedOffset>| yard.day_of(at) == yard.day;
    let answers = note.answered.first.iter().chain(&note.answered.others);
    let stands = note.what == NoteKind::Reminder
        && note.gone.is_none()
        && service_since((state, programme), note).is_none();
    today(note.at)
        || note.gone.is_some_and(today)
        || answers.into_iter().any(|ack| today(ack.at))
        || stands
        || asked(state, note)
}

/// Whether this is the reminder that went away with no service recorded.
fn asked(state: &UnitState, note: &NoteNow) -> bool {
    note.what == NoteKind::Reminder
        && state.cleared.is_some_and(|cleared| {
            cleared.last_seen.entry == note.entry.0 || note.gone == Some(cleared.gone_by.at)
        })
}

/// The first service since a note: since a reminder only of what the display counts (R6).
fn service_since(
    (state, programme): (&UnitState, &Programme),
    note: &NoteNow,
) -> Option<chrono::DateTime<chrono::FixedOffset>> {
    let counted = programme.display_tasks();
    let answers = |service: &&ServiceNow| {
        note.what != NoteKind::Reminder || service.tasks.iter().any(|task| counted.contains(&task))
    };
    state.services.iter().filter(answers).map(|service| service.at).filter(|at| *at >= note.at).min()
}

fn row(
    ledger: &Ledger,
    yard: &Yard,
    (unit, programme): (&UnitDay, &Programme),
    note: &NoteNow,
) -> ReminderRow {
    let answered = |ack: &Ack| AnsweredBy {
        who: yard.name_of(ledger, ack.person),
        at: yard.stamp(ack.at),
        told_shop: ack.told_shop,
    };
    let service = service_since((&unit.state, programme), note).map(|at| yard.stamp(at));
    let ask = unit.state.cleared.filter(|_| asked(&unit.state, note)).map(|cleared| {
        let day = |at: Stamp| at.moment().format("%a %H:%M").to_string();
        format!(
            "reminder cleared on the display, no service recorded; last seen {}, gone by {}: ask",
            day(yard.stamp(cleared.last_seen.at)),
            day(yard.stamp(cleared.gone_by.at))
        )
    });
    ReminderRow {
        unit: unit.door.clone(),
        kind: words::key(&note.what),
        shown: yard.stamp(note.at),
        as_it_stood: note.as_shown.clone(),
        read_by: yard.name(ledger, note.person),
        seen_by: note.answered.first.as_ref().map(answered),
        shop_told_by: note.answered.told.as_ref().map(answered),
        others: note.answered.others.iter().map(answered).collect(),
        dated_before: note.answered.set_aside_before_note.iter().map(answered).collect(),
        gone: note.gone.map(|at| yard.stamp(at)),
        service,
        ask,
    }
}
