//! What a campaign keeps locked on a unit that is meant, and from when on.

use chrono::{DateTime, Days, FixedOffset, NaiveTime};
use chrono_tz::Tz;
use uuid::Uuid;

use crate::day::yard_moment;
use crate::defect::{DefectRef, LockOut, LockPart};
use crate::record::CampaignSet;

/// Stands for the checklist's item where a campaign locks and not a defect. Its words are `item-campaign`.
pub const CAMPAIGN_ITEM: &str = "campaign";

/// A campaign as one entry of the shop said it, in force from then to the next.
#[derive(Clone, Copy, Debug)]
pub struct Version<'a> {
    /// The entry.
    pub entry: Uuid,
    /// Its moment.
    pub at: DateTime<FixedOffset>,
    /// What it says.
    pub what: &'a CampaignSet,
    /// Whether the unit is meant by it, as its serial stands now.
    pub hits: bool,
}

/// Lock-outs of a campaign on one unit: from the end of its last good day in the yard's zone, or from the entry that
/// says stop, until it is done, changed or taken back. No certificate ends one, only the work does.
///
/// `versions` in their order. A version is never in force before the one it replaces.
pub fn lock_outs(versions: &[Version<'_>], done: Option<DateTime<FixedOffset>>, tz: Tz) -> Vec<LockOut> {
    let mut locks: Vec<LockOut> = Vec::new();
    let mut from = None;
    for (place, version) in versions.iter().enumerate() {
        let begun = from.map_or(version.at, |before: DateTime<FixedOffset>| before.max(version.at));
        from = Some(begun);
        let next = versions.get(place.saturating_add(1)).map(|next| next.at.max(begun));
        let ended = [next, done].into_iter().flatten().min();
        let Some(since) = locks_from(version, begun, tz) else { continue };
        if ended.is_some_and(|ended| ended <= since) {
            continue;
        }
        for part in parts(version.what) {
            // The same lock told again, in other words or for another day, is one lock.
            let same = locks.iter_mut().find(|lock| lock.part == part && lock.ended == Some(since));
            match same.filter(|_| since == begun) {
                Some(lock) => lock.ended = ended,
                None => {
                    let name = version.what.task.campaign().unwrap_or(&version.what.task.0).to_owned();
                    let because =
                        DefectRef { entry: version.entry, item: CAMPAIGN_ITEM.to_owned(), place: Some(name) };
                    locks.push(LockOut { part, since, because, certified: None, ended });
                }
            }
        }
    }
    locks
}

fn locks_from(version: &Version<'_>, begun: DateTime<FixedOffset>, tz: Tz) -> Option<DateTime<FixedOffset>> {
    let campaign = version.what;
    if !version.hits || campaign.withdrawn.is_some() {
        return None;
    }
    if campaign.stop {
        return Some(begun);
    }
    let over = campaign.deadline.checked_add_days(Days::new(1))?;
    yard_moment(over, NaiveTime::MIN, tz).map(|over| over.max(begun))
}

fn parts(campaign: &CampaignSet) -> impl Iterator<Item = LockPart> {
    let road = campaign.severity.locks_road().then_some(LockPart::Road);
    let air = campaign.severity.locks_air().then_some(LockPart::Air);
    road.into_iter().chain(air)
}
