//! A top-up under way (P10).

use sumpbook_daybook::draft::MissingSign;
use sumpbook_daybook::screen::{
    self, LevelNow, Main, OilLine, OilUseRow, PourRow, StopNow, TopUpScreen, Wait,
};
use sumpbook_trade::record::{Glass, Pour, Warmth};
use sumpbook_trade::{EntryId, Figure, Fluid, Mix, OilFamily};

use crate::error::PhoneError;
use crate::phone::Phone;
use crate::values::GlassBand;

/// A top-up under way.
#[uniffi::remote(Record)]
pub struct TopUpScreen {
    /// The draft.
    pub draft: EntryId,
    /// The unit's door number.
    pub door: String,
    /// Which fluid.
    pub fluid: Fluid,
    /// It should not need any: a pour opens a defect by itself.
    pub sealed: bool,
    /// What belongs in the compressor; none for another fluid.
    pub oil: Option<OilLine>,
    /// Family on the drum.
    pub drum_family: Option<OilFamily>,
    /// Grade on the drum.
    pub drum_grade: Option<String>,
    /// That was read off its label by a camera; with neither family nor grade it is an unknown drum.
    #[uniffi(default = false)]
    pub drum_scanned: bool,
    /// What stands between the two; none for another fluid and before the drum was read.
    pub mix: Option<Mix>,
    /// By what the drum says it may not go in: both oils are shown by their names.
    pub may_not_pour: bool,
    /// The two families gel when they meet.
    pub gels: bool,
    /// Poured so, it locks the air.
    pub locks_air: bool,
    /// First sign: the gauge reads 0.
    pub gauge_zero: Option<bool>,
    /// Second sign: blow-down ended, silent.
    pub blow_down_silent: Option<bool>,
    /// What keeps the cap shut; none when it may be opened.
    pub missing: Option<MissingSign>,
    /// Whether it runs.
    pub stop: StopNow,
    /// How long it had stood.
    pub wait: Wait,
    /// Where it stood before.
    pub before: Option<Glass>,
    /// That level is asked for before the first pour.
    pub wants_before: bool,
    /// The level is asked for after each pour.
    pub wants_after: bool,
    /// A pour that may not be made can be noted all the same when it is poured already.
    pub only_if_poured: bool,
    /// Seconds until oil that was poured has come up in the glass.
    pub settle_s: u32,
    /// The cautions of the step it stands at, for the texts `caution-...`.
    pub cautions: Vec<String>,
    /// Cold or hot, as it was said.
    #[uniffi(default = None)]
    pub warmth: Option<Warmth>,
    /// The oil's temperature, where it was given: hot oil stands higher, and two levels compare at one temperature.
    #[uniffi(default = None)]
    pub oil_temperature: Option<Figure>,
    /// The oil's temperature may be given: it is the compressor's oil and was not said to be cold. Nothing waits for it.
    #[uniffi(default = false)]
    pub offers_temperature: bool,
    /// Pours so far, first to last.
    pub pours: Vec<Pour>,
    /// All of them together, millilitres, to the nearest.
    pub poured_ml: i64,
    /// Where it stands now.
    pub now: Option<Glass>,
    /// The middle band in percent, both ends in it.
    pub middle: GlassBand,
    /// That against the middle.
    pub level: LevelNow,
    /// What the glass shows of the pours, when that is farther from what was poured than two readings can be:
    /// millilitres that are not there, below zero more than was poured. Ask: another unit, spilt, a leak?
    pub astray_ml: Option<i64>,
    /// Where the oil goes; none for another fluid.
    pub oil_use: Option<OilUseRow>,
    /// The last three top-ups, newest first.
    pub last: Vec<PourRow>,
    /// The main button: a pour, until it stands in the middle or over it.
    pub main: Main,
}

#[uniffi::export]
impl Phone {
    /// A top-up as it stands.
    ///
    /// # Errors
    /// `Draft` when there is no such top-up; as any read.
    pub fn top_up(&self, draft: EntryId) -> Result<TopUpScreen, PhoneError> {
        self.read(|book, now| Ok(screen::top_up(book.ledger(), &crate::drafts::top_up(book, draft)?, now)?))
    }
}
