//! What the display said, who answered, and whether it went away by itself.

use chrono::{DateTime, FixedOffset};
use sumpbook_trade::Fact;
use sumpbook_trade::clock::{Programme, ServiceRow};
use sumpbook_trade::notes::{
    Ack, Acknowledged, ClearedReminder, Note, NoteKind as TradeKind, Sighting, acknowledged,
    cleared_without_service,
};
use sumpbook_trade::record::NoteKind;
use uuid::Uuid;

use super::inputs::Bearing;
use super::{KEPT_DAYS, NoteNow};

/// Notes with their answers, oldest first.
pub(super) fn notes(entries: &[Bearing], newest_ms: i64) -> Vec<NoteNow> {
    let since = newest_ms.saturating_sub(KEPT_DAYS.saturating_mul(86_400_000));
    let acks = acks(entries);
    let mut notes = Vec::new();
    for bearing in entries.iter().filter(|bearing| bearing.fact.at_ms >= since) {
        let Fact::DisplayNote(note) = &bearing.entry.fact else { continue };
        if note.gone_again.is_some() {
            continue;
        }
        let of = Note { entry: bearing.entry.id.0, at: bearing.entry.at.moment(), kind: kind(note.what) };
        notes.push(NoteNow {
            entry: bearing.entry.id,
            at: bearing.entry.at.moment(),
            person: bearing.entry.person,
            what: note.what,
            as_shown: note.as_shown.clone(),
            stopped_by_itself: note.stopped_by_itself,
            answered: answered(&of, &acks),
            gone: gone(entries, bearing),
        });
    }
    notes
}

fn answered(note: &Note, acks: &[Ack]) -> Acknowledged {
    let of_note: Vec<Ack> = acks.iter().filter(|ack| ack.note == note.entry).copied().collect();
    acknowledged(note, &of_note)
}

fn acks(entries: &[Bearing]) -> Vec<Ack> {
    entries
        .iter()
        .filter_map(|bearing| match &bearing.entry.fact {
            Fact::Acknowledgement(ack) => Some(Ack {
                entry: bearing.entry.id.0,
                note: ack.note.0,
                at: bearing.entry.at.moment(),
                person: person(bearing),
                told_shop: ack.told_shop,
            }),
            _ => None,
        })
        .collect()
}

fn gone(entries: &[Bearing], note: &Bearing) -> Option<DateTime<FixedOffset>> {
    entries
        .iter()
        .filter(|bearing| {
            matches!(&bearing.entry.fact, Fact::DisplayNote(n) if n.gone_again == Some(note.entry.id))
        })
        .map(|bearing| bearing.entry.at.moment())
        .min()
}

/// The newest reminder went away although no service was recorded of what the display counts.
pub(super) fn cleared(
    entries: &[Bearing],
    services: &[ServiceRow],
    programme: &Programme,
) -> Option<ClearedReminder> {
    let counted = programme.display_tasks();
    let services: Vec<DateTime<FixedOffset>> =
        services.iter().filter(|row| counted.contains(&&row.task)).map(|row| row.at).collect();
    let sightings: Vec<Sighting> = entries
        .iter()
        .filter_map(|bearing| match &bearing.entry.fact {
            Fact::DisplayNote(note) if note.what == NoteKind::Reminder => Some(Sighting {
                entry: bearing.entry.id.0,
                at: bearing.entry.at.moment(),
                person: person(bearing),
                shown: note.gone_again.is_none(),
            }),
            _ => None,
        })
        .collect();
    cleared_without_service(&sightings, &services)
}

fn person(bearing: &Bearing) -> Uuid {
    bearing.entry.person.map_or(Uuid::nil(), |person| person.0)
}

fn kind(kind: NoteKind) -> TradeKind {
    match kind {
        NoteKind::Fault => TradeKind::Fault,
        NoteKind::Warning => TradeKind::Warning,
        NoteKind::Reminder => TradeKind::Reminder,
    }
}
