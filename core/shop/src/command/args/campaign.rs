//! What may be asked of campaigns.

use chrono::NaiveDate;
use clap::{Args, Subcommand, ValueEnum};
use sumpbook_trade::{Stamp, Tenths};

/// `campaign`
#[derive(Debug, Args)]
pub(in crate::command) struct Campaign {
    /// What to do; every campaign with its units when left out
    #[command(subcommand)]
    pub verb: Option<CampaignVerb>,
    /// What the shop knew then
    #[arg(long, value_name = "TIME")]
    pub as_of: Option<Stamp>,
}

/// What is done with a campaign.
#[derive(Debug, Subcommand)]
pub(in crate::command) enum CampaignVerb {
    /// Enter a maker's campaign, or change the one of that name
    Enter(Enter),
    /// Take one back: it is due nowhere any more, and what it locked is free
    Withdraw(Withdraw),
    /// Say of a unit whose serial does not tell whether it is meant
    Look(Look),
}

/// `campaign enter`
#[derive(Debug, Args)]
pub(in crate::command) struct Enter {
    /// What it is called here, such as the number of the maker's paper
    pub name: String,
    /// What is to be done
    #[arg(long)]
    pub words: String,
    /// The number of the maker's paper
    #[arg(long)]
    pub paper: Option<String>,
    /// Where that paper can be read
    #[arg(long, value_name = "WHERE")]
    pub read_at: Option<String>,
    /// Whose serials it names
    #[arg(long, value_enum)]
    pub of: OfAsked,
    /// The first and the last serial, both in it, such as KX-1000..KX-1999, or one alone; may be given several times.
    /// Serials order by their text, then by the number at their end
    #[arg(long = "range", value_name = "FROM..TO", required = true)]
    pub ranges: Vec<String>,
    /// The last good day, such as 2026-11-30
    #[arg(long, value_name = "DAY")]
    pub deadline: NaiveDate,
    /// The last good figure of the unit's compressor hours, such as 3000.0; whichever comes first
    #[arg(long)]
    pub hours: Option<Tenths>,
    /// What it locks after its last good day
    #[arg(long, value_enum, default_value_t = LocksAsked::Nothing)]
    pub locks: LocksAsked,
    /// The maker says stop: it locks from now on
    #[arg(long)]
    pub stop: bool,
    /// Who enters it
    #[arg(long, value_name = "NAME")]
    pub by: String,
    /// When it counts as entered; only in a fleet made by `init --demo`
    #[arg(long, value_name = "TIME")]
    pub received: Option<Stamp>,
}

/// Whose serials a campaign names.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(in crate::command) enum OfAsked {
    /// Compressor sets
    Set,
    /// Trucks
    Truck,
}

/// What a campaign locks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(in crate::command) enum LocksAsked {
    /// Nothing: it stands in the lists
    Nothing,
    /// The air
    Air,
    /// The road
    Road,
    /// The road and the air
    RoadAndAir,
}

/// `campaign withdraw`
#[derive(Debug, Args)]
pub(in crate::command) struct Withdraw {
    /// Its name
    pub name: String,
    /// Why
    #[arg(long)]
    pub why: String,
    /// Who takes it back
    #[arg(long, value_name = "NAME")]
    pub by: String,
    /// When it counts as taken back; only in a fleet made by `init --demo`
    #[arg(long, value_name = "TIME")]
    pub received: Option<Stamp>,
}

/// `campaign look`
#[derive(Debug, Args)]
#[command(group = clap::ArgGroup::new("is").required(true).args(["meant", "not_meant"]))]
pub(in crate::command) struct Look {
    /// Its name
    pub name: String,
    /// The unit's door number
    #[arg(long)]
    pub unit: String,
    /// It is meant
    #[arg(long)]
    pub meant: bool,
    /// It is not
    #[arg(long)]
    pub not_meant: bool,
    /// What was looked at, and what it said
    #[arg(long)]
    pub why: String,
    /// Who looked
    #[arg(long, value_name = "NAME")]
    pub by: String,
    /// When it counts as said; only in a fleet made by `init --demo`
    #[arg(long, value_name = "TIME")]
    pub received: Option<Stamp>,
}
