//! Makers' campaigns: entered, changed, taken back and looked up by hand, by name; and how each stands on each unit.

mod list;
mod ranges;
mod write;

pub use list::{CampaignRow, CampaignSaid, CampaignUnitRow, WithdrawnRow};
pub(crate) use list::{campaigns, said};
pub use ranges::ranges_of;
pub use write::{CampaignError, NewCampaign};
