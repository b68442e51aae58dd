//! A limit as a rule states it, before the case is known.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Comparator, Limit, Measure};

/// The facts of a case that a rule may ask for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default)]
pub struct Case {
    /// How many vehicles are coupled: a truck alone is 1. 0 counts as 1.
    pub vehicles: u8,
    /// The governor's cut-out, in the rule's unit.
    pub cut_out: Option<f64>,
    /// Actual reservoir volume over the required one.
    pub reservoir_share: Option<f64>,
    /// The receiver's greatest allowed working pressure, in the rule's unit.
    pub mawp: Option<f64>,
}

/// "55 psi or half the cut-out, whichever is less".
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LesserOf {
    /// The figure it never goes above.
    pub cap: f64,
    /// The share of the governor's cut-out.
    pub share: f64,
}

/// Where the figure comes from.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Bound {
    /// One figure.
    At(f64),
    /// Two ends, both included.
    Band(f64, f64),
    /// By the number of vehicles: one, two, three; the last stands for more.
    ByVehicles(Vec<f64>),
    /// The lesser of a cap and a share of the governor's cut-out.
    LesserOf(LesserOf),
    /// Times actual over required reservoir volume.
    PerReservoir(f64),
    /// Times the receiver's greatest allowed working pressure.
    ShareOfMawp(f64),
}

/// One rule: what it limits, whose it is, how it compares.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Rule {
    /// What it limits: "leak-applied".
    pub topic: String,
    /// Whose rule it is: the id of a [`super::RuleSet`].
    pub set: String,
    /// The rule's own unit.
    pub unit: Measure,
    /// How it compares.
    pub is: Comparator,
    /// Where its figure comes from.
    #[serde(flatten)]
    pub bound: Bound,
    /// Where it is written.
    pub cites: String,
}

/// A fact the rule needs and the case does not give. Unknown is never zero.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, thiserror::Error)]
#[serde(rename_all = "kebab-case")]
pub enum MissingFact {
    /// The governor's cut-out is not known.
    #[error("the governor's cut-out is not known")]
    CutOut,
    /// The reservoirs' volumes are not known.
    #[error("the reservoirs' volumes are not known")]
    ReservoirShare,
    /// The receiver's greatest allowed working pressure is not known.
    #[error("the receiver's greatest allowed working pressure is not known")]
    Mawp,
    /// The rule names no figure for so many vehicles.
    #[error("the rule names no figure for so many vehicles")]
    Vehicles,
}

impl Rule {
    /// The limit in one case, or the fact that is missing.
    pub fn limit(&self, case: &Case) -> Result<Limit, MissingFact> {
        let one = |figure: f64| Limit { is: self.is, low: figure, high: figure, unit: self.unit };
        Ok(match &self.bound {
            Bound::At(figure) => one(*figure),
            Bound::Band(low, high) => Limit { is: self.is, low: *low, high: *high, unit: self.unit },
            Bound::ByVehicles(figures) => {
                let index = usize::from(case.vehicles.saturating_sub(1));
                let figure = figures.get(index).or(figures.last());
                one(*figure.ok_or(MissingFact::Vehicles)?)
            }
            Bound::LesserOf(of) => one(of.cap.min(case.cut_out.ok_or(MissingFact::CutOut)? * of.share)),
            Bound::PerReservoir(seconds) => {
                one(seconds * case.reservoir_share.ok_or(MissingFact::ReservoirShare)?)
            }
            Bound::ShareOfMawp(share) => one(share * case.mawp.ok_or(MissingFact::Mawp)?),
        })
    }
}
