//! Air against tables and worked examples: atmosphere, vapour, pressure drop, orifices, receivers.

use sumpbook_trade::air::{
    Edge, HoseRun, Intake, content, delivered, density_ratio, dew_point, hose_loss, lasts, orifice_flow,
    pressure_dew_point, saturation, size_for, standard_pressure, standard_temperature, vapour_at,
};
use uom::si::f64::{Length, Pressure, ThermodynamicTemperature, Time, Volume, VolumeRate};
use uom::si::length::{foot, inch, meter, millimeter};
use uom::si::pressure::{bar, pascal, psi};
use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};
use uom::si::time::{minute, second};
use uom::si::volume::{cubic_foot, gallon};
use uom::si::volume_rate::{cubic_foot_per_minute, liter_per_second};

#[track_caller]
fn near(got: f64, published: f64, share: f64) {
    assert!((got - published).abs() <= published.abs() * share, "{got} is not {published}");
}

fn metres(height: f64) -> Length {
    Length::new::<meter>(height)
}

fn celsius(t: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(t)
}

fn pounds(p: f64) -> Pressure {
    Pressure::new::<psi>(p)
}

fn cfm(q: f64) -> VolumeRate {
    VolumeRate::new::<cubic_foot_per_minute>(q)
}

fn at(height: f64) -> Intake {
    Intake { altitude: metres(height), ..Intake::standard() }
}

// ICAO Doc 7488 / US Standard Atmosphere 1976, geometric heights, as tabulated by `ambiance`.
#[test]
fn the_standard_atmosphere() {
    for (height, t, p, rho) in [
        (0.0, 288.15, 101_325.0, 1.0),
        (1_000.0, 281.651, 89_876.3, 0.907_48),
        (2_000.0, 275.154, 79_501.4, 0.821_68),
    ] {
        near(standard_temperature(metres(height)).get::<kelvin>(), t, 2e-6);
        near(standard_pressure(metres(height)).get::<pascal>(), p, 3e-6);
        near(density_ratio(&at(height)).get::<ratio>(), rho, 1e-5);
    }
    // Computed with general-purpose libraries: 5,000 ft and 3,000 m.
    near(standard_pressure(metres(1_524.0)).get::<pascal>(), 84_311.0, 3e-6);
    near(density_ratio(&at(1_524.0)).get::<ratio>(), 0.861_70, 1e-5);
    near(standard_pressure(metres(3_000.0)).get::<pascal>(), 70_121.1, 3e-6);
    near(density_ratio(&at(3_000.0)).get::<ratio>(), 0.742_25, 1e-5);
    // The table of `fluids`: 4,000 m.
    near(standard_pressure(metres(4_000.0)).get::<pascal>(), 61_660.0, 1e-5);
}

// From the same table: 100 cfm at sea level are 90.7 at 1,000 m and 82.2 at 2,000 m.
#[test]
fn delivery_shrinks_with_the_height() {
    for (height, left) in [(0.0, 100.0), (1_000.0, 90.7), (2_000.0, 82.2)] {
        near(delivered(cfm(100.0), &at(height)).get::<cubic_foot_per_minute>(), left, 1e-3);
    }
    let damp = Intake { temperature: Some(celsius(40.0)), humidity: Some(1.0), ..at(0.0) };
    let dry = Intake { humidity: None, ..damp };
    assert!(density_ratio(&damp) < density_ratio(&dry) && density_ratio(&dry) < density_ratio(&at(0.0)));
}

// ASHRAE Handbook of Fundamentals 2017, chapter 1, table 3, as quoted in psychrolib's tests: within 300 ppm.
#[test]
fn saturation_pressure_of_ashrae() {
    for (t, pa) in [
        (-20.0, 103.24),
        (-5.0, 401.74),
        (5.0, 872.6),
        (25.0, 3_169.7),
        (50.0, 12_351.3),
        (100.0, 101_418.0),
        (150.0, 476_101.4),
    ] {
        near(saturation(celsius(t)).get::<pascal>(), pa, 300e-6);
    }
}

// IAPWS-IF97, verification values of region 4, and the triple point.
#[test]
fn saturation_pressure_of_if97() {
    let of = |t: f64| saturation(ThermodynamicTemperature::new::<kelvin>(t)).get::<pascal>();
    near(of(300.0), 0.353_658_941e-2 * 1e6, 1e-9);
    near(of(500.0), 2.638_897_76e6, 1e-8);
    near(of(600.0), 12.344_314_6e6, 1e-8);
    near(of(273.16), 611.657, 2e-6);
    // Computed with the library of that name: 20, 30 and 40 degC, which the printed tables leave out.
    for (t, pa) in [(20.0, 2_339.21), (30.0, 4_246.69), (40.0, 7_384.43)] {
        near(saturation(celsius(t)).get::<pascal>(), pa, 3e-6);
    }
    for (mpa, t) in [(0.1, 372.755_919), (1.0, 453.035_632), (10.0, 584.149_488)] {
        let found = dew_point(Pressure::new::<pascal>(mpa * 1e6)).unwrap().get::<kelvin>();
        assert!((found - t).abs() < 1e-5, "{found} is not {t}");
    }
}

// A worked example: 1013.3 mbar with a dew point of -10 degC (its vapour at 2.8 mbar) pressed to twice that:
// vapour at 5.6 mbar, about -1 degC.
#[test]
fn a_pressure_dew_point_worked_by_hand() {
    let (one, two) = (Pressure::new::<bar>(1.0133), Pressure::new::<bar>(2.0266));
    let found = pressure_dew_point(Pressure::new::<pascal>(280.0), one, two).unwrap().get::<degree_celsius>();
    assert!((found + 1.0).abs() < 0.25, "{found}");
}

// Computed with general-purpose libraries: intake, humidity, gauge pressure, pressure dew point.
#[test]
fn pressure_dew_points_of_three_days() {
    for (t, humidity, gauge, free, expected) in
        [(20.0, 0.6, 7.0, 12.0, 47.9), (30.0, 0.7, 7.0, 23.9, 63.6), (35.0, 0.8, 10.0, 31.0, 80.8)]
    {
        let outdoors = dew_point(vapour_at(celsius(t), humidity)).unwrap().get::<degree_celsius>();
        assert!((outdoors - free).abs() < 0.1, "{outdoors} is not {free}");
        let outside = Pressure::new::<pascal>(101_325.0);
        let inside = outside + Pressure::new::<bar>(gauge);
        let found = pressure_dew_point(vapour_at(celsius(t), humidity), outside, inside)
            .unwrap()
            .get::<degree_celsius>();
        assert!((found - expected).abs() < 0.1, "{found} is not {expected}");
    }
}

fn pipe(bore: Length, length: Length) -> HoseRun {
    HoseRun { bore, length, fittings: Vec::new() }
}

// Flow of Fluids, Technical Paper 410, example 7-16: 2.61 psi; the common form of handbooks within 5 %.
#[test]
fn pressure_drop_of_the_technical_paper() {
    let run = pipe(Length::new::<inch>(1.049), Length::new::<foot>(75.0));
    let lost = hose_loss(&run, cfm(100.0), pounds(65.0 + 14.696)).unwrap();
    near(lost.get::<psi>(), 2.61, 0.05);
}

// The same form computed for the technical paper's pipe: 2.526 psi, so the 5 % are the form's own and not the code's.
#[test]
fn pressure_drop_of_the_form_for_the_same_pipe() {
    let run = pipe(Length::new::<inch>(1.049), Length::new::<foot>(75.0));
    near(hose_loss(&run, cfm(100.0), pounds(65.0 + 14.696)).unwrap().get::<psi>(), 2.526, 2e-4);
}

// The same form computed: 100 L/s through 50 mm at 8 bar absolute.
#[test]
fn pressure_drop_of_the_form_itself() {
    for (length, expected) in [(100.0, 0.090_213_7), (210.0, 0.189_448_8)] {
        let run = pipe(Length::new::<millimeter>(50.0), metres(length));
        let flow = VolumeRate::new::<liter_per_second>(100.0);
        near(hose_loss(&run, flow, Pressure::new::<bar>(8.0)).unwrap().get::<bar>(), expected, 1e-6);
    }
}

// A hose chart reads 0.4 psi for 50 ft of 3/4 in at 30 cfm and 90 psig: charts and the form of pipes differ by up
// to two times, which is why a figure from it only ever warns.
#[test]
fn pressure_drop_lies_within_two_times_of_a_hose_chart() {
    let run = pipe(Length::new::<inch>(0.75), Length::new::<foot>(50.0));
    let lost = hose_loss(&run, cfm(30.0), pounds(104.7)).unwrap().get::<psi>();
    assert!((0.2..=0.8).contains(&lost), "{lost}");
}

// Handbook table of discharge through orifices (Moss), free air at 14.7 psia and 70 degF, coefficient 1.
#[test]
fn forty_eight_orifices_of_the_handbook() {
    let bores = [1.0 / 64.0, 1.0 / 32.0, 1.0 / 16.0, 1.0 / 8.0, 1.0 / 4.0, 3.0 / 8.0, 1.0 / 2.0, 1.0];
    for (gauge, row) in [
        (20.0, [0.123, 0.491, 1.96, 7.86, 31.4, 70.7, 126.0, 503.0]),
        (50.0, [0.229, 0.916, 3.66, 14.7, 58.6, 132.0, 235.0, 938.0]),
        (80.0, [0.335, 1.34, 5.36, 21.4, 85.7, 193.0, 343.0, 1_371.0]),
        (90.0, [0.370, 1.48, 5.92, 23.7, 94.8, 213.0, 379.0, 1_516.0]),
        (100.0, [0.406, 1.62, 6.49, 26.0, 104.0, 234.0, 415.0, 1_661.0]),
        (125.0, [0.494, 1.98, 7.90, 31.6, 126.0, 284.0, 506.0, 2_023.0]),
    ] {
        for (bore, printed) in bores.into_iter().zip(row) {
            let flow = orifice_flow(Length::new::<inch>(bore), pounds(gauge), Edge::Nozzle).unwrap();
            near(flow.get::<cubic_foot_per_minute>(), printed, 0.005);
        }
    }
    let sharp = orifice_flow(Length::new::<inch>(0.25), pounds(100.0), Edge::Sharp).unwrap();
    near(sharp.get::<cubic_foot_per_minute>(), 104.0 * 0.65, 0.005);
    // Beside the table: times 0.97 with a rounded entrance; the formula holds above 15 psi.
    let quarter = |gauge, edge| orifice_flow(Length::new::<inch>(0.25), pounds(gauge), edge);
    let rounded = quarter(100.0, Edge::Rounded).unwrap();
    near(rounded.get::<cubic_foot_per_minute>(), 104.0 * 0.97, 0.005);
    assert!(quarter(14.9, Edge::Nozzle).is_none() && quarter(15.1, Edge::Nozzle).is_some());
    // Computed: an ideal choked nozzle of 1/4 in at 100 psig, 104.12 scfm.
    near(quarter(100.0, Edge::Nozzle).unwrap().get::<cubic_foot_per_minute>(), 104.12, 0.005);
}

// US DOE / ORNL AMO-Tools-Suite, unit tests; they use 7.48 gallons to the cubic foot, so 0.01 % is allowed.
#[test]
fn receivers_of_the_department_of_energy() {
    let outside = pounds(14.7);
    let feet = |v: Volume| v.get::<cubic_foot>();
    let held = |gal: f64, from: f64, to: f64| {
        feet(content(Volume::new::<gallon>(gal), pounds(from), pounds(to), outside))
    };
    near(held(660.0, 110.0, 100.0), 60.024_009_6, 1e-4);
    near(held(760.0, 150.0, 100.0), 345.592_782_6, 1e-4);
    let size = |out: f64, refill: f64, minutes: f64, from: f64, to: f64| {
        let between = (pounds(from), pounds(to));
        size_for(cfm(out), cfm(refill), Time::new::<minute>(minutes), between, outside)
    };
    near(size(100.0, 0.0, 0.5, 110.0, 100.0).get::<gallon>(), 549.78, 1e-4);
    near(size(900.0, 45.0, 0.5, 100.0, 70.0).get::<gallon>(), 1_566.873, 1e-4);
    // A dedicated receiver: 150 scf at a drop of 3 psi.
    near(size(150.0, 0.0, 1.0, 103.0, 100.0).get::<gallon>(), 5_497.8, 1e-4);
    // A handbook's worked example: 350 out, 250 in for five minutes, 100 to 60 psig: 183.75 ft3.
    near(feet(size(350.0, 250.0, 5.0, 100.0, 60.0)), 183.75, 1e-9);
    let back = lasts(
        size(350.0, 250.0, 5.0, 100.0, 60.0),
        cfm(350.0),
        cfm(250.0),
        (pounds(100.0), pounds(60.0)),
        outside,
    );
    near(back.unwrap().get::<second>(), 300.0, 1e-9);
}
