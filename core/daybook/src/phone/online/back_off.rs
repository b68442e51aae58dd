//! When to try the hub again: soon after the first failure, later after each, never all phones at once.

use serde::{Deserialize, Serialize};
use sumpbook_trade::record::NoteKind;
use sumpbook_trade::{Entry, Fact, Stamp};

use crate::fleet::Fleet;
use crate::state::locks_something;

/// Wait after the first failure.
const FIRST_MS: i64 = 15_000;
/// Wait at most.
const MOST_MS: i64 = 15 * 60_000;

/// Why a try came to nothing: the kind of cause and no more.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum TriedWhy {
    /// No way there.
    NoSignal,
    /// Somebody else answers there.
    OtherShop,
    /// The shop said no, or had no room.
    SaidNo,
    /// Something on this phone, or its answer could not be read.
    Other,
}

impl TriedWhy {
    const ALL: [TriedWhy; 4] = [TriedWhy::NoSignal, TriedWhy::OtherShop, TriedWhy::SaidNo, TriedWhy::Other];

    /// Key of its words.
    pub fn text_key(self) -> &'static str {
        match self {
            TriedWhy::NoSignal => "tried-no-signal",
            TriedWhy::OtherShop => "tried-other-shop",
            TriedWhy::SaidNo => "tried-said-no",
            TriedWhy::Other => "tried-other",
        }
    }

    fn number(self) -> u8 {
        match self {
            TriedWhy::NoSignal => 1,
            TriedWhy::OtherShop => 2,
            TriedWhy::SaidNo => 3,
            TriedWhy::Other => 4,
        }
    }

    fn of_number(number: u8) -> Option<TriedWhy> {
        TriedWhy::ALL.into_iter().find(|why| why.number() == number)
    }
}

/// Failures since the last exchange, and not before when the next try.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct BackOff {
    /// How many tries failed in a row.
    pub failures: u32,
    /// Not before this moment, milliseconds; what is urgent does not wait.
    pub not_before_ms: i64,
    /// When the last of them was, milliseconds; 0 when it was kept by an older version.
    pub failed_ms: i64,
    /// Why that one failed; none when it was kept by an older version.
    pub why: Option<TriedWhy>,
    /// Since when every try has failed for that same reason, milliseconds; 0 when it is not known.
    pub since_ms: i64,
}

impl BackOff {
    /// After one more failure. `random` spreads the phones of a yard that lost its signal at one moment: the
    /// wait is between half and all of twice the last one.
    pub fn failed(self, now: Stamp, why: TriedWhy, random: u32, asked_s: Option<u64>) -> BackOff {
        let doubled = FIRST_MS.checked_shl(self.failures.min(16)).unwrap_or(MOST_MS).clamp(FIRST_MS, MOST_MS);
        let half = doubled / 2;
        let spread = half.saturating_mul(i64::from(random)) / i64::from(u32::MAX);
        let asked = asked_s.and_then(|s| i64::try_from(s).ok()).map_or(0, |s| s.saturating_mul(1_000));
        let wait = half.saturating_add(spread).max(asked.min(MOST_MS));
        BackOff {
            failures: self.failures.saturating_add(1),
            not_before_ms: now.unix_ms().saturating_add(wait),
            failed_ms: now.unix_ms(),
            why: Some(why),
            since_ms: if self.why == Some(why) && self.since_ms > 0 { self.since_ms } else { now.unix_ms() },
        }
    }

    /// Whether a try is due. A clock that was set back does not stop the phone for ever.
    pub fn is_due(self, now: Stamp) -> bool {
        let left = self.not_before_ms.saturating_sub(now.unix_ms());
        left <= 0 || left > MOST_MS
    }

    pub(super) fn to_bytes(self) -> Vec<u8> {
        let mut bytes = self.failures.to_be_bytes().to_vec();
        bytes.extend(self.not_before_ms.to_be_bytes());
        bytes.extend(self.failed_ms.to_be_bytes());
        bytes.push(self.why.map_or(0, TriedWhy::number));
        bytes.extend(self.since_ms.to_be_bytes());
        bytes
    }

    pub(super) fn from_bytes(bytes: &[u8]) -> Option<BackOff> {
        let (failures, moment) = bytes.split_first_chunk::<4>()?;
        let (moment, failed) = moment.split_first_chunk::<8>()?;
        let not_before_ms = i64::from_be_bytes(*moment);
        let kept = BackOff { failures: u32::from_be_bytes(*failures), not_before_ms, ..BackOff::default() };
        // Older versions kept the first two, then the first three.
        let Some((failed, rest)) = failed.split_first_chunk::<8>() else { return Some(kept) };
        let kept = BackOff { failed_ms: i64::from_be_bytes(*failed), ..kept };
        let Some((why, since)) = rest.split_first() else { return Some(kept) };
        let since_ms = since.try_into().map_or(0, i64::from_be_bytes);
        Some(BackOff { why: TriedWhy::of_number(*why), since_ms, ..kept })
    }
}

/// Whether the shop should hear of this at once when there is signal: a reminder on the display, whatever locks
/// something, and what happened.
pub fn is_urgent(fleet: &Fleet, entry: &Entry) -> bool {
    use sumpbook_trade::record::AnswerKind;
    match &entry.fact {
        Fact::DisplayNote(note) => note.what == NoteKind::Reminder || note.stopped_by_itself == Some(true),
        Fact::PreTripSection(section) => section.answers.iter().any(|a| a.answer == AnswerKind::Defect),
        Fact::EndOfDay(report) => !report.defects.is_empty(),
        Fact::Happened(_) | Fact::LayUp(_) => true,
        _ => locks_something(fleet, entry),
    }
}

#[cfg(test)]
mod tests {
    use sumpbook_trade::record::{
        DisplayNote, Glass, Pour, Source, TopUp, WaterAmount, WaterDrained, WaterFrom,
    };
    use sumpbook_trade::{EntryId, Figure, Fluid, Unit};

    use super::*;

    fn at(ms: i64) -> Stamp {
        Stamp::from_parts(ms, 0).unwrap()
    }

    fn urgent(fact: impl Into<Fact>) -> bool {
        let entry = Entry {
            id: EntryId::from_bytes([1; 16]),
            unit: None,
            set: None,
            at: at(0),
            clock_off_ms: None,
            person: None,
            trainer: None,
            pin_given: false,
            trainer_pin_given: false,
            hours: None,
            note: None,
            source: Source::Phone,
            fact: fact.into(),
        };
        is_urgent(&Fleet::default(), &entry)
    }

    #[test]
    fn what_locks_reminds_or_hurt_somebody_does_not_wait_for_the_evening() {
        let note = |what, stopped_by_itself| DisplayNote {
            what,
            as_shown: "E 12".to_owned(),
            stopped_by_itself,
            gone_again: None,
            photo: None,
        };
        assert!(urgent(note(NoteKind::Reminder, None)) && urgent(note(NoteKind::Warning, Some(true))));
        assert!(!urgent(note(NoteKind::Warning, None)));
        let volume = Figure::parse("0.2", Unit::Quart).unwrap();
        let pours = || vec![Pour { volume, after: None, waited_ms: None }];
        assert!(urgent(TopUp { pours: pours(), ..TopUp::of(Fluid::BrakeFluid) }));
        assert!(!urgent(TopUp { pours: pours(), ..TopUp::of(Fluid::WasherFluid) }));
        let over = TopUp { after: Some(Glass::AboveView), ..TopUp::of(Fluid::CompressorOil) };
        assert!(urgent(TopUp { pours: pours(), ..over }));
        let drained = |amount| WaterDrained { from: WaterFrom::Receiver, amount, oil_in_it: false };
        assert!(urgent(drained(WaterAmount::More)) && !urgent(drained(WaterAmount::Spoon)));
    }

    #[test]
    fn waits_grow_are_spread_and_end() {
        let mut low = BackOff::default();
        let mut high = BackOff::default();
        let mut before = 0;
        for turn in 0..40 {
            low = BackOff { failures: turn, ..low }.failed(at(0), TriedWhy::NoSignal, 0, None);
            high = BackOff { failures: turn, ..high }.failed(at(0), TriedWhy::NoSignal, u32::MAX, None);
            assert!(low.not_before_ms * 2 == high.not_before_ms, "{turn}: {low:?} {high:?}");
            assert!(high.not_before_ms >= before && high.not_before_ms <= MOST_MS);
            before = high.not_before_ms;
        }
        assert_eq!(before, MOST_MS);
    }

    #[test]
    fn the_hub_may_ask_for_more_and_a_clock_set_back_stops_nobody() {
        let asked = BackOff::default().failed(at(1_000), TriedWhy::SaidNo, 0, Some(60));
        assert_eq!(asked.not_before_ms, 61_000);
        assert!(!asked.is_due(at(60_999)) && asked.is_due(at(61_000)));
        assert!(asked.is_due(at(61_000 - MOST_MS - 1)));
        assert_eq!(BackOff::from_bytes(&asked.to_bytes()), Some(asked));
        let older = asked.to_bytes().get(..12).and_then(BackOff::from_bytes);
        assert_eq!(older, Some(BackOff { failed_ms: 0, why: None, since_ms: 0, ..asked }));
        let old = asked.to_bytes().get(..20).and_then(BackOff::from_bytes);
        assert_eq!(old, Some(BackOff { why: None, since_ms: 0, ..asked }));
    }

    #[test]
    fn a_reason_is_told_since_its_first_try_and_another_one_begins_anew() {
        let one = BackOff::default().failed(at(1_000), TriedWhy::NoSignal, 0, None);
        let two = one.failed(at(20_000), TriedWhy::NoSignal, 0, None);
        assert_eq!((two.why, two.since_ms, two.failed_ms), (Some(TriedWhy::NoSignal), 1_000, 20_000));
        let three = two.failed(at(50_000), TriedWhy::SaidNo, 0, None);
        assert_eq!((three.why, three.since_ms), (Some(TriedWhy::SaidNo), 50_000));
        for why in TriedWhy::ALL {
            let kept = BackOff { why: Some(why), ..three };
            assert_eq!(BackOff::from_bytes(&kept.to_bytes()), Some(kept));
            for texts in [crate::text::Texts::english(), crate::text::Texts::spanish()] {
                assert!(texts.has(why.text_key()), "{}", why.text_key());
            }
        }
    }
}
