//! Everything that reads bytes someone else wrote, called with the same bytes.

use std::cell::RefCell;

use sumpbook_daybook::exchange::{hand_over, shelf, take_in};
use sumpbook_daybook::gate::bounded;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::parcel::{self, FileReader, decode};
use sumpbook_trade::Entry;

use crate::entries::section;
use crate::fleet::{
    BEGIN_MS, at, beginning, entry, entry_id, ledger_in_memory, of_truck, phone_key, shop_key, truck,
};
use crate::world::settle_in;

/// Takes in so many inputs before it begins again, so that one input does not pay for all before it.
const INPUTS_A_LEDGER: u32 = 2_000;

thread_local! {
    static PHONE: RefCell<Option<(Ledger, u32)>> = const { RefCell::new(None) };
}

/// A shop with two phones enrolled, and a few walks of the first.
fn small_shop() -> Ledger {
    let mut shop = ledger_in_memory(shop_key(), 0);
    shop.record(&beginning(2, &[1, 2], 9_000), BEGIN_MS).unwrap();
    shop
}

/// Phone `number` with what the shop holds.
fn phone(number: u8, shop: &Ledger) -> Ledger {
    let mut phone = ledger_in_memory(phone_key(number), 0);
    let rows = shop.store().truth().between(0, i64::MAX, i64::MAX).unwrap();
    let parts = rows
        .iter()
        .map(|held| sumpbook_daybook::ledger::Incoming::of_row(crate::fleet::root().fleet, &held.row));
    assert!(settle_in(&mut phone, parts.collect(), BEGIN_MS).is_empty());
    phone
}

/// Reads the bytes in every way in which foreign bytes are read. Nothing of it may stop the program, take long
/// or hold much.
pub fn foreign(data: &[u8]) {
    let _ = bounded::check(data, bounded::ENTRY);
    let _ = bounded::check(data, bounded::PARCEL);
    if bounded::check(data, bounded::ENTRY).is_ok()
        && let Ok(entry) = Entry::from_payload(data)
    {
        // What can be read can be written, and says the same.
        let again = Entry::from_payload(&entry.to_payload()).unwrap();
        assert_eq!(again, entry);
    }
    let _ = Entry::from_payload(data);
    let known = |id| [shop_key(), phone_key(1)].iter().map(|key| key.public()).find(|key| key.id() == id);
    let _ = parcel::open(data, known);
    let _ = decode::decode(data);
    if let Ok(reader) = FileReader::new(data) {
        for frame in reader.flatten() {
            let _ = parcel::open(&frame, known);
        }
    }
    if let Some(incoming) = shelf::unwrap(data) {
        let _ = incoming.check();
        assert_eq!(shelf::unwrap(&shelf::wrap(&incoming)).as_ref(), Some(&incoming));
    }
    if let Ok(entry) = serde_json::from_slice::<Entry>(data) {
        let _ = entry.to_payload();
    }
    PHONE.with_borrow_mut(|held| {
        let (ledger, inputs) = match held {
            Some((ledger, inputs)) if *inputs < INPUTS_A_LEDGER => (ledger, inputs),
            _ => {
                let made = held.insert((phone(2, &small_shop()), 0));
                (&mut made.0, &mut made.1)
            }
        };
        *inputs += 1;
        let _ = take_in(ledger, data, at(BEGIN_MS));
    });
}

/// Small honest samples of everything [`foreign`] reads, each with a name.
pub fn honest() -> Vec<(String, Vec<u8>)> {
    let shop = small_shop();
    let mut one = phone(1, &shop);
    let walks: Vec<_> = (0..4u32)
        .map(|number| {
            let ms = BEGIN_MS + i64::from(number) * 60_000;
            let defects = if number == 2 { vec![1] } else { Vec::new() };
            of_truck(entry(entry_id(number), Some(truck(number % 2)), ms, section(number, &defects)))
        })
        .collect();
    one.record(&walks, BEGIN_MS).unwrap();
    let file = hand_over(&mut one, at(BEGIN_MS)).unwrap().bytes;
    let mut samples = vec![("file".to_owned(), file.clone())];
    for (number, frame) in FileReader::new(&file[..]).unwrap().flatten().enumerate() {
        // What stands inside, so that changing a byte of it gets past the compression.
        let inside = zstd::stream::decode_all(&frame[..]).unwrap();
        samples.push((format!("sealed-{number}"), frame));
        samples.push((format!("envelope-{number}"), inside));
    }
    for (number, held) in one.store().truth().between(0, i64::MAX, i64::MAX).unwrap().into_iter().enumerate()
    {
        if number % 4 == 0 {
            let incoming = sumpbook_daybook::ledger::Incoming::of_row(crate::fleet::root().fleet, &held.row);
            samples.push((format!("shelf-{number}"), shelf::wrap(&incoming)));
            let entry = Entry::from_payload(&held.row.payload).unwrap();
            samples.push((format!("json-{number}"), serde_json::to_vec(&entry).unwrap()));
            samples.push((format!("payload-{number}"), held.row.payload));
        }
    }
    samples
}
