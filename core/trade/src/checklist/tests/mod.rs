mod data;
mod walk;

use super::Template;
use crate::unit::{Feature, Features, HoseTag};

fn template() -> &'static Template {
    Template::common_practice().unwrap()
}

/// The invented fleet's TH-01: a diesel with air brakes and an intake heater, cooler inside, two
/// pressures, no trailer; three valves, two reels, two hoses.
fn th_01() -> Features {
    let without = [
        Feature::HydraulicBrakes,
        Feature::GlowPlugs,
        Feature::Gasoline,
        Feature::Trailer,
        Feature::TrailerAir,
        Feature::TrailerElectric,
        Feature::BeltDrive,
    ];
    Features {
        valves: ["gauge port", "small hose", "large hose"].map(String::from).to_vec(),
        reels: ["small", "large"].map(String::from).to_vec(),
        hoses: vec![HoseTag::inches("H-1", 0.5), HoseTag::inches("H-2", 0.75)],
        ..Features::of(Feature::ALL.into_iter().filter(|f| !without.contains(f)))
    }
}

fn every_feature() -> Features {
    Features { switched: Feature::ALL.into_iter().collect(), ..th_01() }
}
