//! A maker's campaign: work to be done once on every unit whose serial lies in a range, by a day.

use chrono::NaiveDate;

use crate::checklist::Severity;
use crate::clock::TaskId;
use crate::quantity::day;
use crate::{PersonId, SetId, Tenths, TruckId};

choice! {
    /// Whose serials a campaign names.
    pub enum CampaignOf {
        /// Compressor sets: it goes with the set to another truck.
        #[n(0)] Set,
        /// Trucks.
        #[n(1)] Truck,
    }
}

record! {
    /// Serials from one to another, both of them in it. One alone stands in both places.
    #[derive(Eq)]
    pub struct SerialRange {
        /// The first.
        #[n(0)] pub from: String,
        /// The last.
        #[n(1)] pub to: String,
    }

    /// A person looked at a unit whose serial did not tell whether it is meant.
    #[derive(Eq)]
    pub struct CampaignLooked {
        /// The truck, of a campaign of trucks.
        #[n(0)] pub truck: Option<TruckId>,
        /// The set, of a campaign of sets.
        #[n(1)] pub set: Option<SetId>,
        /// Whether it is meant.
        #[n(2)] pub hit: bool,
        /// What was looked at, and what it said.
        #[n(3)] pub why: String,
        /// Who looked.
        #[n(4)] pub by: Option<PersonId>,
        /// On which day of the yard.
        #[cbor(with = "day")]
        #[n(5)] pub on: NaiveDate,
    }

    /// A maker's campaign as the shop has it. One of the same task is changed, whole.
    #[derive(Eq)]
    pub struct CampaignSet {
        /// Its task, by which a service names it: [`TaskId::of_campaign`].
        #[n(0)] pub task: TaskId,
        /// What is to be done.
        #[n(1)] pub words: String,
        /// The number of the maker's paper.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(2)] pub paper: Option<String>,
        /// Where that paper can be read.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(3)] pub read_at: Option<String>,
        /// Whose serials are named.
        #[n(4)] pub of: CampaignOf,
        /// Which serials.
        #[n(5)] pub ranges: Vec<SerialRange>,
        /// The last good day.
        #[cbor(with = "day")]
        #[n(6)] pub deadline: NaiveDate,
        /// The last good figure of the unit's compressor hours, through every meter; whichever comes first.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(7)] pub hours: Option<Tenths>,
        /// What it locks: after its last good day, or at once when it says stop. A note locks nothing.
        #[n(8)] pub severity: Severity,
        /// The maker says stop until it is done: what it locks is locked from this entry on.
        #[cbor(default)]
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        #[n(9)] pub stop: bool,
        /// Taken back, and why.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(10)] pub withdrawn: Option<String>,
        /// Units that a person looked at.
        #[cbor(default)]
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        #[n(11)] pub looked: Vec<CampaignLooked>,
    }
}
