#![doc = include_str!("../README.md")]

pub mod air;
pub mod calendar;
pub mod campaign;
pub mod checklist;
pub mod clock;
pub mod clock_off;
pub mod day;
pub mod defect;
pub mod fluid;
pub mod forecast;
pub mod hours;
pub mod ids;
pub mod lay_up;
pub mod limit;
pub mod notes;
pub mod oil;
pub mod procedure;
pub mod quantity;
pub mod record;
pub mod stamp;
pub mod statistics;
pub mod unit;
pub mod wear;

pub use calendar::add_months;
pub use checklist::{Item, Part, PlannedStop, Severity, Template, plan};
pub use clock_off::ClockOff;
pub use fluid::{Fluid, Fluids, Mix, Oil, OilFamily};
pub use ids::{EntryId, FleetId, PersonId, SetId, TruckId, WalkId};
pub use limit::{Limit, Measure, Rules};
pub use procedure::{Procedure, Procedures, may_open_cap};
pub use quantity::{Figure, FigureError, Tenths, TenthsError, Unit, ungrouped};
pub use record::{Entry, Fact, FactKind};
pub use stamp::{Stamp, StampError};
pub use unit::{Feature, Features, HoseTag};
