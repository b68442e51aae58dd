//! The two quantities of oil use.

use std::ops::{Add, Neg, Sub};

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use uom::si::f64::Volume;
use uom::si::volume::milliliter;

use crate::quantity::{Figure, Tenths};

/// Oil in millilitres, at 15 degC. May be below zero: what is missing to the middle of the glass.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize, JsonSchema)]
#[serde(transparent)]
pub struct Millilitres(pub f64);

impl Millilitres {
    /// None.
    pub const ZERO: Millilitres = Millilitres(0.0);

    /// Of a figure as it was given; `None` when it is no volume.
    pub fn of(figure: Figure) -> Option<Millilitres> {
        figure.volume().map(Millilitres::from)
    }

    /// Over so many running hours; `None` over none.
    pub fn over(self, hours: Tenths) -> Option<MlPerHour> {
        (hours > Tenths::ZERO).then(|| MlPerHour(self.0 / hours.as_hours()))
    }

    /// A share or a multiple of it.
    pub fn times(self, factor: f64) -> Millilitres {
        Millilitres(self.0 * factor)
    }
}

impl From<Volume> for Millilitres {
    fn from(volume: Volume) -> Millilitres {
        Millilitres(volume.get::<milliliter>())
    }
}

impl Add for Millilitres {
    type Output = Millilitres;
    fn add(self, other: Millilitres) -> Millilitres {
        Millilitres(self.0 + other.0)
    }
}

impl Sub for Millilitres {
    type Output = Millilitres;
    fn sub(self, other: Millilitres) -> Millilitres {
        Millilitres(self.0 - other.0)
    }
}

impl Neg for Millilitres {
    type Output = Millilitres;
    fn neg(self) -> Millilitres {
        Millilitres(-self.0)
    }
}

/// Oil used in a running hour, millilitres.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize, JsonSchema)]
#[serde(transparent)]
pub struct MlPerHour(pub f64);
