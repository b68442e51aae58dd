//! The figures that are asked for: in what unit, between which ends, under what name.

use serde::{Deserialize, Serialize};

/// Tools there is room for.
pub const TOOLS: u8 = 4;

/// A figure that is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum AirField {
    /// Rated delivery; the unit's own where nothing is said.
    Delivery,
    /// The pressure it holds, gauge.
    Holds,
    /// Height over the sea.
    Altitude,
    /// Temperature at the intake.
    Intake,
    /// Relative humidity.
    Humidity,
    /// The oil's temperature in the receiver.
    Oil,
    /// Free air one tool takes.
    Takes,
    /// The pressure it wants, gauge.
    At,
    /// How many of it.
    Count,
    /// Part of the time it is pulled.
    Share,
    /// The hose's inside diameter.
    Bore,
    /// The hose's length.
    Length,
    /// Claw couplings in it.
    Couplings,
    /// Quick couplings in it.
    QuickCouplings,
    /// Elbows in it.
    Elbows,
    /// Valves in it, full open.
    Valves,
    /// Filters and oilers in it.
    Oilers,
    /// Pressure at the nozzle when cleaning with air, gauge.
    Nozzle,
}

/// What a figure is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum AirPart {
    /// Unit and place.
    Place,
    /// A tool.
    Tool,
    /// The hose.
    Hose,
    /// Cleaning with air.
    Cleaning,
}

/// What a figure measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Quantity {
    Flow,
    Pressure,
    Height,
    Warmth,
    Bore,
    Percent,
    Number,
}

impl Quantity {
    /// The unit as it is written beside a figure; a bare number has none.
    pub(super) fn unit(self, metric: bool) -> &'static str {
        let (us, si) = match self {
            Quantity::Flow => ("cfm", "m³/min"),
            Quantity::Pressure => ("psi", "kPa"),
            Quantity::Height => ("ft", "m"),
            Quantity::Warmth => ("°F", "°C"),
            Quantity::Bore => ("in", "mm"),
            Quantity::Percent => ("%", "%"),
            Quantity::Number => ("", ""),
        };
        if metric { si } else { us }
    }

    /// Decimals of a figure that is typed on keys without a point.
    pub(super) fn places(self, metric: bool) -> u8 {
        match (self, metric) {
            (Quantity::Flow, true) => 2,
            // 3/8 in.
            (Quantity::Bore, false) => 3,
            _ => 0,
        }
    }
}

impl AirField {
    /// Every figure, in the order of the form.
    pub const ALL: [AirField; 18] = [
        AirField::Delivery,
        AirField::Holds,
        AirField::Altitude,
        AirField::Intake,
        AirField::Humidity,
        AirField::Oil,
        AirField::Takes,
        AirField::At,
        AirField::Count,
        AirField::Share,
        AirField::Bore,
        AirField::Length,
        AirField::Couplings,
        AirField::QuickCouplings,
        AirField::Elbows,
        AirField::Valves,
        AirField::Oilers,
        AirField::Nozzle,
    ];

    /// Key of its name.
    pub fn text_key(self) -> &'static str {
        match self {
            AirField::Delivery => "air-delivery",
            AirField::Holds => "air-holds",
            AirField::Altitude => "air-altitude",
            AirField::Intake => "air-intake",
            AirField::Humidity => "air-humidity",
            AirField::Oil => "air-oil",
            AirField::Takes => "air-takes",
            AirField::At => "air-at",
            AirField::Count => "air-count",
            AirField::Share => "air-share",
            AirField::Bore => "air-bore",
            AirField::Length => "air-length",
            AirField::Couplings => "air-couplings",
            AirField::QuickCouplings => "air-quick",
            AirField::Elbows => "air-elbows",
            AirField::Valves => "air-valves",
            AirField::Oilers => "air-oilers",
            AirField::Nozzle => "air-nozzle",
        }
    }

    /// What it is about.
    pub fn part(self) -> AirPart {
        use AirField as F;
        match self {
            F::Delivery | F::Holds | F::Altitude | F::Intake | F::Humidity | F::Oil => AirPart::Place,
            F::Takes | F::At | F::Count | F::Share => AirPart::Tool,
            F::Bore | F::Length | F::Couplings | F::QuickCouplings | F::Elbows | F::Valves | F::Oilers => {
                AirPart::Hose
            }
            F::Nozzle => AirPart::Cleaning,
        }
    }

    pub(super) fn quantity(self) -> Quantity {
        use AirField as F;
        match self {
            F::Delivery | F::Takes => Quantity::Flow,
            F::Holds | F::At | F::Nozzle => Quantity::Pressure,
            F::Altitude | F::Length => Quantity::Height,
            F::Intake | F::Oil => Quantity::Warmth,
            F::Humidity | F::Share => Quantity::Percent,
            F::Bore => Quantity::Bore,
            F::Count | F::Couplings | F::QuickCouplings | F::Elbows | F::Valves | F::Oilers => {
                Quantity::Number
            }
        }
    }

    /// The least and the most it can be, in its unit. Wide: they catch a slip, they judge nothing.
    pub(super) fn ends(self, metric: bool) -> (f64, f64) {
        use AirField as F;
        let (us, si) = match self {
            F::Delivery => ((1.0, 10_000.0), (0.03, 300.0)),
            F::Holds => ((1.0, 500.0), (5.0, 3_500.0)),
            F::Altitude => ((-1_400.0, 20_000.0), (-430.0, 6_100.0)),
            F::Intake => ((-60.0, 160.0), (-50.0, 70.0)),
            F::Oil => ((-60.0, 300.0), (-50.0, 150.0)),
            F::Humidity | F::Share => ((0.0, 100.0), (0.0, 100.0)),
            F::Takes => ((0.0, 10_000.0), (0.0, 300.0)),
            F::At | F::Nozzle => ((0.0, 500.0), (0.0, 3_500.0)),
            F::Count => ((0.0, 99.0), (0.0, 99.0)),
            F::Bore => ((0.1, 6.0), (2.5, 155.0)),
            F::Length => ((0.0, 3_000.0), (0.0, 1_000.0)),
            F::Couplings | F::QuickCouplings | F::Elbows | F::Valves | F::Oilers => {
                ((0.0, 50.0), (0.0, 50.0))
            }
        };
        if metric { si } else { us }
    }
}
