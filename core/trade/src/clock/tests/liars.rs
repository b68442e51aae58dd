//! Cases in which a careless clock lies.

use super::*;

fn with_pace(clock: &TaskClock, hours: &str, today: &str, likely: &str) -> TaskState {
    let used = clock.from_hours.map(|from| FineHours::from(h(hours) - from));
    clock.state_from(&Standpoint { used, today: day(today), earliest: None, likely: Some(day(likely)) })
}

#[test]
fn case_1_the_hours_run_out_before_the_calendar_and_neither_is_near() {
    let unit = Unit::default().done(OIL, "1318.4", "2026-02-28");
    unit.due(OIL, Some("1818.4"), "2027-02-28");
    // 75.5 h at 2.5 h a day are 30.2 days from 13 November.
    let state = with_pace(&unit.clock(OIL), "1742.9", "2026-11-13", "2026-12-13");
    assert_eq!(state.hours_left.unwrap().to_string(), "75.5");
    assert_eq!(state.standing, Standing::FarOff);
    assert_eq!(state.nearer, Nearer::Hours);
}

#[test]
fn case_2_a_new_unit_that_hardly_runs_is_past_due_by_the_calendar() {
    let unit = Unit::new("2026-09-28", "3.2");
    assert_eq!(unit.stands(FIRST, "41.0", "2027-09-29"), (Standing::FarOff, "9.0".into(), None));
    unit.due(OIL, Some("500.0"), "2027-09-28");
    unit.due(COOLER, None, "2027-09-28");
    for task in [OIL, COOLER] {
        let (standing, _, days) = unit.stands(task, "41.0", "2027-09-29");
        assert_eq!((standing, days), (Standing::PastDue, Some(-1)), "{task}");
    }
    assert_eq!(unit.clock(OIL).state(hh("41.0"), day("2027-09-29")).nearer, Nearer::Calendar);
}

#[test]
fn case_3_a_separator_does_not_become_new_with_the_meter() {
    // 2,214.6 on the first meter, 770.7 on the second, 47.3 on the third.
    let hours = h("2214.6") + (h("901.2") - h("130.5")) + h("47.3");
    assert_eq!(hours, h("3032.6"));
    let state = Unit::default().clock(SEPARATOR).state(Some(hours), day("2026-11-13"));
    assert_eq!(
        (state.standing, state.hours_left.unwrap().to_string().as_str()),
        (Standing::PastDue, "-32.6")
    );
}

#[test]
fn case_4_an_estimate_stands_as_its_high_figure_stands() {
    let unit = Unit::default().done(OIL, "455.0", "2026-03-02");
    unit.due(OIL, Some("955.0"), "2027-03-02");
    let now = UnitHours { hours: hh("1077.5"), likely: hh("917.5"), low: hh("837.5"), as_of: None };
    let stands = |hours| unit.clock(OIL).state(hours, day("2026-11-13"));
    assert_eq!(stands(now.likely).hours_left.unwrap().to_string(), "37.5");
    assert_eq!(stands(now.likely).standing, Standing::ComingUp);
    assert_eq!(stands(now.low).hours_left.unwrap().to_string(), "117.5");
    assert_eq!(stands(now.low).standing, Standing::FarOff, "what a careless tool says");
    assert_eq!(stands(now.hours).hours_left.unwrap().to_string(), "-122.5");
    assert_eq!(stands(now.hours).standing, Standing::PastDue);
}

#[test]
fn case_8_weights_changed_from_a_day_on_do_not_reach_back() {
    let weighed = |parts: &[(&str, u32)]| {
        parts
            .iter()
            .fold(FineHours::ZERO, |sum, (hours, weight)| sum + FineHours::weighted(h(hours), *weight))
    };
    let before = weighed(&[("212.0", 1_000), ("96.5", 1_500), ("18.0", 2_000)]);
    assert_eq!(before.to_string(), "392.75");
    let after = weighed(&[("212.0", 1_000), ("56.5", 1_500), ("40.0", 1_800), ("18.0", 2_000)]);
    assert_eq!(after.to_string(), "404.75");
    assert_eq!((FineHours::from(h("500.0")) - after).to_string(), "95.25");
}

#[test]
fn case_8_as_its_readings_and_weights_were_recorded() {
    use crate::forecast::HoursAt;
    use crate::record::SiteDust;
    use crate::wear::{Said, WeightSet, Weights, Worn, due_reading, spells};

    let set = |from: &str, dusty| WeightSet {
        from: day(from),
        hundredths: vec![(SiteDust::Dusty, dusty), (SiteDust::VeryDusty, 200)],
    };
    // 212.0 clean, 56.5 dusty before 1 November, 18.0 very dusty, 40.0 dusty after.
    let mut readings = vec![HoursAt { at: at("2026-09-01T07:00:00-06:00"), total: Tenths::ZERO }];
    let mut said = Vec::new();
    for (on, total, dust) in [
        ("2026-09-20", "212.0", SiteDust::Clean),
        ("2026-10-10", "268.5", SiteDust::Dusty),
        ("2026-10-25", "286.5", SiteDust::VeryDusty),
        ("2026-11-13", "326.5", SiteDust::Dusty),
    ] {
        said.push(Said { at: at(&format!("{on}T08:00:00-07:00")), dust });
        readings.push(HoursAt { at: at(&format!("{on}T16:30:00-07:00")), total: h(total) });
    }
    let ends: Vec<_> = readings.iter().map(|r| r.at).collect();
    let zone = chrono_tz::America::Denver;
    let spells = spells(&said, &ends, zone);
    let used = |sets: Vec<WeightSet>| {
        Worn::of(&readings, &spells, &Weights::of(sets), zone).between(Tenths::ZERO, h("326.5"))
    };
    let before = used(vec![set("2026-01-01", 150)]);
    let after = used(vec![set("2026-01-01", 150), set("2026-11-01", 180)]);
    assert_eq!((before.to_string().as_str(), after.to_string().as_str()), ("392.75", "404.75"));
    let left = |used| FineHours::from(h("500.0")) - used;
    let dusty = |left, weight| due_reading(left, h("326.5"), weight).unwrap().meter_left.tenths_down();
    assert_eq!((left(before).to_string().as_str(), dusty(left(before), 150)), ("107.25", h("71.5")));
    assert_eq!((left(after).to_string().as_str(), dusty(left(after), 180)), ("95.25", h("52.9")));
    // What a careless tool says: the new weight laid on all dusty hours, 421.7.
    assert_eq!(used(vec![set("2026-01-01", 180)]).to_string(), "421.7");
}
