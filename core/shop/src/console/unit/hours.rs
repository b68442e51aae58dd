//! The readings of one unit's meter: every figure, struck ones too, and why they are struck.

use std::collections::BTreeMap;

use maud::{Markup, html};
use serde::Serialize;
use sumpbook_daybook::judgement::Judged;
use sumpbook_daybook::text::Arg;
use sumpbook_trade::hours::{AsideWhy, HoursLedger, JudgedReading, Part, Verdict};
use sumpbook_trade::record::Source;
use sumpbook_trade::{Entry, EntryId, Fact, FactKind, Stamp, Tenths};

use super::history::Pages;
use super::view::Reading;
use crate::ShopError;
use crate::console::table::{Table, name, said};
use crate::console::words::Words;
use crate::sheet::{entry_of, key};

/// As many readings stand on one page.
const PAGE: usize = 40;

/// Readings of the meter.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct Hours {
    /// Hours of the unit through all its meters, as the due list uses them.
    pub(super) due: Option<Tenths>,
    /// Hours of earlier meters in them.
    pub(super) offset: Tenths,
    /// The higher of figures in dispute is used.
    pub(super) higher_of_disputed: bool,
    /// Which page of them.
    #[serde(flatten)]
    pub(super) pages: Pages,
    /// The readings, newest first.
    pub(super) readings: Vec<ReadingRow>,
}

/// One figure somebody read.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct ReadingRow {
    /// Its entry.
    pub(super) entry: EntryId,
    /// When.
    pub(super) at: Stamp,
    /// What the meter showed.
    pub(super) figure: Tenths,
    /// Who; none when not said.
    pub(super) who: Option<String>,
    /// What carried it: a key of the texts.
    pub(super) kind: Option<String>,
    /// How it came to be written down.
    pub(super) source: Option<Source>,
    /// A reading, or the last or first figure of a meter that was exchanged.
    pub(super) part: &'static str,
    /// It takes no part in the count.
    pub(super) struck: bool,
    /// What became of it: the rule's word.
    pub(super) verdict: String,
    /// The most the meter could show then.
    pub(super) ceiling: Option<Tenths>,
    /// In somebody's words, why it was taken back.
    pub(super) why: Option<String>,
    /// A question about it is open.
    pub(super) in_question: bool,
}

pub(super) fn read(of: &Reading<'_>, judged: &HoursLedger, page: usize) -> Result<Hours, ShopError> {
    let truth = of.ledger.store().truth();
    let mut rows: Vec<ReadingRow> = judged.rows().iter().map(|row| told(of, row)).collect();
    let mut numbers = BTreeMap::new();
    for fact in truth.hour_facts(of.truck, of.yard.cut_ms)? {
        numbers.insert(fact.id, fact.n);
        if let (true, Some(figure)) = (fact.judged != Judged::Counts, fact.hours) {
            rows.push(ReadingRow {
                entry: fact.id,
                at: of.yard.stamp_ms(fact.at_ms),
                figure,
                who: None,
                kind: None,
                source: None,
                part: "reading",
                struck: true,
                verdict: key(&fact.judged),
                ceiling: None,
                why: taken_back(of, fact.id)?,
                in_question: false,
            });
        }
    }
    rows.sort_by_key(|row| std::cmp::Reverse((row.at, row.entry)));
    let pages = Pages::of(rows.len(), PAGE, page);
    let mut readings: Vec<ReadingRow> = rows.into_iter().skip(pages.skipped(PAGE)).take(PAGE).collect();
    // Who read it stands in the entry: only those shown are opened.
    for row in &mut readings {
        let entry = match numbers.get(&row.entry) {
            Some(n) => entry_of(&truth, *n)?.map(|(_, entry)| entry),
            None => by_id(of, row.entry)?,
        };
        if let Some(entry) = entry {
            row.who = of.yard.name(of.ledger, entry.person);
            row.kind = Some(key(&entry.fact.kind()));
            row.source = Some(entry.source);
        }
    }
    let now = &of.state.hours;
    let (due, offset) = (now.due, now.offset);
    Ok(Hours { due, offset, higher_of_disputed: now.higher_of_disputed, pages, readings })
}

fn by_id(of: &Reading<'_>, id: EntryId) -> Result<Option<Entry>, ShopError> {
    let held = of.ledger.store().truth().by_id(id)?.into_iter().next();
    Ok(held.and_then(|held| Entry::from_payload(&held.row.payload).ok()))
}

fn told(of: &Reading<'_>, row: &JudgedReading) -> ReadingRow {
    ReadingRow {
        entry: EntryId(row.entry),
        at: of.yard.stamp(row.at),
        figure: row.figure,
        who: None,
        kind: None,
        source: None,
        part: match row.part {
            Part::Reading => "reading",
            Part::OldEnd => "old-end",
            Part::NewStart => "new-start",
        },
        struck: !row.verdict.counts(),
        verdict: verdict(row.verdict).to_owned(),
        ceiling: row.ceiling,
        why: None,
        in_question: row.in_question,
    }
}

fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Accepted => "accepted",
        Verdict::AcceptedUnlike => "unlike-this-unit",
        Verdict::OutvotedByLater => "outvoted",
        Verdict::Aside(AsideWhy::AboveCeiling) => "above-ceiling",
        Verdict::Aside(AsideWhy::Backwards) => "backwards",
        Verdict::Aside(AsideWhy::SlippedBack) => "slipped-back",
        Verdict::Aside(AsideWhy::SameMoment) => "same-moment",
        Verdict::Aside(AsideWhy::DoesNotCount) => "does-not-count",
        Verdict::Aside(AsideWhy::Displaced) => "displaced",
    }
}

/// Why somebody took an entry back, in their words.
fn taken_back(of: &Reading<'_>, target: EntryId) -> Result<Option<String>, ShopError> {
    let truth = of.ledger.store().truth();
    for (by, kind, _) in truth.decided(target)? {
        if Some(kind) == FactKind::Correction.code()
            && let Some((_, entry)) = entry_of(&truth, by)?
            && let Fact::Correction(correction) = entry.fact
        {
            return Ok(Some(correction.why));
        }
    }
    Ok(None)
}

pub(super) fn draw(words: &Words, hours: &Hours, here: &str) -> Markup {
    let heads = ["head-when", "head-figure", "head-became", "head-who", "head-from"];
    let rows = hours.readings.iter().map(|row| {
        vec![
            said(words.at(row.at)),
            html! { @if row.struck { s { (words.hours(row.figure)) } } @else { (words.hours(row.figure)) } },
            said(became(words, row)),
            name(&words.who(row.who.as_deref())),
            said(from(words, row)),
        ]
    });
    html! {
        @if let Some(due) = hours.due {
            p {
                (words.with("hours-for-due", &[("hours", Arg::Text(&words.hours(due)))]))
                @if hours.offset != Tenths::ZERO {
                    " " (words.with("hours-offset", &[("hours", Arg::Text(&words.hours(hours.offset)))]))
                }
                @if hours.higher_of_disputed { " (" (words.t("due-higher-of-disputed")) ")" }
            }
        }
        @if hours.readings.is_empty() { p { (words.t("hours-never-read")) } }
        (Table::new("hours-table", &words.t("part-hours"), heads.map(|key| words.t(key))).rows(rows).draw())
        (hours.pages.links(words, here, "hours"))
    }
}

/// What became of a figure, in words; for one above the ceiling, what the meter could show.
fn became(words: &Words, row: &ReadingRow) -> String {
    let plain = row.verdict.as_str();
    let mut said = match words.or_none(&format!("reading-{plain}")) {
        Some(said) => said,
        None => words.or_plain(&format!("aside-{plain}"), plain),
    };
    if let (true, Some(most)) = (plain == "above-ceiling", row.ceiling) {
        let most = words.hours(most);
        said = format!("{said}: {}", words.with("at-most", &[("figure", Arg::Text(&most))]));
    }
    if let Some(why) = &row.why {
        said = format!("{said}: {why}");
    }
    if row.in_question {
        said = format!("{said} ({})", words.t("hours-disputed"));
    }
    said
}

fn from(words: &Words, row: &ReadingRow) -> String {
    let kind = row.kind.as_deref().map_or_else(|| words.t("not-said"), |kind| words.kind(kind));
    let part = match row.part {
        "reading" => String::new(),
        part => format!(", {}", words.t(&format!("reading-part-{part}"))),
    };
    match row.source {
        None | Some(Source::Phone) => format!("{kind}{part}"),
        Some(source) => format!("{kind}{part}, {}", words.or_plain(&format!("source-{}", key(&source)), "")),
    }
}
