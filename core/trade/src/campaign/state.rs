//! How a campaign stands on one unit.

use std::collections::BTreeMap;

use chrono::{DateTime, FixedOffset, NaiveDate};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

use super::hit::{Hit, LookWhy};
use crate::clock::{Ahead, FineHours, LastDone, LateBy, ServiceDecision, ServiceRow, Standing, TaskClock};
use crate::quantity::Tenths;
use crate::record::CampaignSet;

/// How a campaign stands on a unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", tag = "state", content = "why")]
pub enum CampaignStands {
    /// The unit is not meant.
    NotOfThisUnit,
    /// Its serial does not tell: a person must look.
    Look(LookWhy),
    /// Taken back by the shop before it was done here.
    Withdrawn,
    /// Done, once for ever.
    Done,
    /// To be done.
    Open,
    /// To be done, and its last good day or its last good hour is over.
    PastDeadline,
}

/// The service that did it, the earliest of those that name its task and count: later ones change nothing. With its
/// moment.
pub fn done(
    campaign: &CampaignSet,
    services: &[ServiceRow],
    decisions: &BTreeMap<Uuid, ServiceDecision>,
) -> Option<(LastDone, DateTime<FixedOffset>)> {
    let counts = |row: &&ServiceRow| {
        row.task == campaign.task && decisions.get(&row.entry) != Some(&ServiceDecision::DoesNotCount)
    };
    let first = services.iter().filter(counts).min_by_key(|row| (row.at, row.entry))?;
    Some((LastDone { entry: first.entry, hours: first.hours, day: first.day }, first.at))
}

/// The campaign as a task with two clocks: its hours run from 0.0 on the unit, its calendar ends on its last good day.
/// Done, it is closed and never returns, unless its service is taken back.
pub fn clock(campaign: &CampaignSet, done: Option<LastDone>, ahead: Ahead) -> TaskClock {
    TaskClock {
        task: campaign.task.clone(),
        first_of: None,
        interval_hours: campaign.hours,
        counts_weighted: false,
        counts_days: true,
        lead_days: 0,
        ahead,
        last: done,
        from_hours: Some(Tenths::ZERO),
        due_hours: campaign.hours,
        due_day: Some(campaign.deadline),
        closed: done.is_some(),
        late_by: done.and_then(|done| late(campaign, &done)),
        entered_twice: Vec::new(),
    }
}

fn late(campaign: &CampaignSet, done: &LastDone) -> Option<LateBy> {
    let over = campaign.hours.zip(done.hours).map(|(last, then)| FineHours::from(then - last));
    let hours = over.filter(|over| *over >= FineHours::TENTH);
    let days = done.day.signed_duration_since(campaign.deadline).num_days();
    let days = (days >= 1).then_some(days);
    (hours.is_some() || days.is_some()).then_some(LateBy { hours, days })
}

/// How it stands today, at these hours of the unit. What was done stays done, also where the unit is no longer meant.
pub fn stands(
    campaign: &CampaignSet,
    is: Hit,
    done: Option<LastDone>,
    hours: Option<Tenths>,
    today: NaiveDate,
) -> CampaignStands {
    if done.is_some() {
        return CampaignStands::Done;
    }
    match is {
        Hit::No => CampaignStands::NotOfThisUnit,
        _ if campaign.withdrawn.is_some() => CampaignStands::Withdrawn,
        Hit::Look(why) => CampaignStands::Look(why),
        Hit::Yes => match clock(campaign, None, Ahead::default()).state(hours, today).standing {
            Standing::PastDue => CampaignStands::PastDeadline,
            _ => CampaignStands::Open,
        },
    }
}
