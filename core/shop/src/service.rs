//! A service done, recorded at the shop.

use sumpbook_daybook::fleet::{Campaign, Fleet};
use sumpbook_trade::campaign::Hit;
use sumpbook_trade::clock::TaskId;
use sumpbook_trade::record::ServiceDone;
use sumpbook_trade::{EntryId, Stamp, Tenths, TruckId};

use crate::sheet::key;
use crate::{Hand, Shop, ShopError, Told};

/// Records a service: which tasks, at how many hours. Only this moves a clock.
///
/// # Errors
/// When nobody is named, no task is given, or a task is not in the unit's programme: it then names those
/// that are; when oil of another family went in than the unit is down as having.
pub fn service_done(
    shop: &mut Shop,
    truck: TruckId,
    done: ServiceDone,
    hours: Option<Tenths>,
    hand: &Hand,
) -> Result<EntryId, ShopError> {
    if hand.person.is_none() {
        return Err(ShopError::NoPerson);
    }
    known_tasks(shop, truck, &done.tasks)?;
    same_family(shop, truck, &done, hand.at)?;
    shop.write(Some(truck), done.into(), hours, hand)
}

/// Records a service that someone else did, or that was done earlier, as it was told at the shop or stands on
/// an invoice.
///
/// # Errors
/// As [`service_done`]; and when it is dated before the unit came into service.
pub fn service_told(
    shop: &mut Shop,
    truck: TruckId,
    done: ServiceDone,
    told: Told,
    hand: &Hand,
) -> Result<EntryId, ShopError> {
    if hand.person.is_none() {
        return Err(ShopError::NoPerson);
    }
    known_tasks(shop, truck, &done.tasks)?;
    same_family(shop, truck, &done, told.at)?;
    not_before_service(shop, truck, told.at)?;
    shop.write_told(Some(truck), done.into(), told, hand)
}

/// Refuses a service dated before the unit came into service: no clock would run from it.
pub(crate) fn not_before_service(shop: &Shop, truck: TruckId, at: Stamp) -> Result<(), ShopError> {
    let fleet = shop.ledger.fleet();
    let said = fleet.yard_day(at);
    match fleet.trucks.get(&truck).filter(|unit| said < unit.in_service) {
        Some(unit) => {
            Err(ShopError::BeforeInService { unit: unit.door.clone(), since: unit.in_service, said })
        }
        None => Ok(()),
    }
}

/// Refuses oil of another family than the set was down as having then, and is now: what is poured later would be held
/// against a family that is not in it.
fn same_family(shop: &Shop, truck: TruckId, done: &ServiceDone, at: Stamp) -> Result<(), ShopError> {
    let fleet = shop.ledger.fleet();
    let then = fleet.oil_at(truck, at.unix_ms()).and_then(|oil| oil.family);
    let now = fleet.set_on(truck).and_then(|set| set.profile.oil_family);
    match (done.oil.as_ref().and_then(|oil| oil.family), then.or(now)) {
        (Some(said), Some(is)) if said != is && Some(said) != now => {
            Err(ShopError::OilOfAnotherFamily { unit: fleet.door(truck), is: key(&is), said: key(&said) })
        }
        _ => Ok(()),
    }
}

/// Refuses no task at all, and a task that is not in the unit's programme.
pub(crate) fn known_tasks(shop: &Shop, truck: TruckId, tasks: &[TaskId]) -> Result<(), ShopError> {
    if tasks.is_empty() {
        return Err(ShopError::UnknownTask {
            task: String::new(),
            unit: shop.ledger.fleet().door(truck),
            known: names(&known(shop, truck)),
        });
    }
    tasks.iter().try_for_each(|task| check(shop, truck, task))
}

fn check(shop: &Shop, truck: TruckId, task: &TaskId) -> Result<(), ShopError> {
    let known = known(shop, truck);
    if known.contains(task) {
        return Ok(());
    }
    let unit = shop.ledger.fleet().door(truck);
    Err(ShopError::UnknownTask { task: task.to_string(), unit, known: names(&known) })
}

/// The tasks of a unit's programme, first services too, then the makers' campaigns that are about it or may be.
pub(crate) fn known_in(fleet: &Fleet, truck: TruckId) -> Vec<TaskId> {
    let programme = fleet.programme_of(truck);
    let first = |task: &sumpbook_trade::clock::Task| task.first_service.as_ref().map(|f| f.id.clone());
    let tasks = programme.tasks.iter().flat_map(|task| first(task).into_iter().chain([task.id.clone()]));
    let campaigns = fleet.campaigns.values().filter_map(Campaign::now);
    let here = campaigns.filter(|what| what.withdrawn.is_none() && fleet.hit(what, truck) != Hit::No);
    tasks.chain(here.map(|what| what.task.clone())).collect()
}

fn known(shop: &Shop, truck: TruckId) -> Vec<TaskId> {
    known_in(shop.ledger.fleet(), truck)
}

fn names(tasks: &[TaskId]) -> String {
    tasks.iter().map(TaskId::to_string).collect::<Vec<_>>().join(", ")
}
