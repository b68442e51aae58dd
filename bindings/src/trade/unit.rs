//! A unit, its clocks, its meters, its people.

use sumpbook_trade::clock::{EnteredTwice, Nearer, Standing};
use sumpbook_trade::day::DayStatus;
use sumpbook_trade::defect::{LockPart, Verdict};
use sumpbook_trade::hours::{Hint, KeyboardAnswer};
use sumpbook_trade::record::{DefectName, Meter, NoteKind, RepairVerdict, Role};
use sumpbook_trade::{EntryId, Figure, Tenths};
use uuid::Uuid;

use crate::values::FigureUnit;

/// What the shop has a unit down as for a day.
#[uniffi::remote(Enum)]
pub enum DayStatus {
    /// Expected to work.
    Out,
    /// Standing in the yard.
    Parked,
    /// In the shop.
    InShop,
    /// Laid up.
    Stored,
    /// With somebody else.
    Lent,
    /// With somebody else who pays for it.
    RentedOut,
    /// Not the fleet's any more.
    Sold,
}

/// How a task stands, from least to most pressing.
#[uniffi::remote(Enum)]
pub enum Standing {
    /// A first service that is behind the unit: it never returns.
    Closed,
    /// Neither clock is near its end.
    FarOff,
    /// A clock that should count has nothing to count from, and no other clock is nearer. Never "far off".
    Unknown,
    /// Within a tenth of the hours, 14 days, or the parts' lead time.
    ComingUp,
    /// Today, or this very tenth of an hour, is the last good one.
    DueToday,
    /// A clock has run out by a tenth of an hour or by a day.
    PastDue,
}

/// Which clock runs out first.
#[uniffi::remote(Enum)]
pub enum Nearer {
    /// The hours clock.
    Hours,
    /// The calendar.
    Calendar,
    /// It cannot be told: the pace is not known, or a figure is missing.
    Unknown,
}

/// Two entries that look like one service (R7).
#[uniffi::remote(Record)]
pub struct EnteredTwice {
    /// The earlier of the two.
    pub first: Uuid,
    /// The later one.
    pub second: Uuid,
    /// Whether the shop has said so. Until then it is a question.
    pub settled: bool,
}

/// What to say of a figure being typed. Nothing is ever refused: after a question it is kept as typed.
#[uniffi::remote(Enum)]
pub enum KeyboardAnswer {
    /// Nothing to ask.
    Fits,
    /// The meter cannot show so much yet.
    AboveCeiling {
        /// What it can show at most.
        ceiling: Tenths,
        /// What would explain the figure, likeliest first.
        hints: Vec<Hint>,
    },
    /// It shows less than before.
    Backwards {
        /// What it showed last.
        last: Tenths,
        /// What would explain the figure, likeliest first.
        hints: Vec<Hint>,
    },
    /// 0.1 h less than before: kept aside, nobody is asked.
    SlippedBack,
    /// It can be, and is a good deal more than this unit runs.
    UnlikeThisUnit {
        /// The rise per 24 hours.
        rise: Tenths,
        /// What a day's rise is seldom above.
        seldom_above: Tenths,
    },
}

/// What would explain a figure.
#[uniffi::remote(Enum)]
pub enum Hint {
    /// Typed wrong: with two digits swapped or the point moved it would fit and read this.
    TypedWrong {
        /// What it would read.
        reads: Tenths,
    },
    /// The accepted figure was typed wrong: with two digits swapped or the point moved it would read
    /// this, and everything would fit.
    EarlierTypedWrong {
        /// The entry of the accepted figure.
        entry: Uuid,
        /// What it would read.
        reads: Tenths,
    },
    /// The meter went round at this figure.
    WentRound {
        /// One step past the highest figure it can show.
        end: Tenths,
    },
    /// A new meter from 0.0 can have counted this since the last accepted reading.
    MeterChanged,
    /// Nothing else fits: another meter of this unit, or another truck.
    OtherMeterOrTruck,
}

/// Which meter. Each is judged by itself and never feeds another.
#[uniffi::remote(Enum)]
pub enum Meter {
    /// Hours of the compressor.
    Compressor,
    /// Hours of the engine.
    Engine,
    /// Hours with the PTO engaged.
    Pto,
}

/// What a defect takes out of use.
///
/// As text `road`, `air`, or `outlet/` with the outlet's name.
#[uniffi::remote(Enum)]
pub enum LockPart {
    /// The truck is not to be driven.
    Road,
    /// The compressor is not to be started.
    Air,
    /// One outlet is not to be used, by the name the unit's profile gives it.
    Outlet(String),
}

/// What the shop certifies: the two ways 49 CFR 396.11(a)(3)(ii) knows.
#[uniffi::remote(Enum)]
pub enum Verdict {
    /// Repaired.
    Repaired,
    /// Repair not needed.
    NotNeeded,
}

/// What kind of message stood there.
#[uniffi::remote(Enum)]
pub enum NoteKind {
    /// A fault.
    Fault,
    /// A warning.
    Warning,
    /// A reminder of service.
    Reminder,
}

/// What the shop certifies.
#[uniffi::remote(Enum)]
pub enum RepairVerdict {
    /// It was repaired.
    Repaired,
    /// Repair is not needed.
    NotNeeded,
}

/// Which defect: the entry that first found it, and the line.
#[uniffi::remote(Record)]
pub struct DefectName {
    /// The entry with the finding.
    pub entry: EntryId,
    /// The item.
    pub item: String,
    /// Its place.
    #[uniffi(default)]
    pub place: Option<String>,
}

/// What someone does here.
#[uniffi::remote(Enum)]
pub enum Role {
    /// Drives and signs for the truck.
    Driver,
    /// Works on site.
    Crew,
    /// Learns, with a trainer.
    Trainee,
    /// Repairs and certifies.
    Mechanic,
    /// Runs the shop.
    Manager,
}

/// A figure exactly as someone gave it. Another unit on the screen never rewrites it.
///
/// `0.21 qt` is digits 21, places 2, unit quart. In JSON `{"value": "0.21", "unit": "qt"}`.
#[uniffi::remote(Record)]
pub struct Figure {
    /// All digits without the decimal point.
    pub digits: i64,
    /// How many of them stand after the point; at most 6.
    pub places: u8,
    /// The unit it was given in.
    pub unit: FigureUnit,
}
