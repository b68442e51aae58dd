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
