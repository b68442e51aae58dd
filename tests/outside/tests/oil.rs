//! Oil in air against ISO 8573-1 and against a mass balance.

use sumpbook_trade::Tenths;
use sumpbook_trade::oil::{Millilitres, OilClass, OilNumbers, carry_over, use_at};
use uom::si::f64::VolumeRate;
use uom::si::volume_rate::cubic_foot_per_minute;

fn cfm(q: f64) -> VolumeRate {
    VolumeRate::new::<cubic_foot_per_minute>(q)
}

// ISO 8573-1:2010, total oil, as three reproductions of its table agree: each limit belongs to its class.
#[test]
fn oil_classes_at_their_borders() {
    for (mg_m3, class) in [
        (0.0, OilClass::Class1),
        (0.01, OilClass::Class1),
        (0.010_001, OilClass::Class2),
        (0.1, OilClass::Class2),
        (0.100_001, OilClass::Class3),
        (1.0, OilClass::Class3),
        (1.000_1, OilClass::Class4),
        (5.0, OilClass::Class4),
        (5.000_1, OilClass::ClassX),
        (56.0, OilClass::ClassX),
    ] {
        assert_eq!(OilClass::of(mg_m3), class, "{mg_m3}");
    }
    assert_eq!(OilClass::of(f64::NAN), OilClass::ClassX, "what is no number is in no good class");
}

// Computed mass balance, oil at 0.86 kg/L: litres in 500 h at 2, 3 and 5 mg/m3.
#[test]
fn litres_in_five_hundred_hours() {
    let numbers = OilNumbers::default();
    for (rated, litres) in [
        (40.0, [0.079, 0.119, 0.198]),
        (60.0, [0.119, 0.178, 0.296]),
        (100.0, [0.198, 0.296, 0.494]),
        (185.0, [0.365, 0.548, 0.914]),
    ] {
        for (mg_m3, expected) in [2.0, 3.0, 5.0].into_iter().zip(litres) {
            let rate = use_at(mg_m3, cfm(rated), None, &numbers);
            let used = rate.0 * 500.0 / 1_000.0;
            assert!((used - expected).abs() <= 0.000_51, "{rated} cfm at {mg_m3}: {used} is not {expected}");
            let back =
                carry_over(Millilitres(used * 1_000.0), Tenths::hours(500), cfm(rated), None, &numbers);
            assert!((back.unwrap().mg_m3 - mg_m3).abs() < 1e-9);
        }
    }
}

// 1 ppm by weight is 1.188 mg/m3 at 20 degC and 1 bar (computed), so a usual 3 ppm is within class 4.
#[test]
fn three_parts_in_a_million_are_class_4() {
    let air = 100_000.0 / (287.055 * 293.15);
    assert!((air - 1.188_f64).abs() < 5e-4);
    assert_eq!(OilClass::of(3.0 * air), OilClass::Class4);
    assert_eq!(OilClass::of(5.0 * air), OilClass::ClassX);
}
