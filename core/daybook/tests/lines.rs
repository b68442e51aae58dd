//! Entries as lines of JSON: every kind there and back, through the wire form, and held to the schema.
//!
//! Invented data: the fleet Tern Hollow Water.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop where it stands"
)]

mod tern_hollow;

use std::collections::BTreeSet;

use serde_json::Value;
use sumpbook_daybook::book::BookId;
use sumpbook_daybook::fleet::Fleet;
use sumpbook_daybook::gate::{Actor, DeviceKey, Place, sign};
use sumpbook_daybook::ledger::{Admission, Incoming, Ledger, Root};
use sumpbook_daybook::line::{Line, LineError, Writer, schema};
use sumpbook_trade::{Entry, Fact, FactKind, FleetId, Stamp, Template};

const KINDS: &str = include_str!("kinds.jsonl");

fn writer() -> Writer {
    let now: Stamp = "2026-10-20T09:00:00-06:00".parse().unwrap();
    Writer { now, clock_off_ms: Some(250), id: sumpbook_daybook::ledger::new_id(now).unwrap() }
}

fn template() -> &'static Template {
    Template::common_practice().unwrap()
}

/// Every sample line with its JSON and its entry; the fleet grows as its lines come.
fn samples() -> (Vec<(Value, Entry)>, Fleet) {
    let mut fleet = Fleet::default();
    let mut all = Vec::new();
    for (number, line) in Line::read_all(KINDS) {
        let line = line.unwrap_or_else(|e| panic!("line {number}: {e}"));
        let text = KINDS.lines().nth(number - 1).unwrap();
        let entry =
            line.resolve(&fleet, template(), &writer()).unwrap_or_else(|e| panic!("line {number}: {e}"));
        fleet.take(&entry);
        all.push((serde_json::from_str(text).unwrap(), entry));
    }
    (all, fleet)
}

fn without_nulls(value: &Value) -> Value {
    match value {
        Value::Object(fields) => {
            fields.iter().filter(|(_, v)| !v.is_null()).map(|(k, v)| (k.clone(), without_nulls(v))).collect()
        }
        Value::Array(items) => items.iter().map(without_nulls).collect(),
        other => other.clone(),
    }
}

#[test]
fn every_kind_goes_from_json_over_the_wire_form_and_back() {
    let (all, fleet) = samples();
    for (json, entry) in &all {
        let payload = entry.to_payload();
        let read = Entry::from_payload(&payload).unwrap();
        assert_eq!(&read, entry, "{json}");
        assert_eq!(read.to_payload(), payload, "{json}");
        let told: Value = serde_json::from_str(&Line::of(&read, &fleet).write()).unwrap();
        assert_eq!(without_nulls(&told), without_nulls(json));
        let own: Entry = serde_json::from_value(serde_json::to_value(&read).unwrap()).unwrap();
        assert_eq!(&own, entry, "the entry's own JSON");
    }
}

#[test]
fn no_kind_is_without_a_sample() {
    let told: BTreeSet<FactKind> = samples().0.iter().map(|(_, entry)| entry.fact.kind()).collect();
    let known: BTreeSet<FactKind> = FactKind::ALL.iter().copied().collect();
    assert_eq!(told, known);
}

#[test]
fn the_schema_takes_every_sample_and_refuses_what_reading_refuses() {
    let schema = jsonschema::validator_for(&schema()).unwrap();
    for (json, _) in samples().0 {
        let wrong: Vec<String> = schema.iter_errors(&json).map(|e| e.to_string()).collect();
        assert!(wrong.is_empty(), "{json}: {wrong:?}");
    }
    for bad in [
        r#"{"unit":"TH-01","kind":"site-condition","body":{"dust":"foggy"}}"#,
        r#"{"unit":"TH-01","kind":"site-condition","body":{"dust":"dusty","wind":3}}"#,
        r#"{"unit":"TH-01","hourz":"1.0","kind":"site-condition","body":{"dust":"dusty"}}"#,
        r#"{"unit":"TH-01","kind":"weather","body":{}}"#,
        r#"{"unit":"TH-01","hours":"1.25","kind":"site-condition","body":{"dust":"dusty"}}"#,
        r#"{"unit":"TH-01"}"#,
    ] {
        assert!(!schema.is_valid(&serde_json::from_str(bad).unwrap()), "schema: {bad}");
        assert!(Line::read(bad).is_err(), "reading: {bad}");
    }
}

#[test]
fn the_set_comes_with_entries_about_air_and_with_no_other() {
    let (all, fleet) = samples();
    let set = fleet.sets.keys().next().copied();
    let of = |kind: FactKind| all.iter().find(|(_, e)| e.fact.kind() == kind).unwrap().1.set;
    assert_eq!(of(FactKind::StartAir), set);
    assert_eq!(of(FactKind::TopUp), set);
    assert_eq!(of(FactKind::PreTripSection), set, "it carries the compressor's hours");
    assert_eq!(of(FactKind::Drive), None);
    assert_eq!(of(FactKind::MeterExchange), None, "the engine's meter is the truck's");
}

#[test]
fn a_kind_of_a_newer_version_is_kept_byte_for_byte() {
    let (all, fleet) = samples();
    let (_, like) = all.iter().find(|(_, e)| e.fact.kind() == FactKind::Drive).unwrap();
    // Map of 2: a number, and a list this version knows nothing of.
    let body = vec![0xa2, 0x00, 0x07, 0x18, 0x2a, 0x82, 0x61, 0x78, 0xf6];
    let newer = Entry { fact: Fact::Newer { code: 90, body }, ..like.clone() };
    let payload = newer.to_payload();
    let read = Entry::from_payload(&payload).unwrap();
    assert_eq!(read.to_payload(), payload);
    let line = Line::read(&Line::of(&read, &fleet).write()).unwrap();
    assert_eq!(line.resolve(&fleet, template(), &writer()).unwrap().fact, newer.fact);

    let schema = jsonschema::validator_for(&schema()).unwrap();
    assert!(schema.is_valid(&serde_json::to_value(&line).unwrap()));
}

#[test]
fn a_known_kind_does_not_slip_in_as_a_newer_one() {
    let (all, fleet) = samples();
    let (_, drive) = all.iter().find(|(_, e)| e.fact.kind() == FactKind::Drive).unwrap();
    let code = drive.fact.code();
    // The body of `drive` as it is, under the name of a newer kind.
    let body = vec![0xa1, 0x00, 0x00];
    let line = Line { fact: Fact::Newer { code, body }, ..Line::of(drive, &fleet) };
    assert_eq!(line.resolve(&fleet, template(), &writer()), Err(LineError::NotNewer));
}

#[test]
fn a_field_of_a_newer_version_stays_in_the_book_byte_for_byte() {
    let (all, _) = samples();
    let (_, drive) = all.iter().find(|(_, e)| e.fact.kind() == FactKind::Drive).unwrap();
    let mut newer = drive.to_payload();
    // One more common field, 99: the map's head says how many fields it has.
    newer[0] += 1;
    newer.extend_from_slice(&[0x18, 99, 0x63, b'n', b'e', b'w']);
    let read = Entry::from_payload(&newer).unwrap();
    assert_eq!(&read, drive, "an older program reads the rest of it");

    let root = tempfile::tempdir().unwrap();
    let (shop, phone) = (DeviceKey::generate().unwrap(), DeviceKey::generate().unwrap());
    let fleet = FleetId(uuid::Uuid::from_u128(7));
    let of_fleet = Root { fleet, shop: shop.public() };
    let (mut ledger, _) = Ledger::open(root.path(), of_fleet, phone).unwrap();
    let place = Place {
        fleet,
        book: BookId::Truck { truck: drive.unit.unwrap(), year: 2026 },
        actor: Actor::new(shop.id()).unwrap(),
        seq: 1,
        deps: Vec::new(),
        id: drive.id,
    };
    let signature = sign(&place, &newer, &shop).unwrap();
    let told = ledger.admit(&[Incoming { place, payload: newer.clone(), signature }], 0, None).unwrap();
    assert!(matches!(told.as_slice(), [Admission::Admitted(_)]), "{told:?}");
    let held = ledger.store().truth().by_id(drive.id).unwrap();
    assert_eq!(held[0].row.payload, newer);
}

#[test]
fn a_line_given_again_under_its_own_id_is_recorded_once_and_its_first_words_stand() {
    let mut yard = tern_hollow::Yard::new();
    let template = template();
    let mut give = |figure: &str, when: &str| -> Result<_, Box<dyn std::error::Error>> {
        let now: Stamp = when.parse().unwrap();
        let line = Line::read(&format!(
            r#"{{"id":"01a15957-0000-7000-8000-00000000abc1","unit":"TH-01","person":"Amos Tillery","kind":"hour-reading","body":{{"meter":"compressor","figure":"{figure}","how":"asked","kept-when-asked":false}}}}"#
        ))
        .unwrap();
        yard.ledger.record_line(&line, template, &Writer { now, clock_off_ms: Some(0), id: writer().id })
    };
    let first = give("2862.4", "2026-10-19T16:00:00-06:00").unwrap();
    assert_eq!(
        give("2862.4", "2026-10-19T16:01:00-06:00").unwrap(),
        first,
        "a minute later, after a doubtful end"
    );
    let other = give("2863.4", "2026-10-19T16:02:00-06:00").unwrap_err().to_string();
    assert!(other.contains("is the id of another record of this phone. Nothing was recorded"), "{other}");
    let held = yard.ledger.store().truth().by_id(first).unwrap();
    assert_eq!(held.len(), 1);
    let state = yard.ledger.unit_state(tern_hollow::TH_01).unwrap();
    assert_eq!(state.hours.last.unwrap().figure.to_string(), "2862.4");
}
