//! Everything recorded of one unit, newest first, a page at a time.

use std::collections::BTreeSet;

use maud::{Markup, html};
use serde::Serialize;
use sumpbook_daybook::gate::KeyId;
use sumpbook_daybook::judgement::Judged;
use sumpbook_daybook::line::Line;
use sumpbook_daybook::text::Arg;
use sumpbook_trade::hours::{HoursLedger, Part};
use sumpbook_trade::record::Source;
use sumpbook_trade::{ClockOff, Entry, EntryId, Fact, FactKind, Stamp};
use uuid::Uuid;

use super::told;
use super::view::Reading;
use crate::ShopError;
use crate::console::rule_words;
use crate::console::table::{Table, name, said};
use crate::console::words::{Words, clock_off};
use crate::paper::template;
use crate::sheet::{entry_of, key, signed_alone};
use sumpbook_daybook::screen::walk_rules::{self, RuleSaid};
use sumpbook_daybook::screen::was_quick;

/// As many entries stand on one page.
const PAGE: usize = 50;

/// Where one page of many stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct Pages {
    /// From 1.
    pub(super) page: usize,
    /// How many there are.
    pub(super) pages: usize,
    /// How many rows on all of them.
    pub(super) count: usize,
}

impl Pages {
    /// A page that exists, near the one asked for.
    pub(super) fn of(count: usize, each: usize, asked: usize) -> Pages {
        let pages = count.div_ceil(each.max(1)).max(1);
        Pages { page: asked.clamp(1, pages), pages, count }
    }

    /// Rows before it.
    pub(super) fn skipped(self, each: usize) -> usize {
        self.page.saturating_sub(1).saturating_mul(each)
    }

    /// Links to the newer and the older page; nothing when one holds all.
    pub(super) fn links(self, words: &Words, here: &str, what: &str) -> Markup {
        let count = |n: usize| Arg::Count(i64::try_from(n).unwrap_or(i64::MAX));
        let to = |page: usize| format!("{here}?{what}={page}#{what}");
        let part = words.t(&format!("part-{what}"));
        html! {
            @if self.pages > 1 {
                nav class="paged" aria-label=(words.with("pages-of-part", &[("part", Arg::Text(&part))])) {
                    ul class="run" {
                        @if self.page > 1 {
                            li { a rel="prev" href=(to(self.page.saturating_sub(1))) { (words.t("newer")) } }
                        }
                        li { (words.with("page-of", &[("page", count(self.page)), ("of", count(self.pages))])) }
                        @if self.page < self.pages {
                            li { a rel="next" href=(to(self.page.saturating_add(1))) { (words.t("older")) } }
                        }
                    }
                }
            }
        }
    }
}

/// A page of entries.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct History {
    /// Which page.
    #[serde(flatten)]
    pub(super) pages: Pages,
    /// Newest first: of the truck what is about the road, of its set what is about the air.
    pub(super) entries: Vec<EntryRow>,
    /// Entries in this truck's book about the air of a set that stands on it no more.
    pub(super) gone: i64,
    /// The units on which such sets stand now: there they are shown.
    pub(super) gone_to: Vec<String>,
}

/// One entry as it was signed, and what became of it.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct EntryRow {
    /// Its kind: a key of the texts.
    pub(super) kind: String,
    /// Its own time.
    pub(super) at: Stamp,
    /// The unit it was recorded on, where the set stood on another truck then.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) on: Option<String>,
    /// Who; none when not said or not readable.
    pub(super) who: Option<String>,
    /// The trainer, while the person is learning.
    pub(super) with: Option<String>,
    /// Which phone signed it, or the shop.
    pub(super) signed_on: String,
    /// Which phone brought it, when another than it was signed on.
    pub(super) brought_by: Option<String>,
    /// Here since.
    pub(super) came: Stamp,
    /// How far the clock that dated it stood from the shop's; none where it is not known or not worth a word.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) clock_off: Option<ClockOff>,
    /// How it came to be written down.
    pub(super) source: Option<Source>,
    /// `counts`, or why it does not.
    pub(super) judged: String,
    /// The entry itself; none when it does not read.
    pub(super) line: Option<Line>,
    /// Serial of the set it names as fitted or taken off; its id where it has none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) set: Option<String>,
    /// A walk signed by somebody who is learning, with no trainer.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub(super) trainee_alone: bool,
    /// A walk done in less time than looking takes: said of the walk, never counted by name.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub(super) quick: bool,
    /// What each rule says of the walk's figures.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) rules: Vec<RuleSaid>,
}

pub(super) fn read(of: &Reading<'_>, judged: &HoursLedger, page: usize) -> Result<History, ShopError> {
    let truth = of.ledger.store().truth();
    let most = i64::try_from(PAGE).unwrap_or(i64::MAX);
    let asked = page.max(1).saturating_sub(1).saturating_mul(PAGE);
    let mut found = of.ledger.unit_history(of.truck, i64::try_from(asked).unwrap_or(i64::MAX), most)?;
    let pages = Pages::of(usize::try_from(found.count).unwrap_or(0), PAGE, page);
    if pages.skipped(PAGE) != asked {
        let skip = i64::try_from(pages.skipped(PAGE)).unwrap_or(i64::MAX);
        found = of.ledger.unit_history(of.truck, skip, most)?;
    }
    let struck: BTreeSet<Uuid> = judged
        .rows()
        .iter()
        .filter(|row| row.part == Part::Reading && !row.verdict.counts())
        .map(|row| row.entry)
        .collect();
    let phone = |key: KeyId| of.yard.phone(of.ledger, key);
    let untold_ms = of.ledger.fleet().numbers.clock_moved_ms();
    let mut entries = Vec::new();
    for fact in found.facts {
        let Some(held) = truth.entry(fact.n)? else { continue };
        let entry = entry_of(&truth, fact.n)?.map(|(_, entry)| entry);
        let signer = held.row.actor.key();
        let brought_by = held.carrier.map(KeyId).filter(|carrier| *carrier != signer).map(phone);
        // Of what another phone carried nobody measured the clock.
        let brought = match held.carrier == Some(signer.0) {
            true => of.ledger.store().off_at(signer.0, held.received_ms)?,
            false => None,
        };
        let told = |off: &ClockOff| off.is_told(untold_ms);
        let clock_off = ClockOff::of(entry.as_ref().and_then(|entry| entry.clock_off_ms), brought, untold_ms)
            .filter(told)
            .or_else(|| ClockOff::by_coming(fact.at_ms, held.received_ms).filter(told));
        let reading_aside = fact.judged == Judged::Counts && is_reading(fact.id, &struck, fact.kind);
        let trainer = entry.as_ref().and_then(|entry| entry.trainer);
        entries.push(EntryRow {
            kind: key(&FactKind::from_code(fact.kind)),
            at: of.yard.stamp_ms(fact.at_ms),
            on: fact.truck.filter(|on| *on != of.truck).map(|on| of.ledger.fleet().door(on)),
            who: of.yard.name(of.ledger, fact.person),
            with: of.yard.name(of.ledger, trainer),
            signed_on: phone(signer),
            brought_by,
            came: of.yard.stamp_ms(held.received_ms),
            clock_off,
            source: entry.as_ref().map(|entry| entry.source),
            judged: if reading_aside { "reading".to_owned() } else { key(&fact.judged) },
            set: entry.as_ref().and_then(|entry| set_named(of, entry)),
            trainee_alone: entry.as_ref().is_some_and(|entry| signed_alone(of.ledger.fleet(), entry)),
            quick: entry.as_ref().is_some_and(|entry| quick(of, entry)),
            rules: entry.as_ref().map_or_else(Vec::new, |entry| rules(of, entry)),
            line: entry.map(|entry| Line::of(&entry, of.ledger.fleet())),
        });
    }
    let gone_to = found.gone_to.into_iter().map(|truck| of.ledger.fleet().door(truck)).collect();
    Ok(History { pages, entries, gone: found.gone, gone_to })
}

/// Whether an entry is a walk that was quick, by the rule by which the driver was told so before he signed.
fn quick(of: &Reading<'_>, entry: &Entry) -> bool {
    let Fact::PreTripSection(section) = &entry.fact else { return false };
    let truck = entry.unit.and_then(|truck| of.ledger.fleet().trucks.get(&truck));
    template(of.ledger)
        .is_ok_and(|template| was_quick(section, truck.map(|truck| &truck.features), &template))
}

/// What the rules say of an entry's figures: none of what is no walk.
fn rules(of: &Reading<'_>, entry: &Entry) -> Vec<RuleSaid> {
    let Fact::PreTripSection(section) = &entry.fact else { return Vec::new() };
    let features = of.ledger.fleet().trucks.get(&of.truck).map(|truck| &truck.features);
    let Some((features, template)) = features.zip(template(of.ledger).ok()) else { return Vec::new() };
    let numbers = &of.ledger.fleet().numbers;
    section.answers.iter().flat_map(|answer| walk_rules::said(&template, answer, features, numbers)).collect()
}

/// The set an entry says was fitted or taken off.
fn set_named(of: &Reading<'_>, entry: &Entry) -> Option<String> {
    let set = match &entry.fact {
        Fact::SetFitted(fitted) => fitted.set,
        Fact::SetRemoved(removed) => removed.set,
        _ => return None,
    };
    let serial = of.ledger.fleet().sets.get(&set).and_then(|set| set.serial.clone());
    Some(serial.unwrap_or_else(|| set.to_string()))
}

/// Whether an entry is nothing but a reading that the rule set aside.
fn is_reading(entry: EntryId, struck: &BTreeSet<Uuid>, kind: u16) -> bool {
    Some(kind) == FactKind::HourReading.code() && struck.contains(&entry.0)
}

pub(super) fn draw(words: &Words, history: &History, here: &str) -> Markup {
    let heads = ["head-when", "head-kind", "head-says", "head-who", "head-written-on", "head-counts"];
    let rows = history.entries.iter().map(|row| {
        let kind = words.kind(&row.kind);
        vec![
            said(words.at(row.at)),
            html! {
                @if row.judged == "counts" { (kind) } @else { s { (kind) } }
                @if let Some(on) = &row.on { " (" (words.with("recorded-on", &[("unit", Arg::Text(on))])) ")" }
            },
            html! {
                (says(words, row))
                @if !row.rules.is_empty() {
                    details {
                        summary { (words.t("rules-say")) }
                        @for rule in &row.rules {
                            p {
                                (words.item(&rule.item, rule.place.as_deref())) ", " (words.measure(&rule.figure))
                                ": " (rule_words::verdict(words, rule))
                            }
                        }
                        p class="fine" { (words.t("rules-only-shown")) }
                    }
                }
            },
            name(&who(words, row)),
            said(came(words, row)),
            said(match row.judged.as_str() {
                "counts" => words.t("aside-counts"),
                why => words.or_plain(&format!("aside-{why}"), why),
            }),
        ]
    });
    html! {
        p {
            (words.with("entries-count", &[(
                "count", Arg::Count(i64::try_from(history.pages.count).unwrap_or(i64::MAX)),
            )]))
        }
        @if history.gone > 0 {
            p class="fine" { (gone(words, history)) }
        }
        (Table::new("history-table", &words.t("part-history"), heads.map(|key| words.t(key))).rows(rows).draw())
        (history.pages.links(words, here, "history"))
    }
}

/// What an entry says, and what is marked of a walk.
fn says(words: &Words, row: &EntryRow) -> String {
    let line = row.line.as_ref().map_or_else(String::new, |line| told::said(words, line, row.set.as_deref()));
    let quick = row.quick.then(|| words.t("walk-quick"));
    let alone = row.trainee_alone.then(|| words.t("trainee-alone"));
    words.listed([Some(line), quick, alone].into_iter().flatten())
}

/// "12 entries about the air went with a set that stands on TH-05 now."
fn gone(words: &Words, history: &History) -> String {
    let to = words.listed(history.gone_to.iter().cloned());
    let to = if to.is_empty() { words.t("set-on-no-truck") } else { to };
    words.with("history-gone", &[("count", Arg::Count(history.gone)), ("to", Arg::Text(&to))])
}

fn who(words: &Words, row: &EntryRow) -> String {
    let who = words.who(row.who.as_deref());
    match &row.with {
        Some(with) => words.with("who-with", &[("who", Arg::Text(&who)), ("with", Arg::Text(with))]),
        None => who,
    }
}

/// "yard phone 1, came Tue 20 Oct 15:50 by yard phone 2", "brought in, unsigned".
fn came(words: &Words, row: &EntryRow) -> String {
    let source = match row.source {
        None | Some(Source::Phone | Source::Shop) => String::new(),
        Some(source) => format!("{}, ", words.or_plain(&format!("source-{}", key(&source)), "")),
    };
    let phone = words.signer(&row.signed_on);
    let came = words.at(row.came);
    let told = match &row.brought_by {
        Some(by) => {
            let by = words.signer(by);
            words.with(
                "came-carried",
                &[("phone", Arg::Text(&phone)), ("when", Arg::Text(&came)), ("by", Arg::Text(&by))],
            )
        }
        None => words.with("came-itself", &[("phone", Arg::Text(&phone)), ("when", Arg::Text(&came))]),
    };
    let clock = match row.clock_off {
        None => String::new(),
        Some(ClockOff::By(off)) => words.with("clock-off-by", &[("off", Arg::Text(&clock_off(off)))]),
        Some(ClockOff::AheadBy(off)) => words.with("clock-ahead-by", &[("off", Arg::Text(&clock_off(-off)))]),
        Some(ClockOff::Between(low, high)) => words.with(
            "clock-off-between",
            &[("low", Arg::Text(&clock_off(low))), ("high", Arg::Text(&clock_off(high)))],
        ),
    };
    format!("{source}{told}{clock}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_page_that_is_not_there_is_the_nearest_that_is() {
        assert_eq!(Pages::of(0, 50, 3), Pages { page: 1, pages: 1, count: 0 });
        assert_eq!(Pages::of(50, 50, 2), Pages { page: 1, pages: 1, count: 50 });
        assert_eq!(Pages::of(51, 50, 2), Pages { page: 2, pages: 2, count: 51 });
        assert_eq!(Pages::of(51, 50, 0).page, 1);
        assert_eq!(Pages::of(51, 50, usize::MAX).skipped(50), 50);
    }
}
