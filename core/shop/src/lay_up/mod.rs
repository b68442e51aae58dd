//! A set is put away, and its list before the return is answered: recorded at the shop, by name.

mod told;

use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::line::check_return;
use sumpbook_trade::lay_up::{LineStanding, ReturnList, Spell};
use sumpbook_trade::record::{LayUp, ReturnLine, ReturnToService, Source};
use sumpbook_trade::{EntryId, Stamp, Tenths, TruckId};

pub use told::{AnswerTold, LaidUp, LineTold};

use crate::{Hand, Shop, ShopError, Told};

/// Lays up the set that stands on a truck: its air is locked from then on, its clocks run on, and a list opens that
/// is answered before it gives air again. `at` is when it was put away; now when left out. Returns the entry.
///
/// # Errors
/// When nobody is named, it is laid up already, or `at` has not come yet.
pub fn lay_up(
    shop: &mut Shop,
    truck: TruckId,
    done: Option<String>,
    hours: Option<Tenths>,
    at: Option<Stamp>,
    hand: &Hand,
) -> Result<EntryId, ShopError> {
    let person = Some(hand.person.ok_or(ShopError::NoPerson)?);
    let fleet = shop.ledger.fleet();
    let (unit, zone) = (fleet.door(truck), fleet.zone);
    let at = at.unwrap_or(hand.at);
    if at > hand.at {
        return Err(ShopError::Ahead(at));
    }
    if let Some(spell) = standing(&shop.ledger, truck)? {
        let since = spell.since.with_timezone(&zone).format("%-d %b %Y %H:%M").to_string();
        return Err(ShopError::LaidUpAlready { unit, since });
    }
    let done = done.map(|done| done.trim().to_owned()).filter(|done| !done.is_empty());
    let told = Told { person, at, source: Source::Shop, hours, note: None };
    shop.write_told(Some(truck), LayUp { done }.into(), told, hand)
}

/// Answers lines of the list before a set's return, each done or waived by the hand's person. Returns the entry, and
/// the lines that are open after it: with none left the air is free.
///
/// # Errors
/// When nobody is named, the set is not laid up, no line is given, or a line answers nothing.
pub fn answer_list(
    shop: &mut Shop,
    truck: TruckId,
    lines: Vec<ReturnLine>,
    words: Option<String>,
    hand: &Hand,
) -> Result<(EntryId, Vec<String>), ShopError> {
    if hand.person.is_none() {
        return Err(ShopError::NoPerson);
    }
    let unit = || shop.ledger.fleet().door(truck);
    let spell = standing(&shop.ledger, truck)?.ok_or_else(|| ShopError::NotLaidUp(unit()))?;
    if lines.is_empty() {
        return Err(ShopError::NoReturnLine(open_lines(&spell).join(", ")));
    }
    check_return(&lines)?;
    let list = ReturnList::common_practice().map_err(sumpbook_daybook::line::ReturnLineError::from)?;
    let said = ReturnToService {
        done: words.map(|words| words.trim().to_owned()).filter(|words| !words.is_empty()),
        lay_up: Some(EntryId(spell.newest)),
        edition: Some(list.edition),
        lines,
    };
    let entry = shop.write(Some(truck), said.into(), None, hand)?;
    let open = standing(&shop.ledger, truck)?.map_or_else(Vec::new, |spell| open_lines(&spell));
    Ok((entry, open))
}

/// The spell in which the set on a truck stands, whatever the clock of the phone that laid it up showed.
///
/// # Errors
/// As any read.
pub fn standing(ledger: &Ledger, truck: TruckId) -> Result<Option<Spell>, ShopError> {
    let state = ledger.unit_state(truck)?;
    Ok(state.lay_ups.into_iter().rev().find(|spell| spell.returned.is_none()))
}

/// The lines of a list that nobody answered.
pub fn open_lines(spell: &Spell) -> Vec<String> {
    let open = spell.lines.iter().filter(|line| line.standing() == LineStanding::Open);
    open.map(|line| line.line.clone()).collect()
}
