//! Units against NIST SP 811, appendix B.8, and the definitions behind it.

use sumpbook_trade::{Figure, Unit};

fn figure(value: &str, unit: Unit) -> Figure {
    Figure::parse(value, unit).unwrap()
}

#[track_caller]
fn near(got: f64, published: f64) {
    assert!((got - published).abs() <= published.abs() * 1e-12, "{got} is not {published}");
}

// SP 811: 1 psi = 6.894757 kPa; exactly 0.45359237 x 9.80665 / 0.0254^2 Pa.
#[test]
fn pounds_per_square_inch() {
    let pascal = figure("1", Unit::Psi).pressure().unwrap().value;
    let exact = 0.453_592_37 * 9.806_65 / (0.0254 * 0.0254);
    near(pascal, exact);
    assert_eq!(format!("{:.6}", pascal / 1000.0), "6.894757");
    // 49 CFR 393.51(c)(2) prints 379 kPa for 55 psi.
    assert_eq!((figure("55", Unit::Psi).pressure().unwrap().value / 1000.0).round(), 379.0);
    near(figure("2.5", Unit::Bar).pressure().unwrap().value, 250_000.0);
    near(figure("21", Unit::Kilopascal).pressure().unwrap().value, 21_000.0);
}

// SP 811: 1 gal (US) = 3.785412 L, exactly 231 in^3; 1 qt = 0.9463529 L; 1 fl oz = 29.57353 mL.
#[test]
fn volumes_of_the_united_states() {
    let litres = |value, unit| figure(value, unit).volume().unwrap().value * 1000.0;
    let inch3 = 0.254_f64 * 0.254 * 0.254;
    assert!((litres("1", Unit::Gallon) - 231.0 * inch3).abs() < 1e-9);
    assert_eq!(format!("{:.6}", litres("1", Unit::Gallon)), "3.785412");
    assert_eq!(format!("{:.7}", litres("1", Unit::Quart)), "0.9463529");
    assert_eq!(format!("{:.5}", litres("1", Unit::FluidOunce) * 1000.0), "29.57353");
    near(litres("7.57", Unit::Litre), 7.57);
    near(litres("250", Unit::Millilitre), 0.25);
}

// SP 811: 1 psi = 0.06894757 bar; 1 ft3/min = 4.719474E-04 m3/s, exactly 0.4719474432 L/s.
#[test]
fn bar_and_cubic_feet_a_minute() {
    let bar = figure("1", Unit::Psi).pressure().unwrap().value / 100_000.0;
    assert_eq!(format!("{bar:.8}"), "0.06894757");
    let flow = figure("1", Unit::CubicFootPerMinute).flow().unwrap().value;
    assert!((flow - 4.719_474_432e-4).abs() < 1e-15, "{flow}");
    // A quart is exactly 57.75 in3, a fluid ounce a thirty-second of it.
    let litres = |value, unit| figure(value, unit).volume().unwrap().value * 1000.0;
    near(litres("1", Unit::Quart), 0.946_352_946);
    near(litres("1", Unit::FluidOunce) * 1000.0, 29.573_529_562_5);
    near(litres("32", Unit::FluidOunce), litres("1", Unit::Quart));
}

// SP 811, B.8: t/degC = (t/degF - 32) / 1.8.
#[test]
fn temperatures() {
    for (fahrenheit, celsius) in [("-40", -40.0), ("32", 0.0), ("68", 20.0), ("180", 82.2222), ("212", 100.0)]
    {
        let kelvin = figure(fahrenheit, Unit::Fahrenheit).temperature().unwrap().value;
        assert!((kelvin - 273.15 - celsius).abs() < 5e-5, "{fahrenheit} degF");
    }
    // A difference of 18 degF is one of 10 degC.
    let of = |value| figure(value, Unit::Fahrenheit).temperature().unwrap().value;
    assert!((of("198") - of("180") - 10.0).abs() < 1e-9);
}

// The inch is exactly 25.4 mm; 49 CFR 393.75 speaks of thirty-seconds.
#[test]
fn lengths() {
    let millimetres = |value, unit| figure(value, unit).length().unwrap().value * 1000.0;
    near(millimetres("4", Unit::ThirtySecond), 3.175);
    near(millimetres("2", Unit::ThirtySecond), 1.5875);
    near(millimetres("0.5", Unit::Inch), 12.7);
    near(millimetres("1", Unit::Mile), 1_609_344.0);
}
