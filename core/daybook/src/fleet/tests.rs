//! Where sets stand: what is kept for speed says the same as looking through the whole fleet.

use proptest::prelude::*;
use sumpbook_trade::record::{SetProfile, SetRegistered, Source};
use sumpbook_trade::{Entry, EntryId, Fact, SetId, Stamp, TruckId};
use uuid::Uuid;

use super::Fleet;

fn registered(number: usize, set: u128, on: Option<u128>, at_ms: i64) -> Entry {
    let fact = SetRegistered {
        set: SetId(Uuid::from_u128(set)),
        serial: None,
        on: on.map(|truck| TruckId(Uuid::from_u128(truck))),
        profile: SetProfile::unknown(),
    };
    Entry {
        id: EntryId(Uuid::from_u128(1_000 + number as u128)),
        unit: None,
        set: None,
        at: Stamp::from_parts(at_ms, 0).unwrap(),
        clock_off_ms: None,
        person: None,
        trainer: None,
        pin_given: false,
        trainer_pin_given: false,
        hours: None,
        note: None,
        source: Source::Shop,
        fact: Fact::from(fact),
    }
}

proptest! {
    #[test]
    fn a_set_is_found_where_it_stands_and_stood(
        moves in proptest::collection::vec((0u128..4, proptest::option::of(10u128..14), 0i64..50), 1..40)
    ) {
        let mut fleet = Fleet::default();
        for (number, (set, on, at)) in moves.into_iter().enumerate() {
            fleet.take(&registered(number, set, on, at));
            for truck in (10..14).map(|truck| TruckId(Uuid::from_u128(truck))) {
                let on: Vec<_> = fleet.sets.values().filter(|set| set.on == Some(truck)).collect();
                prop_assert!(on.len() <= 1, "a truck carries one set: {on:?}");
                prop_assert_eq!(fleet.set_on(truck), on.first().copied());
                let stood = fleet.stood.get(&truck).cloned().unwrap_or_default();
                prop_assert!(stood.is_sorted_by_key(|(from, _)| *from));
            }
            for set in (0..4).map(|set| SetId(Uuid::from_u128(set))) {
                let here = |stood: &Vec<(i64, Option<SetId>)>| stood.iter().any(|(_, there)| *there == Some(set));
                let all: Vec<TruckId> =
                    fleet.stood.iter().filter(|(_, stood)| here(stood)).map(|(truck, _)| *truck).collect();
                prop_assert_eq!(fleet.trucks_of(set), all.clone());
                prop_assert_eq!(fleet.first_truck_of(set).is_some(), !all.is_empty());
            }
        }
        // As an opening finds it.
        let kept = crate::state::folded::to_bytes(&fleet).unwrap();
        let mut again: Fleet = crate::state::folded::from_bytes(&kept).unwrap();
        again.find_what_follows();
        prop_assert_eq!(again, fleet);
    }
}
