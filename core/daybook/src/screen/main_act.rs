//! The main button of a screen: what it does, and why it does not yet.

use serde::{Deserialize, Serialize};
use sumpbook_trade::{EntryId, Mix, Tenths};

use crate::draft::MissingSign;

/// What the main button does. Its label is the text of [`MainAct::text_key`].
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
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

impl MainAct {
    /// Keys of all labels.
    pub const KEYS: [&'static str; 25] = [
        "main-start-pre-trip",
        "main-go-on",
        "main-go-on-begun",
        "main-take-over",
        "main-still-as-shown",
        "main-report-end-of-day",
        "main-read-and-reviewed",
        "main-read-road-stays-locked",
        "main-read-air-stays-locked",
        "main-read-both-stay-locked",
        "main-all-ok",
        "main-other-ok",
        "main-next-stop",
        "main-to-signature",
        "main-keep-level",
        "main-add-pour",
        "main-finish-top-up",
        "main-told-shop",
        "main-keep-note",
        "main-give-hours",
        "main-yes-it-reads",
        "main-keep-with-photo",
        "main-type-hours",
        "main-sign-end-of-day",
        "main-try-shop",
    ];

    /// Key of its label.
    pub fn text_key(&self) -> &'static str {
        match self {
            MainAct::StartPreTrip => "main-start-pre-trip",
            MainAct::GoOn { stop: Some(_), .. } => "main-go-on",
            MainAct::GoOn { stop: None, .. } => "main-go-on-begun",
            MainAct::TakeOver { .. } => "main-take-over",
            MainAct::StillAsShown { .. } => "main-still-as-shown",
            MainAct::ReportEndOfDay { .. } => "main-report-end-of-day",
            MainAct::ReadAndReviewed => "main-read-and-reviewed",
            MainAct::ReadRoadStaysLocked => "main-read-road-stays-locked",
            MainAct::ReadAirStaysLocked => "main-read-air-stays-locked",
            MainAct::ReadBothStayLocked => "main-read-both-stay-locked",
            MainAct::AllOk { .. } => "main-all-ok",
            MainAct::OtherOk { .. } => "main-other-ok",
            MainAct::NextStop { stop: Some(_), .. } => "main-next-stop",
            MainAct::NextStop { stop: None, .. } => "main-to-signature",
            MainAct::KeepLevel => "main-keep-level",
            MainAct::AddPour => "main-add-pour",
            MainAct::FinishTopUp => "main-finish-top-up",
            MainAct::ToldShop => "main-told-shop",
            MainAct::KeepNote => "main-keep-note",
            MainAct::GiveHours { .. } => "main-give-hours",
            MainAct::YesItReads { .. } => "main-yes-it-reads",
            MainAct::KeepWithPhoto { .. } => "main-keep-with-photo",
            MainAct::TypeHours => "main-type-hours",
            MainAct::SignEndOfDay => "main-sign-end-of-day",
            MainAct::TryShop => "main-try-shop",
        }
    }
}

/// Why something cannot be pressed yet. It stands above the button in words.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
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

impl DisabledReason {
    /// Keys of all reasons.
    pub const KEYS: [&'static str; 11] = [
        "why-not-more-below",
        "why-not-just-opened",
        "why-not-figure-missing",
        "why-not-sign-missing",
        "why-not-drum-not-read",
        "why-not-oil-may-not-meet",
        "why-not-defects-not-said",
        "why-not-level-not-given",
        "why-not-running",
        "why-not-already-told",
        "why-not-nothing-typed",
    ];

    /// Key of its words.
    pub fn text_key(&self) -> &'static str {
        match self {
            DisabledReason::MoreBelow { .. } => "why-not-more-below",
            DisabledReason::JustOpened { .. } => "why-not-just-opened",
            DisabledReason::FigureMissing { .. } => "why-not-figure-missing",
            DisabledReason::SignMissing(_) => "why-not-sign-missing",
            DisabledReason::DrumNotRead => "why-not-drum-not-read",
            DisabledReason::OilMayNotMeet(_) => "why-not-oil-may-not-meet",
            DisabledReason::DefectsNotSaid => "why-not-defects-not-said",
            DisabledReason::LevelNotGiven => "why-not-level-not-given",
            DisabledReason::Running => "why-not-running",
            DisabledReason::AlreadyTold => "why-not-already-told",
            DisabledReason::NothingTyped => "why-not-nothing-typed",
        }
    }
}

/// The main button.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Main {
    /// What it does.
    pub act: MainAct,
    /// Why it does not yet; none when it may be pressed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub why_not: Option<DisabledReason>,
}

impl Main {
    /// A button that may be pressed.
    pub fn ready(act: MainAct) -> Main {
        Main { act, why_not: None }
    }

    /// Whether it may be pressed.
    pub fn enabled(&self) -> bool {
        self.why_not.is_none()
    }
}
