//! When a cap may be opened.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The two signs that pressure is gone. `None` is not looked at, which is no sign.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(default)]
pub struct CapSigns {
    /// The receiver's gauge reads 0.
    pub gauge_zero: Option<bool>,
    /// The blow-down was heard to end.
    pub blow_down_silent: Option<bool>,
}

/// Whether a cap may be opened: only with both signs. Each of them alone can lie, a gauge by
/// sticking at its pin and a blow-down by being plugged.
pub fn may_open_cap(signs: CapSigns) -> bool {
    signs.gauge_zero == Some(true) && signs.blow_down_silent == Some(true)
}
