//! Oil, other fluids, water, and what the site does to them.

use minicbor::{CborLen, Decode, Encode};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Digest, How};
use crate::fluid::{Fluid, OilFamily};
use crate::{EntryId, Figure, Tenths};

/// Where the oil stands in the sight glass.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Encode, Decode, CborLen, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Glass {
    /// Percent of the glass, 0-100; the middle is 50.
    #[n(0)]
    Percent(#[n(0)] u8),
    /// Under the glass: nothing to be seen.
    #[n(1)]
    BelowView,
    /// Over the glass: nothing but oil.
    #[n(2)]
    AboveView,
}

choice! {
    /// Whether the oil was cold or hot when read.
    pub enum Warmth {
        /// Stood long enough to be as cold as the day.
        #[n(0)] Cold,
        /// Soon after running.
        #[n(1)] Hot,
    }

    /// How the oil looks.
    pub enum OilLook {
        /// Clear, as its fill.
        #[n(0)] Clear,
        /// Dark.
        #[n(1)] Dark,
        /// Milky: water in it.
        #[n(2)] Milky,
        /// Foam: look again after ten minutes.
        #[n(3)] Foaming,
        /// Burnt smell or colour.
        #[n(4)] Burnt,
    }

    /// Dust at the site.
    pub enum SiteDust {
        /// Clean.
        #[n(0)] Clean,
        /// Dusty.
        #[n(1)] Dusty,
        /// Very dusty.
        #[n(2)] VeryDusty,
    }

    /// How much water came.
    pub enum WaterAmount {
        /// None.
        #[n(0)] None,
        /// About a spoon.
        #[n(1)] Spoon,
        /// About a cup.
        #[n(2)] Cup,
        /// More than a cup.
        #[n(3)] More,
    }

    /// Out of what it was drained.
    pub enum WaterFrom {
        /// The receiver's bottom drain.
        #[n(0)] Receiver,
        /// The brake system's air tanks.
        #[n(1)] BrakeTanks,
        /// A filter or separator at an outlet.
        #[n(2)] Outlet,
        /// The engine fuel's water trap.
        #[n(3)] FuelTrap,
    }
}

record! {
    /// How long the unit had stood when the glass was read.
    pub struct StopWait {
        /// Minutes since it was stopped.
        #[n(0)] pub minutes: Option<u32>,
        /// Timed by this phone, or said.
        #[n(1)] pub how: How,
    }

    /// A level was looked at.
    pub struct LevelCheck {
        /// Of which fluid.
        #[n(0)] pub fluid: Fluid,
        /// Where it stood.
        #[n(1)] pub glass: Glass,
        /// Cold or hot.
        #[n(2)] pub warmth: Option<Warmth>,
        /// How long it had stood.
        #[n(3)] pub stopped: Option<StopWait>,
        /// How the oil looks.
        #[n(4)] pub look: Option<OilLook>,
        /// A photo of the glass.
        #[n(5)] pub photo: Option<Digest>,
        /// The oil's temperature, where a display showed it: a hot level compares with cold ones by it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(6)] pub oil_temperature: Option<Figure>,
    }

    /// One small pour.
    pub struct Pour {
        /// How much.
        #[n(0)] pub volume: Figure,
        /// Where the level stood after waiting, when it was looked at.
        #[n(1)] pub after: Option<Glass>,
        /// How long was waited before looking, in milliseconds, on a clock that counts through sleep.
        #[n(2)] pub waited_ms: Option<u32>,
    }

    /// A fluid was topped up.
    pub struct TopUp {
        /// Which fluid.
        #[n(0)] pub fluid: Fluid,
        /// Family of the oil on the drum, for compressor oil.
        #[n(1)] pub family: Option<OilFamily>,
        /// Grade on the drum, such as `ISO VG 46`.
        #[n(2)] pub grade: Option<String>,
        /// First sign of zero pressure: the gauge read 0.
        #[n(3)] pub gauge_zero: Option<bool>,
        /// Second sign: blow-down had ended and was silent.
        #[n(4)] pub blow_down_silent: Option<bool>,
        /// Where the level stood before.
        #[n(5)] pub before: Option<Glass>,
        /// Each pour.
        #[n(6)] pub pours: Vec<Pour>,
        /// Where the level stands now.
        #[n(7)] pub after: Option<Glass>,
        /// Cold or hot.
        #[n(8)] pub warmth: Option<Warmth>,
        /// How long the unit had stood.
        #[n(9)] pub stopped: Option<StopWait>,
        /// The cap was cleaned, set and tight.
        #[n(10)] pub cap_tight: Option<bool>,
        /// The oil's temperature, where a display showed it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(11)] pub oil_temperature: Option<Figure>,
        /// Family and grade are what the drum's label said to a camera; a scanned label that named neither is an unknown drum.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(12)] pub label_scanned: Option<bool>,
    }

    /// So much of a fluid lies on the truck, in its cans, from this moment on. What is poured into the unit later is
    /// taken out of it; what is loaded is counted again.
    pub struct StockCounted {
        /// Of which fluid.
        #[n(0)] pub fluid: Fluid,
        /// How much: a volume, 0 for none.
        #[n(1)] pub volume: Figure,
    }

    /// Water was drained.
    pub struct WaterDrained {
        /// Out of what.
        #[n(0)] pub from: WaterFrom,
        /// How much.
        #[n(1)] pub amount: WaterAmount,
        /// Oil was seen in it.
        #[n(2)] pub oil_in_it: bool,
    }

    /// The site, from now on today.
    pub struct SiteCondition {
        /// How dusty.
        #[n(0)] pub dust: SiteDust,
    }

    /// The oil's look, by itself.
    pub struct OilCondition {
        /// How it looks.
        #[n(0)] pub look: OilLook,
    }

    /// A sample for a laboratory.
    pub struct Sample {
        /// The number on the bottle.
        #[n(0)] pub bottle: String,
        /// Where it was drawn.
        #[n(1)] pub point: Option<String>,
        /// Cold or hot.
        #[n(2)] pub warmth: Option<Warmth>,
        /// Hours on this oil.
        #[n(3)] pub hours_on_oil: Option<Tenths>,
    }

    /// What the laboratory found.
    pub struct LabAnswer {
        /// The sample it answers.
        #[n(0)] pub sample: EntryId,
        /// In its words.
        #[n(1)] pub words: String,
    }
}

impl TopUp {
    /// A top-up of which only the fluid is known.
    pub fn of(fluid: Fluid) -> TopUp {
        TopUp {
            fluid,
            family: None,
            grade: None,
            gauge_zero: None,
            blow_down_silent: None,
            before: None,
            pours: Vec::new(),
            after: None,
            warmth: None,
            stopped: None,
            cap_tight: None,
            oil_temperature: None,
            label_scanned: None,
        }
    }
}

impl StockCounted {
    /// More of one fluid lies on no truck, litres: about a thousand US gallons. Common practice, no source.
    pub const MOST_LITRES: f64 = 4_000.0;
}
