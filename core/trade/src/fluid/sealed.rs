//! A top-up that tells of something wrong: a fluid that should need none was poured.

use super::{Fluid, Fluids};

/// What a top-up opens by itself. Item and word are the checklist's, and lock what they lock there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TopUpFinding {
    /// The item it is a defect of.
    pub item: &'static str,
    /// The word for it.
    pub word: &'static str,
}

impl Fluids {
    /// What pouring `fluid` opens. `None` for a fluid of which some use is normal.
    pub fn finding_of_top_up(&self, fluid: Fluid) -> Option<TopUpFinding> {
        self.of(fluid)?.by_itself()?;
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
        Some(TopUpFinding { item, word })
    }
}
