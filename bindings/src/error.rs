//! What a call can refuse: few kinds that a shell branches on, each with what it needs to say it in its own words.

/// Why a call did nothing. What was recorded before is kept in every case.
///
/// `reason` is the core's own sentence, in English, for a log; people read the text of `text_key` where there is
/// one, or the shell's own sentence for the kind.
#[derive(Clone, Debug, PartialEq, thiserror::Error, uniffi::Error)]
pub enum PhoneError {
    /// The phone was shut down, or is paused.
    #[error("closed (paused: {paused})")]
    Closed {
        /// It is only paused: `resume` opens it again.
        paused: bool,
    },
    /// Setting up, or opening what was not set up.
    #[error("{kind:?}: {reason}")]
    Enrolment {
        /// Why.
        kind: EnrolmentKind,
        /// The fleet it is enrolled with already.
        fleet: Option<String>,
        /// What this phone is called there.
        device: Option<String>,
        /// When the code ran out (RFC 3339), or by whom it was used.
        detail: Option<String>,
        /// For a log.
        reason: String,
    },
    /// This phone's key.
    #[error("{kind:?}: {reason}")]
    Key {
        /// Why.
        kind: KeyKind,
        /// For a log.
        reason: String,
    },
    /// The folder and its book.
    #[error("{kind:?}: {reason}")]
    Storage {
        /// Why.
        kind: StorageKind,
        /// Key of its words, where there are some.
        text_key: Option<String>,
        /// For a log.
        reason: String,
    },
    /// A photo, or a sound.
    #[error("{kind:?}: {reason}")]
    Photo {
        /// Why.
        kind: PhotoKind,
        /// Key of its words, where there are some.
        text_key: Option<String>,
        /// For a log.
        reason: String,
    },
    /// A file that was handed over.
    #[error("{kind:?}: {reason}")]
    File {
        /// Why.
        kind: FileKind,
        /// For a log.
        reason: String,
    },
    /// The exchange with the hub.
    #[error("{kind:?}: {reason}")]
    Online {
        /// Why.
        kind: OnlineKind,
        /// Key of its words, where there are some.
        text_key: Option<String>,
        /// The status of HTTP, when the hub said no.
        status: Option<u16>,
        /// Tried again by itself not before this moment, milliseconds since 1970.
        retry_at: Option<i64>,
        /// Since when every try has failed so, by the yard's clock (RFC 3339); none when it is not known.
        since: Option<String>,
        /// Entries of this phone that the shop does not have.
        on_phone: u32,
        /// For a log; when the hub said no, its own words.
        reason: String,
    },
    /// A draft does not take something, or cannot be signed yet. It is as it was.
    #[error("{kind:?}: {reason}")]
    Draft {
        /// Why.
        kind: DraftKind,
        /// The item of the checklist it is about.
        item: Option<String>,
        /// Label of the stop it is about.
        stop: Option<String>,
        /// That stop's place in the unit's own walk, 1 first.
        at: Option<u32>,
        /// Lines left there.
        left: u32,
        /// For a log.
        reason: String,
    },
    /// What was to be recorded is no entry.
    #[error("{reason}")]
    Entry {
        /// For a log, and for whoever wrote the line.
        reason: String,
    },
    /// A slip's code.
    #[error("{kind:?}: {reason}")]
    Slip {
        /// Why.
        kind: SlipKind,
        /// Key of its words; they may use `seconds`.
        text_key: String,
        /// Seconds until the next try.
        wait_s: i64,
        /// For a log.
        reason: String,
    },
    /// An argument does not read: a mistake of the shell.
    #[error("{what}: {reason}")]
    Argument {
        /// Which.
        what: String,
        /// For a log.
        reason: String,
    },
    /// Something nobody foresaw.
    #[error("{reason}")]
    Unexpected {
        /// For a log.
        reason: String,
    },
}

/// Why a phone is not set up.
#[derive(Clone, Copy, Debug, PartialEq, Eq, uniffi::Enum)]
pub enum EnrolmentKind {
    /// It is set up already.
    AlreadyEnrolled,
    /// It is not set up.
    NotEnrolled,
    /// The folder holds another fleet's book.
    OtherFleetsFolder,
    /// A phone needs a name of 1 to 64 characters.
    Name,
    /// It is no invitation.
    NotAnInvitation,
    /// The invitation is damaged or mistyped.
    Damaged,
    /// The code's time is over.
    CodeExpired,
    /// Another phone used the code.
    CodeUsed,
    /// The shop gave out no such code.
    CodeUnknown,
}

/// What is wrong with the key.
#[derive(Clone, Copy, Debug, PartialEq, Eq, uniffi::Enum)]
pub enum KeyKind {
    /// It is gone: what is recorded can be read, nothing new can be signed.
    Gone,
    /// The platform's keystore said no.
    Keystore,
    /// The key's file cannot be used.
    File,
    /// Others can read the key's file.
    ReadableByOthers,
}

/// What is wrong with the folder.
#[derive(Clone, Copy, Debug, PartialEq, Eq, uniffi::Enum)]
pub enum StorageKind {
    /// No room.
    Full,
    /// It cannot be written.
    ReadOnly,
    /// Part of the book cannot be read: open it again, and what is readable is taken over.
    Damaged,
    /// Another writes for longer than we wait.
    Busy,
    /// A newer version wrote it.
    NewerVersion,
    /// It cannot be reached, or says something unexpected.
    Other,
}

/// What is wrong with a photo, or with a sound.
#[derive(Clone, Copy, Debug, PartialEq, Eq, uniffi::Enum)]
pub enum PhotoKind {
    /// Not one of the kinds of picture that are kept.
    NotAPhoto,
    /// Not one of the kinds of sound that are kept.
    NotASound,
    /// It ends too early.
    Cut,
    /// Too many bytes.
    TooLarge,
    /// A sound of more than 10 s.
    TooLong,
    /// No room.
    Full,
    /// Its file is not what it was.
    Damaged,
    /// Its folder cannot be used.
    Folder,
}

/// What is wrong with a file.
#[derive(Clone, Copy, Debug, PartialEq, Eq, uniffi::Enum)]
pub enum FileKind {
    /// Not a hand-over file.
    NotAFile,
    /// Another fleet's.
    OtherFleet,
    /// The fleet's name under another key.
    OtherShop,
    /// It could not be made.
    NotMade,
    /// Anything else.
    Other,
}

/// Why the exchange did not come about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, uniffi::Enum)]
pub enum OnlineKind {
    /// This phone knows no hub.
    NoHub,
    /// No way there.
    NoWay,
    /// Somebody else answers there.
    OtherKey,
    /// The hub said no.
    Declined,
    /// Another exchange of this phone is under way.
    UnderWay,
    /// What came back is not an answer.
    NotTheAnswer,
}

/// What a draft does not take.
#[derive(Clone, Copy, Debug, PartialEq, Eq, uniffi::Enum)]
pub enum DraftKind {
    /// There is no such draft, or it is of another kind.
    NotThere,
    /// A newer version of this program began it.
    Newer,
    /// The answer does not hold.
    Answer,
    /// There is no line that could be answered together.
    NothingTogether,
    /// A line asks for its figure.
    FigureMissing,
    /// A stop has open lines.
    StopOpen,
    /// Nothing is answered.
    NothingAnswered,
    /// The two signs of zero pressure are not both there.
    GateClosed,
    /// A pour without a volume above zero.
    NoVolume,
    /// Nothing is poured.
    NothingPoured,
    /// The cap is not said to be tight.
    CapOpen,
    /// Neither defects nor "none found".
    DefectsNotSaid,
}

/// Why a slip's code was not taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq, uniffi::Enum)]
pub enum SlipKind {
    /// Digits are missing or too many.
    Length,
    /// A digit is wrong.
    Mistyped,
    /// It is a code of something else.
    Wrong,
    /// Too many wrong ones: wait.
    Wait,
    /// Nothing is locked by that defect.
    NothingLocked,
}

impl From<uniffi::UnexpectedUniFFICallbackError> for PhoneError {
    fn from(error: uniffi::UnexpectedUniFFICallbackError) -> PhoneError {
        PhoneError::Unexpected { reason: error.reason }
    }
}
