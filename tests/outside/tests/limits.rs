//! Limits of the pre-trip against the laws and manuals they come from, at their exact borders.

use sumpbook_trade::limit::{Case, Limit, Measure, MissingFact, Rules};

fn limit(topic: &str, set: &str, case: Case) -> Limit {
    let rule = Rules::common_practice().unwrap().on(topic, Some(set)).unwrap();
    assert_eq!(rule.set, set, "{topic} has no rule of {set}");
    rule.limit(&case).unwrap()
}

fn plain(topic: &str, set: &str) -> Limit {
    limit(topic, set, Case::default())
}

// 49 CFR 393.51(c)(2): 55 psi or one-half of the governor's cut-out, whichever is less.
#[test]
fn the_low_air_warning_is_the_lesser_of_55_and_half_the_cut_out() {
    for (cut_out, threshold) in [(125.0, 55.0), (120.0, 55.0), (110.0, 55.0), (100.0, 50.0)] {
        let limit =
            limit("low-air-warning", "us-federal", Case { cut_out: Some(cut_out), ..Case::default() });
        assert_eq!(limit.low, threshold, "cut-out {cut_out}");
        assert!(limit.holds(threshold) && limit.holds(threshold + 0.1) && !limit.holds(threshold - 0.1));
    }
    let rule = Rules::common_practice().unwrap().on("low-air-warning", None).unwrap();
    assert_eq!(rule.limit(&Case::default()), Err(MissingFact::CutOut));
    // The law's own 379 kPa is 379.21 rounded.
    let kpa = Measure::Psi.tell(55.0, Measure::Kilopascal).unwrap();
    assert!((kpa - 379.21).abs() < 0.005, "{kpa}");
}

// California handbook and model CDL manual, section 5.3: not more than 2/3/5 and 3/4/6 psi;
// an older manual says "less than".
#[test]
fn a_leak_is_judged_by_its_rules_own_comparator() {
    for (topic, figures) in [("leak-released", [2.0, 3.0, 5.0]), ("leak-applied", [3.0, 4.0, 6.0])] {
        for (vehicles, figure) in [1, 2, 3].into_iter().zip(figures) {
            let case = Case { vehicles, ..Case::default() };
            let newer = limit(topic, "cdl-modernized", case);
            assert!(newer.holds(figure) && !newer.holds(figure + 0.1), "{topic} {vehicles}");
            let older = limit(topic, "cdl-older", case);
            assert!(!older.holds(figure) && older.holds(figure - 0.1), "{topic} {vehicles}");
        }
        let four = limit(topic, "cdl-modernized", Case { vehicles: 4, ..Case::default() });
        assert_eq!(four.high, figures[2], "three or more");
    }
}

// Ontario truck handbook: 21 and 28 kPa/min; Quebec C-24.2 r.32 s.166: 40/48/62 kPa.
#[test]
fn canadian_leaks_are_held_in_kilopascals() {
    let one = limit("leak-applied", "ca-ontario", Case { vehicles: 1, ..Case::default() });
    assert_eq!(one.holds_in(3.0, Measure::Psi), Some(true), "20.7 kPa");
    assert_eq!(one.holds_in(3.1, Measure::Psi), Some(false), "21.4 kPa");
    for (vehicles, kpa) in [(1, 40.0), (2, 48.0), (3, 62.0)] {
        let limit = limit("leak-applied", "ca-quebec", Case { vehicles, ..Case::default() });
        assert!(limit.holds(kpa) && !limit.holds(kpa + 0.1));
    }
}

// 49 CFR 393.75(b), (c). The exact metric figures are 3.175 and 1.5875 mm.
#[test]
fn four_thirty_seconds_agree_in_every_unit() {
    let steer = plain("tread-steer", "us-federal");
    for (value, unit) in [(4.0, Measure::ThirtySecond), (0.125, Measure::Inch), (3.175, Measure::Millimetre)]
    {
        assert_eq!(steer.holds_in(value, unit), Some(true), "{value} {unit:?}");
    }
    assert_eq!(steer.holds_in(3.17, Measure::Millimetre), Some(false));
    assert_eq!(steer.holds_in(3.9, Measure::ThirtySecond), Some(false));
    let other = plain("tread-other", "us-federal");
    for (value, unit) in
        [(2.0, Measure::ThirtySecond), (0.0625, Measure::Inch), (1.5875, Measure::Millimetre)]
    {
        assert_eq!(other.holds_in(value, unit), Some(true), "{value} {unit:?}");
    }
    assert_eq!(other.holds_in(1.58, Measure::Millimetre), Some(false));
    assert_eq!(other.holds_in(1.58, Measure::Psi), None);
}

// Model CDL manual, section 5.3; California handbook; 61 FR 6173; FMVSS 121 S5.1.1.
#[test]
fn build_up_governor_and_spring_brakes() {
    let build_up = plain("build-up", "cdl-modernized");
    assert!(build_up.holds(45.0) && !build_up.holds(45.1));
    let case = Case { reservoir_share: Some(1.2), ..Case::default() };
    let new = limit("build-up", "us-fmvss-121", case);
    assert!(new.holds(30.0) && !new.holds(30.1), "25 s x actual / required");
    let governor = plain("governor-cut-out", "us-california");
    assert!(governor.holds(129.9) && !governor.holds(130.0));
    let cut_in = plain("governor-cut-in", "us-federal");
    assert!(cut_in.holds(100.0) && !cut_in.holds(99.9));
    let pop = plain("spring-pop", "cdl-modernized");
    assert!(pop.holds(20.0) && pop.holds(45.0) && !pop.holds(19.9) && !pop.holds(45.1));
}

// 29 CFR 1910.242(b), 1926.302(b)(7), 1917.155; 49 CFR 393.95.
#[test]
fn blow_gun_hose_relief_and_extinguisher() {
    let nozzle = plain("blow-gun", "us-osha");
    assert!(nozzle.holds(29.9) && !nozzle.holds(30.0));
    let hose = plain("hose-without-cut-off", "us-osha");
    assert!(hose.holds(0.5) && !hose.holds(0.501) && !hose.holds(0.75));
    let relief = limit("relief-setting", "us-osha", Case { mawp: Some(125.0), ..Case::default() });
    assert!(relief.holds(137.5) && !relief.holds(137.6));
    let extinguisher = plain("extinguisher", "us-federal");
    assert!(extinguisher.holds(5.0) && !extinguisher.holds(4.0));
    assert!(!plain("extinguisher", "us-federal-placarded").holds(5.0));
}

// FMVSS 121 S5.1.5 (interpretation nht73-2.48): below 60 psi; 49 CFR 393.50(a): 70 %; Ontario handbook: 80 to 145 psi.
#[test]
fn new_vehicles_reserve_and_working_band() {
    let new = plain("low-air-warning", "us-fmvss-121");
    assert!(new.holds(60.0) && !new.holds(59.9));
    let reserve = plain("reserve", "us-federal");
    assert!(reserve.holds(70.0) && !reserve.holds(69.9));
    let band = plain("working-band", "ca-ontario");
    assert!(band.holds(80.0) && band.holds(145.0) && !band.holds(79.9) && !band.holds(145.1));
}

// Cal. Vehicle Code 26506(b): 55 to 75 psi; C-24.2 r.32 s.166: 380 kPa; model CDL manual: before 55, the older before 60.
#[test]
fn the_low_air_warning_under_other_rules() {
    let california = plain("low-air-warning", "us-california");
    assert!(california.holds(55.0) && california.holds(75.0));
    assert!(!california.holds(54.9) && !california.holds(75.1));
    let quebec = plain("low-air-warning", "ca-quebec");
    assert!(quebec.holds(380.0) && !quebec.holds(379.9));
    assert_eq!(quebec.holds_in(55.0, Measure::Psi), Some(false), "379.2 kPa");
    for (set, figure) in [("cdl-modernized", 55.0), ("cdl-older", 60.0)] {
        let warning = plain("low-air-warning", set);
        assert!(!warning.holds(figure) && warning.holds(figure + 0.1), "{set}: before it");
    }
}

// Ontario truck handbook: 28 kPa in a minute of a combination, 21 of a single vehicle, at their exact borders.
#[test]
fn leaks_of_ontario_at_their_borders() {
    for (vehicles, kpa) in [(1, 21.0), (2, 28.0), (3, 28.0)] {
        let limit = limit("leak-applied", "ca-ontario", Case { vehicles, ..Case::default() });
        assert!(limit.holds(kpa) && !limit.holds(kpa + 0.1), "{vehicles}");
    }
}

// Model CDL manual, modernized edition: about 120 to 140 psi; 49 CFR 393.95(a), (f); 396.17(c).
#[test]
fn governor_equipment_and_the_annual_inspection() {
    let governor = plain("governor-cut-out", "cdl-modernized");
    assert!(
        governor.holds(120.0) && governor.holds(140.0) && !governor.holds(119.9) && !governor.holds(140.1)
    );
    let placarded = plain("extinguisher", "us-federal-placarded");
    assert!(placarded.holds(10.0) && !placarded.holds(9.9));
    let triangles = plain("triangles", "us-federal");
    assert!(triangles.holds(3.0) && !triangles.holds(2.0));
    let inspection = plain("annual-inspection", "us-federal");
    assert!(inspection.holds(12.0) && !inspection.holds(12.1));
}

/// Every rule of the data that has a source, with a figure that just keeps it and one that just does not. A rule added
/// to the data without its borders here is found.
#[test]
fn every_rule_with_a_source_is_held_at_its_border() {
    let none = Case::default();
    let case = Case { cut_out: Some(125.0), reservoir_share: Some(1.0), mawp: Some(125.0), vehicles: 1 };
    let borders = [
        ("low-air-warning", "us-federal", 55.0, 54.9),
        ("low-air-warning", "us-fmvss-121", 60.0, 59.9),
        ("low-air-warning", "us-california", 75.0, 75.1),
        ("low-air-warning", "cdl-modernized", 55.1, 55.0),
        ("low-air-warning", "cdl-older", 60.1, 60.0),
        ("low-air-warning", "ca-quebec", 380.0, 379.9),
        ("leak-released", "cdl-modernized", 2.0, 2.1),
        ("leak-released", "cdl-older", 1.9, 2.0),
        ("leak-applied", "cdl-modernized", 3.0, 3.1),
        ("leak-applied", "cdl-older", 2.9, 3.0),
        ("leak-applied", "ca-ontario", 21.0, 21.1),
        ("leak-applied", "ca-quebec", 40.0, 40.1),
        ("build-up", "cdl-modernized", 45.0, 45.1),
        ("build-up", "us-fmvss-121", 25.0, 25.1),
        ("governor-cut-out", "cdl-modernized", 140.0, 140.1),
        ("governor-cut-out", "us-california", 129.9, 130.0),
        ("governor-cut-in", "us-federal", 100.0, 99.9),
        ("reserve", "us-federal", 70.0, 69.9),
        ("working-band", "ca-ontario", 80.0, 79.9),
        ("spring-pop", "cdl-modernized", 45.0, 45.1),
        ("tread-steer", "us-federal", 4.0, 3.9),
        ("tread-other", "us-federal", 2.0, 1.9),
        ("extinguisher", "us-federal", 5.0, 4.9),
        ("extinguisher", "us-federal-placarded", 10.0, 9.9),
        ("triangles", "us-federal", 3.0, 2.0),
        ("annual-inspection", "us-federal", 12.0, 12.1),
        ("blow-gun", "us-osha", 29.9, 30.0),
        ("hose-without-cut-off", "us-osha", 0.5, 0.501),
        ("relief-setting", "us-osha", 137.5, 137.6),
    ];
    let sourced: Vec<(&str, &str)> = Rules::common_practice()
        .unwrap()
        .rules
        .iter()
        .filter(|rule| !rule.cites.contains("no source"))
        .map(|rule| (rule.topic.as_str(), rule.set.as_str()))
        .collect();
    assert_eq!(sourced, borders.map(|(topic, set, _, _)| (topic, set)));
    for (topic, set, keeps, breaks) in borders {
        let rule = Rules::common_practice().unwrap().on(topic, Some(set)).unwrap();
        let limit = rule.limit(&none).or_else(|_| rule.limit(&case)).unwrap();
        assert!(limit.holds(keeps) && !limit.holds(breaks), "{topic} {set}");
    }
}

// The same drop of 3.2 psi under three laws, side by side, each by its name.
#[test]
fn one_leak_under_three_laws() {
    let rules = Rules::common_practice().unwrap();
    let case = Case { vehicles: 1, ..Case::default() };
    let said = rules.say("leak-applied", 3.2, Measure::Psi, &case, None);
    let keeps = |set: &str| said.iter().find(|v| v.set == set).unwrap().keeps;
    assert_eq!(keeps("cdl-modernized"), Some(false), "3 psi");
    assert_eq!(keeps("ca-ontario"), Some(false), "21 kPa are 3.05 psi");
    assert_eq!(keeps("ca-quebec"), Some(true), "40 kPa are 5.80 psi");
}
