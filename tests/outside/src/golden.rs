//! The golden files: fields, bytes and hashes as the first version of the program had them.
//!
//! They are never written again: a hash is part of the record, so a difference is the program's fault.

use serde_json::Value;
use sumpbook_daybook::book::{BookId, EntryRow};
use sumpbook_daybook::gate::{Actor, ChangeHash};
use sumpbook_trade::{EntryId, TruckId};

use crate::hex::{hex, unhex, unhex_array};
use crate::program::here;
use crate::second_encoder::Fields;

/// One case of `changes.json`.
#[derive(Clone, Debug)]
pub struct Case {
    /// What the change is made of.
    pub fields: Fields,
    /// Its chunk.
    pub chunk: Vec<u8>,
    /// Its hash.
    pub hash: [u8; 32],
}

fn read(name: &str) -> Value {
    let path = here().join("golden").join(name);
    let text = std::fs::read_to_string(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
    serde_json::from_str(&text).expect("golden files are JSON")
}

fn text<'a>(value: &'a Value, field: &str) -> &'a str {
    value[field].as_str().unwrap_or_else(|| panic!("no {field}"))
}

fn number(value: &Value, field: &str) -> u64 {
    value[field].as_u64().unwrap_or_else(|| panic!("no {field}"))
}

fn hashes(value: &Value) -> Vec<[u8; 32]> {
    value.as_array().expect("a list").iter().map(|dep| unhex_array(dep.as_str().expect("hex"))).collect()
}

/// The cases of `changes.json`.
pub fn cases() -> Vec<Case> {
    let case = |case: &Value| Case {
        fields: Fields {
            actor: unhex_array(text(case, "actor")),
            seq: number(case, "seq"),
            op: number(case, "op"),
            deps: hashes(&case["deps"]),
            key: text(case, "id").to_owned(),
            value: unhex(text(case, "value")),
        },
        chunk: unhex(text(case, "chunk")),
        hash: unhex_array(text(case, "hash")),
    };
    read("changes.json").as_array().expect("a list").iter().map(case).collect()
}

/// One case as it stands in `changes.json`.
pub fn case_json(case: &Case) -> Value {
    serde_json::json!({
        "actor": hex(&case.fields.actor),
        "seq": case.fields.seq,
        "op": case.fields.op,
        "deps": case.fields.deps.iter().map(|dep| hex(dep)).collect::<Vec<_>>(),
        "id": case.fields.key,
        "value": hex(&case.fields.value),
        "chunk": hex(&case.chunk),
        "hash": hex(&case.hash),
    })
}

/// `book.json`: a truck's book as rows, as a saved document, with its heads.
#[derive(Clone, Debug)]
pub struct Book {
    /// The fleet its entries were signed for.
    pub fleet: [u8; 16],
    /// The truck.
    pub truck: [u8; 16],
    /// The year.
    pub year: u16,
    /// The public keys of its writers.
    pub keys: Vec<[u8; 32]>,
    /// Its entries.
    pub rows: Vec<EntryRow>,
    /// The document as it was saved.
    pub document: Vec<u8>,
    /// The document's heads, ascending.
    pub heads: Vec<[u8; 32]>,
}

/// The book of `book.json`.
pub fn book() -> Book {
    let value = read("book.json");
    let (truck, year) = (unhex_array(text(&value, "truck")), number(&value, "year") as u16);
    let row = |row: &Value| EntryRow {
        hash: ChangeHash(unhex_array(text(row, "hash"))),
        book: BookId::Truck { truck: TruckId::from_bytes(truck), year },
        actor: Actor(unhex_array(text(row, "actor"))),
        seq: number(row, "seq"),
        deps: hashes(&row["deps"]).into_iter().map(ChangeHash).collect(),
        op: number(row, "op"),
        id: EntryId(text(row, "id").parse().expect("an id")),
        payload: unhex(text(row, "payload")),
        signature: unhex_array(text(row, "signature")),
    };
    Book {
        fleet: unhex_array(text(&value, "fleet")),
        truck,
        year,
        keys: hashes(&value["keys"]),
        rows: value["rows"].as_array().expect("a list").iter().map(row).collect(),
        document: unhex(text(&value, "document")),
        heads: hashes(&value["heads"]),
    }
}

/// A book as it stands in `book.json`.
pub fn book_json(book: &Book) -> Value {
    let row = |row: &EntryRow| {
        serde_json::json!({
            "hash": row.hash.to_string(),
            "actor": row.actor.to_string(),
            "seq": row.seq,
            "deps": row.deps.iter().map(ChangeHash::to_string).collect::<Vec<_>>(),
            "op": row.op,
            "id": row.id.to_string(),
            "payload": hex(&row.payload),
            "signature": hex(&row.signature),
        })
    };
    serde_json::json!({
        "fleet": hex(&book.fleet),
        "truck": hex(&book.truck),
        "year": book.year,
        "keys": book.keys.iter().map(|key| hex(key)).collect::<Vec<_>>(),
        "rows": book.rows.iter().map(row).collect::<Vec<_>>(),
        "document": hex(&book.document),
        "heads": book.heads.iter().map(|head| hex(head)).collect::<Vec<_>>(),
    })
}
