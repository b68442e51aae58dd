//! A leak test: a drop of pressure over a timed minute.

use serde::{Deserialize, Serialize};

/// How long the rules say to wait, seconds.
const RULED_SECONDS: f64 = 60.0;

/// A drop over a time, as the phone's own timer ran it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct LeakRun {
    /// The drop, in any unit of pressure.
    pub drop: f64,
    /// Seconds it was watched, on a clock that counts through sleep.
    pub seconds: f64,
}

/// The drop as it is shown.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct LeakTold {
    /// The drop in 60 s.
    pub in_a_minute: f64,
    /// The test ran another time and was scaled. Shown as "scaled"; it never certifies.
    pub scaled: bool,
}

/// What a run says against a limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum LeakSays {
    /// It ran its 60 s and keeps the limit.
    Keeps,
    /// It does not keep it, scaled or not: a defect at once.
    Over,
    /// Scaled it would keep it: run it again for 60 s.
    RunAgain,
}

impl LeakRun {
    /// The drop in 60 s; `None` of a run that took no time, or a drop that is no number.
    pub fn told(self) -> Option<LeakTold> {
        if !self.drop.is_finite() || !self.seconds.is_finite() || self.seconds <= 0.0 {
            return None;
        }
        // The timer counts whole tenths of a second.
        let scaled = (self.seconds - RULED_SECONDS).abs() >= 0.05;
        let in_a_minute = if scaled { self.drop * RULED_SECONDS / self.seconds } else { self.drop };
        Some(LeakTold { in_a_minute, scaled })
    }
}

impl LeakTold {
    /// What it says when the drop in a minute `keeps` the rule's limit, or does not.
    pub fn says(self, keeps: bool) -> LeakSays {
        match (keeps, self.scaled) {
            (false, _) => LeakSays::Over,
            (true, true) => LeakSays::RunAgain,
            (true, false) => LeakSays::Keeps,
        }
    }
}
