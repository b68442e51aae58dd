//! Where the oil stood and what was done to it, entry by entry.

use serde::Serialize;
use sumpbook_daybook::judgement::Judged;
use sumpbook_trade::fluid::Fluid;
use sumpbook_trade::oil::{Level, Millilitres, OilNumbers, OilSystem, astray, rose};
use sumpbook_trade::record::{Glass, Warmth};
use sumpbook_trade::{Entry, EntryId, Fact, FactKind, Stamp, Tenths};

use crate::ShopError;
use crate::console::unit::view::Reading;
use crate::sheet::{entry_of, poured};

/// As many entries of a kind are looked through, newest first.
const MOST: i64 = 200;

/// As many walks: one nearly every day, each longer to read than all else.
const MOST_WALKS: i64 = 60;

/// What happened to the level.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(in crate::console) enum What {
    /// It was looked at.
    Level,
    /// Oil was poured.
    Pour,
    /// The oil was changed.
    Filled,
}

/// One entry about the level.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(in crate::console) struct LevelRow {
    pub(in crate::console) entry: EntryId,
    pub(in crate::console) at: Stamp,
    pub(in crate::console) what: What,
    /// Hours of the meter then.
    pub(in crate::console) hours: Option<Tenths>,
    /// Where it stood before a pour.
    pub(in crate::console) before: Option<Glass>,
    /// Where it stood at the end.
    pub(in crate::console) glass: Option<Glass>,
    /// Cold or hot.
    pub(in crate::console) warmth: Option<Warmth>,
    /// What was poured, by the units it was given in.
    pub(in crate::console) poured: Option<String>,
    /// Poured and not seen in the glass, millilitres, where that is more than two readings can be off; below zero
    /// more came than was poured.
    pub(in crate::console) astray_ml: Option<i64>,
    /// It stands higher than the level before it, and no pour is recorded in between.
    pub(in crate::console) rose: bool,
    /// How it was read.
    #[serde(skip)]
    level: Option<Level>,
}

pub(super) fn read(of: &Reading<'_>) -> Result<Vec<LevelRow>, ShopError> {
    let profile = of.ledger.fleet().set_on(of.truck).map(|set| &set.profile);
    let system = OilSystem::of(profile);
    let numbers = of.ledger.fleet().numbers.oil();
    let truth = of.ledger.store().truth();
    let mut rows = Vec::new();
    for (kind, most) in [
        (FactKind::LevelCheck, MOST),
        (FactKind::TopUp, MOST),
        (FactKind::ServiceDone, MOST),
        (FactKind::PreTripSection, MOST_WALKS),
    ] {
        for fact in of.ledger.newest_air_facts(of.truck, kind, most)? {
            if fact.judged == Judged::Counts
                && fact.at_ms <= of.yard.cut_ms
                && let Some((_, entry)) = entry_of(&truth, fact.n)?
            {
                rows.extend(row(of, &entry, &system, &numbers));
            }
        }
    }
    rows.sort_by_key(|row| (row.at, row.entry));
    // A pour or a fill explains any level; between two looks nothing does.
    let mut before: Option<Level> = None;
    for row in &mut rows {
        row.rose = row.what == What::Level
            && before.zip(row.level).is_some_and(|(before, now)| rose(&before, &now, &system, &numbers));
        before = if row.what == What::Filled { None } else { row.level.or(before) };
    }
    rows.reverse();
    Ok(rows)
}

fn row(of: &Reading<'_>, entry: &Entry, system: &OilSystem, numbers: &OilNumbers) -> Option<LevelRow> {
    let blank = LevelRow {
        entry: entry.id,
        at: of.yard.stamp(entry.at.moment()),
        what: What::Level,
        hours: entry.hours,
        before: None,
        glass: None,
        warmth: None,
        poured: None,
        astray_ml: None,
        rose: false,
        level: None,
    };
    match &entry.fact {
        Fact::LevelCheck(level) if level.fluid == Fluid::CompressorOil => Some(LevelRow {
            glass: Some(level.glass),
            warmth: level.warmth,
            level: Some(Level::of_check(level)),
            ..blank
        }),
        Fact::PreTripSection(section) => {
            let glass = section.glass()?;
            let level = Level::of_walk(glass);
            Some(LevelRow { glass: Some(glass), warmth: level.warmth, level: Some(level), ..blank })
        }
        Fact::TopUp(top_up) if top_up.fluid == Fluid::CompressorOil => {
            let volumes = top_up.pours.iter().filter_map(|pour| Millilitres::of(pour.volume));
            let volume = volumes.fold(Millilitres::ZERO, |sum, one| sum + one);
            let ends = Level::before(top_up).zip(Level::after(top_up));
            let strays = ends.and_then(|(from, to)| astray(&from, volume, &to, system, numbers));
            Some(LevelRow {
                what: What::Pour,
                before: top_up.before,
                glass: top_up.after,
                warmth: top_up.warmth,
                poured: Some(poured(&top_up.pours)),
                astray_ml: strays.filter(|strays| strays.ask).map(|s| s.astray.0.round() as i64),
                level: Level::after(top_up),
                ..blank
            })
        }
        Fact::ServiceDone(done) if is_fill(of, entry, done) => Some(LevelRow { what: What::Filled, ..blank }),
        _ => None,
    }
}

/// Whether a service filled it; one that was entered twice filled it once (R7).
fn is_fill(of: &Reading<'_>, entry: &Entry, done: &sumpbook_trade::record::ServiceDone) -> bool {
    let clocks = of.state.clocks.iter().filter(|clock| clock.counts_weighted);
    if clocks.flat_map(|clock| &clock.entered_twice).any(|two| two.second == entry.id.0) {
        return false;
    }
    let by_task = of.ledger.fleet().programme_of(of.truck).oil_tasks().any(|id| done.tasks.contains(id));
    by_task || done.oil.is_some() || done.oil_reason.is_some()
}
