//! A reminder that went away with no service recorded.

use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// Somebody looked at the display for a unit's reminder.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Sighting {
    /// The entry.
    pub entry: Uuid,
    /// When.
    pub at: DateTime<FixedOffset>,
    /// Who.
    pub person: Uuid,
    /// Whether it was shown; `false` is "gone again".
    pub shown: bool,
}

/// "Reminder cleared on the display, no service recorded": a question to ask. No clock moves (R6).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct ClearedReminder {
    /// When it was last seen.
    pub last_seen: Sighting,
    /// The first look that found it gone.
    pub gone_by: Sighting,
}

/// Whether the newest reminder went away although no service was recorded since it first came.
///
/// `services` are the moments of recorded services that answer this reminder. One recorded later, late paper
/// included, answers the question too: ask again after each new entry. Order does not matter.
pub fn cleared_without_service(
    sightings: &[Sighting],
    services: &[DateTime<FixedOffset>],
) -> Option<ClearedReminder> {
    let mut looks = sightings.to_vec();
    looks.sort_by_key(|look| (look.at, look.entry));
    let (mut first_seen, mut last_seen, mut gone_by) = (None, None, None);
    for look in looks {
        if look.shown {
            if gone_by.take().is_some() || first_seen.is_none() {
                first_seen = Some(look);
            }
            last_seen = Some(look);
        } else if first_seen.is_some() && gone_by.is_none() {
            gone_by = Some(look);
        }
    }
    let (first_seen, last_seen, gone_by) = (first_seen?, last_seen?, gone_by?);
    let answered = services.iter().any(|done| *done >= first_seen.at);
    (!answered).then_some(ClearedReminder { last_seen, gone_by })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(text: &str) -> DateTime<FixedOffset> {
        DateTime::parse_from_rfc3339(text).unwrap()
    }

    fn look(entry: u128, when: &str, shown: bool) -> Sighting {
        Sighting { entry: Uuid::from_u128(entry), at: at(when), person: Uuid::from_u128(1), shown }
    }

    fn seen() -> Sighting {
        look(1, "2026-11-04T15:40:00-07:00", true)
    }

    fn gone() -> Sighting {
        look(2, "2026-11-05T16:20:00-07:00", false)
    }

    #[test]
    fn event_12_last_seen_wednesday_15_40_gone_by_thursday_16_20_ask() {
        // Invented data, outcome worked by rule.
        let cleared = Some(ClearedReminder { last_seen: seen(), gone_by: gone() });
        assert_eq!(cleared_without_service(&[gone(), seen()], &[]), cleared);
        let still_gone = look(3, "2026-11-06T07:00:00-07:00", false);
        assert_eq!(cleared_without_service(&[still_gone, gone(), seen()], &[]), cleared);
        let service_before = at("2026-02-12T12:00:00-07:00");
        assert_eq!(cleared_without_service(&[seen(), gone()], &[service_before]), cleared);
    }

    #[test]
    fn a_service_answers_the_question_whenever_it_is_recorded() {
        for done in ["2026-11-04T15:40:00-07:00", "2026-11-05T09:00:00-07:00", "2026-11-06T13:30:00-07:00"] {
            assert_eq!(cleared_without_service(&[seen(), gone()], &[at(done)]), None, "{done}");
        }
    }

    #[test]
    fn a_reminder_still_shown_or_never_seen_is_no_question() {
        assert_eq!(cleared_without_service(&[seen()], &[]), None);
        assert_eq!(cleared_without_service(&[gone()], &[]), None);
        let back = look(3, "2026-11-06T07:00:00-07:00", true);
        assert_eq!(cleared_without_service(&[seen(), gone(), back], &[]), None, "it came back");
    }

    #[test]
    fn the_newest_reminder_is_judged_by_services_since_it_came() {
        let again = look(3, "2027-11-01T07:00:00-06:00", true);
        let gone_again = look(4, "2027-11-02T07:00:00-06:00", false);
        let served = at("2026-11-06T13:30:00-07:00");
        let cleared = cleared_without_service(&[seen(), gone(), again, gone_again], &[served]);
        assert_eq!(cleared, Some(ClearedReminder { last_seen: again, gone_by: gone_again }));
    }
}
