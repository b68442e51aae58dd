//! What several rules say of one figure, side by side, each by its name.

use serde::{Deserialize, Serialize};

use super::{Case, Limit, Measure, MissingFact, Rule, Rules};

/// What one rule says of a figure.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct RuleVerdict {
    /// Whose rule: the id of a rule set.
    pub set: String,
    /// Where it holds.
    pub place: String,
    /// The edition it was read in.
    pub edition: String,
    /// Where it is written.
    pub cites: String,
    /// It is the one the shop goes by; the others stand beside it.
    pub goes_by: bool,
    /// Its limit in this case; `None` when a fact of the case is missing.
    pub limit: Option<Limit>,
    /// The figure in the limit's own unit; `None` when it measures something else.
    pub figure: Option<f64>,
    /// Whether the figure keeps it; `None` when that cannot be told.
    pub keeps: Option<bool>,
    /// The fact that is missing.
    pub missing: Option<MissingFact>,
}

impl Rules {
    /// What every rule on a topic says of `figure`, given in `unit`: the shop's own first, then the others in the
    /// table's order. Empty for a topic no rule speaks of. An offered figure is only ever shown against them; no
    /// verdict keeps anyone from signing.
    pub fn say(
        &self,
        topic: &str,
        figure: f64,
        unit: Measure,
        case: &Case,
        set: Option<&str>,
    ) -> Vec<RuleVerdict> {
        let own = self.on(topic, set);
        let others = self.rules.iter().filter(|rule| rule.topic == topic && Some(*rule) != own);
        let all = own.into_iter().map(|rule| (rule, true)).chain(others.map(|rule| (rule, false)));
        all.map(|(rule, goes_by)| self.verdict(rule, goes_by, figure, unit, case)).collect()
    }

    fn verdict(&self, rule: &Rule, goes_by: bool, figure: f64, unit: Measure, case: &Case) -> RuleVerdict {
        let limit = rule.limit(case);
        let whose = self.set(&rule.set);
        let figure = unit.tell(figure, rule.unit);
        RuleVerdict {
            set: rule.set.clone(),
            place: whose.map(|set| set.place.clone()).unwrap_or_default(),
            edition: whose.map(|set| set.edition.clone()).unwrap_or_default(),
            cites: rule.cites.clone(),
            goes_by,
            limit: limit.ok(),
            figure,
            keeps: limit.ok().zip(figure).map(|(limit, figure)| limit.holds(figure)),
            missing: limit.err(),
        }
    }
}
