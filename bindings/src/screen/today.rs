//! May I take it, and where was I (P2).

use chrono::NaiveDate;
use sumpbook_daybook::screen::{
    self, BecameNow, BecameRow, Counts, Main, News, PreTripNow, RoadAir, TodayQuery, TodayRow, TodayScreen,
};
use sumpbook_trade::day::DayStatus;
use sumpbook_trade::defect::Verdict;
use sumpbook_trade::{PersonId, Stamp, TruckId};

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
    /// What became of the defects this person told, the newest first.
    #[uniffi(default = [])]
    pub became: Vec<BecameRow>,
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

/// One defect that this person told, and what became of it.
#[uniffi::remote(Record)]
pub struct BecameRow {
    /// The defect's row id.
    pub id: String,
    /// Its unit.
    pub unit: TruckId,
    /// That unit's door number.
    pub door: String,
    /// The checklist's item, for the text `item-...`.
    pub item: String,
    /// Its place.
    pub place: Option<String>,
    /// Key of the word chosen, for the text `choice-...`.
    pub word: Option<String>,
    /// When this person told it, last.
    pub told: Stamp,
    /// Where it stands.
    pub now: BecameNow,
    /// Since when; none where nobody wrote that down.
    pub since: Option<Stamp>,
}

/// Where a defect that somebody told stands now, for the texts `became-...`.
#[uniffi::remote(Enum)]
pub enum BecameNow {
    /// The shop does not know yet.
    NotYetAtShop,
    /// The shop has it and has done nothing about it yet.
    AtShop,
    /// A visit is planned for it.
    Visit {
        /// On this day of the yard.
        day: NaiveDate,
    },
    /// The shop waits for a part.
    WaitingForPart {
        /// Which.
        part: String,
        /// Promised for this day.
        promised: Option<NaiveDate>,
    },
    /// Certified.
    Certified {
        /// Repaired, or repair not needed.
        verdict: Verdict,
        /// Who signed.
        by: Option<String>,
        /// In the shop's words.
        words: String,
    },
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
