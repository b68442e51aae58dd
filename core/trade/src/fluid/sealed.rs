//! A top-up that tells of something wrong: a fluid that should need none was poured.

use chrono::{DateTime, FixedOffset, TimeDelta};

use super::{Fluid, Fluids};
use crate::checklist::Severity;

/// What a top-up opens by itself. Item and word are the checklist's.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TopUpFinding {
    /// The item it is a defect of.
    pub item: &'static str,
    /// The word for it.
    pub word: &'static str,
    /// What it locks.
    pub severity: Severity,
}

/// Days within which a second top-up of coolant is no longer a note.
const TWICE: TimeDelta = TimeDelta::days(7);

impl Fluids {
    /// What pouring `fluid` at `at` opens; `earlier` are the times of its other top-ups. `None` for a fluid of
    /// which some use is normal.
    pub fn finding_of_top_up(
        &self,
        fluid: Fluid,
        at: DateTime<FixedOffset>,
        earlier: &[DateTime<FixedOffset>],
    ) -> Option<TopUpFinding> {
        let facts = self.of(fluid)?;
        let severity = facts.by_itself()?;
        let (item, word) = match fluid {
            Fluid::Coolant => ("coolant", "low"),
            Fluid::HydraulicOil => ("hyd-oil", "topped-up"),
            Fluid::PowerSteering => ("ps-fluid", "topped-up"),
            Fluid::BrakeFluid => ("brake-fluid", "topped-up"),
            Fluid::GearboxOil => ("gearbox-oil", "topped-up"),
            // The gear case has no line of its own on the walk; what leaves it is seen there.
            Fluid::GearCase => ("oil-leaks", "weeping"),
            _ => return None,
        };
        let soon = earlier.iter().any(|before| *before < at && at - *before <= TWICE);
        let severity = facts.severity("low-twice-in-week").filter(|_| soon).unwrap_or(severity);
        Some(TopUpFinding { item, word, severity })
    }
}
