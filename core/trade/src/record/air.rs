//! Setting up, running and driving.

use super::{Fact, Meter, WaterFrom};
use crate::checklist::Severity;
use crate::fluid::Fluid;
use crate::{Figure, Stamp};

record! {
    /// One step of a procedure, as it was confirmed.
    pub struct StepDone {
        /// The step's id.
        #[n(0)] pub step: String,
        /// When it was confirmed.
        #[n(1)] pub at: Stamp,
        /// It was not so: the procedure stopped here.
        #[n(2)] pub not_so: bool,
        /// The word chosen for what was not so.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(3)] pub word: Option<String>,
        /// What that word locks, from the table of procedures; none when it locks nothing.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(4)] pub locks: Option<Severity>,
        /// The figure read at this step.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(5)] pub figure: Option<Figure>,
        /// Which of the unit's hoses was not so, by its name; none where none was named.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(6)] pub place: Option<String>,
    }

    /// Steps of a procedure that is no start and no stop, or that stopped before the compressor turned.
    pub struct StepsDone {
        /// The procedure's id.
        #[n(0)] pub procedure: String,
        /// Steps confirmed, in order; the last may be the one that was not so.
        #[n(1)] pub steps: Vec<StepDone>,
    }

    /// Air was started.
    pub struct StartAir {
        /// Steps confirmed, in order.
        #[cbor(default)]
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        #[n(0)] pub steps: Vec<StepDone>,
        /// Why it was used although it was locked, when asked.
        #[n(1)] pub in_spite_of_lock: Option<String>,
    }

    /// Air was stopped.
    pub struct StopAir {
        /// Steps confirmed, in order.
        #[cbor(default)]
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        #[n(0)] pub steps: Vec<StepDone>,
        /// Pressure fell to zero by itself.
        #[n(1)] pub blew_down: Option<bool>,
    }

    /// Pressures and temperatures while it runs.
    pub struct RunningNumbers {
        /// Minutes since the start.
        #[n(0)] pub minutes: Option<u32>,
        /// Pressure under load.
        #[n(1)] pub pressure: Option<Figure>,
        /// Pressure when idling.
        #[n(2)] pub idle_pressure: Option<Figure>,
        /// Temperature at the air end.
        #[n(3)] pub air_end: Option<Figure>,
        /// Temperature of the day.
        #[n(4)] pub ambient: Option<Figure>,
    }

    /// The truck was driven.
    pub struct Drive {
        /// What it did.
        #[n(0)] pub what: DriveWhat,
        /// Why it was driven although it was locked, when asked.
        #[n(1)] pub in_spite_of_lock: Option<String>,
    }
}

impl Fact {
    /// The steps of a procedure that it carries, in order.
    pub fn steps(&self) -> &[StepDone] {
        match self {
            Fact::StartAir(start) => &start.steps,
            Fact::StopAir(stop) => &stop.steps,
            Fact::StepsDone(done) => &done.steps,
            _ => &[],
        }
    }
}

impl Fact {
    /// Whether it is about the compressor set and goes with it to another truck.
    pub fn is_about_air(&self) -> bool {
        match self {
            Fact::StartAir(_)
            | Fact::StopAir(_)
            | Fact::StepsDone(_)
            | Fact::RunningNumbers(_)
            | Fact::DisplayNote(_)
            | Fact::Acknowledgement(_)
            | Fact::SiteCondition(_)
            | Fact::OilCondition(_)
            | Fact::Sample(_)
            | Fact::LabAnswer(_)
            | Fact::ServiceDone(_)
            | Fact::VisitPlan(_)
            | Fact::WaitingForPart(_)
            | Fact::LayUp(_)
            | Fact::ReturnToService(_) => true,
            Fact::HourReading(reading) => reading.meter == Meter::Compressor,
            Fact::MeterExchange(exchange) => exchange.meter == Meter::Compressor,
            Fact::HoursEstimate(estimate) => estimate.meter == Meter::Compressor,
            Fact::LevelCheck(level) => level.fluid == Fluid::CompressorOil,
            Fact::TopUp(top_up) => top_up.fluid == Fluid::CompressorOil,
            Fact::WaterDrained(water) => matches!(water.from, WaterFrom::Receiver | WaterFrom::Outlet),
            _ => false,
        }
    }
}

choice! {
    /// What a truck did.
    pub enum DriveWhat {
        /// Left the yard.
        #[n(0)] LeftYard,
        /// Left a site.
        #[n(1)] LeftSite,
        /// Came back to the yard.
        #[n(2)] CameBack,
    }
}
