//! Journeys: whole days lived by real phones and a real shop.
//!
//! Everything here is invented data; what comes out is worked by rule.

use std::path::PathBuf;

use chrono::NaiveDate;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::state::UnitState;
use sumpbook_shop::close;
use sumpbook_shop::demo::World;
use sumpbook_shop::due::{DueRow, due_list};
use sumpbook_shop::sheet::{DaySheet, Evening, Morning, Sections, View, day_sheet};
use sumpbook_trade::{Stamp, TruckId};
use tempfile::TempDir;

/// A moment from its text.
pub fn at(text: &str) -> Stamp {
    text.parse().expect("a moment")
}

/// A day from its text.
pub fn day(text: &str) -> NaiveDate {
    text.parse().expect("a day")
}

/// `hh:mm` of a moment as it stands on the yard's clock; "never" for none.
pub fn hm(at: Option<Stamp>) -> String {
    at.map_or_else(|| "never".to_owned(), |at| at.moment().format("%H:%M").to_string())
}

/// A demo lived as far as a moment, in a folder of its own.
pub struct Lived {
    /// Shop and phones.
    pub world: World,
    folder: TempDir,
}

impl Lived {
    /// Lives from the beginning until a moment.
    pub fn until(moment: &str) -> Lived {
        let folder = tempfile::tempdir().expect("a folder");
        let mut world = World::begin(folder.path()).expect("a fleet");
        world.live_until(at(moment), &mut |_| {}).expect("a life");
        Lived { world, folder }
    }

    /// The whole month.
    pub fn month() -> Lived {
        Lived::until("2026-11-16T23:00:00-07:00")
    }

    /// Where shop and phones keep their folders.
    pub fn folder(&self) -> PathBuf {
        self.folder.path().to_owned()
    }

    /// The shop's books as they were at a moment.
    pub fn known(&self, moment: &str) -> Ledger {
        close::as_of(&self.world.shop, at(moment)).expect("the books of then")
    }

    /// A unit by its door number.
    pub fn truck(&self, door: &str) -> TruckId {
        self.world.shop.unit(door).expect("a unit")
    }

    /// What a unit's entries added up to as the shop knew at a moment.
    pub fn unit(&self, door: &str, known: &str) -> UnitState {
        self.known(known).unit_state_at(self.truck(door), at(known).unix_ms()).expect("a state")
    }

    /// The sheet of a day as the shop could have read it at a moment.
    pub fn sheet(&self, of: &str, view: View, known: &str) -> DaySheet {
        day_sheet(&self.known(known), day(of), view, at(known)).expect("a sheet")
    }

    /// Its evening's sections.
    pub fn evening(&self, of: &str, known: &str) -> Evening {
        evening_of(self.sheet(of, View::Evening, known))
    }

    /// Its morning's sections.
    pub fn morning(&self, of: &str, known: &str) -> Morning {
        match self.sheet(of, View::Morning, known).view {
            Sections::Morning(morning) => *morning,
            Sections::Evening(_) => panic!("an evening where a morning was asked for"),
        }
    }

    /// One row of the due list as known at a moment; none when the task is closed for good.
    pub fn due(&self, door: &str, task: &str, known: &str) -> Option<DueRow> {
        due_row(&self.known(known), door, task, known)
    }

    /// What that row says.
    pub fn said(&self, door: &str, task: &str, known: &str) -> String {
        self.due(door, task, known).map_or_else(|| "not on the list".to_owned(), |row| row.said)
    }
}

/// The evening's sections of a sheet.
pub fn evening_of(sheet: DaySheet) -> Evening {
    match sheet.view {
        Sections::Evening(evening) => *evening,
        Sections::Morning(_) => panic!("a morning where an evening was asked for"),
    }
}

/// One row of a ledger's due list.
pub fn due_row(ledger: &Ledger, door: &str, task: &str, now: &str) -> Option<DueRow> {
    let list = due_list(ledger, at(now)).expect("a due list");
    list.rows.into_iter().find(|row| row.unit == door && row.task == task)
}
