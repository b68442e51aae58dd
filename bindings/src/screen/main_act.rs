//! The main button: what it does, and why it does not yet.

use sumpbook_daybook::draft::MissingSign;
use sumpbook_daybook::screen::{DisabledReason, Main, MainAct};
use sumpbook_trade::{EntryId, Mix, Tenths};

/// The main button.
#[uniffi::remote(Record)]
pub struct Main {
    /// What it does.
    pub act: MainAct,
    /// Why it does not yet; none when it may be pressed.
    pub why_not: Option<DisabledReason>,
}

/// What the main button does. Its label is the text of [`MainAct::text_key`].
#[uniffi::remote(Enum)]
pub enum MainAct {
    /// Begin a pre-trip.
    StartPreTrip,
    /// Go on with a pre-trip at a stop.
    GoOn {
        /// The draft.
        draft: EntryId,
        /// Label of the stop; none before the first.
        stop: Option<String>,
        /// The stop's place in the unit's own walk, 1 first; none of a draft that an older version kept.
        at: Option<u32>,
    },
    /// Take the unit over from whoever signed its pre-trip: read that record, then walk a short one.
    TakeOver {
        /// The entry of the first one's walk.
        after: EntryId,
    },
    /// Report the end of the day.
    ReportEndOfDay {
        /// A report already begun.
        draft: Option<EntryId>,
    },
    /// The last report was read and its certificates reviewed.
    ReadAndReviewed,
    /// The last report was read; road stays locked.
    ReadRoadStaysLocked,
    /// The last report was read; air stays locked.
    ReadAirStaysLocked,
    /// The last report was read; road and air stay locked.
    ReadBothStayLocked,
    /// Every line of the stop is OK.
    AllOk {
        /// How many lines.
        lines: u32,
    },
    /// The lines not answered yet are OK.
    OtherOk {
        /// How many lines.
        lines: u32,
    },
    /// The glass stands as the first driver's record shows it, and the other lines are OK.
    StillAsShown {
        /// Where that is, percent.
        percent: u8,
        /// How many lines.
        lines: u32,
    },
    /// Go to the next stop; none is left: to the signature.
    NextStop {
        /// Its label.
        stop: Option<String>,
        /// Its place in the unit's own walk, 1 first.
        at: Option<u32>,
    },
    /// Keep the level of the glass.
    KeepLevel,
    /// Note a pour.
    AddPour,
    /// The cap is tight: finish.
    FinishTopUp,
    /// Say that the shop was told of a display note.
    ToldShop,
    /// Write down what the display shows.
    KeepNote,
    /// Give the hours as typed.
    GiveHours {
        /// The figure.
        figure: Tenths,
    },
    /// After a question: it does read so.
    YesItReads {
        /// The figure.
        figure: Tenths,
    },
    /// Above what can be: keep it with a photo for the shop to settle.
    KeepWithPhoto {
        /// The figure.
        figure: Tenths,
    },
    /// Type a figure.
    TypeHours,
    /// Sign the end-of-day report.
    SignEndOfDay,
    /// Try to reach the shop.
    TryShop,
}

/// Why something cannot be pressed yet. It stands above the button in words.
#[uniffi::remote(Enum)]
pub enum DisabledReason {
    /// Lines have not been whole on the screen yet.
    MoreBelow {
        /// How many.
        left: u32,
    },
    /// The stop has just opened: a bounce must not answer it.
    JustOpened {
        /// Milliseconds until it takes a tap.
        left_ms: u32,
    },
    /// A line asks for its figure first.
    FigureMissing {
        /// The item.
        item: String,
    },
    /// A sign of zero pressure is missing.
    SignMissing(MissingSign),
    /// The drum's label was not read.
    DrumNotRead,
    /// The drum's oil is not this unit's, or unknown. What was poured already can be noted all the same.
    OilMayNotMeet(Mix),
    /// Neither "none found" nor a defect was said.
    DefectsNotSaid,
    /// The level was not given.
    LevelNotGiven,
    /// The compressor is running by what was recorded.
    Running,
    /// Somebody told the shop already.
    AlreadyTold,
    /// No figure was typed.
    NothingTyped,
}

/// A sign of zero pressure that is not there.
#[uniffi::remote(Enum)]
pub enum MissingSign {
    /// The gauge was not read at 0.
    GaugeZero,
    /// Blow-down was not heard to end.
    BlowDownSilent,
    /// Neither.
    Both,
}
