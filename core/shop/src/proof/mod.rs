//! The evidence pack: everything recorded of a unit, what is missing first, and how to check it without this program.

mod check;
mod gaps;
mod own_rules;
mod page;

use std::io::Write;
use std::path::Path;

use sumpbook_daybook::book::BookId;
use sumpbook_daybook::gate::ChangeHash;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::Stamp;

use crate::ShopError;
use crate::archive::{ArchiveError, ArchiveWriter, Manifest, Purpose};
use crate::entry_lines::{self, BookNames};
use crate::sheet::Yard;
use crate::table_out::{Kind, Of, table};
use crate::{heads, photo_files};

pub use check::{PackPhotos, PackReport, verify_pack};
pub use gaps::{Gap, gaps};

/// The second encoder, for whoever checks the pack.
const CHECK: &str = include_str!("../../proof/check.py");

/// When a pack is of, and when it is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Moments {
    /// As known at: what the ledger holds is of this moment.
    pub known: Stamp,
    /// Written and signed at.
    pub made: Stamp,
}

impl Moments {
    /// Of now.
    pub fn now(now: Stamp) -> Moments {
        Moments { known: now, made: now }
    }
}

/// Writes the pack of these units, with its page and the heads of its tables in Spanish too when `spanish`. The ledger
/// must hold still meanwhile.
///
/// # Errors
/// As any read; when the file cannot be written.
pub fn pack(
    ledger: &Ledger,
    folder: &Path,
    of: Of<'_>,
    to: &Path,
    spanish: bool,
    Moments { known: now, made }: Moments,
) -> Result<Manifest, ShopError> {
    let yard = Yard::of(ledger, ledger.fleet().yard_day(now), now)?;
    let units: Vec<_> = yard.units(ledger)?.into_iter().filter(|(_, truck)| of.holds(*truck)).collect();
    let mut archive = ArchiveWriter::begin(to, Purpose::Evidence, ledger, made)?;
    let missing = gaps(ledger, of, folder, now)?;
    let fingerprint = heads::fingerprint(&ledger.root().shop);
    let spoken = std::iter::once(page::ENGLISH).chain(spanish.then_some(page::SPANISH));
    let spoken: Vec<_> = spoken.collect();
    for language in &spoken {
        let page = page::page(*language, ledger, &yard, &units, &missing, &fingerprint)?;
        archive.add(language.page, page.as_bytes())?;
    }
    archive.add("gaps.json", &serde_json::to_vec_pretty(&missing)?)?;
    for kind in Kind::ALL {
        let sheet = table(ledger, kind, of, now)?;
        for language in &spoken {
            let name = format!("{}/{}.csv", language.tables, kind.name());
            archive.add(&name, &sheet.headed_in(language.tag).to_csv(false))?;
        }
    }
    let holds = |book: BookId| match book {
        BookId::Fleet => true,
        BookId::Truck { truck, .. } => of.holds(truck),
    };
    let names = BookNames::of(ledger)?;
    let parent = to.parent().filter(|parent| !parent.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let failed = |reason| ArchiveError::File { path: to.to_owned(), reason };
    let beside = tempfile::NamedTempFile::new_in(parent).map_err(failed)?;
    let mut lines = std::io::BufWriter::new(beside.as_file());
    let counts = entry_lines::write(ledger, &names, &mut lines, holds)?;
    lines.flush().map_err(failed)?;
    drop(lines);
    archive.add_file("entries.jsonl", beside.path())?;
    let truth = ledger.store().truth();
    let mut photos = std::collections::BTreeSet::new();
    for (book, count) in counts {
        let heads = truth.heads(book)?.iter().map(ChangeHash::to_string).collect();
        archive.book(names.name(book), heads, count);
        for held in truth.of_book(book)? {
            photos.extend(truth.photos_named_by(held.n)?.into_iter().map(|photo| photo.to_string()));
        }
    }
    for (name, path) in photo_files::kept(folder).into_iter().filter(|(name, _)| photos.contains(name)) {
        archive.add_file(&format!("{}/{name}", photo_files::FOLDER), &path)?;
    }
    archive.add("check.py", CHECK.as_bytes())?;
    Ok(archive.finish(ledger)?)
}
