//! How dusty today's site is: asked on arrival, and once more at the day's end where nobody said it.

use serde::{Deserialize, Serialize};
use sumpbook_trade::record::SiteDust;
use sumpbook_trade::{Fact, FactKind, Stamp, TruckId};

use super::defect_row::name;
use super::levels::newest_air_entries;
use crate::ledger::{Ledger, LedgerError};

/// What was said last of today's site.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SiteRow {
    /// How dusty.
    pub dust: SiteDust,
    /// Since when: the first word of a day holds from its midnight.
    pub at: Stamp,
    /// Who said it.
    pub by: Option<String>,
}

/// Whether the site's dust is asked, and what is known of it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SiteAsk {
    /// It is asked. On arrival always, for each site is another; at the day's end only where nobody said it, for a
    /// word said last would hold for no hour of the day.
    pub asked: bool,
    /// What was said last today.
    pub said: Option<SiteRow>,
}

impl SiteAsk {
    /// On arrival; none for a unit whose hours the dust does not weigh.
    pub(super) fn on_arrival(
        ledger: &Ledger,
        unit: TruckId,
        now: Stamp,
    ) -> Result<Option<SiteAsk>, LedgerError> {
        SiteAsk::of(ledger, unit, now, |_| true)
    }

    /// At the end of a day's work.
    pub(super) fn at_days_end(
        ledger: &Ledger,
        unit: TruckId,
        now: Stamp,
    ) -> Result<Option<SiteAsk>, LedgerError> {
        SiteAsk::of(ledger, unit, now, Option::is_none)
    }

    fn of(
        ledger: &Ledger,
        unit: TruckId,
        now: Stamp,
        asked: impl FnOnce(&Option<SiteRow>) -> bool,
    ) -> Result<Option<SiteAsk>, LedgerError> {
        let fleet = ledger.fleet();
        // What wears by the dust is the oil: without such a task nobody is asked.
        if !fleet.programme_of(unit).tasks.iter().any(|task| task.counts_weighted) {
            return Ok(None);
        }
        let today = fleet.yard_day(now);
        let newest = newest_air_entries(ledger, unit, FactKind::SiteCondition, 1)?;
        let said = newest.into_iter().find_map(|entry| match &entry.fact {
            Fact::SiteCondition(site) if fleet.yard_day(entry.at) == today => Some(SiteRow {
                dust: site.dust,
                at: entry.at,
                by: entry.person.and_then(|person| name(fleet, person.0)),
            }),
            _ => None,
        });
        Ok(Some(SiteAsk { asked: asked(&said), said }))
    }
}
