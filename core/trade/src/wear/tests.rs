use chrono::{DateTime, FixedOffset, NaiveDate};
use chrono_tz::America::Denver;
use proptest::prelude::*;
use uuid::Uuid;

use super::*;
use crate::clock::FineHours;
use crate::forecast::HoursAt;
use crate::quantity::Tenths;
use crate::record::{OilLook, SiteDust};

fn at(text: &str) -> DateTime<FixedOffset> {
    text.parse().unwrap()
}

fn read(when: &str, total: &str) -> HoursAt {
    HoursAt { at: at(when), total: total.parse().unwrap() }
}

fn said(when: &str, dust: SiteDust) -> Said {
    Said { at: at(when), dust }
}

fn weights(from: &str, dusty: u32, very: u32) -> WeightSet {
    WeightSet {
        from: from.parse().unwrap(),
        hundredths: vec![(SiteDust::Clean, 100), (SiteDust::Dusty, dusty), (SiteDust::VeryDusty, very)],
    }
}

fn hours(text: &str) -> Tenths {
    text.parse().unwrap()
}

fn usual_weights() -> Weights {
    Weights::of([weights("2026-01-05", 150, 200)])
}

#[test]
fn a_day_nobody_spoke_of_counts_once() {
    let readings = [read("2026-10-05T16:00:00-06:00", "100.0"), read("2026-10-06T16:00:00-06:00", "106.0")];
    let worn = Worn::of(&readings, &[], &usual_weights(), Denver);
    assert_eq!(worn.between(hours("100.0"), hours("106.0")), FineHours(60_000));
}

#[test]
fn a_rise_across_two_days_takes_the_heavier_unless_a_reading_splits_it() {
    let spoken = [
        said("2026-10-05T08:00:00-06:00", SiteDust::VeryDusty),
        said("2026-10-06T08:00:00-06:00", SiteDust::Clean),
    ];
    let spells = spells(&spoken, &[at("2026-10-05T16:30:00-06:00")], Denver);
    let (start, split, end) = (
        read("2026-10-04T16:00:00-06:00", "100.0"),
        read("2026-10-05T16:30:00-06:00", "104.0"),
        read("2026-10-06T16:00:00-06:00", "110.0"),
    );
    let over = |readings: &[HoursAt]| {
        Worn::of(readings, &spells, &usual_weights(), Denver).between(hours("100.0"), hours("110.0"))
    };
    assert_eq!(over(&[start, end]), FineHours(200_000), "all ten at 2.0");
    assert_eq!(over(&[start, split, end]), FineHours(140_000), "four at 2.0, six at 1.0");
}

#[test]
fn a_word_holds_to_the_end_of_the_days_work_and_the_next_word_from_when_it_was_said() {
    let spoken = [
        said("2026-10-05T11:00:00-06:00", SiteDust::Dusty),
        said("2026-10-05T13:00:00-06:00", SiteDust::Clean),
    ];
    let day = |ends: &[DateTime<FixedOffset>]| {
        spells(&spoken, ends, Denver).iter().map(|s| (s.from, s.to, s.dust)).collect::<Vec<_>>()
    };
    assert_eq!(
        day(&[at("2026-10-05T16:30:00-06:00")]),
        [
            (at("2026-10-05T00:00:00-06:00"), at("2026-10-05T13:00:00-06:00"), SiteDust::Dusty),
            (at("2026-10-05T13:00:00-06:00"), at("2026-10-05T16:30:00-06:00"), SiteDust::Clean),
        ]
    );
    assert_eq!(day(&[])[1].1, at("2026-10-06T00:00:00-06:00"));
}

#[test]
fn what_the_shop_sets_today_changes_no_hour_of_yesterday() {
    let weights = Weights::of([weights("2026-11-01", 180, 200), weights("2026-01-05", 150, 200)]);
    let on = |day: &str, dust| weights.on(day.parse::<NaiveDate>().unwrap(), dust);
    assert_eq!(on("2025-12-31", SiteDust::Dusty), 100);
    assert_eq!(on("2026-10-31", SiteDust::Dusty), 150);
    assert_eq!(on("2026-11-01", SiteDust::Dusty), 180);
    assert_eq!(on("2026-11-01", SiteDust::Clean), 100);
}

// Invented data, outcome worked by rule.
#[test]
fn dusty_hours_left_are_fewer_on_the_meter() {
    let due = due_reading(FineHours(201_000), hours("777.0"), 150).unwrap();
    assert_eq!(due.meter_left, FineHours(134_000));
    assert_eq!(due.at, hours("790.4"));
    // Rounded so that the figure named is never beyond the last good one.
    let due = due_reading(FineHours(952_500), hours("326.5"), 180).unwrap();
    assert_eq!(due.meter_left.tenths_down(), hours("52.9"));
    let past = due_reading(FineHours(-63_000), hours("794.6"), 150).unwrap();
    assert_eq!(past.at, hours("790.4"));
    assert_eq!(due_reading(FineHours(10), hours("1.0"), 0), None);
}

fn seen(n: u128, when: &str, why: Option<WhyCalled>) -> OilSeen {
    OilSeen { entry: Uuid::from_u128(n), at: at(when), why }
}

#[test]
fn bad_oil_calls_until_it_is_changed_and_clear_oil_takes_nothing_back() {
    let all = [
        seen(2, "2026-10-07T08:00:00-06:00", None),
        seen(1, "2026-10-05T08:00:00-06:00", Some(WhyCalled::Milky)),
        seen(3, "2026-10-06T08:00:00-06:00", Some(WhyCalled::Burnt)),
    ];
    let called = called_now(&all, &[]).unwrap();
    assert_eq!((called.why, called.entry), (WhyCalled::Milky, Uuid::from_u128(1)));
    let changed = |when: &str| called_now(&all, &[OilChange { at: at(when) }]).map(|c| c.why);
    assert_eq!(changed("2026-10-05T12:00:00-06:00"), Some(WhyCalled::Burnt));
    assert_eq!(changed("2026-10-06T08:00:00-06:00"), None);
}

#[test]
fn foam_and_dark_oil_call_nothing_by_themselves() {
    for look in [OilLook::Clear, OilLook::Dark, OilLook::Foaming] {
        assert_eq!(WhyCalled::of_look(look), None);
    }
    assert_eq!(WhyCalled::of_look(OilLook::Milky), Some(WhyCalled::Milky));
}

proptest! {
    #[test]
    fn weighted_hours_add_up(
        rises in proptest::collection::vec(0i64..90, 2..20),
        dusts in proptest::collection::vec(0usize..3, 20),
        cut in 0i64..1_000,
    ) {
        let begin = at("2026-03-02T16:00:00-07:00");
        let (mut readings, mut spoken, mut ends) = (Vec::new(), Vec::new(), Vec::new());
        let mut total = 0;
        for (n, rise) in rises.iter().enumerate() {
            total += rise;
            let when = begin + chrono::TimeDelta::days(n as i64);
            readings.push(HoursAt { at: when, total: Tenths(total) });
            ends.push(when);
            let dust = [SiteDust::Clean, SiteDust::Dusty, SiteDust::VeryDusty][dusts[n]];
            spoken.push(Said { at: when - chrono::TimeDelta::hours(8), dust });
        }
        let worn = Worn::of(&readings, &spells(&spoken, &ends, Denver), &usual_weights(), Denver);
        let (from, to) = (Tenths(rises[0]), Tenths(total));
        let middle = Tenths(from.0 + cut % (to.0 - from.0 + 1));
        prop_assert_eq!(worn.between(from, middle) + worn.between(middle, to), worn.between(from, to));
        let plain = FineHours::from(to - from);
        prop_assert!(worn.between(from, to) >= plain);
        prop_assert!(worn.between(from, to).0 <= plain.0 * 2);
    }
}
