use super::*;

#[test]
fn what_is_no_number_keeps_no_limit() {
    for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        for rule in &Rules::common_practice().unwrap().rules {
            let case =
                Case { vehicles: 1, cut_out: Some(120.0), reservoir_share: Some(1.0), mawp: Some(125.0) };
            assert!(!rule.limit(&case).unwrap().holds(value), "{}", rule.topic);
        }
    }
}

#[test]
fn a_topic_without_the_shops_set_falls_back_on_its_first_rule() {
    let rules = Rules::common_practice().unwrap();
    assert_eq!(rules.on("build-up", Some("ca-ontario")).unwrap().set, "cdl-modernized");
    assert_eq!(rules.on("no-such-topic", None), None);
}

#[test]
fn a_rule_of_an_unknown_set_is_refused() {
    let text = r#"
edition = 1
sets = []
rules = [{ topic = "x", set = "nowhere", unit = "psi", is = "at-most", at = 1.0, cites = "-" }]
"#;
    assert!(matches!(Rules::read(text), Err(RulesError::NoSuchSet { .. })));
    assert!(matches!(Rules::read("rules = 1"), Err(RulesError::Shape(_))));
}

#[test]
fn several_rules_stand_side_by_side_and_the_shops_own_comes_first() {
    let rules = Rules::common_practice().unwrap();
    let case = Case { vehicles: 1, ..Case::default() };
    // 3.2 psi are 22.1 kPa: over for the driver's test and in Ontario, kept in Quebec.
    let said = rules.say("leak-applied", 3.2, Measure::Psi, &case, Some("ca-ontario"));
    let told: Vec<(&str, bool, Option<bool>)> =
        said.iter().map(|v| (v.set.as_str(), v.goes_by, v.keeps)).collect();
    assert_eq!(told[0], ("ca-ontario", true, Some(false)));
    assert!(told.contains(&("cdl-modernized", false, Some(false))));
    assert!(told.contains(&("ca-quebec", false, Some(true))));
    assert_eq!(told.iter().filter(|(_, goes_by, _)| *goes_by).count(), 1);
    assert_eq!(said[0].place, "Ontario");
    assert!(said[0].cites.contains("Ontario"), "the verdict says which rule");
}

#[test]
fn a_missing_fact_gives_no_verdict_and_is_named() {
    let rules = Rules::common_practice().unwrap();
    let said = rules.say("low-air-warning", 58.0, Measure::Psi, &Case::default(), Some("us-federal"));
    assert_eq!((said[0].keeps, said[0].missing), (None, Some(MissingFact::CutOut)));
    assert_eq!(said[0].limit, None);
    assert!(said.iter().skip(1).any(|v| v.keeps == Some(true)), "others can still say something");
    assert!(rules.say("no-such-topic", 1.0, Measure::Psi, &Case::default(), None).is_empty());
    let wrong = rules.say("spring-pop", 30.0, Measure::Millimetre, &Case::default(), None);
    assert_eq!((wrong[0].figure, wrong[0].keeps), (None, None));
}

#[test]
fn only_a_whole_minute_certifies_and_a_scaled_one_can_only_accuse() {
    let run = |drop, seconds| LeakRun { drop, seconds }.told().unwrap();
    let whole = run(2.0, 60.0);
    assert_eq!((whole.in_a_minute, whole.scaled, whole.says(true)), (2.0, false, LeakSays::Keeps));
    let half = run(1.0, 30.0);
    assert_eq!((half.in_a_minute, half.scaled, half.says(true)), (2.0, true, LeakSays::RunAgain));
    assert_eq!(run(2.0, 30.0).says(false), LeakSays::Over);
    assert_eq!(run(3.0, 60.0).says(false), LeakSays::Over);
    let long = run(3.0, 90.0);
    assert_eq!((long.in_a_minute, long.says(true)), (2.0, LeakSays::RunAgain));
    for bad in [LeakRun { drop: 1.0, seconds: 0.0 }, LeakRun { drop: f64::NAN, seconds: 60.0 }] {
        assert_eq!(bad.told(), None);
    }
}
