//! Engine oil that is poured between two changes: over a quart is a leak, or burning.

use crate::clock::TaskId;
use crate::oil::Millilitres;

/// The quart, a US one, in millilitres (NIST SP 811: 9.463529 E-04 m3, exactly 57.75 cubic inches).
const QUART_ML: f64 = 946.352_946;

/// Figures are summed as floating point: four quarters are one quart, and not a hair more.
const HAIR_ML: f64 = 1e-6;

/// How a task is named that changes the engine's oil: as the fluid is, and what a shop may add to it.
const ENGINE_OIL: &str = "engine-oil";

/// Whether a task of a shop's own programme changes the engine's oil.
pub fn is_engine_oil_task(task: &TaskId) -> bool {
    task.0.strip_prefix(ENGINE_OIL).is_some_and(|rest| rest.is_empty() || rest.starts_with('-'))
}

/// Whether so much has been poured with this pour, and had not been before it, that it is over a quart, or over
/// another whole quart. `before` is all that was poured since the last change; where nobody knows of one, since the
/// first record. Common practice, no source.
pub fn passes_a_quart(before: Millilitres, pour: Millilitres) -> bool {
    // A quart is passed by what is more than it: exactly one is none.
    let passed = |all: Millilitres| ((all.0 - HAIR_ML) / QUART_ML).floor().max(0.0);
    passed(before + pour) > passed(before)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Figure, Unit};

    fn quarts(text: &str) -> Millilitres {
        Millilitres::of(Figure::parse(text, Unit::Quart).unwrap()).unwrap()
    }

    // Common practice, no source.
    #[test]
    fn a_quart_is_passed_by_more_than_a_quart_and_each_further_one_once() {
        let quarter = quarts("0.25");
        let mut poured = Millilitres::ZERO;
        let mut told = Vec::new();
        for pour in 1..=13 {
            if passes_a_quart(poured, quarter) {
                told.push(pour);
            }
            poured = poured + quarter;
        }
        // Four quarters are one quart, the fifth is over it; the ninth over two, the thirteenth over three.
        assert_eq!(told, [5, 9, 13]);
        assert!(passes_a_quart(Millilitres::ZERO, quarts("1.01")));
        assert!(!passes_a_quart(Millilitres::ZERO, quarts("1")));
        assert!(!passes_a_quart(quarts("1.2"), quarts("0.5")));
    }

    #[test]
    fn a_change_of_the_engine_s_oil_is_named_by_it() {
        let named = |name: &str| is_engine_oil_task(&TaskId::from(name));
        assert!(named("engine-oil") && named("engine-oil-and-filter"));
        assert!(!named("oil-and-filters") && !named("engine-oilers") && !named("engine"));
    }
}
