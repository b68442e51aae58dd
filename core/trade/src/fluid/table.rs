//! The fluids as they ship, read once from data.

use std::sync::OnceLock;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Fluid, FluidFacts, OilFamily};
use crate::unit::Features;

/// What is known of one oil family.
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct FamilyFacts {
    /// The family.
    pub id: OilFamily,
    /// Families it gels with and drops out of (value from memory).
    pub gels_with: Vec<OilFamily>,
}

/// Every fluid, and every oil family.
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Fluids {
    /// The edition of this table.
    pub edition: u32,
    /// What it stands on.
    pub cites: String,
    /// The fluids.
    pub fluids: Vec<FluidFacts>,
    /// The oil families.
    pub families: Vec<FamilyFacts>,
}

/// Why a table of fluids cannot be used.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("the table of fluids cannot be read: {0}")]
pub struct FluidError(pub String);

impl Fluids {
    /// A table from its TOML text.
    pub fn read(text: &str) -> Result<Fluids, FluidError> {
        toml::from_str(text).map_err(|e| FluidError(e.to_string()))
    }

    /// The table that ships.
    pub fn common_practice() -> Result<&'static Fluids, FluidError> {
        static FLUIDS: OnceLock<Result<Fluids, FluidError>> = OnceLock::new();
        FLUIDS
            .get_or_init(|| Fluids::read(include_str!("../../data/fluids.toml")))
            .as_ref()
            .map_err(Clone::clone)
    }

    /// What is known of a fluid.
    pub fn of(&self, fluid: Fluid) -> Option<&FluidFacts> {
        self.fluids.iter().find(|facts| facts.id == fluid)
    }

    /// The fluids a unit has.
    pub fn of_unit<'a>(&'a self, features: &'a Features) -> impl Iterator<Item = &'a FluidFacts> {
        self.fluids.iter().filter(|facts| features.meets(&facts.needs))
    }

    /// Whether two families gel when they meet, whichever is poured into which.
    pub fn gel(&self, one: OilFamily, other: OilFamily) -> bool {
        let of = |id: OilFamily| self.families.iter().filter(move |facts| facts.id == id);
        of(one).any(|facts| facts.gels_with.contains(&other))
            || of(other).any(|facts| facts.gels_with.contains(&one))
    }
}
