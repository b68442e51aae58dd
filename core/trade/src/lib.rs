#![doc = include_str!("../README.md")]

pub mod checklist;
pub mod fluid;
pub mod limit;
pub mod procedure;
pub mod quantity;
pub mod record;
pub mod stamp;
pub mod unit;

pub use checklist::{Answer, Item, Line, Part, PlannedStop, Severity, Template, plan};
pub use fluid::{Fluid, Fluids, Mix, Oil, OilFamily};
pub use limit::{Limit, Measure, Rules};
pub use procedure::{Procedure, Procedures, may_open_cap};
pub use quantity::{Tenths, TenthsError};
pub use unit::{Feature, Features, HoseTag};
pub use ids::{EntryId, FleetId, PersonId, SetId, TruckId, WalkId};
pub use quantity::{Figure, FigureError, Tenths, TenthsError, Unit};
pub use record::{Entry, Fact, FactKind};
pub use stamp::{Stamp, StampError};
