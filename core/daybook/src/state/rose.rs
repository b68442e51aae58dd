//! A level that rose and no pour says why: the first question is whether one was not written down.

use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use sumpbook_trade::fluid::Fluid;
use sumpbook_trade::oil::{Level, OilSystem, rose};
use sumpbook_trade::record::Glass;
use sumpbook_trade::{EntryId, Fact, FactKind};

use super::inputs::{self, Bearing};
use super::scope::Scope;
use crate::judgement::Judged;
use crate::ledger::LedgerError;

/// The newest level, where it stands higher than the one before it by more than two readings can be off.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct RoseNow {
    /// The entry it was read in.
    pub entry: EntryId,
    /// When.
    pub at: DateTime<FixedOffset>,
    /// Where it had stood.
    pub from: Glass,
    /// Where it stands.
    pub to: Glass,
}

/// One look at the glass, or what explains any level after it.
struct Seen {
    entry: EntryId,
    at: DateTime<FixedOffset>,
    level: Option<(Glass, Level)>,
    explains: bool,
}

/// So many of the newest walks are read: two levels are enough, and hardly a walk has none.
const WALKS: i64 = 3;

/// Whether the newest level rose by itself. `bearing` holds the pours and services, `looked` the levels read alone;
/// `filled` says of a service whether it filled the unit.
pub(super) fn rose_last(
    scope: &Scope<'_>,
    (bearing, looked): (&[Bearing], &[Bearing]),
    filled: impl Fn(&Bearing) -> bool,
    upto_ms: i64,
) -> Result<Option<RoseNow>, LedgerError> {
    let mut seen: Vec<Seen> = bearing.iter().chain(looked).filter_map(|of| look(of, &filled)).collect();
    for fact in scope.newest_air(FactKind::PreTripSection, upto_ms, WALKS)? {
        if fact.judged == Judged::Counts
            && let Some(entry) = inputs::read(&scope.truth, fact.n)?
        {
            seen.extend(look(&Bearing { fact, entry }, &filled));
        }
    }
    seen.sort_by_key(|seen| (seen.at, seen.entry));
    // A walk that found something stands among the bearing ones, too.
    seen.dedup_by_key(|seen| seen.entry);
    let mut newest = seen.iter().rev();
    let (Some(last), Some(before)) = (newest.next(), newest.next()) else { return Ok(None) };
    let (false, Some((to, now)), Some((from, then))) = (last.explains, last.level, before.level) else {
        return Ok(None);
    };
    let system = OilSystem::of(scope.fleet.set_on(scope.truck).map(|set| &set.profile));
    let up = rose(&then, &now, &system, &scope.fleet.numbers.oil());
    Ok(up.then_some(RoseNow { entry: last.entry, at: last.at, from, to }))
}

fn look(bearing: &Bearing, filled: &impl Fn(&Bearing) -> bool) -> Option<Seen> {
    let entry = &bearing.entry;
    let seen = |level, explains| Seen { entry: entry.id, at: entry.at.moment(), level, explains };
    match &entry.fact {
        Fact::LevelCheck(level) if level.fluid == Fluid::CompressorOil => {
            Some(seen(Some((level.glass, Level::of_check(level))), false))
        }
        Fact::PreTripSection(section) => {
            let glass = section.glass()?;
            Some(seen(Some((glass, Level::of_walk(glass))), false))
        }
        Fact::TopUp(top_up) if top_up.fluid == Fluid::CompressorOil => {
            Some(seen(top_up.after.zip(Level::after(top_up)), true))
        }
        Fact::ServiceDone(_) if filled(bearing) => Some(seen(None, true)),
        _ => None,
    }
}
