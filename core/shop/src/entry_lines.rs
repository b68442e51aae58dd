//! Entries as lines of JSON: how they stand in an archive, signature and place included, for any reader.

use std::collections::BTreeMap;
use std::io::Write;

use data_encoding::HEXLOWER;
use minicbor::Decoder;
use serde::{Deserialize, Serialize};
use sumpbook_daybook::book::BookId;
use sumpbook_daybook::gate::{Actor, ChangeHash, Place, sign};
use sumpbook_daybook::ledger::{Carried, Incoming, Ledger};
use sumpbook_daybook::store::HeldEntry;
use sumpbook_trade::{EntryId, FleetId, TruckId};

use crate::ShopError;
use crate::archive::{ArchiveError, file_name};

/// An entry with its place, as a line.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
struct EntryLine {
    /// Its number at the shop.
    n: i64,
    /// When it came to the shop, milliseconds since 1970 UTC.
    received: i64,
    /// Key id of whoever brought it, hexadecimal; none when written there.
    carrier: Option<String>,
    /// The book's name in this archive.
    book: String,
    /// The book's truck; none: the fleet's book.
    truck: Option<TruckId>,
    /// The book's year.
    year: Option<u16>,
    /// Who wrote it: the signer's key id and 8 bytes more, hexadecimal.
    actor: String,
    /// Its number among that actor's in the book.
    seq: u64,
    /// Changes it names as seen, hexadecimal, ascending.
    deps: Vec<String>,
    /// Number of its op: one more than the highest of its predecessors.
    op: u64,
    /// Its id.
    id: EntryId,
    /// SHA-256 of its change, hexadecimal.
    hash: String,
    /// The signed entry: COSE_Sign1, untagged, hexadecimal.
    cose: String,
}

/// Names of books within one archive.
pub(crate) struct BookNames(BTreeMap<BookId, String>);

impl BookNames {
    /// Those of a ledger: `fleet`, `TH-01-2026`.
    ///
    /// # Errors
    /// As any read.
    pub(crate) fn of(ledger: &Ledger) -> Result<BookNames, ShopError> {
        let mut names: BTreeMap<BookId, String> = BTreeMap::new();
        for book in ledger.store().truth().books()? {
            let name = match book {
                BookId::Fleet => "fleet".to_owned(),
                BookId::Truck { truck, year } => {
                    let name = format!("{}-{year}", file_name(&ledger.fleet().door(truck)));
                    // Two trucks can have had one door number.
                    let taken = names.values().any(|known| known.eq_ignore_ascii_case(&name));
                    if taken { format!("{name}-{}", truck.0.simple()) } else { name }
                }
            };
            names.insert(book, name);
        }
        Ok(BookNames(names))
    }

    pub(crate) fn name(&self, book: BookId) -> &str {
        self.0.get(&book).map_or("", String::as_str)
    }
}

/// Writes the entries of some books, in the order the shop got them, a line each. Gives back how many.
///
/// # Errors
/// As any read or write.
pub(crate) fn write(
    ledger: &Ledger,
    names: &BookNames,
    to: &mut impl Write,
    holds: impl Fn(BookId) -> bool,
) -> Result<BTreeMap<BookId, usize>, ShopError> {
    let truth = ledger.store().truth();
    let mut counts: BTreeMap<BookId, usize> = BTreeMap::new();
    let mut after = 0;
    loop {
        let rows = truth.between(after, i64::MAX, 1_000)?;
        let Some(end) = rows.last().map(|held| held.n) else { break };
        for held in rows.iter().filter(|held| holds(held.row.book)) {
            let line = serde_json::to_string(&line(held, names)?)?;
            writeln!(to, "{line}").map_err(|e| ArchiveError::Zip(e.to_string()))?;
            let count = counts.entry(held.row.book).or_default();
            *count = count.saturating_add(1);
        }
        after = end;
    }
    Ok(counts)
}

fn line(held: &HeldEntry, names: &BookNames) -> Result<EntryLine, ShopError> {
    let row = &held.row;
    let (truck, year) = match row.book {
        BookId::Fleet => (None, None),
        BookId::Truck { truck, year } => (Some(truck), Some(year)),
    };
    let cose =
        sign::cose(&row.payload, &row.signature).map_err(sumpbook_daybook::ledger::LedgerError::from)?;
    Ok(EntryLine {
        n: held.n,
        received: held.received_ms,
        carrier: held.carrier.map(|key| HEXLOWER.encode(&key)),
        book: names.name(row.book).to_owned(),
        truck,
        year,
        actor: row.actor.to_string(),
        seq: row.seq,
        deps: row.deps.iter().map(ChangeHash::to_string).collect(),
        op: row.op,
        id: row.id,
        hash: row.hash.to_string(),
        cose: HEXLOWER.encode(&cose),
    })
}

/// A line that was read: the entry, its book's name, and the hash the line says it has.
pub(crate) struct Read {
    pub(crate) carried: Carried,
    pub(crate) book: String,
    pub(crate) hash: ChangeHash,
}

/// Reads one line; none when it is no entry. Nothing of it is believed yet.
pub(crate) fn read(line: &str, fleet: FleetId) -> Option<Read> {
    let line: EntryLine = serde_json::from_str(line).ok()?;
    let book = match (line.truck, line.year) {
        (None, None) => BookId::Fleet,
        (Some(truck), Some(year)) => BookId::Truck { truck, year },
        _ => return None,
    };
    let deps: Option<Vec<ChangeHash>> = line.deps.iter().map(|dep| fixed(dep).map(ChangeHash)).collect();
    let (payload, signature) = opened(&HEXLOWER.decode(line.cose.as_bytes()).ok()?)?;
    let place =
        Place { fleet, book, actor: Actor(fixed(&line.actor)?), seq: line.seq, deps: deps?, id: line.id };
    let carrier = match &line.carrier {
        Some(key) => Some(fixed(key)?),
        None => None,
    };
    let incoming = Incoming { place, payload, signature };
    let carried = Carried { n: line.n, received_ms: line.received, carrier, incoming };
    Some(Read { carried, book: line.book, hash: ChangeHash(fixed(&line.hash)?) })
}

/// Payload and signature out of the one form our envelopes have; any other form of the same envelope is none.
fn opened(cose: &[u8]) -> Option<(Vec<u8>, [u8; 64])> {
    let mut decoder = Decoder::new(cose);
    if decoder.array().ok()? != Some(4) {
        return None;
    }
    decoder.bytes().ok()?;
    if decoder.map().ok()? != Some(0) {
        return None;
    }
    let payload = decoder.bytes().ok()?.to_vec();
    let signature: [u8; 64] = decoder.bytes().ok()?.try_into().ok()?;
    let built = sign::cose(&payload, &signature).ok()?;
    (built == cose).then_some((payload, signature))
}

fn fixed<const N: usize>(hex: &str) -> Option<[u8; N]> {
    HEXLOWER.decode(hex.as_bytes()).ok()?.try_into().ok()
}
