//! The sight glass (P9).

use sumpbook_daybook::screen::{self, GlassQuery, GlassScreen, LevelNow, Main, OilLine, StopNow, Wait};
use sumpbook_trade::checklist::Severity;
use sumpbook_trade::record::{Glass, StopWait, Warmth};
use sumpbook_trade::{Figure, Stamp, TruckId};

use crate::checklist::template;
use crate::error::PhoneError;
use crate::phone::Phone;
use crate::values::GlassBand;

/// The glass.
#[uniffi::remote(Record)]
pub struct GlassScreen {
    /// The unit's door number.
    pub door: String,
    /// What belongs in it, and the level last read.
    pub oil: OilLine,
    /// The middle band in percent, both ends in it.
    pub middle: GlassBand,
    /// Whether it runs.
    pub stop: StopNow,
    /// How long it had stood.
    pub wait: Wait,
    /// The level as given.
    pub given: Option<Glass>,
    /// The level against the middle.
    pub level: LevelNow,
    /// It stands under the middle: oil is missing.
    pub low: bool,
    /// The checklist's word for this level, when it is a finding of its own.
    pub word: Option<String>,
    /// What that locks.
    pub locks: Option<Severity>,
    /// It rose since it was last read and nothing was poured: ask.
    pub rose_without_a_pour: bool,
    /// Today a photo of the glass is asked, with the day's number in view: drawn from unit and day.
    pub photo_asked: bool,
    /// The main button.
    pub main: Main,
}

/// Whether the compressor runs, by what was recorded.
#[uniffi::remote(Enum)]
pub enum StopNow {
    /// Stopped at this moment.
    Stopped(Stamp),
    /// Started then, and no stop is recorded.
    Running(Stamp),
    /// Neither a start nor a stop is on this phone.
    Unknown,
}

/// How long it had stood.
#[uniffi::remote(Enum)]
pub enum Wait {
    /// Long enough: what goes into the record.
    Enough(StopWait),
    /// Too short: the clock runs. Read anyway it is kept, out of balances.
    TooShort {
        /// Seconds left.
        left_s: i64,
        /// What goes into the record when read all the same.
        record: StopWait,
    },
    /// Nobody knows: ask.
    Ask,
}

#[uniffi::export]
impl Phone {
    /// The glass of a unit: the level as dragged so far, what was said of the unit having stood 5 minutes, cold or
    /// hot, and the oil's temperature where a display shows it.
    ///
    /// # Errors
    /// As any read.
    #[uniffi::method(default(warmth = None, oil_temperature = None))]
    pub fn glass(
        &self,
        unit: TruckId,
        given: Option<Glass>,
        said_stopped: Option<bool>,
        warmth: Option<Warmth>,
        oil_temperature: Option<Figure>,
    ) -> Result<GlassScreen, PhoneError> {
        let query = GlassQuery { unit, given, said_stopped, warmth, oil_temperature };
        self.read(|book, now| Ok(screen::glass(book.ledger(), &query, template(book)?, now)?))
    }
}
