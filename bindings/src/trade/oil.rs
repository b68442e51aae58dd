//! Oil and its words.

use sumpbook_trade::oil::{Direction, NoVerdict, OilClass, OilVerdict};
use sumpbook_trade::record::{Glass, How, OilLook, Pour, StopWait, Warmth};
use sumpbook_trade::wear::WhyCalled;
use sumpbook_trade::{Figure, Fluid, Mix, OilFamily};

/// Where the oil stands in the sight glass.
#[uniffi::remote(Enum)]
pub enum Glass {
    /// Percent of the glass, 0-100; the middle is 50.
    Percent(u8),
    /// Under the glass: nothing to be seen.
    BelowView,
    /// Over the glass: nothing but oil.
    AboveView,
}

/// Whether the oil was cold or hot when read.
#[uniffi::remote(Enum)]
pub enum Warmth {
    /// Stood long enough to be as cold as the day.
    Cold,
    /// Soon after running.
    Hot,
}

/// How the oil looks.
#[uniffi::remote(Enum)]
pub enum OilLook {
    /// Clear, as its fill.
    Clear,
    /// Dark.
    Dark,
    /// Milky: water in it.
    Milky,
    /// Foam: look again after ten minutes.
    Foaming,
    /// Burnt smell or colour.
    Burnt,
}

/// How long the unit had stood when the glass was read.
#[uniffi::remote(Record)]
pub struct StopWait {
    /// Minutes since it was stopped.
    #[uniffi(default)]
    pub minutes: Option<u32>,
    /// Timed by this phone, or said.
    pub how: How,
}

/// One small pour.
#[uniffi::remote(Record)]
pub struct Pour {
    /// How much.
    pub volume: Figure,
    /// Where the level stood after waiting, when it was looked at.
    #[uniffi(default)]
    pub after: Option<Glass>,
    /// How long was waited before looking, in milliseconds, on a clock that counts through sleep.
    #[uniffi(default)]
    pub waited_ms: Option<u32>,
}

/// A fluid that is poured or drained. Numbers are the wire's: new ones are appended.
#[uniffi::remote(Enum)]
pub enum Fluid {
    /// The compressor's oil.
    CompressorOil,
    /// The engine's oil.
    EngineOil,
    /// The engine's coolant.
    Coolant,
    /// Oil of boom, crane or outriggers.
    HydraulicOil,
    /// The power steering's fluid.
    PowerSteering,
    /// Fluid of hydraulic brakes.
    BrakeFluid,
    /// Oil of clutch, gearbox or PTO case.
    GearboxOil,
    /// Oil of the compressor's gear case, grease of its belt tensioner.
    GearCase,
    /// Diesel exhaust fluid.
    Def,
    /// Fuel.
    Fuel,
    /// Water drained from the fuel's trap.
    WaterTrap,
    /// Washer fluid.
    WasherFluid,
    /// Water and oil drained from the brake air tanks.
    BrakeTanks,
    /// Water drained from the receiver.
    ReceiverWater,
    /// Water for the battery.
    BatteryWater,
    /// Oil of an outlet's oiler.
    ToolOil,
    /// Grease at its points.
    Grease,
}

/// What a compressor oil is made of. Numbers are the wire's: new ones are appended.
#[uniffi::remote(Enum)]
pub enum OilFamily {
    /// Mineral oil.
    Mineral,
    /// Synthetic hydrocarbon.
    SyntheticHydrocarbon,
    /// Ester.
    Ester,
    /// Polyglycol.
    Polyglycol,
    /// A blend of families.
    Blend,
}

/// What stands between two oils.
#[uniffi::remote(Enum)]
pub enum Mix {
    /// Same family, same grade.
    Same,
    /// Same family, another grade.
    OtherGrade,
    /// Another family, whatever the grade: the same number is not the same oil.
    OtherFamily,
    /// One of them does not say what it is: no pour.
    Unknown,
}

/// More or less.
#[uniffi::remote(Enum)]
pub enum Direction {
    /// More than usual: look at separator, scavenge line, leaks.
    More,
    /// Less than usual: look for water, a pour not written down, a wrong glass volume.
    Less,
}

/// A class of total oil by ISO 8573-1:2010.
#[uniffi::remote(Enum)]
pub enum OilClass {
    /// At most 0.01 mg/m3.
    Class1,
    /// At most 0.1 mg/m3.
    Class2,
    /// At most 1 mg/m3.
    Class3,
    /// At most 5 mg/m3.
    Class4,
    /// More than 5 mg/m3.
    ClassX,
}

/// What a balance says of a limit.
#[uniffi::remote(Enum)]
pub enum OilVerdict {
    /// The whole band lies under the limit or at it.
    Under,
    /// The whole band lies over it.
    Over,
    /// Nothing yet; the figure is shown with its reason.
    None(NoVerdict),
}

/// Why there is no verdict.
#[uniffi::remote(Enum)]
pub enum NoVerdict {
    /// It covers too few running hours.
    TooFewHours,
    /// The limit lies within what two readings of the glass may be off.
    BandTooWide,
    /// The glass's volume is not known, so neither is the band.
    GlassUnknown,
    /// The fill was still settling.
    Settling,
    /// Under the limit of the rated delivery, and how much air was made is not known.
    LoadShareUnknown,
    /// Less than nothing was used: a level is wrong, or a pour is missing.
    LessThanNothing,
}

/// Why the oil calls for its service.
#[uniffi::remote(Enum)]
pub enum WhyCalled {
    /// Another family was poured into it.
    WrongOil,
    /// Water in it.
    Milky,
    /// It was burnt.
    Burnt,
}
