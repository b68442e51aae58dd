//! Everything that reads bytes someone else wrote, called with the same bytes.

use std::cell::RefCell;

use data_encoding::BASE32_NOPAD;
use sha2::{Digest, Sha256};
use sumpbook_daybook::exchange::{ShopCode, hand_over, shelf, take_answer, take_in};
use sumpbook_daybook::gate::bounded;
use sumpbook_daybook::label::Label;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::line::Line;
use sumpbook_daybook::parcel::{self, FileReader, Invitation, decode};
use sumpbook_daybook::{photo, sound};
use sumpbook_trade::Entry;

use crate::desk;
use crate::entries::section;
use crate::fleet::{
    BEGIN_MS, at, beginning, entry, entry_id, ledger_in_memory, of_truck, phone_key, root, shop_key, truck,
};
use crate::world::settle_in;

/// The request that every answer here is about.
const ASKED: [u8; 32] = [7; 32];
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
    clips(data);
    typed(data);
    desk::foreign(data);
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
        answered(ledger, data);
    });
}

/// As a photo and as a sound somebody sends; what is kept of it is kept again as it is.
fn clips(data: &[u8]) {
    let _ = photo::cleaned(data);
    if let Ok(clean) = sound::cleaned(data) {
        assert_eq!(sound::cleaned(&clean).unwrap(), clean);
    }
}

/// As the answer to a request: as it came, and as what a shop gone wrong would sign.
fn answered(ledger: &mut Ledger, data: &[u8]) {
    let now = at(BEGIN_MS);
    let _ = take_answer(ledger, ASKED, data, now, now);
    if let Ok(parcel) = decode::decode_answer(data, root().fleet)
        && let Ok(sealed) = parcel::seal_answer(&parcel, ASKED, &shop_key())
    {
        let _ = take_answer(ledger, ASKED, &sealed.wire, now, now);
    }
}

/// As what people type and scan: a shop's code, with its check as it is and as it must be, and lines.
fn typed(data: &[u8]) {
    let check: [u8; 32] = Sha256::digest(data).into();
    let right = BASE32_NOPAD.encode(&[data, &check[..2]].concat());
    for text in [std::str::from_utf8(data).unwrap_or_default(), &right] {
        if let Some(label) = Label::from_text(text) {
            assert_eq!(Label::from_text(&label.to_text()), Some(label));
        }
        if let Ok(code) = ShopCode::from_text(text) {
            // What was read says the same when it is written; a code of more units than one may name is cut.
            let again = ShopCode::from_text(&code.to_text().unwrap()).unwrap();
            assert_eq!((again.root, again.invitation), (code.root, code.invitation));
        }
    }
    let Ok(text) = std::str::from_utf8(data) else { return };
    for (_, line) in Line::read_all(text) {
        if let Ok(line) = line {
            assert!(Line::read(&line.write()).is_ok(), "{text}");
        }
    }
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
        let known = |id| (id == phone_key(1).id()).then(|| phone_key(1).public());
        if let Ok(opened) = parcel::open(&frame, known) {
            samples.push((format!("parcel-{number}"), minicbor::to_vec(&opened.parcel).unwrap()));
        }
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
            samples.push((format!("line-{number}"), Line::of(&entry, one.fleet()).write().into_bytes()));
            samples.push((format!("payload-{number}"), held.row.payload));
        }
    }
    let invitation = Invitation {
        shop: root().shop,
        code: [3; 16],
        hub: Some("hub.test:8443".to_owned()),
        fleet_name: "Tern Hollow Water".to_owned(),
        expires_ms: 4_000_000_000_000,
    };
    let code = ShopCode { root: root(), invitation, units: vec![truck(0), truck(1)] };
    let text = code.to_text().unwrap();
    samples.push(("code-body".to_owned(), {
        let bytes = BASE32_NOPAD.decode(text.as_bytes()).unwrap();
        bytes[..bytes.len() - 2].to_vec()
    }));
    samples.push(("code".to_owned(), text.into_bytes()));
    samples.extend(desk::honest(&shop));
    samples
}
