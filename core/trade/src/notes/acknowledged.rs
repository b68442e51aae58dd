//! R5: the earliest acknowledgement stands, never before the note it answers.

use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// What kind of note the display showed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum NoteKind {
    /// A fault.
    Fault,
    /// A warning.
    Warning,
    /// A reminder of a service.
    Reminder,
}

/// A note as somebody read it off the display.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Note {
    /// The entry.
    pub entry: Uuid,
    /// When it was shown.
    pub at: DateTime<FixedOffset>,
    /// Its kind.
    pub kind: NoteKind,
}

/// Somebody acted on a note.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Ack {
    /// The entry.
    pub entry: Uuid,
    /// The note it answers.
    pub note: Uuid,
    /// When, by that phone's clock.
    pub at: DateTime<FixedOffset>,
    /// Who.
    pub person: Uuid,
    /// "Told the shop", rather than only "seen".
    pub told_shop: bool,
}

/// Who acknowledged a note.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Acknowledged {
    /// The one that stands.
    pub first: Option<Ack>,
    /// The first that told the shop, which may be a later one.
    pub told: Option<Ack>,
    /// The rest, in order of time.
    pub others: Vec<Ack>,
    /// Those dated before the note itself: a slow clock, shown and not counted.
    pub set_aside_before_note: Vec<Ack>,
}

/// The acknowledgements of one note, the same whatever order they arrived in.
///
/// Acknowledgements of other notes are passed over. Of two at one moment, telling the shop comes first.
pub fn acknowledged(note: &Note, acks: &[Ack]) -> Acknowledged {
    let mut own: Vec<Ack> = acks.iter().filter(|ack| ack.note == note.entry).copied().collect();
    own.sort_by_key(|ack| (ack.at, !ack.told_shop, ack.entry));
    own.dedup();
    let (set_aside, counted): (Vec<Ack>, Vec<Ack>) = own.into_iter().partition(|ack| ack.at < note.at);
    let mut counted = counted.into_iter();
    let first = counted.next();
    let others: Vec<Ack> = counted.collect();
    let told = first.iter().chain(&others).find(|ack| ack.told_shop).copied();
    Acknowledged { first, told, others, set_aside_before_note: set_aside }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const HATTIE: Uuid = Uuid::from_u128(8);
    const GIL: Uuid = Uuid::from_u128(7);

    fn at(text: &str) -> DateTime<FixedOffset> {
        DateTime::parse_from_rfc3339(text).unwrap()
    }

    fn note() -> Note {
        Note { entry: Uuid::from_u128(100), at: at("2026-10-22T15:05:00-06:00"), kind: NoteKind::Reminder }
    }

    fn ack(entry: u128, person: Uuid, when: &str, told_shop: bool) -> Ack {
        Ack { entry: Uuid::from_u128(entry), note: note().entry, at: at(when), person, told_shop }
    }

    #[test]
    fn event_4_hattie_told_the_shop_before_gil_saw_it_though_her_record_came_later() {
        // Invented data, outcome worked by rule.
        let gil = ack(1, GIL, "2026-10-22T15:22:00-06:00", false);
        let hattie = ack(2, HATTIE, "2026-10-22T15:10:00-06:00", true);
        assert_eq!(acknowledged(&note(), &[gil]).first, Some(gil), "all that is known on Friday at six");
        let later = acknowledged(&note(), &[gil, hattie]);
        assert_eq!((later.first, later.others.as_slice()), (Some(hattie), [gil].as_slice()));
    }

    #[test]
    fn a_slow_clock_does_not_answer_a_note_before_it_was_shown() {
        let slow = ack(1, GIL, "2026-10-22T15:04:59-06:00", true);
        let hattie = ack(2, HATTIE, "2026-10-22T15:05:00-06:00", false);
        let both = acknowledged(&note(), &[slow, hattie]);
        assert_eq!((both.first, both.told), (Some(hattie), None));
        assert_eq!(both.set_aside_before_note, [slow]);
    }

    #[test]
    fn seen_first_stands_and_who_told_the_shop_is_said_too() {
        let gil = ack(1, GIL, "2026-10-22T15:08:00-06:00", false);
        let hattie = ack(2, HATTIE, "2026-10-22T15:10:00-06:00", true);
        let both = acknowledged(&note(), &[hattie, gil]);
        assert_eq!((both.first, both.told), (Some(gil), Some(hattie)));
    }

    #[test]
    fn an_answer_to_another_note_is_none_of_this_one() {
        let mut other = ack(1, GIL, "2026-10-22T15:08:00-06:00", true);
        other.note = Uuid::from_u128(101);
        assert_eq!(acknowledged(&note(), &[other]).first, None);
    }

    proptest! {
        #[test]
        fn the_order_of_arrival_changes_nothing(
            minutes in proptest::collection::vec((-20i64..20, any::<bool>()), 0..8),
            turn in 0usize..8,
        ) {
            let acks: Vec<Ack> = minutes.iter().enumerate().map(|(n, (minute, told))| {
                let mut ack = ack(n as u128, GIL, "2026-10-22T15:05:00-06:00", *told);
                ack.at += chrono::TimeDelta::minutes(*minute);
                ack
            }).collect();
            let mut turned = acks.clone();
            turned.reverse();
            let by = turn.min(turned.len());
            turned.rotate_left(by);
            let result = acknowledged(&note(), &acks);
            prop_assert_eq!(&result, &acknowledged(&note(), &turned));
            let kept = usize::from(result.first.is_some())
                + result.others.len()
                + result.set_aside_before_note.len();
            prop_assert_eq!(kept, acks.len(), "none is lost");
        }
    }
}
