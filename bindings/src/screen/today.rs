//! May I take it, and where was I (P2).

use chrono::NaiveDate;
use sumpbook_daybook::screen::{
    self, Counts, Main, News, PreTripNow, RoadAir, TodayQuery, TodayRow, TodayScreen,
};
use sumpbook_trade::day::DayStatus;
use sumpbook_trade::{PersonId, TruckId};

use crate::error::PhoneError;
use crate::phone::Phone;

/// Today.
#[uniffi::remote(Record)]
pub struct TodayScreen {
    /// Whose.
    pub person: Option<String>,
    /// The yard's day.
    pub day: NaiveDate,
    /// How old the shop's news is.
    pub news: News,
    /// Where this phone's entries stand.
    pub counts: Counts,
    /// Units: with a draft first, then those this person used last, then by door number.
    pub units: Vec<TodayRow>,
    /// Drafts of a newer version of this program, kept and not shown.
    pub unreadable_drafts: u32,
}

/// One unit's row.
#[uniffi::remote(Record)]
pub struct TodayRow {
    /// The unit: the row's id.
    pub id: TruckId,
    /// Its door number.
    pub door: String,
    /// This person has a draft of it or used it in the last 14 days.
    pub mine: bool,
    /// Road and air.
    pub road_air: RoadAir,
    /// What the shop has it down as today.
    pub status: Option<DayStatus>,
    /// Expected out from this minute of the day.
    pub expected_minute: Option<u16>,
    /// Where its pre-trip stands.
    pub pre_trip: PreTripNow,
    /// What the main button does with this unit chosen.
    pub main: Main,
}

#[uniffi::export]
impl Phone {
    /// Today, for the person whose name stands at the top.
    ///
    /// # Errors
    /// As any read.
    pub fn today(&self, person: PersonId) -> Result<TodayScreen, PhoneError> {
        self.read(|book, now| {
            Ok(screen::today(book.ledger(), &TodayQuery { person }, &book.standing()?, now)?)
        })
    }
}
