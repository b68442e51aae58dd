//! Work that waits for a part, and the part that is in.

use serde::{Deserialize, Serialize};
use sumpbook_daybook::state::WaitingNow;
use sumpbook_trade::record::WaitingForPart;
use sumpbook_trade::{EntryId, TruckId};

use crate::due::PartRow;
use crate::sheet::Yard;
use crate::{Hand, Shop, ShopError, service};

/// An open wait, by the entry that told it: so it can be ended without telling again what it is for.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct WaitRow {
    /// Its entry.
    pub entry: EntryId,
    /// The task it is for: a key of the texts.
    pub task: Option<String>,
    /// What is waited for.
    #[serde(flatten)]
    pub part: PartRow,
}

impl WaitRow {
    /// A wait of a unit as it stands.
    pub(crate) fn of(yard: &Yard, door: &str, wait: &WaitingNow) -> WaitRow {
        let task = wait.what.task.as_ref().map(ToString::to_string);
        WaitRow { entry: wait.entry, task, part: PartRow::of(yard, door, wait) }
    }
}

/// Records that work waits for a part, or that the wait is over. The task stays due.
///
/// # Errors
/// When nobody is named, a task is not in the unit's programme, the part is promised for a day that is over, or a wait
/// is to be over and the unit has no such open one: the record would then tell of a part that nobody waited for.
pub fn wait_for_part(
    shop: &mut Shop,
    truck: TruckId,
    wait: WaitingForPart,
    hand: &Hand,
) -> Result<EntryId, ShopError> {
    if hand.person.is_none() {
        return Err(ShopError::NoPerson);
    }
    if let Some(task) = wait.task.as_ref().filter(|_| !wait.over) {
        service::known_tasks(shop, truck, std::slice::from_ref(task))?;
    }
    let today = shop.ledger.fleet().yard_day(hand.at);
    if let Some(promised) = wait.promised.filter(|day| !wait.over && *day < today) {
        return Err(ShopError::DayOver(promised));
    }
    if wait.over && !shop.ledger.unit_state(truck)?.waiting.iter().any(|open| open.is_ended_by(&wait)) {
        return Err(no_such_wait(shop, truck));
    }
    shop.write(Some(truck), wait.into(), None, hand)
}

/// Records that the part of an open wait is in: task, defect and part are the wait's own.
///
/// # Errors
/// When nobody is named, or the unit has no such open wait.
pub fn part_is_in(shop: &mut Shop, truck: TruckId, wait: EntryId, hand: &Hand) -> Result<EntryId, ShopError> {
    let open = shop.ledger.unit_state(truck)?.waiting;
    let Some(known) = open.into_iter().find(|open| open.entry == wait) else {
        return Err(no_such_wait(shop, truck));
    };
    wait_for_part(shop, truck, WaitingForPart { over: true, promised: None, ..known.what }, hand)
}

fn no_such_wait(shop: &Shop, truck: TruckId) -> ShopError {
    ShopError::NoSuchWait(shop.ledger.fleet().door(truck))
}
