//! The oil of a unit: what belongs in it, where it stood, what was poured.

use sumpbook_daybook::screen::{LevelNow, LevelRow, OilLine, PourRow};
use sumpbook_trade::record::{Glass, OilLook, StopWait, Warmth};
use sumpbook_trade::{EntryId, Figure, Fluid, OilFamily, Stamp, Tenths};

/// The oil that belongs in a unit.
#[uniffi::remote(Record)]
pub struct OilLine {
    /// Its family; none while the shop has not said.
    pub family: Option<OilFamily>,
    /// Its grade, as the label has it.
    pub grade: Option<String>,
    /// Whole volume of the sight glass.
    pub glass: Option<Figure>,
    /// The level last read.
    pub last: Option<LevelRow>,
}

/// A level as it was read.
#[uniffi::remote(Record)]
pub struct LevelRow {
    /// The entry that says it.
    pub id: EntryId,
    /// When.
    pub at: Stamp,
    /// By whom.
    pub by: Option<String>,
    /// Where it stood.
    pub glass: Glass,
    /// Cold or hot.
    pub warmth: Option<Warmth>,
    /// The oil's temperature, where a display showed it.
    pub oil_temperature: Option<Figure>,
    /// How long the unit had stood.
    pub stopped: Option<StopWait>,
    /// How the oil looked.
    pub look: Option<OilLook>,
}

/// A level against the middle.
#[uniffi::remote(Enum)]
pub enum LevelNow {
    /// Not given.
    NotGiven,
    /// Nothing to be seen.
    BelowView,
    /// Under the middle band by so many percent of the glass.
    Under(u8),
    /// In the middle band.
    Middle,
    /// Over it by so many percent.
    Over(u8),
    /// Nothing but oil.
    AboveView,
}

/// A top-up as a row.
#[uniffi::remote(Record)]
pub struct PourRow {
    /// Its entry.
    pub id: EntryId,
    /// When.
    pub at: Stamp,
    /// By whom.
    pub by: Option<String>,
    /// Which fluid.
    pub fluid: Fluid,
    /// Family on the drum.
    pub family: Option<OilFamily>,
    /// Each volume as it was given.
    pub volumes: Vec<Figure>,
    /// Before.
    pub before: Option<Glass>,
    /// After.
    pub after: Option<Glass>,
    /// Compressor hours then.
    pub hours: Option<Tenths>,
}
