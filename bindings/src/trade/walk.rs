//! What is answered on a walk.

use sumpbook_trade::Figure;
use sumpbook_trade::checklist::{EngineState, HowGiven, Severity, Side, WalkPlace};
use sumpbook_trade::record::{Answer, AnswerKind, Digest, How, ItemFigure};

/// What was answered. Nothing is ever answered beforehand.
#[uniffi::remote(Enum)]
pub enum AnswerKind {
    /// As it should be.
    Ok,
    /// Something is wrong.
    Defect,
    /// This unit has no such part.
    NotFitted,
    /// It could not be looked at.
    CouldNotCheck,
}

/// How a figure came.
#[uniffi::remote(Enum)]
pub enum How {
    /// The screen asked for it.
    Asked,
    /// Picked from a few by one tap.
    Chosen,
    /// Measured by the phone's own timer.
    Timed,
    /// Given without being asked for.
    Offered,
    /// Said from memory.
    Said,
}

/// A figure given with an answer.
#[uniffi::remote(Record)]
pub struct ItemFigure {
    /// The figure.
    pub figure: Figure,
    /// How it came.
    pub how: How,
}

/// The answer to one line of the checklist.
#[uniffi::remote(Record)]
pub struct Answer {
    /// The item's id in the template.
    pub item: String,
    /// Which of its places, such as `left`.
    #[uniffi(default)]
    pub place: Option<String>,
    /// What was answered.
    pub answer: AnswerKind,
    /// The word chosen for a defect.
    #[uniffi(default)]
    pub word: Option<String>,
    /// What a defect locks, from item and word; the driver may raise it, never lower it.
    #[uniffi(default)]
    pub severity: Option<Severity>,
    /// Figures given.
    #[uniffi(default)]
    pub figures: Vec<ItemFigure>,
    /// Milliseconds this line stood whole on the screen before it was answered.
    #[uniffi(default)]
    pub on_screen_ms: Option<u32>,
    /// Lines with the same number here were answered together by one tap.
    #[uniffi(default)]
    pub together: Option<u32>,
    /// The driver's own words, or why it could not be checked.
    #[uniffi(default)]
    pub words: Option<String>,
    /// Photos, by SHA-256.
    #[uniffi(default)]
    pub photos: Vec<Digest>,
    /// The noise a defect makes, as a clip of at most 10 s, by SHA-256; only of a defect.
    #[uniffi(default)]
    pub sound: Option<Digest>,
}

/// What a finding locks until the shop certifies it, worst first: the lesser in order is the worse.
#[uniffi::remote(Enum)]
pub enum Severity {
    /// The truck is not to be driven and the air not to be used.
    RoadAndAir,
    /// The truck is not to be driven.
    Road,
    /// The air is not to be used.
    Air,
    /// One outlet is not to be used.
    Outlet,
    /// Nothing is locked; the shop is told.
    Note,
}

/// A side of the unit.
#[uniffi::remote(Enum)]
pub enum Side {
    /// In front.
    Front,
    /// On the left.
    Left,
    /// Behind.
    Rear,
    /// On the right.
    Right,
    /// On the trailer.
    Trailer,
    /// On the body.
    Body,
}

/// How a figure comes to be.
#[uniffi::remote(Enum)]
pub enum HowGiven {
    /// The stop is not done without it.
    Asked,
    /// One tap among a few figures.
    Chosen,
    /// Two taps, and the time between them.
    Timed,
    /// Behind the line, for whoever wants to give it.
    Offered,
    /// The phone knows it; nobody gives it.
    Known,
}

/// The state the engine is in while a stop is walked. A stop has one, so nobody runs back to the cab.
#[uniffi::remote(Enum)]
pub enum EngineState {
    /// Off, key in the pocket.
    KeyOut,
    /// Off, somebody may sit in the cab.
    KeyOff,
    /// Off, key on, so that displays wake.
    KeyOn,
    /// Off or idling, every lamp on.
    LightsOn,
    /// Idling.
    Running,
    /// Compressor cold and stopped, pressure gone.
    ColdStopped,
    /// Off while pressure is fanned down, then fast idle while it builds up again.
    OffThenFastIdle,
}

/// Where one stands. Neighbouring stops of one place may be joined.
#[uniffi::remote(Enum)]
pub enum WalkPlace {
    /// At the open hood.
    Hood,
    /// Beside the frame, looking under.
    Under,
    /// In the cab.
    Cab,
    /// In front.
    Front,
    /// On the left.
    Left,
    /// Behind.
    Rear,
    /// At the trailer.
    Trailer,
    /// On the right.
    Right,
    /// At the body's bins.
    Body,
    /// At the compressor.
    Compressor,
    /// At the compressor's display.
    Panel,
    /// At the air outlets.
    Outlets,
    /// In the driver's seat, for the brake tests.
    Seat,
    /// In the yard, rolling.
    Yard,
}
