use std::collections::BTreeMap;

use proptest::prelude::*;

use super::super::*;
use super::{every_feature, template, th_01};
use crate::unit::{Feature, Features, HoseTag};

fn lines(walk: &[PlannedStop]) -> usize {
    walk.iter().map(|stop| stop.lines.len()).sum()
}

#[test]
fn th_01_walks_19_stops_and_108_lines() {
    let walk = plan(template(), &th_01());
    assert_eq!((walk.len(), lines(&walk)), (19, 108));
    assert_eq!(walk[5].id, "left-side", "6 / 19");
    assert_eq!(walk[9].id, "glass", "10 / 19");
    assert_eq!(walk[16].id, "leak-applied", "17 / 19");
    insta::assert_snapshot!(walk.iter().map(in_words).collect::<Vec<_>>().join("\n"));
}

fn in_words(stop: &PlannedStop) -> String {
    let lines: Vec<String> = stop.lines.iter().map(Line::to_string).collect();
    format!("{} {} {:?}: {}", stop.label(), stop.id, stop.engine, lines.join(", "))
}

#[test]
fn a_unit_with_every_feature_and_a_trailer_walks_20_stops() {
    let walk = plan(template(), &every_feature());
    let labels: Vec<String> = walk.iter().map(PlannedStop::label).collect();
    assert_eq!(labels, (1..=20).map(|n: u8| n.to_string()).collect::<Vec<_>>());
}

#[test]
fn more_than_8_valves_reels_and_hoses_make_15b() {
    let mut features = every_feature();
    features.hoses.push(HoseTag::unmeasured("H-3"));
    let walk = plan(template(), &features);
    assert_eq!(walk.len(), 21);
    let labels: Vec<String> = walk[14..17].iter().map(PlannedStop::label).collect();
    assert_eq!(labels, ["15", "15b", "16"]);
    assert_eq!(walk[15].lines, ["hose:H-3".parse().unwrap()]);
}

#[test]
fn small_neighbours_of_one_place_are_joined() {
    let one_hose = Features {
        valves: vec!["hose".into()],
        hoses: vec![HoseTag::unmeasured("H-1")],
        ..Features::of([Feature::HydraulicBrakes, Feature::GlowPlugs])
    };
    let walk = plan(template(), &one_hose);
    let outlets: Vec<_> = walk.iter().filter(|stop| stop.place == WalkPlace::Outlets).collect();
    assert_eq!(outlets.len(), 1);
    assert_eq!(
        (outlets[0].id.as_str(), &outlets[0].joined),
        ("valves-hoses", &vec!["couplings".to_string()])
    );
    assert_eq!(outlets[0].lines.len(), 5);
    // No air brakes: the timed stops are gone, the first yards are not.
    assert!(walk.iter().all(|stop| stop.place != WalkPlace::Seat));
    let last = walk.last().unwrap();
    assert!(last.yard_only && last.lines[0].item == "brake-pedal");
}

#[test]
fn a_stop_with_a_screen_of_its_own_is_never_joined() {
    let walk = plan(template(), &th_01());
    let own: Vec<&str> = walk.iter().filter(|stop| stop.own_screen).map(|stop| stop.id.as_str()).collect();
    assert_eq!(own, ["glass", "leak-released", "leak-applied", "warning-build-up"]);
    assert!(walk.iter().all(|stop| !stop.own_screen || stop.joined.is_empty()));
}

#[test]
fn nameless_and_doubled_names_ask_once() {
    let features =
        Features { valves: vec!["a".into(), " ".into(), "a".into()], ..Features::of([Feature::HoseReels]) };
    let all: Vec<String> =
        plan(template(), &features).iter().flat_map(|s| &s.lines).map(Line::to_string).collect();
    let of = |item: &str| all.iter().filter(|l| l.starts_with(item)).cloned().collect::<Vec<_>>();
    assert_eq!(of("valve"), ["valve:a"]);
    assert_eq!(of("reel"), ["reel"]);
    assert_eq!(of("hose")[1..], ["hose"], "after hoses-engine");
}

#[test]
fn labels_go_on_past_the_alphabet() {
    let mut stop = plan(template(), &th_01()).swap_remove(13);
    let mut label = |leaf| {
        stop.leaf = leaf;
        stop.label()
    };
    assert_eq!([label(0), label(1), label(25), label(26)], ["15", "15b", "15z", "15-27"]);
    assert_eq!(label(u32::MAX), format!("15-{}", u32::MAX));
}

fn any_features() -> impl Strategy<Value = Features> {
    let names = || prop::collection::vec("[a-z]{1,6}", 0..24);
    (prop::sample::subsequence(Feature::ALL.to_vec(), 0..=Feature::ALL.len()), names(), names(), names())
        .prop_map(|(switched, valves, reels, hoses)| Features {
            switched: switched.into_iter().collect(),
            valves,
            reels,
            hoses: hoses.into_iter().map(HoseTag::unmeasured).collect(),
        })
}

proptest! {
    #[test]
    fn whatever_a_unit_has_no_stop_is_empty_or_above_8_lines(features in any_features()) {
        for stop in plan(template(), &features) {
            prop_assert!((1..=MOST_LINES).contains(&stop.lines.len()), "{}", stop.label());
        }
    }

    #[test]
    fn whatever_a_unit_has_each_item_it_needs_is_asked_and_none_twice(features in any_features()) {
        let mut times: BTreeMap<String, usize> = BTreeMap::new();
        let walk = plan(template(), &features);
        for line in walk.iter().flat_map(|stop| &stop.lines) {
            *times.entry(line.to_string()).or_default() += 1;
            let item = template().item(&line.item).unwrap();
            prop_assert!(features.meets(&item.needs), "{line} is not of this unit");
        }
        prop_assert!(times.values().all(|n| *n == 1));
        for item in template().items.iter().filter(|item| features.meets(&item.needs)) {
            let before = template().before_the_walk.contains(&item.id);
            let trailer_only = item.places.is_empty() && item.needs.iter().any(|need| matches!(need,
                Feature::TrailerAir | Feature::TrailerElectric)) && !features.has(Feature::Trailer);
            let asked = walk.iter().flat_map(|s| &s.lines).any(|line| line.item == item.id);
            prop_assert!(asked != (before || trailer_only), "{}", item.id);
        }
    }
}
