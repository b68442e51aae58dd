//! The procedures as they ship, read once from data.

use std::sync::OnceLock;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{PlannedStep, Step};
use crate::unit::Features;

/// Steps in an order that matters.
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Procedure {
    /// Its key: "top-up".
    pub id: String,
    /// Its steps.
    pub steps: Vec<Step>,
}

/// Every procedure.
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Procedures {
    /// The edition of this table.
    pub edition: u32,
    /// What it stands on.
    pub cites: String,
    /// The procedures.
    pub procedures: Vec<Procedure>,
}

/// Why a table of procedures cannot be used.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("the table of procedures cannot be read: {0}")]
pub struct ProcedureError(pub String);

impl Procedures {
    /// A table from its TOML text.
    pub fn read(text: &str) -> Result<Procedures, ProcedureError> {
        toml::from_str(text).map_err(|e| ProcedureError(e.to_string()))
    }

    /// The table that ships.
    pub fn common_practice() -> Result<&'static Procedures, ProcedureError> {
        static PROCEDURES: OnceLock<Result<Procedures, ProcedureError>> = OnceLock::new();
        PROCEDURES
            .get_or_init(|| Procedures::read(include_str!("../../data/procedures.toml")))
            .as_ref()
            .map_err(Clone::clone)
    }

    /// A procedure by its id.
    pub fn of(&self, id: &str) -> Option<&Procedure> {
        self.procedures.iter().find(|procedure| procedure.id == id)
    }

    /// A step by its id, of whichever procedure: no id stands twice.
    pub fn step(&self, id: &str) -> Option<&Step> {
        self.procedures.iter().find_map(|procedure| procedure.step(id))
    }
}

impl Procedure {
    /// The steps of one unit, in order, less those it lacks the things for.
    pub fn steps_for<'a>(&'a self, features: &'a Features) -> Vec<PlannedStep<'a>> {
        let own = self.steps.iter().filter(|step| features.meets(&step.needs));
        own.map(|step| PlannedStep { step, names: names(step, features) }).collect()
    }

    /// A step by its id.
    pub fn step(&self, id: &str) -> Option<&Step> {
        self.steps.iter().find(|step| step.id == id)
    }
}

fn names<'a>(step: &Step, features: &'a Features) -> Vec<&'a str> {
    let valves = features.valves.iter().filter(|_| step.names);
    valves.map(String::as_str).filter(|name| !name.trim().is_empty()).collect()
}
