//! `lay-up` and `return-to-service`: a set is put away, and its list before the return is answered.

use std::path::Path;

use sumpbook_daybook::fleet::Fleet;
use sumpbook_daybook::text::{Arg, Texts};
use sumpbook_trade::Stamp;
use sumpbook_trade::record::{ReturnHow, ReturnLine};

use super::CommandError;
use super::args::{LayUp, ReturnToService};
use super::exchange::known_at;
use super::found::{hand, open};
use super::out::Said;
use crate::ShopError;
use crate::lay_up::{self as laying, LaidUp};
use crate::table::table;

/// Lays up the set of a unit.
///
/// # Errors
/// When it is laid up already, or the moment has not come.
pub(super) fn lay_up(folder: &Path, args: &LayUp) -> Result<Said, CommandError> {
    let mut shop = open(folder)?;
    let person = shop.person(&args.by)?;
    let truck = shop.unit(&args.unit)?;
    let hand = hand(&shop, Some(person), args.received);
    let entry = laying::lay_up(&mut shop, truck, args.done.clone(), args.hours, args.at, &hand)?;
    shop.ledger.settle()?;
    let spell = laying::standing(&shop.ledger, truck)?;
    let told = LaidUp::of(shop.ledger.fleet(), truck, spell.as_ref(), Some(entry));
    let text = format!(
        "{} is laid up. Its air is locked until its list is answered, its clocks run on; the road is not locked by it.\n\
         The lay-up is entry {entry}. `sumpbook return-to-service {}` shows the list.",
        told.unit, told.unit
    );
    Said::new(text, &told)
}

/// Answers lines of its list, or shows it.
///
/// # Errors
/// When it is not laid up, nobody is named, or a line answers nothing.
pub(super) fn return_to_service(folder: &Path, args: &ReturnToService) -> Result<Said, CommandError> {
    let mut shop = open(folder)?;
    let truck = shop.unit(&args.unit)?;
    let lines = lines(args);
    if lines.is_empty() {
        let (then, _) = known_at(&mut shop, args.as_of)?;
        let ledger = then.as_ref().unwrap_or(&shop.ledger);
        let spell = laying::standing(ledger, truck)?;
        let Some(spell) = spell else { return Err(ShopError::NotLaidUp(args.unit.clone()).into()) };
        let told = LaidUp::of(ledger.fleet(), truck, Some(&spell), None);
        return Said::new(as_text(&told, ledger.fleet()), &told);
    }
    let person = args.by.as_deref().map(|name| shop.person(name)).transpose()?;
    let hand = hand(&shop, person, args.received);
    let (entry, open) = laying::answer_list(&mut shop, truck, lines, args.words.clone(), &hand)?;
    shop.ledger.settle()?;
    let spell = shop.ledger.unit_state(truck)?.lay_ups.pop();
    let told = LaidUp::of(shop.ledger.fleet(), truck, spell.as_ref(), Some(entry));
    let text = match open.is_empty() {
        true => format!("Every line is answered: the lay-up of {} is over. The entry is {entry}.", told.unit),
        false => format!("The entry is {entry}. Air stays locked. Open: {}.", open.join(", ")),
    };
    Said::new(text, &told)
}

fn lines(args: &ReturnToService) -> Vec<ReturnLine> {
    let done = args.done.iter().map(|line| ReturnLine {
        line: line.trim().to_owned(),
        how: ReturnHow::Done,
        reason: None,
    });
    let waived = args.waive.iter().map(|(line, why)| ReturnLine {
        line: line.clone(),
        how: ReturnHow::Waived,
        reason: Some(why.clone()),
    });
    done.chain(waived).collect()
}

/// The list as a table.
fn as_text(told: &LaidUp, fleet: &Fleet) -> String {
    let texts = Texts::english();
    let day = |at: Stamp| at.moment().with_timezone(&fleet.zone).format("%a %-d %b %Y %H:%M").to_string();
    let since = told.since.map(day).unwrap_or_default();
    let head = texts.get("lay-up-clocks", &[("when", Arg::Text(&since))]);
    let rows = told.lines.iter().map(|line| {
        let said = line.answers.iter().map(|answer| {
            let why = answer.reason.as_ref().map_or_else(String::new, |why| format!(": {why}"));
            format!("{} {}{why}", answer.who, day(answer.at))
        });
        [
            line.line.clone(),
            texts.get(&format!("return-{}", line.line), &[]),
            texts.get(&format!("return-{}.look", line.line), &[]),
            line.state.to_owned(),
            said.collect::<Vec<_>>().join("; "),
        ]
    });
    let rows = table(["Line", "What", "Look at", "State", "Who"], rows);
    format!("{}: {head}\n{rows}\n{}", told.unit, texts.get("return-list-stands-on", &[]))
}
