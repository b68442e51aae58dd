//! Pages of paper: which lines a page of a unit has, which edition it is, and writing a signed one down.
//!
//! A page's edition is the checklist's, a point, and the unit's own: 1 as the unit was first registered, one more
//! with each change of what it has. So an old pad is seen, and which of its lines are others now can be told.

use std::path::Path;
use std::sync::Arc;

use sumpbook_daybook::book::BookId;
use sumpbook_daybook::judgement::Judged;
use sumpbook_daybook::ledger::{Ledger, NewEntry};
use sumpbook_daybook::line::with_severity;
use sumpbook_trade::checklist::{Line, PlannedStop, Template, plan};
use sumpbook_trade::record::{Answer, Digest, PaperPage, PreTripSection, Source};
use sumpbook_trade::{Entry, EntryId, Fact, FactKind, Features, PersonId, Stamp, Tenths, TruckId, WalkId};

use crate::shop::new_id;
use crate::{Hand, Shop, ShopError, Told, photo_files};

/// Pages of one unit that are looked through for a number.
const PAGES: i64 = 1_000;

/// A page as one unit has it in one of its editions.
#[derive(Clone, Debug, PartialEq)]
pub struct PageOf {
    /// Edition of the checklist.
    pub edition: u32,
    /// The unit's own edition.
    pub unit_edition: u32,
    /// Its stops with their lines, in walking order.
    pub stops: Vec<PlannedStop>,
}

impl PageOf {
    /// Its lines in order.
    pub fn lines(&self) -> impl Iterator<Item = &Line> {
        self.stops.iter().flat_map(|stop| &stop.lines)
    }

    /// As it is printed: "1.3".
    pub fn name(&self) -> String {
        format!("{}.{}", self.edition, self.unit_edition)
    }
}

/// Every edition of a unit's page, oldest first; the last is the one to print now.
///
/// # Errors
/// As any read; and when the checklist does not hang together.
pub fn editions(ledger: &Ledger, truck: TruckId) -> Result<Vec<PageOf>, ShopError> {
    let template = template(ledger)?;
    let mut editions: Vec<PageOf> = Vec::new();
    let mut last: Option<Features> = None;
    for features in registered(ledger, truck)? {
        if last.as_ref() == Some(&features) {
            continue;
        }
        editions.push(PageOf {
            edition: template.edition,
            unit_edition: u32::try_from(editions.len()).unwrap_or(u32::MAX).saturating_add(1),
            stops: plan(&template, &features),
        });
        last = Some(features);
    }
    Ok(editions)
}

/// What a unit had, each time it was registered, in the order of the fleet's book.
fn registered(ledger: &Ledger, truck: TruckId) -> Result<Vec<Features>, ShopError> {
    let truth = ledger.store().truth();
    let mut rows = truth.of_book(BookId::Fleet)?;
    rows.sort_by_key(|held| (held.row.op, held.row.hash));
    let mut found = Vec::new();
    for held in rows {
        if let Ok(Entry { fact: Fact::TruckRegistered(registered), .. }) =
            Entry::from_payload(&held.row.payload)
            && registered.truck == truck
            && truth.fact(held.n)?.is_some_and(|fact| fact.judged == Judged::Counts)
        {
            found.push(registered.features);
        }
    }
    Ok(found)
}

/// The checklist, as the shop has it.
///
/// # Errors
/// When it does not hang together.
pub fn template(ledger: &Ledger) -> Result<Arc<Template>, ShopError> {
    ledger.fleet().checklist().cloned().map_err(|error| ShopError::Checklist(error.to_string()))
}

/// A page that a driver signed, as it was typed in.
#[derive(Clone, Debug, PartialEq)]
pub struct PageTyped {
    /// Who signed it.
    pub driver: PersonId,
    /// When, as it says.
    pub signed_at: Stamp,
    /// Its answers in its own order.
    pub answers: Vec<Answer>,
    /// No line of it was left blank.
    pub complete: bool,
    /// Hours of the meter on it.
    pub hours: Option<Tenths>,
    /// Edition of the checklist on it.
    pub edition: u32,
    /// The unit's own edition on it.
    pub unit_edition: u32,
    /// Its number.
    pub number: Option<String>,
    /// A photo of it.
    pub photo: Option<Digest>,
}

/// Writes a page down: the driver's walk with its source "paper", and who typed it from which page. Both are
/// recorded together, or neither. Returns the walk's entry.
///
/// # Errors
/// When nobody is named, no line is answered, a line, place or word is not the checklist's, the page's number was typed in before,
/// or it was signed later than now; then nothing is recorded.
pub fn keep_page(
    shop: &mut Shop,
    truck: TruckId,
    page: PageTyped,
    hand: &Hand,
) -> Result<EntryId, ShopError> {
    if hand.person.is_none() {
        return Err(ShopError::NoPerson);
    }
    if page.signed_at > hand.at {
        return Err(ShopError::SignedAhead(page.signed_at));
    }
    if page.answers.is_empty() {
        return Err(ShopError::PageEmpty);
    }
    if let Some(number) = &page.number
        && is_typed(&shop.ledger, truck, number)?
    {
        return Err(ShopError::PageTyped(number.clone()));
    }
    let template = template(&shop.ledger)?;
    let answers = page.answers.into_iter().map(|answer| with_severity(&template, answer));
    let section = PreTripSection {
        walk: WalkId(new_id(hand.at)?),
        edition: page.edition,
        answers: answers.collect::<Result<_, _>>()?,
        seconds: None,
        complete: page.complete,
        follows: None,
    };
    let told = Told {
        person: Some(page.driver),
        at: page.signed_at,
        source: Source::Paper,
        hours: page.hours,
        note: None,
    };
    let walk = shop.entry(Some(truck), section.into(), told, hand)?;
    let typed = PaperPage {
        signed: walk.id,
        number: page.number,
        edition: page.edition,
        unit_edition: page.unit_edition,
        photo: page.photo,
    };
    let told = Told { person: hand.person, at: hand.at, source: Source::Shop, hours: None, note: None };
    let typed = shop.entry(Some(truck), typed.into(), told, hand)?;
    let id = walk.id;
    let received = hand.received.unwrap_or(hand.at).unix_ms();
    let both = [walk, typed].map(|entry| NewEntry { entry, truck: Some(truck) });
    shop.ledger.record(&both, received)?;
    Ok(id)
}

/// Whether a page of this number was typed in for the unit.
fn is_typed(ledger: &Ledger, truck: TruckId, number: &str) -> Result<bool, ShopError> {
    let truth = ledger.store().truth();
    let code = FactKind::PaperPage.code().unwrap_or(0);
    for fact in truth.newest_facts(truck, code, PAGES)? {
        let Some(held) = truth.entry(fact.n)? else { continue };
        if let Ok(Entry { fact: Fact::PaperPage(page), .. }) = Entry::from_payload(&held.row.payload)
            && page.number.as_deref() == Some(number)
        {
            return Ok(true);
        }
    }
    Ok(false)
}

/// Photos of paper pages that were kept at the desk and of which no page was typed in yet: kept here and named by no
/// entry. Whatever comes from a phone is named by its entry before it is taken.
///
/// # Errors
/// As any read.
pub fn to_type(ledger: &Ledger, folder: &Path) -> Result<Vec<Digest>, ShopError> {
    let named = ledger.store().truth().named_photos()?;
    let kept = photo_files::kept(folder).into_iter().filter_map(|(name, _)| name.parse::<Digest>().ok());
    Ok(kept.filter(|photo| !named.contains(photo)).collect())
}
