//! What may be asked.

pub(super) mod campaign;
pub(super) mod in_out;
mod lay_up;

use std::path::PathBuf;

use chrono::NaiveDate;
use clap::{Args, Parser, Subcommand, ValueEnum};
use sumpbook_trade::{EntryId, Stamp};

pub(super) use lay_up::{LayUp, ReturnToService};

use in_out::{BringIn, Calendar, FromFile, Pack, TakeOut, ToFile, Verify};

use super::examples::{RECORD_LINES, REGISTER_LINES, SHOP_LINES};

/// Upkeep records of truck-mounted air compressors: made without a network, merged for the shop.
#[derive(Debug, Parser)]
#[command(name = "sumpbook", version, max_term_width = 100)]
pub(super) struct Sumpbook {
    /// The shop's folder
    #[arg(long, global = true, env = "SUMPBOOK_SHOP", default_value = "sumpbook-shop", value_name = "DIR")]
    pub shop: PathBuf,
    /// Answer as JSON
    #[arg(long, global = true)]
    pub json: bool,
    /// Say on standard error what is done
    #[arg(long, global = true)]
    pub verbose: bool,
    /// What to do
    #[command(subcommand)]
    pub verb: Verb,
}

/// The verbs.
#[derive(Debug, Subcommand)]
pub(super) enum Verb {
    /// Make a shop: its fleet and its key
    Init(Init),
    /// Enter people, units and programmes from lines of JSON
    #[command(after_help = REGISTER_LINES)]
    Register(FromLines),
    /// Record at the shop, from lines of JSON: services, readings from paper, what was brought in
    #[command(after_help = SHOP_LINES)]
    Record(FromLines),
    /// Write an invitation for a phone, as a file
    Invite(Invite),
    /// Take in a phone's file and write the answer for the way back
    TakeIn(TakeIn),
    /// Bring in older records from a table: a dry run first, then what it saw
    BringIn(BringIn),
    /// Write a table of one kind of record
    TakeOut(TakeOut),
    /// A day as the shop reads it
    DaySheet(DaySheet),
    /// What runs out first
    Due(Due),
    /// Decide about entries, by name
    Settle(Settle),
    /// Certify a defect, by name
    Certify(Certify),
    /// Lay up the compressor set of a unit: no air until its list is answered
    LayUp(LayUp),
    /// Answer the list of a set that is laid up, by name; shows the list when no line is given
    ReturnToService(ReturnToService),
    /// Makers' campaigns: what is to be done once on units of some serials, by a day
    Campaign(campaign::Campaign),
    /// Work out every signature, hash, projection and closing again
    Verify(Verify),
    /// The feed of what runs out, for calendars
    Calendar(Calendar),
    /// Write an evidence pack: all that is recorded of units, gaps first, with every signature
    Pack(Pack),
    /// Write the whole fleet into a file: every book as an automerge document, every entry
    Export(ToFile),
    /// Take a whole fleet into a new folder; its phrase is asked for
    Import(FromFile),
    /// Write a backup of the shop's folder, whoever writes meanwhile
    Backup(ToFile),
    /// Restore a backup into a new folder; its phrase is asked for
    Restore(FromFile),
    /// Make a new phrase that opens backups made from now on
    Phrase,
    /// Answer phones and browsers until Ctrl-C
    Serve(Serve),
    /// Show a code that lets in one phone which can reach the hub
    Code(Code),
    /// Let in a phone that waits
    Accept(Accept),
    /// Who was let in, and who waits to be
    Phones(Reading),
    /// Stop a phone that is lost
    StopPhone(StopPhone),
    /// Set who may sign in to the console, and with which password
    Password(Password),
    /// A phone's own daybook, driven from here
    Phone(Phone),
    /// An invented fleet lives a few days
    Demo(Demo),
}

/// `init`
#[derive(Debug, Args)]
pub(super) struct Init {
    /// The fleet's name
    #[arg(long)]
    pub name: String,
    /// The yard's zone by its IANA name, such as America/Denver
    #[arg(long)]
    pub zone: String,
    /// An invented fleet, in which times of receipt may be given
    #[arg(long)]
    pub demo: bool,
    /// When it counts as made; only with --demo
    #[arg(long, value_name = "TIME", requires = "demo")]
    pub received: Option<Stamp>,
}

/// A writing verb that reads lines.
#[derive(Debug, Args)]
pub(super) struct FromLines {
    /// The file of lines, one JSON object a line; standard input when left out
    pub file: Option<PathBuf>,
    /// When they count as received; only in a fleet made by `init --demo`
    #[arg(long, value_name = "TIME")]
    pub received: Option<Stamp>,
}

/// `invite`
#[derive(Debug, Args)]
pub(super) struct Invite {
    /// Where to write the invitation
    pub file: PathBuf,
    /// A unit whose books go with it; may be given several times; all units when left out
    #[arg(long = "unit", value_name = "DOOR")]
    pub units: Vec<String>,
    /// For how many days its code holds
    #[arg(long, default_value_t = 7)]
    pub days: u32,
    /// When it counts as written; only in a fleet made by `init --demo`
    #[arg(long, value_name = "TIME")]
    pub received: Option<Stamp>,
}

/// `serve`
#[derive(Debug, Args)]
pub(super) struct Serve {
    /// The address to listen on
    #[arg(long, default_value = "0.0.0.0:8443", value_name = "HOST:PORT")]
    pub address: String,
    /// Requests a second from one network address, eight times as many at once; more for a hub behind a proxy
    #[arg(long, default_value = "50", value_name = "N")]
    pub requests: std::num::NonZeroU32,
    /// Close no day by itself; otherwise every ended day is closed at 04:00 of the yard, again when something came late
    #[arg(long)]
    pub close_by_hand: bool,
    /// Let the clock stand at this moment now and run on; only in a fleet made by `init --demo`
    #[arg(long, value_name = "TIME")]
    pub clock: Option<Stamp>,
}

/// `code`
#[derive(Debug, Args)]
pub(super) struct Code {
    /// Where phones reach the hub
    #[arg(long, value_name = "HOST:PORT")]
    pub hub: String,
    /// A unit the phone holds from the beginning; may be given several times; all units when left out and few
    #[arg(long = "unit", value_name = "DOOR")]
    pub units: Vec<String>,
    /// When it counts as made; only in a fleet made by `init --demo`
    #[arg(long, value_name = "TIME")]
    pub received: Option<Stamp>,
}

/// `accept`
#[derive(Debug, Args)]
pub(super) struct Accept {
    /// The fingerprint of its key, as its own screen shows it
    pub fingerprint: String,
    /// Who accepts
    #[arg(long, value_name = "NAME")]
    pub by: String,
    /// When it counts as accepted; only in a fleet made by `init --demo`
    #[arg(long, value_name = "TIME")]
    pub received: Option<Stamp>,
}

/// `stop-phone`
#[derive(Debug, Args)]
pub(super) struct StopPhone {
    /// The fingerprint of its key, as `phones` lists it
    pub fingerprint: String,
    /// Who stops it
    #[arg(long, value_name = "NAME")]
    pub by: String,
    /// Why
    #[arg(long)]
    pub why: String,
    /// When it counts as stopped; only in a fleet made by `init --demo`
    #[arg(long, value_name = "TIME")]
    pub received: Option<Stamp>,
}

/// `password`
#[derive(Debug, Args)]
pub(super) struct Password {
    /// Whose: what they write at the console is written by the person of this name
    pub name: String,
    /// What they may do there
    #[arg(long, value_enum, default_value_t = RoleAsked::Shop)]
    pub role: RoleAsked,
    /// Show name and password on the sign-in page; only in a fleet made by `init --demo`
    #[arg(long)]
    pub shown: bool,
}

/// A role at the console.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum RoleAsked {
    /// Sees everything and writes
    Shop,
    /// Sees everything and writes nothing
    Reader,
}

/// `take-in`
#[derive(Debug, Args)]
pub(super) struct TakeIn {
    /// The phone's file
    pub file: PathBuf,
    /// Where to write the answer; beside the file when left out
    #[arg(long, value_name = "FILE")]
    pub answer: Option<PathBuf>,
    /// Accept the new phone whose key has this fingerprint, as its own screen shows it
    #[arg(long, value_name = "FINGERPRINT")]
    pub accept: Option<String>,
    /// Who accepts
    #[arg(long, value_name = "NAME", requires = "accept")]
    pub by: Option<String>,
    /// When it counts as received; only in a fleet made by `init --demo`
    #[arg(long, value_name = "TIME")]
    pub received: Option<Stamp>,
}

/// A reading verb.
#[derive(Debug, Args)]
pub(super) struct Reading {
    /// What the shop knew then
    #[arg(long, value_name = "TIME")]
    pub as_of: Option<Stamp>,
}

/// `due`
#[derive(Debug, Args)]
pub(super) struct Due {
    /// Every task of every unit, however far off
    #[arg(long)]
    pub all: bool,
    /// What the shop knew then
    #[arg(long, value_name = "TIME")]
    pub as_of: Option<Stamp>,
}

/// `day-sheet`
#[derive(Debug, Args)]
pub(super) struct DaySheet {
    /// The day of the yard, such as 2026-10-20; today when left out
    pub day: Option<NaiveDate>,
    /// The 06:00 or the 17:00 view
    #[arg(long, value_enum, default_value_t = ViewAsked::Evening)]
    pub view: ViewAsked,
    /// Close it: version 1, or the next when something came in late
    #[arg(long, conflicts_with = "as_of")]
    pub close: bool,
    /// Who closes
    #[arg(long, value_name = "NAME", requires = "close")]
    pub by: Option<String>,
    /// What the shop knew then
    #[arg(long, value_name = "TIME")]
    pub as_of: Option<Stamp>,
    /// When the closing counts as made; only in a fleet made by `init --demo`
    #[arg(long, value_name = "TIME", requires = "close")]
    pub received: Option<Stamp>,
}

/// Which view of a day.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum ViewAsked {
    /// At 06:00: who may go out
    Morning,
    /// At 17:00: what came in
    Evening,
}

/// `settle`
#[derive(Debug, Args)]
pub(super) struct Settle {
    /// The entries it is about
    #[arg(required = true, value_name = "ENTRY", value_parser = entry)]
    pub entries: Vec<EntryId>,
    /// What becomes of them
    #[arg(long, value_enum)]
    pub verdict: VerdictAsked,
    /// Who decides
    #[arg(long, value_name = "NAME")]
    pub by: String,
    /// Why
    #[arg(long)]
    pub why: String,
    /// When it counts as decided; only in a fleet made by `init --demo`
    #[arg(long, value_name = "TIME")]
    pub received: Option<Stamp>,
}

/// What becomes of entries.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum VerdictAsked {
    /// They count
    Use,
    /// They do not count; they stay visible
    DoNotUse,
    /// They tell of one service
    SameService,
    /// This reading stands against those it disputes
    ReadingStands,
}

/// `certify`
#[derive(Debug, Args)]
#[command(group = clap::ArgGroup::new("verdict").required(true).args(["repaired", "not_needed"]))]
pub(super) struct Certify {
    /// The unit's door number
    pub unit: String,
    /// The item, such as mirrors, or with its place: lamps-stop/rear
    pub item: String,
    /// It was repaired
    #[arg(long)]
    pub repaired: bool,
    /// Repair is not needed
    #[arg(long)]
    pub not_needed: bool,
    /// Who certifies
    #[arg(long, value_name = "NAME")]
    pub by: String,
    /// What was done, or why nothing is needed
    #[arg(long)]
    pub words: String,
    /// When it counts as certified; only in a fleet made by `init --demo`
    #[arg(long, value_name = "TIME")]
    pub received: Option<Stamp>,
}

/// `phone DIR …`
#[derive(Debug, Args)]
pub(super) struct Phone {
    /// The phone's folder
    #[arg(value_name = "PHONE")]
    pub folder: Option<PathBuf>,
    /// What the phone does; its name and key when left out
    #[command(subcommand)]
    pub verb: Option<PhoneVerb>,
    /// The moment the phone's clock shows; only in a fleet made by `init --demo`
    #[arg(long, value_name = "TIME", global = true)]
    pub now: Option<Stamp>,
}

/// What a phone does.
#[derive(Debug, Subcommand)]
pub(super) enum PhoneVerb {
    /// Begin from the shop's invitation, or from the code on its screen
    Enrol {
        /// The invitation
        #[arg(required_unless_present = "code")]
        file: Option<PathBuf>,
        /// The code, as text; groups and line breaks do not matter
        #[arg(long, conflicts_with = "file")]
        code: Option<String>,
        /// What the yard calls this phone
        #[arg(long)]
        name: String,
    },
    /// Record from lines of JSON on standard input; each id is printed when its entry is durable
    #[command(after_help = RECORD_LINES)]
    Record,
    /// Keep a photo; prints the name by which an entry can say it
    Photo {
        /// JPEG, PNG or WebP, at most 4 MiB
        file: PathBuf,
    },
    /// Keep the sound of a defect; prints the name by which its answer can say it
    Sound {
        /// WAV of one channel or AAC in MP4, at most 10 s and 512 KiB
        file: PathBuf,
    },
    /// Show a screen
    Show {
        /// Which
        #[arg(value_enum)]
        screen: ScreenAsked,
        /// Of which unit
        #[arg(long)]
        unit: Option<String>,
        /// Whose
        #[arg(long)]
        person: Option<String>,
        /// Which stop of the walk, from 1
        #[arg(long)]
        stop: Option<usize>,
        /// By what the phone held at that moment; without what is begun, and without what the shop had
        #[arg(long, value_name = "TIME", conflicts_with = "now")]
        as_of: Option<Stamp>,
    },
    /// Make the file for the shop, or for another phone
    HandOver {
        /// Where to write it
        file: PathBuf,
    },
    /// Take in the shop's answer, or another phone's file
    TakeIn {
        /// The file
        file: PathBuf,
    },
    /// Type a certificate slip's code: what it is about shows as certified on this phone
    Slip {
        /// The slip's 12 digits, blanks aside
        code: String,
        /// Of which unit
        #[arg(long)]
        unit: String,
        /// The item of the defect, as 'lamps-stop'
        #[arg(long)]
        item: String,
        /// Which of its places, as 'left'
        #[arg(long)]
        place: Option<String>,
        /// Who types it
        #[arg(long)]
        person: Option<String>,
    },
    /// Exchange with the hub
    Exchange {
        /// Seconds to try
        #[arg(long, default_value_t = 60)]
        seconds: u64,
    },
    /// Print the JSON Schema of the lines that `record` reads
    Schema,
}

/// Screens that can be shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum ScreenAsked {
    /// May I take it, and where was I
    Today,
    /// Is it locked, what did the last one leave, which oil
    Unit,
    /// What the last one left, with certificates to read
    LastReport,
    /// One stop of the walk
    Stop,
    /// The sight glass
    Glass,
    /// Small pours
    TopUp,
    /// What the display said, and who knows
    Notes,
    /// What the next driver will read
    EndOfDay,
    /// What is on this phone, and what is at the shop
    Where,
}

/// An entry by its id, as the day sheet and a phone's screens name it.
fn entry(text: &str) -> Result<EntryId, String> {
    text.trim().parse().map_err(|_| {
        "this is no entry's id. The day sheet names the ids of what waits to be settled, such as \
         01a21099-15d7-7594-9500-f773015224f3"
            .to_owned()
    })
}

/// `demo`
#[derive(Debug, Args)]
pub(super) struct Demo {
    /// Live until the evening of this day; 9 November 2026 when left out
    #[arg(long, value_name = "DAY")]
    pub until: Option<NaiveDate>,
    /// Where, and it stays; a temporary folder, deleted at the end, when left out
    #[arg(long, value_name = "DIR")]
    pub folder: Option<PathBuf>,
    /// Where the hub listens; port 8443 of this machine, or any that is free, when left out
    #[arg(long, value_name = "HOST:PORT", conflicts_with = "no_hub")]
    pub address: Option<String>,
    /// No hub: files carry everything; ends with the day sheet and keeps the folder
    #[arg(long)]
    pub no_hub: bool,
}
