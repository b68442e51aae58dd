//! Setting up, running and driving.

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
