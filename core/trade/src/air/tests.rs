//! Air for the job. Published figures are checked in `tests/outside`; these are invented, worked by rule.

use chrono::{DateTime, FixedOffset, TimeDelta};
use uom::si::f64::{Length, Pressure, ThermodynamicTemperature, VolumeRate};
use uom::si::length::{foot, inch, meter};
use uom::si::pressure::psi;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::volume_rate::cubic_foot_per_minute;

use super::orifice::sixty_fourths;
use super::*;
use crate::limit::Rules;

fn cfm(flow: f64) -> VolumeRate {
    VolumeRate::new::<cubic_foot_per_minute>(flow)
}

fn gauge(pressure: f64) -> Pressure {
    Pressure::new::<psi>(pressure)
}

fn celsius(t: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(t)
}

fn breaker() -> Tool {
    Tool { name: "breaker".to_owned(), takes: cfm(80.0), at: gauge(90.0), count: 1, share: 1.0 }
}

/// The yard at 1,800 m.
fn yard() -> Site {
    Site {
        intake: Intake { altitude: Length::new::<meter>(1_800.0), temperature: None, humidity: None },
        rated: cfm(185.0),
        holds: gauge(100.0),
        oil: None,
    }
}

fn hose(bore: f64, feet: f64) -> HoseRun {
    HoseRun { bore: Length::new::<inch>(bore), length: Length::new::<foot>(feet), fittings: vec![] }
}

fn job(hose: HoseRun) -> Job {
    Job { tools: vec![breaker()], hose: Some(hose), cut_off: Some(true), blowing: None }
}

fn answer(site: &Site, job: &Job) -> JobAir {
    air_for(site, job, Rules::common_practice().unwrap(), None)
}

#[test]
fn a_unit_in_the_mountains_delivers_less_than_its_plate() {
    let out = answer(&yard(), &job(hose(0.75, 50.0)));
    let got = out.delivered.get::<cubic_foot_per_minute>();
    assert!((got - 185.0 * 0.838).abs() < 0.5, "{got}");
    assert!((out.left_over.get::<cubic_foot_per_minute>() - (got - 80.0)).abs() < 1e-9);
}

#[test]
fn two_breakers_on_a_small_unit_are_too_many() {
    let mut two = job(hose(0.75, 50.0));
    two.tools[0].count = 2;
    let out = answer(&yard(), &two);
    assert!(matches!(out.warnings[0], JobWarning::TooLittleAir(short)
        if (short.get::<cubic_foot_per_minute>() - (160.0 - out.delivered.get::<cubic_foot_per_minute>())).abs() < 1e-9));
    two.tools[0].share = 0.5;
    assert!(answer(&yard(), &two).left_over.value > 0.0);
}

#[test]
fn a_thin_long_hose_starves_the_tool() {
    let wide = answer(&yard(), &job(hose(0.75, 50.0)));
    let thin = answer(&yard(), &job(hose(0.5, 100.0)));
    assert!(wide.at_tool > thin.at_tool);
    assert!(wide.warnings.is_empty(), "{:?}", wide.warnings);
    assert!(thin.warnings.iter().any(|w| matches!(w, JobWarning::TooLittlePressure(_))));
    let mut fitted = hose(0.75, 50.0);
    fitted.fittings = vec![Fitting::QuickCoupling, Fitting::Oiler];
    assert!(answer(&yard(), &job(fitted)).at_tool < wide.at_tool);
}

#[test]
fn a_hose_nobody_measured_gives_no_pressure_and_says_so() {
    let out = answer(&yard(), &Job { hose: None, ..job(hose(0.75, 50.0)) });
    assert_eq!(out.at_tool, None);
    assert_eq!(out.warnings, [JobWarning::HoseUnknown]);
}

#[test]
fn over_half_an_inch_wants_a_cut_off_and_half_an_inch_does_not() {
    let wants = |bore: f64, cut_off| {
        let job = Job { cut_off, ..job(hose(bore, 10.0)) };
        answer(&yard(), &job).warnings.iter().any(|w| matches!(w, JobWarning::CutOffWanted(_)))
    };
    assert!(!wants(0.5, None) && wants(0.501, None) && wants(0.75, Some(false)) && !wants(0.75, Some(true)));
}

#[test]
fn cleaning_air_is_under_thirty_psi_and_guarded() {
    let with = |at_nozzle, guarded| {
        let blowing = Some(Blowing { at_nozzle, guarded });
        answer(&yard(), &Job { tools: vec![], blowing, ..job(hose(0.5, 10.0)) }).warnings
    };
    assert_eq!(with(Some(gauge(29.9)), true), []);
    assert!(matches!(with(Some(gauge(30.0)), true)[..], [JobWarning::NozzleOver(_)]));
    assert_eq!(with(None, false), [JobWarning::NozzleUnknown, JobWarning::NoGuard]);
}

#[test]
fn a_cold_receiver_collects_water() {
    let intake =
        Intake { altitude: Length::new::<meter>(0.0), temperature: Some(celsius(30.0)), humidity: Some(0.7) };
    let site = Site { intake, oil: Some(celsius(50.0)), ..yard() };
    let out = answer(&site, &job(hose(0.75, 50.0)));
    assert!(matches!(out.warnings[..], [JobWarning::RunWarm(by)] if (10.0..16.0).contains(&by)));
    let warm = Site { oil: Some(celsius(80.0)), ..site };
    assert!(answer(&warm, &job(hose(0.75, 50.0))).warnings.is_empty());
    let unknown = Site { intake: Intake { humidity: None, ..intake }, ..site };
    assert_eq!(answer(&unknown, &job(hose(0.75, 50.0))).warm, None);
}

#[test]
fn short_runs_are_counted_unless_the_oil_was_seen_warm() {
    let start: DateTime<FixedOffset> = "2026-10-20T08:00:00-06:00".parse().unwrap();
    let run = |minutes, warm| (start, start + TimeDelta::minutes(minutes), warm);
    let share = short_runs(&[run(14, None), run(14, Some(true)), run(15, None), run(5, Some(false))]);
    assert_eq!(share, RunShare { runs: 4, short: 2 });
    assert_eq!(share.percent(), Some(50));
    assert!(share.asks_to_run_warm());
    assert_eq!(short_runs(&[]).percent(), None);
}

#[test]
fn an_open_nozzle_lets_go_a_whole_units_air() {
    let open = orifice_flow(sixty_fourths(16.0), gauge(100.0), Edge::Nozzle).unwrap();
    assert!((open.get::<cubic_foot_per_minute>() - 104.0).abs() < 0.5);
    assert_eq!(orifice_flow(sixty_fourths(16.0), gauge(14.9), Edge::Nozzle), None);
}

#[test]
fn a_receiver_bridges_a_short_pull() {
    use uom::si::f64::Volume;
    use uom::si::time::minute;
    use uom::si::volume::gallon;
    let receiver = Volume::new::<gallon>(30.0);
    let between = (gauge(120.0), gauge(90.0));
    let outside = gauge(14.7);
    let time = lasts(receiver, cfm(120.0), cfm(100.0), between, outside).unwrap();
    let back = size_for(cfm(120.0), cfm(100.0), time, between, outside);
    assert!((back.get::<gallon>() - 30.0).abs() < 1e-9);
    assert!(time.get::<minute>() > 0.4 && time.get::<minute>() < 0.42);
    assert_eq!(lasts(receiver, cfm(90.0), cfm(100.0), between, outside), None);
}
