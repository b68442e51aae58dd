//! Makers' campaigns as the fleet's book tells them, and which trucks they are about.

use std::collections::BTreeSet;

use serde::{Deserialize, Serialize};
use sumpbook_trade::campaign::{Hit, LookWhy, hit};
use sumpbook_trade::clock::TaskId;
use sumpbook_trade::record::{CampaignOf, CampaignSet};
use sumpbook_trade::{Entry, EntryId, PersonId, Stamp, TruckId};

use super::Fleet;

/// A campaign: everything the shop said of it, the newest last.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Campaign {
    /// One entry after another.
    pub told: Vec<CampaignTold>,
}

/// A campaign as one entry said it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct CampaignTold {
    /// The entry.
    pub entry: EntryId,
    /// Its moment.
    pub at: Stamp,
    /// Who.
    pub by: Option<PersonId>,
    /// What it said.
    pub what: CampaignSet,
}

impl CampaignTold {
    pub(super) fn of(entry: &Entry, what: &CampaignSet) -> CampaignTold {
        CampaignTold { entry: entry.id, at: entry.at, by: entry.person, what: what.clone() }
    }
}

impl Campaign {
    /// As it is said now.
    pub fn now(&self) -> Option<&CampaignSet> {
        self.told.last().map(|told| &told.what)
    }

    /// What had been said by a moment, milliseconds.
    pub fn by(&self, upto_ms: i64) -> impl Iterator<Item = &CampaignTold> {
        self.told.iter().filter(move |told| told.at.unix_ms() <= upto_ms)
    }
}

impl Fleet {
    /// Whether a truck, or the set on it, is meant by a campaign. A truck that is not in the fleet yet is not.
    pub fn hit(&self, campaign: &CampaignSet, truck: TruckId) -> Hit {
        let Some(registered) = self.trucks.get(&truck) else { return Hit::No };
        match campaign.of {
            CampaignOf::Truck => {
                let looked = campaign.looked.iter().rev().find(|one| one.truck == Some(truck));
                hit(campaign, registered.serial.as_deref(), looked.map(|one| one.hit))
            }
            CampaignOf::Set => match self.set_on(truck) {
                Some(set) => {
                    let looked = campaign.looked.iter().rev().find(|one| one.set == Some(set.set));
                    hit(campaign, set.serial.as_deref(), looked.map(|one| one.hit))
                }
                // Its set went elsewhere and is compared there.
                None if self.sets_of(truck).next().is_some() => Hit::No,
                None => Hit::Look(LookWhy::NoSerial),
            },
        }
    }

    /// The serial a campaign looks at on a truck.
    pub fn serial_for(&self, of: CampaignOf, truck: TruckId) -> Option<&str> {
        match of {
            CampaignOf::Truck => self.trucks.get(&truck)?.serial.as_deref(),
            CampaignOf::Set => self.set_on(truck)?.serial.as_deref(),
        }
    }

    /// Trucks that a campaign is about, or may be.
    pub fn not_outside(&self, campaign: &CampaignSet) -> BTreeSet<TruckId> {
        self.trucks.keys().copied().filter(|truck| self.hit(campaign, *truck) != Hit::No).collect()
    }

    /// Whether a task is a campaign of trucks: its service stays with the truck when the set goes.
    pub fn is_of_truck(&self, task: &TaskId) -> bool {
        let campaign = self.campaigns.get(task).and_then(Campaign::now);
        campaign.is_some_and(|campaign| campaign.of == CampaignOf::Truck)
    }
}
