//! What did the shop set otherwise than usual, and since when: the rules' numbers, and what findings lock.

use maud::{Markup, html};
use sumpbook_daybook::book::BookId;
use sumpbook_daybook::judgement::Judged;
use sumpbook_daybook::ledger::{Ledger, LedgerError};
use sumpbook_daybook::text::Arg;
use sumpbook_trade::checklist::{Severity, Template};
use sumpbook_trade::record::{OwnSeverity, RuleNumber, RuleNumbers};
use sumpbook_trade::{Entry, Fact, Stamp};

use super::page::Spoken;
use crate::ShopError;
use crate::console::{item_in, number_text, word_in};

/// What was set at once, each with a sentence; none: all as is usual from then on.
pub(super) struct OwnRules {
    since: Stamp,
    of: &'static str,
    said: Vec<String>,
    why: Option<String>,
}

/// Every time that it was set, in the order it was.
///
/// # Errors
/// As any read.
pub(super) fn own_rules(spoken: Spoken, ledger: &Ledger) -> Result<Vec<OwnRules>, ShopError> {
    let truth = ledger.store().truth();
    let usual = Template::common_practice().map_err(LedgerError::from)?;
    let mut all = Vec::new();
    for held in truth.of_book(BookId::Fleet)? {
        if truth.fact(held.n)?.is_none_or(|fact| fact.judged != Judged::Counts) {
            continue;
        }
        let Ok(Entry { at, fact, note, .. }) = Entry::from_payload(&held.row.payload) else { continue };
        let set = match &fact {
            Fact::RuleNumbers(numbers) => ("pack-own-numbers", numbers_said(spoken, numbers)),
            Fact::SeveritiesSet(set) => ("pack-own-severities", severities_said(spoken, usual, &set.own)),
            _ => continue,
        };
        all.push(OwnRules { since: at, of: set.0, said: set.1, why: note });
    }
    Ok(all)
}

/// As they stand on the page.
pub(super) fn drawn(spoken: Spoken, all: &[OwnRules], when: impl Fn(Stamp) -> String) -> Markup {
    html! {
        @if all.is_empty() { p { (spoken.t("pack-own-none")) } }
        @for set in all {
            h3 { (spoken.t(set.of)) ", " (spoken.say("pack-since", &[("when", Arg::Text(&when(set.since)))])) }
            @if set.said.is_empty() { p { (spoken.t("pack-own-usual")) } }
            ul { @for said in &set.said { li { (said) } } }
            @if let Some(why) = &set.why { p { (spoken.say("pack-own-why", &[("why", Arg::Text(why))])) } }
        }
    }
}

fn numbers_said(spoken: Spoken, numbers: &RuleNumbers) -> Vec<String> {
    let usual = RuleNumbers::default();
    let own = RuleNumber::ALL.iter().filter(|number| number.of(numbers) != number.of(&usual));
    let said = own.map(|number| {
        let text = |numbers: &RuleNumbers| number_text(number.of(numbers), number.places);
        let what = spoken.t(&format!("number-{}", number.id));
        otherwise(spoken, &what, &text(numbers), &text(&usual))
    });
    said.collect()
}

fn severities_said(spoken: Spoken, usual: &Template, own: &[OwnSeverity]) -> Vec<String> {
    let locks = |severity: Severity| spoken.t(&format!("severity-{}", severity.key()));
    let mut said = Vec::new();
    for OwnSeverity { item, word, severity, again } in own {
        let what = format!("{}: {}", item_in(spoken.tag, item), word_in(spoken.tag, word));
        let shipped = usual.item(item);
        let Some(first) = shipped.and_then(|item| item.severity(word)) else { continue };
        if first != *severity {
            said.push(otherwise(spoken, &what, &locks(*severity), &locks(first)));
        }
        let second = shipped.and_then(|item| item.again.as_ref()).filter(|second| second.word == *word);
        if let Some((second, again)) = second.zip(*again).filter(|(second, again)| second.severity != *again)
        {
            let args = [("word", Arg::Text(&what)), ("days", Arg::Count(i64::from(second.days)))];
            let what = spoken.say("severities-again", &args);
            said.push(otherwise(spoken, &what, &locks(again), &locks(second.severity)));
        }
    }
    said
}

fn otherwise(spoken: Spoken, what: &str, own: &str, usual: &str) -> String {
    spoken.say(
        "pack-otherwise",
        &[("what", Arg::Text(what)), ("own", Arg::Text(own)), ("usual", Arg::Text(usual))],
    )
}
