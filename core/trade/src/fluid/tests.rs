use super::*;
use crate::checklist::Severity;
use crate::unit::{Feature, Features};

fn fluids() -> &'static Fluids {
    Fluids::common_practice().unwrap()
}

#[test]
fn every_fluid_has_its_facts_once_in_the_order_of_its_number() {
    let ids: Vec<Fluid> = fluids().fluids.iter().map(|facts| facts.id).collect();
    assert_eq!(ids, Fluid::ALL);
    for (number, fluid) in Fluid::ALL.iter().enumerate() {
        assert_eq!(minicbor::to_vec(fluid).unwrap(), minicbor::to_vec(number).unwrap());
    }
    assert_eq!(minicbor::to_vec(Fluid::BrakeFluid).unwrap(), [5]);
    assert_eq!(minicbor::to_vec(Fluid::Grease).unwrap(), [16]);
    assert_eq!(minicbor::to_vec(OilFamily::Polyglycol).unwrap(), [3]);
}

// Common practice, no source.
#[test]
fn a_sealed_fluid_opens_a_defect_by_itself_and_no_other_does() {
    for facts in &fluids().fluids {
        let by_itself = facts.by_itself();
        assert_eq!(by_itself.is_some(), facts.sealed, "{:?}", facts.id);
        let expected = if facts.id == Fluid::BrakeFluid { Severity::Road } else { Severity::Note };
        assert!(by_itself.is_none_or(|severity| severity == expected), "{:?}", facts.id);
    }
    let sealed: Vec<Fluid> = fluids().fluids.iter().filter(|f| f.sealed).map(|f| f.id).collect();
    use Fluid::{BrakeFluid, Coolant, GearCase, GearboxOil, HydraulicOil, PowerSteering};
    assert_eq!(sealed, [Coolant, HydraulicOil, PowerSteering, BrakeFluid, GearboxOil, GearCase]);
}

#[test]
fn what_a_finding_locks() {
    let of = |fluid, condition| fluids().of(fluid).unwrap().severity(condition);
    assert_eq!(of(Fluid::EngineOil, "rising"), Some(Severity::Road));
    assert_eq!(of(Fluid::Def, "in-fuel"), Some(Severity::Road));
    assert_eq!(of(Fluid::GearboxOil, "pto-case-low"), Some(Severity::Air));
    assert_eq!(of(Fluid::CompressorOil, "wrong-oil"), Some(Severity::Air));
    assert_eq!(of(Fluid::Grease, "rising"), None);
}

#[test]
fn a_unit_shows_only_the_fluids_it_has() {
    let features = Features::of([Feature::HydraulicBrakes]);
    let has = |fluid| fluids().of_unit(&features).any(|facts| facts.id == fluid);
    assert!(has(Fluid::CompressorOil) && has(Fluid::BrakeFluid));
    assert!(!has(Fluid::Def) && !has(Fluid::BrakeTanks));
}

#[test]
fn the_same_number_is_not_the_same_oil() {
    let mineral = Oil::of(OilFamily::Mineral, 46);
    assert_eq!(Oil::mix(mineral, mineral), Mix::Same);
    assert_eq!(Oil::mix(mineral, Oil::of(OilFamily::Mineral, 32)), Mix::OtherGrade);
    assert_eq!(Oil::mix(Oil::of(OilFamily::Polyglycol, 46), mineral), Mix::OtherFamily);
    assert!(Mix::Same.may_pour() && !Mix::OtherGrade.may_pour());
}

#[test]
fn an_oil_that_does_not_say_what_it_is_stays_unknown() {
    let mineral = Oil::of(OilFamily::Mineral, 46);
    let only_number = Oil { grade: Some(46), ..Oil::default() };
    let only_family = Oil { family: Some(OilFamily::Mineral), ..Oil::default() };
    for drum in [Oil::default(), only_number, only_family] {
        assert_eq!(Oil::mix(mineral, drum), Mix::Unknown);
        assert_eq!(Oil::mix(drum, mineral), Mix::Unknown);
        assert_eq!(Oil::mix(drum, drum), Mix::Unknown);
    }
    assert!(!Mix::Unknown.may_pour());
    let polyglycol = Oil { family: Some(OilFamily::Polyglycol), grade: None };
    assert_eq!(Oil::mix(mineral, polyglycol), Mix::OtherFamily);
}

// Value from memory: polyglycol with mineral or synthetic hydrocarbon gels and drops out.
#[test]
fn polyglycol_gels_with_two_families_either_way_round() {
    use OilFamily::{Ester, Mineral, Polyglycol, SyntheticHydrocarbon};
    for other in [Mineral, SyntheticHydrocarbon] {
        assert!(fluids().gel(Polyglycol, other) && fluids().gel(other, Polyglycol));
    }
    assert!(!fluids().gel(Mineral, SyntheticHydrocarbon) && !fluids().gel(Ester, Polyglycol));
    let listed: Vec<OilFamily> = fluids().families.iter().map(|facts| facts.id).collect();
    assert_eq!(listed, OilFamily::ALL);
}

#[test]
fn a_poured_sealed_fluid_is_a_defect_of_its_own_line_and_locks_the_same_there() {
    let template = crate::checklist::Template::common_practice().unwrap();
    for fluid in Fluid::ALL {
        let by_itself = fluids().of(fluid).unwrap().by_itself();
        let found = fluids().finding_of_top_up(fluid);
        let locks = found.map(|found| {
            let severity = template.item(found.item).and_then(|item| item.severity(found.word));
            severity.unwrap_or_else(|| panic!("the checklist knows no {} of {}", found.word, found.item))
        });
        assert_eq!(locks, by_itself, "{fluid:?}");
    }
}

#[test]
fn a_label_with_one_number_has_a_grade() {
    let grade = |label| Oil::labelled(None, label).grade;
    assert_eq!(grade(Some("ISO VG 46")), Some(46));
    assert_eq!(grade(Some("46")), Some(46));
    assert_eq!(grade(Some("10W-40")), None, "two numbers: nobody knows which");
    assert_eq!(grade(Some("mineral")), None);
    assert_eq!(grade(None), None);
}

#[test]
fn what_was_poured_is_wrong_unless_it_is_known_to_be_the_units_own() {
    let (mineral, ester) = (Some(OilFamily::Mineral), Some(OilFamily::Ester));
    let of = |family, label| Oil::labelled(family, label);
    let own = of(mineral, Some("ISO VG 46"));
    let wrong = |family, label| Oil::poured_wrong(own, of(family, label));
    assert_eq!(wrong(mineral, Some("46")), None);
    assert_eq!(wrong(ester, Some("46")), Some(Mix::OtherFamily));
    assert_eq!(wrong(mineral, Some("68")), Some(Mix::OtherGrade));
    assert_eq!(wrong(None, None), Some(Mix::Unknown));
    assert_eq!(wrong(mineral, None), Some(Mix::Unknown));
    // A profile that says nothing compares with nothing.
    assert_eq!(Oil::poured_wrong(Oil::default(), of(None, None)), None);
    assert_eq!(Oil::poured_wrong(of(mineral, None), of(mineral, Some("68"))), None);
    assert_eq!(Oil::poured_wrong(of(mineral, None), of(None, None)), Some(Mix::Unknown));
}
