//! Makers' campaigns on one unit: which are about it, or may be, and what became of them there.

use std::collections::BTreeMap;

use sumpbook_trade::campaign::{self, Hit, Version};
use sumpbook_trade::clock::{ServiceDecision, ServiceRow, TaskClock};
use sumpbook_trade::defect::LockOut;
use uuid::Uuid;

use super::CampaignNow;
use super::scope::Scope;
use crate::fleet::{Campaign, Fleet};

/// What campaigns add to a unit's state.
#[derive(Default)]
pub(super) struct Campaigns {
    /// Each that is about it, may be, or was done on it.
    pub(super) now: Vec<CampaignNow>,
    /// Those to be done, and those done, as tasks with their clocks.
    pub(super) clocks: Vec<TaskClock>,
    /// What they lock.
    pub(super) locks: Vec<LockOut>,
}

/// The campaigns of a unit, as they were said up to a moment.
pub(super) fn of_unit(
    scope: &Scope<'_>,
    served: &[ServiceRow],
    decisions: &BTreeMap<Uuid, ServiceDecision>,
    upto_ms: i64,
) -> Campaigns {
    let mut found = Campaigns::default();
    for campaign in scope.fleet.campaigns.values() {
        one(scope, campaign, (served, decisions), upto_ms, &mut found);
    }
    found
}

fn one(
    scope: &Scope<'_>,
    campaign: &Campaign,
    (served, decisions): (&[ServiceRow], &BTreeMap<Uuid, ServiceDecision>),
    upto_ms: i64,
    found: &mut Campaigns,
) {
    let (fleet, truck): (&Fleet, _) = (scope.fleet, scope.truck);
    let told: Vec<_> = campaign.by(upto_ms).collect();
    let Some(newest) = told.last() else { return };
    let what = &newest.what;
    let done = campaign::done(what, served, decisions);
    let is = fleet.hit(what, truck);
    let versions: Vec<Version<'_>> = told
        .iter()
        .map(|told| Version {
            entry: told.entry.0,
            at: told.at.moment(),
            what: &told.what,
            hits: fleet.hit(&told.what, truck) == Hit::Yes,
        })
        .collect();
    found.locks.extend(campaign::lock_outs(&versions, done.map(|(_, at)| at), fleet.zone));
    if is == Hit::No && done.is_none() {
        return;
    }
    let last = done.map(|(last, _)| last);
    // What is taken back is no task any more; what was done stays one that is closed.
    if last.is_some() || (is == Hit::Yes && what.withdrawn.is_none()) {
        found.clocks.push(campaign::clock(what, last, fleet.numbers.clocks().ahead));
    }
    found.now.push(CampaignNow { task: what.task.clone(), entry: newest.entry, is, done: last });
}
