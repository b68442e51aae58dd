//! What is known of one fluid.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Fluid, FluidAct};
use crate::checklist::Severity;
use crate::unit::Feature;

/// A condition and what it locks. In data a pair: `["rising", "road"]`.
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
pub struct Finding(
    /// The condition's key.
    pub String,
    /// What it locks.
    pub Severity,
);

/// What is known of one fluid.
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct FluidFacts {
    /// The fluid.
    pub id: Fluid,
    /// Whether some use is normal.
    pub slow_use: bool,
    /// Whether it should need none: a top-up opens a defect by itself.
    pub sealed: bool,
    /// What is recorded of it.
    pub act: FluidAct,
    /// What is found by it, each with what it locks.
    pub findings: Vec<Finding>,
    /// The caution shown with it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub caution: Option<String>,
    /// Features, any one of which it needs.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub needs: Vec<Feature>,
}

impl FluidFacts {
    /// The condition that every record of it meets.
    pub const ANY: &'static str = "any";

    /// What a condition locks; `None` for one this fluid does not know.
    pub fn severity(&self, condition: &str) -> Option<Severity> {
        self.findings.iter().find(|finding| finding.0 == condition).map(|finding| finding.1)
    }

    /// What every top-up locks by itself, nothing else known; `None` when it opens no defect.
    pub fn by_itself(&self) -> Option<Severity> {
        self.sealed.then(|| self.severity(FluidFacts::ANY)).flatten()
    }
}
