//! The sight glass: the level read right, and whether it had stood long enough.

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};
use sha2::{Digest as _, Sha256};
use sumpbook_trade::checklist::{Severity, Template};
use sumpbook_trade::oil::{LEAST_MINUTES, Level, OilSystem, rose};
use sumpbook_trade::record::{Glass, How, StopWait, Warmth};
use sumpbook_trade::{FactKind, Figure, Stamp, TruckId};

use super::levels::{LevelNow, OilLine, middle, newest_air_entries, oil_line};
use super::main_act::{DisabledReason, Main, MainAct};
use crate::ledger::{Ledger, LedgerError, day_number};

/// Which glass, and what was given so far.
#[derive(Clone, Debug, PartialEq)]
pub struct GlassQuery {
    /// The unit.
    pub unit: TruckId,
    /// The level as dragged; none before the first touch.
    pub given: Option<Glass>,
    /// "Stopped at least 5 minutes?" as somebody answered it.
    pub said_stopped: Option<bool>,
    /// Cold or hot, as somebody answered it.
    pub warmth: Option<Warmth>,
    /// The oil's temperature, where a display shows it.
    pub oil_temperature: Option<Figure>,
}

/// Whether the compressor runs, by what was recorded.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum StopNow {
    /// Stopped at this moment.
    Stopped(Stamp),
    /// Started then, and no stop is recorded.
    Running(Stamp),
    /// Neither a start nor a stop is on this phone.
    Unknown,
}

/// How long it had stood.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Wait {
    /// Long enough: what goes into the record.
    Enough(StopWait),
    /// Too short: the clock runs. Read anyway it is kept, out of balances.
    TooShort {
        /// Seconds left.
        left_s: i64,
        /// What goes into the record when read all the same.
        record: StopWait,
    },
    /// Nobody knows: ask.
    Ask,
}

/// The glass.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct GlassScreen {
    /// The unit's door number.
    pub door: String,
    /// What belongs in it, and the level last read.
    pub oil: OilLine,
    /// The middle band in percent, both ends in it.
    pub middle: (u8, u8),
    /// Whether it runs.
    pub stop: StopNow,
    /// How long it had stood.
    pub wait: Wait,
    /// The level as given.
    pub given: Option<Glass>,
    /// The level against the middle.
    pub level: LevelNow,
    /// It stands under the middle: oil is missing.
    pub low: bool,
    /// The checklist's word for this level, when it is a finding of its own.
    pub word: Option<String>,
    /// What that locks.
    pub locks: Option<Severity>,
    /// It rose since it was last read and nothing was poured: ask.
    pub rose_without_a_pour: bool,
    /// Today a photo of the glass is asked, with the day's number in view: drawn from unit and day, so that nobody
    /// can say he was picked.
    pub photo_asked: bool,
    /// The main button.
    pub main: Main,
}

/// The glass of a unit.
///
/// # Errors
/// As reading the store.
pub fn glass(
    ledger: &Ledger,
    query: &GlassQuery,
    template: &Template,
    now: Stamp,
) -> Result<GlassScreen, LedgerError> {
    let stop = stop_now(ledger, query.unit)?;
    let oil = oil_line(ledger, query.unit)?;
    let level = LevelNow::of(query.given, middle(ledger));
    let word = match level {
        LevelNow::BelowView => Some("below-view"),
        LevelNow::AboveView => Some("above-view"),
        LevelNow::Over(_) => Some("over-middle"),
        LevelNow::NotGiven | LevelNow::Under(_) | LevelNow::Middle => None,
    };
    let locks = word.and_then(|word| template.item("oil-level")?.severity(word));
    let why_not = match (stop, query.given) {
        // A stop nobody recorded must not keep the level out of the book: somebody may say that it stands.
        (StopNow::Running(_), _) if query.said_stopped != Some(true) => Some(DisabledReason::Running),
        (_, None) => Some(DisabledReason::LevelNotGiven),
        _ => None,
    };
    let wait = wait(stop, query.said_stopped, now);
    Ok(GlassScreen {
        door: ledger.fleet().door(query.unit),
        rose_without_a_pour: rose_by_itself(ledger, query, &oil, &wait)?,
        oil,
        middle: middle(ledger),
        wait,
        stop,
        given: query.given,
        low: matches!(level, LevelNow::Under(_) | LevelNow::BelowView),
        level,
        word: word.map(str::to_owned),
        locks,
        photo_asked: is_drawn(query.unit, ledger.fleet().yard_day(now)),
        main: Main { act: MainAct::KeepLevel, why_not },
    })
}

/// Whether a day of a unit is drawn: about 1 in 10, the same on every phone.
fn is_drawn(unit: TruckId, day: NaiveDate) -> bool {
    let mut hash = Sha256::new();
    hash.update(unit.0.as_bytes());
    hash.update(day_number(day).to_be_bytes());
    let drawn = hash.finalize();
    drawn.first().is_some_and(|byte| u32::from(*byte) * 10 < 256)
}

/// A start or a stop, whichever is the newer.
pub(super) fn stop_now(ledger: &Ledger, unit: TruckId) -> Result<StopNow, LedgerError> {
    let newest =
        |kind| newest_air_entries(ledger, unit, kind, 3).map(|all| all.first().map(|entry| entry.at));
    Ok(match (newest(FactKind::StartAir)?, newest(FactKind::StopAir)?) {
        (Some(started), stopped) if stopped.is_none_or(|stopped| stopped < started) => {
            StopNow::Running(started)
        }
        (_, Some(stopped)) => StopNow::Stopped(stopped),
        _ => StopNow::Unknown,
    })
}

pub(super) fn wait(stop: StopNow, said: Option<bool>, now: Stamp) -> Wait {
    match (stop, said) {
        (StopNow::Stopped(since), _) => {
            let stood = now.unix_ms().saturating_sub(since.unix_ms()).max(0) / 1_000;
            let left_s = i64::from(LEAST_MINUTES) * 60 - stood;
            let minutes = Some(u32::try_from(stood / 60).unwrap_or(u32::MAX));
            let record = StopWait { minutes, how: How::Timed };
            if left_s > 0 { Wait::TooShort { left_s, record } } else { Wait::Enough(record) }
        }
        (_, Some(true)) => Wait::Enough(StopWait { minutes: None, how: How::Said }),
        (_, Some(false)) => {
            let record = StopWait { minutes: None, how: How::Said };
            Wait::TooShort { left_s: i64::from(LEAST_MINUTES) * 60, record }
        }
        (StopNow::Running(_) | StopNow::Unknown, None) => Wait::Ask,
    }
}

/// A top-up writes its own level, so a rise over the last level had no pour. What is a rise the arithmetic of oil
/// says: more than two readings can be off, and only where the two compare.
fn rose_by_itself(
    ledger: &Ledger,
    query: &GlassQuery,
    oil: &OilLine,
    wait: &Wait,
) -> Result<bool, LedgerError> {
    let Some((last, given)) = oil.last.as_ref().zip(query.given) else { return Ok(false) };
    let begun = ledger.unit_state(query.unit)?.oil.fill.and_then(|fill| fill.begun);
    if begun.is_some_and(|begun| begun.at > last.at.moment()) {
        // It was filled since: no level of the oil before says anything.
        return Ok(false);
    }
    let stood = match wait {
        Wait::Enough(record) | Wait::TooShort { record, .. } => Some(record),
        Wait::Ask => None,
    };
    let now = Level::read(given, query.warmth, query.oil_temperature, stood);
    let before = Level::read(last.glass, last.warmth, last.oil_temperature, last.stopped.as_ref());
    let system = OilSystem::of(ledger.fleet().set_on(query.unit).map(|set| &set.profile));
    Ok(rose(&before, &now, &system, &ledger.fleet().numbers.oil()))
}
