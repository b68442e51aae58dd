//! What the shop refuses, told so that a person can act on it.

use std::path::PathBuf;

use sumpbook_daybook::gate::PublicKeyError;
use sumpbook_daybook::ledger::LedgerError;
use sumpbook_daybook::store::StoreError;
use sumpbook_trade::EntryId;

/// Why something could not be done. What was recorded before is kept.
#[derive(Debug, thiserror::Error)]
pub enum ShopError {
    /// The books said no.
    #[error(transparent)]
    Ledger(#[from] LedgerError),
    /// A table could not be brought in.
    #[error(transparent)]
    Table(#[from] crate::table_in::TableError),
    /// The feed cannot be made.
    #[error("the calendar feed cannot be made: {0}. Nothing was changed.")]
    Feed(String),
    /// A file of the shop cannot be written, or does not hold.
    #[error(transparent)]
    Archive(#[from] crate::archive::ArchiveError),
    /// A campaign cannot be recorded.
    #[error(transparent)]
    Campaign(#[from] crate::campaign::CampaignError),
    /// A number no rule can count with.
    #[error("{0}. Nothing was changed. Give it within its bounds.")]
    Number(#[from] sumpbook_trade::record::NotANumberOfARule),
    /// Nothing can be serviced by this programme.
    #[error("{0}. Nothing was changed.")]
    Programme(#[from] sumpbook_trade::clock::NotAProgramme),
    /// Another programme was set since the page was looked at.
    #[error(
        "edition {0} of this programme was set meanwhile. Nothing was changed. Look at it and set yours again."
    )]
    OtherEdition(u32),
    /// What a finding is to lock does not fit the checklist.
    #[error("{0}. Nothing was changed.")]
    Severity(#[from] sumpbook_trade::checklist::NotOnTheChecklist),
    /// The shop's key cannot be sealed or opened.
    #[error(transparent)]
    Seal(#[from] crate::sealed_key::SealError),
    /// The folder cannot be read or written.
    #[error("{} cannot be used: {}. Nothing was changed. Choose another folder.", .path.display(), plain(.reason))]
    Folder {
        /// Where.
        path: PathBuf,
        /// What the system said.
        reason: std::io::Error,
    },
    /// A shop stands there already.
    #[error("{} holds a shop already. Nothing was changed. Choose an empty folder.", .0.display())]
    Taken(PathBuf),
    /// Something stands where a new folder is to be made.
    #[error("{} is not empty. Nothing was changed. Name a folder that does not exist yet.", .0.display())]
    NotEmpty(PathBuf),
    /// No shop stands there.
    #[error("{} holds no shop: {what}. Make one with `sumpbook init`, or name another folder.", .path.display())]
    NoShop {
        /// Where.
        path: PathBuf,
        /// What is missing or does not read.
        what: &'static str,
    },
    /// A shop stands there, and a file of it is missing or damaged.
    #[error(
        "the shop in {} cannot be opened: {what}. Nothing was changed; its books are kept. Put back a copy of that file.", .path.display()
    )]
    Broken {
        /// Where.
        path: PathBuf,
        /// What is missing or does not read.
        what: &'static str,
    },
    /// The shop's key and fleet stand there, and its book holds nothing.
    #[error(
        "the shop's book in {} holds nothing: it was lost, or put aside as damaged. Nothing was changed. Put back a copy of the folder; without one, take in a file from every phone.", .0.display()
    )]
    BookLost(PathBuf),
    /// No such zone.
    #[error("'{0}' is not a zone by its IANA name, such as America/Denver. Nothing was made.")]
    Zone(String),
    /// A given time of receipt outside an invented fleet.
    #[error(
        "the time of receipt may be given only in a fleet made for showing; here the clock says it. Nothing was recorded."
    )]
    ReceivedGiven,
    /// A name that is none, or does not fit on a line.
    #[error("a name has 1 to 60 letters. Nothing was changed. Give a shorter one.")]
    Name,
    /// A decision needs a name.
    #[error("say who decides this, by name. Nothing was recorded.")]
    NoPerson,
    /// Nobody of that name.
    #[error("nobody here is called '{name}'. Known: {known}.")]
    UnknownPerson {
        /// As asked.
        name: String,
        /// Everyone who is here.
        known: String,
    },
    /// No unit of that door number.
    #[error("no unit here is called '{door}'. Known: {known}.")]
    UnknownUnit {
        /// As asked.
        door: String,
        /// Every door number.
        known: String,
    },
    /// The set of that serial stands on another unit, and nobody said that it moved.
    #[error(
        "the set {serial} stands on {door}. Nothing was recorded. Look at the serial again; if the set was moved, say so (\"set-moved\":true): its hours and its oil go with it."
    )]
    SetElsewhere {
        /// The serial.
        serial: String,
        /// Where it stands.
        door: String,
    },
    /// A unit would come into service after its own records.
    #[error(
        "{door} has records since {first}: it cannot come into service on {said}, for it would then be on no list before that day. Nothing was recorded. Look at the date again."
    )]
    InServiceLater {
        /// Its door number.
        door: String,
        /// The day of its first record.
        first: chrono::NaiveDate,
        /// As it was said.
        said: chrono::NaiveDate,
    },
    /// A service dated before its unit came into service.
    #[error(
        "{unit} came into service on {since}: nothing was serviced on it on {said}. Nothing was recorded. Look at the date again; if it was in service before, change that day first."
    )]
    BeforeInService {
        /// Its door number.
        unit: String,
        /// The day it came into service.
        since: chrono::NaiveDate,
        /// As it was said.
        said: chrono::NaiveDate,
    },
    /// Oil of another family than the unit is down as having.
    #[error(
        "{unit} is down as having {is} oil, and this says that {said} went in: families can react with each other. Nothing was recorded. If the oil was changed to another family, enter that of the unit first, then the service, for what is poured later is held against it. If not, correct it."
    )]
    OilOfAnotherFamily {
        /// Its door number.
        unit: String,
        /// The family on record: a key of the texts.
        is: String,
        /// The family of the service: a key of the texts.
        said: String,
    },
    /// An entry nobody here holds.
    #[error("no entry {0} has come here. Nothing was recorded.")]
    UnknownTarget(EntryId),
    /// Targets of more than one book.
    #[error(
        "these entries are of more than one unit: decide about one unit at a time. Nothing was recorded."
    )]
    SeveralUnits,
    /// Somebody decided about it since it was looked at.
    #[error(
        "somebody decided about this meanwhile. Nothing was recorded. Look at what was decided, and decide again if it must be."
    )]
    DecidedMeanwhile,
    /// Nothing to decide about.
    #[error("say which entries this is about. Nothing was recorded.")]
    NoTargets,
    /// Words are missing.
    #[error("say why, in your own words. Nothing was recorded.")]
    NoWords,
    /// A finding would lock less than the checklist has it, and nobody says why.
    #[error(
        "'{item}: {word}' would lock less than the checklist has it. Say why, in your own words (\"why\"). Nothing was changed."
    )]
    LocksLess {
        /// The checklist's item.
        item: String,
        /// Its word.
        word: String,
    },
    /// No open defect of that name.
    #[error("{unit} has no open defect '{item}'. {open} Nothing was certified.")]
    NoSuchDefect {
        /// The unit.
        unit: String,
        /// As asked.
        item: String,
        /// What is open there, as a sentence.
        open: String,
    },
    /// No open wait of that part, or by that entry.
    #[error(
        "{0} has no such open wait for a part. Nothing was recorded. It may be over already: look at what it waits for."
    )]
    NoSuchWait(String),
    /// A promise or a plan for a day that is over.
    #[error(
        "{0} is over in the yard: nothing can be promised for it. Nothing was recorded. Look at the day and its year, and give one from today on."
    )]
    DayOver(chrono::NaiveDate),
    /// No visit planned by that entry.
    #[error(
        "{0} has no such visit planned. Nothing was recorded. It may be done, moved or called off already."
    )]
    NoSuchVisit(String),
    /// A task outside the unit's programme.
    #[error("'{task}' is not in the programme of {unit}. Its tasks: {known}. Nothing was recorded.")]
    UnknownTask {
        /// As asked.
        task: String,
        /// The unit.
        unit: String,
        /// The programme's tasks.
        known: String,
    },
    /// Laid up already.
    #[error(
        "{unit} is laid up since {since}. Nothing was recorded. Answer the list before its return instead."
    )]
    LaidUpAlready {
        /// The unit.
        unit: String,
        /// Since when, on the yard's clock.
        since: String,
    },
    /// Not laid up.
    #[error("{0} is not laid up: there is no list to answer. Nothing was recorded.")]
    NotLaidUp(String),
    /// No line was answered.
    #[error("say which lines were done or are waived. Open: {0}. Nothing was recorded.")]
    NoReturnLine(String),
    /// A line that answers nothing.
    #[error("{0} Nothing was recorded.")]
    ReturnLine(#[from] sumpbook_daybook::line::ReturnLineError),
    /// A moment in time to come.
    #[error("{0} has not come yet. Nothing was recorded. Give the time it was done.")]
    Ahead(sumpbook_trade::Stamp),
    /// An answer that the checklist does not have.
    #[error("{0} Nothing was recorded.")]
    Answer(#[from] sumpbook_daybook::line::AnswerError),
    /// The checklist cannot be used.
    #[error("{0}. Nothing was recorded.")]
    Checklist(String),
    /// A page signed in time to come.
    #[error("the page says it was signed at {0}, which has not come yet. Nothing was recorded.")]
    SignedAhead(sumpbook_trade::Stamp),
    /// A page on which nothing is answered.
    #[error("no line of the page is answered. Nothing was recorded. A page without an answer is no walk.")]
    PageEmpty,
    /// A page typed in before.
    #[error("page {0} of this unit was typed in before. Nothing was recorded.")]
    PageTyped(String),
    /// No phone with that key was ever let in.
    #[error("no phone with the key {0} was let in here. Nothing was changed.")]
    UnknownPhone(sumpbook_daybook::gate::KeyId),
    /// No phone with that fingerprint.
    #[error("no phone here has the key {0}. Nothing was changed. `sumpbook phones` lists them.")]
    NoSuchFingerprint(String),
    /// It was stopped before.
    #[error("{0} is stopped already. Nothing was changed.")]
    StoppedAlready(String),
    /// A day that has not begun.
    #[error("{0} has not begun in the yard. Nothing was closed.")]
    DayAhead(chrono::NaiveDate),
    /// A day outside the calendar.
    #[error("{0} is outside the calendar this program keeps.")]
    DayBeyond(chrono::NaiveDate),
}

/// What the system said about a file or a folder, as a person would say it.
pub(crate) fn plain(reason: &std::io::Error) -> String {
    use std::io::ErrorKind as K;
    let known = match reason.kind() {
        K::NotFound => "there is no such file or folder",
        K::IsADirectory => "it is a folder, not a file",
        K::NotADirectory => "a part of its path is a file, not a folder",
        K::AlreadyExists => "a file of that name stands there",
        K::PermissionDenied => "this user may not read or write there",
        K::ReadOnlyFilesystem => "nothing may be written there",
        K::StorageFull => "the disk is full",
        K::InvalidData => "it is not text",
        _ => return reason.to_string(),
    };
    known.to_owned()
}

impl From<StoreError> for ShopError {
    fn from(error: StoreError) -> ShopError {
        ShopError::Ledger(error.into())
    }
}

impl From<serde_json::Error> for ShopError {
    fn from(error: serde_json::Error) -> ShopError {
        ShopError::Ledger(error.into())
    }
}

impl From<PublicKeyError> for ShopError {
    fn from(_: PublicKeyError) -> ShopError {
        ShopError::Ledger(StoreError::Unexpected("a key that is none").into())
    }
}
