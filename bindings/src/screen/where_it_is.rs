//! Has the shop got it (P16).

use chrono::NaiveDate;
use sumpbook_daybook::phone::online::TriedWhy;
use sumpbook_daybook::screen::{
    self, Aside, Counts, Main, News, PhotoCounts, PhotoPlace, PhotoRow, Place, WhereDay, WhereQuery,
    WhereRow, WhereScreen,
};
use sumpbook_trade::record::Digest;
use sumpbook_trade::{EntryId, FactKind, Stamp, TruckId};

use crate::error::PhoneError;
use crate::phone::Phone;
use crate::values::JudgedAs;

/// Where it stands.
#[uniffi::remote(Record)]
pub struct WhereScreen {
    /// How many stand where, of all there are.
    pub counts: Counts,
    /// How many photos stand where; one that stopped on its way is told by `error-photo-stopped`.
    pub photos: PhotoCounts,
    /// How old the shop's news is.
    pub news: News,
    /// The shop was last tried.
    pub tried: Option<Stamp>,
    /// Why that came to nothing, whoever or whatever tried; none when it is not known.
    pub tried_why: Option<TriedWhy>,
    /// It will be tried again.
    pub again: Option<Stamp>,
    /// When the shop stopped this phone, for the text `error-phone-stopped`; none: it did not.
    pub stopped: Option<Stamp>,
    /// This phone's entries, newest day first, units by door number.
    pub days: Vec<WhereDay>,
    /// The main button.
    pub main: Main,
}

/// Why the shop was tried in vain.
#[uniffi::remote(Enum)]
pub enum TriedWhy {
    /// No way there.
    NoSignal,
    /// Somebody else answers there.
    OtherShop,
    /// The shop said no, or had no room.
    SaidNo,
    /// Something on this phone, or its answer could not be read.
    Other,
}

/// One unit's entries of one day.
#[uniffi::remote(Record)]
pub struct WhereDay {
    /// The yard's day.
    pub day: NaiveDate,
    /// The unit; none for matters of the fleet.
    pub unit: Option<TruckId>,
    /// Its door number.
    pub door: Option<String>,
    /// In order of time.
    pub rows: Vec<WhereRow>,
}

/// One entry.
#[uniffi::remote(Record)]
pub struct WhereRow {
    /// The entry: the row's id.
    pub id: EntryId,
    /// Its kind, for the text `kind-...`.
    pub kind: FactKind,
    /// When.
    pub at: Stamp,
    /// Who.
    pub by: Option<String>,
    /// Where it stands.
    pub place: Place,
    /// Set aside, and why.
    pub aside: Option<Aside>,
    /// The photos it names that this phone holds.
    pub photos: Vec<PhotoRow>,
}

/// A photo of an entry.
#[uniffi::remote(Record)]
pub struct PhotoRow {
    /// Its name, SHA-256: the row's id.
    pub photo: Digest,
    /// It is a sound.
    pub sound: bool,
    /// Where it stands.
    pub place: PhotoPlace,
}

/// Where an entry stands.
#[uniffi::remote(Enum)]
pub enum Place {
    /// Only on this phone.
    OnPhone,
    /// A receipt of the shop covers it.
    AtShop,
}

/// Why an entry is not counted. It is kept and shown.
#[uniffi::remote(Enum)]
pub enum Aside {
    /// By judgement, for the text `aside-...`.
    Judged(JudgedAs),
    /// Its hours do not fit the meter (R3); the rest of it counts.
    Reading,
    /// The shop has set it aside; its reason comes with the next news.
    ByShop,
}

#[uniffi::export]
impl Phone {
    /// Where this phone's entries stand, of today and so many days before.
    ///
    /// # Errors
    /// As any read.
    pub fn where_it_is(&self, days_back: u16) -> Result<WhereScreen, PhoneError> {
        self.read(|book, now| {
            let query = WhereQuery { days_back };
            Ok(screen::where_it_is(book.ledger(), &query, &book.standing()?, now)?)
        })
    }
}
