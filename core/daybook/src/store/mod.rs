//! The store: one SQLite file, one writer, every call durable when it returns.
//!
//! All SQL of this program stands in this folder. Heads, sequence numbers and ops are read inside the
//! writing transaction, never from memory, so two processes on one folder stay right.

mod copy;
mod delta;
mod drafts;
mod error;
mod exchanges;
mod facts;
mod graph;
mod open;
mod photos;
mod plans;
mod programs;
mod salvage;
mod schema;
mod sessions;
mod settings;
mod sheets;
mod shelf;
mod transaction;
mod truth;
mod units;
mod writing;

pub use drafts::DraftRow;
pub use error::StoreError;
pub use exchanges::ExchangeRow;
pub use facts::{FactRow, SignedOn, ToldFact};
pub use graph::Joint;
pub use open::{Opened, Store};
pub use photos::PhotoRow;
pub use plans::Plan;
pub use programs::ProgramRow;
pub use salvage::Salvaged;
pub use schema::newest as newest_form;
pub use sessions::SessionRow;
pub use settings::InviteState;
pub use sheets::SheetRow;
pub use transaction::Still;
use transaction::Transaction;

pub use shelf::{RefusedRow, WaitingPart, WaitingRow};
pub use truth::{HeldEntry, Truth, Twin};
pub use units::LockRow;
pub use writing::Writing;
