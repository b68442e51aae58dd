//! Drafts: begun, kept through a kill of the program, not yet signed. A draft carries the id its entry will
//! have, so signing twice after a doubtful end records once. Nothing in a draft is answered beforehand.

mod end_of_day;
mod error;
mod keep;
mod other_unit;
mod pre_trip;
mod signing;
mod steps;
mod top_up;

use serde::{Deserialize, Serialize};
use sumpbook_trade::{EntryId, PersonId, TruckId};

pub use end_of_day::EndOfDayDraft;
pub use error::{DraftError, MissingSign};
pub use keep::Drafts;
pub use other_unit::{may_be_moved, moved};
pub(crate) use pre_trip::GLASS;
pub use pre_trip::{Elsewhere, Extent, FirstWalk, PreTripDraft, ReviewDraft, place_of};
pub use signing::Signing;
pub use steps::StepsDraft;
pub use top_up::TopUpDraft;

/// Something begun and not signed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "kind", content = "draft", rename_all = "kebab-case")]
pub enum Draft {
    /// A pre-trip.
    PreTrip(PreTripDraft),
    /// A top-up.
    TopUp(TopUpDraft),
    /// An end-of-day report.
    EndOfDay(EndOfDayDraft),
    /// A procedure.
    Steps(StepsDraft),
}

impl Draft {
    /// The id its entry will have.
    pub fn id(&self) -> EntryId {
        match self {
            Draft::PreTrip(draft) => draft.id,
            Draft::TopUp(draft) => draft.id,
            Draft::EndOfDay(draft) => draft.id,
            Draft::Steps(draft) => draft.id,
        }
    }

    /// The unit it is about.
    pub fn unit(&self) -> TruckId {
        match self {
            Draft::PreTrip(draft) => draft.unit,
            Draft::TopUp(draft) => draft.unit,
            Draft::EndOfDay(draft) => draft.unit,
            Draft::Steps(draft) => draft.unit,
        }
    }

    /// Who began it.
    pub fn person(&self) -> PersonId {
        match self {
            Draft::PreTrip(draft) => draft.person,
            Draft::TopUp(draft) => draft.person,
            Draft::EndOfDay(draft) => draft.person,
            Draft::Steps(draft) => draft.person,
        }
    }
}
