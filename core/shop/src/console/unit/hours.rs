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
use crate::console::chart::{Chart, Mark, Point, Scale, before_shown, days};
use crate::console::table::{Table, name, said};
use crate::console::words::Words;
use crate::sheet::{entry_of, key};

/// As many readings stand on one page.
const PAGE: usize = 40;
/// As many figures are drawn, the newest.
const CHARTED: usize = 120;

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
    /// The unit's other meters.
    pub(super) other_meters: Vec<OtherMeter>,
    /// Signed estimates of hours no meter counted, oldest first.
    pub(super) estimates: Vec<EstimateRow>,
    /// Of a unit without a meter: counted from its starts and stops.
    pub(super) counted: Option<CountedRow>,
    /// Hours a day at the pace of the last weeks, hundredths; none when the pace is unknown.
    pub(super) pace_hundredths: Option<i64>,
    /// Figures as they are drawn: when, how much, struck. Oldest first.
    #[serde(skip)]
    charted: Vec<(Stamp, Tenths, bool)>,
}

/// The engine's or the PTO's meter: it feeds no clock of the compressor.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct OtherMeter {
    /// Which: a key of the texts.
    pub(super) meter: String,
    /// As last read.
    pub(super) figure: Option<Tenths>,
    pub(super) at: Option<Stamp>,
    /// Hours through all its meters.
    pub(super) total: Option<Tenths>,
    /// Questions about its readings that are open.
    pub(super) questions: u32,
}

/// Hours somebody estimated and signed.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct EstimateRow {
    pub(super) at: Stamp,
    pub(super) low: Tenths,
    pub(super) likely: Tenths,
    pub(super) high: Tenths,
}

/// Hours counted from starts and stops, with their bounds.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct CountedRow {
    pub(super) low: Tenths,
    pub(super) high: Option<Tenths>,
    /// It was started and nothing is recorded since.
    pub(super) open_since: Option<Stamp>,
    /// Runs of which one end is missing.
    pub(super) unsure_runs: u32,
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
    for fact in of.ledger.unit_hour_facts(of.truck, of.yard.cut_ms)? {
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
    let mut charted: Vec<(Stamp, Tenths, bool)> =
        rows.iter().take(CHARTED).map(|row| (row.at, row.figure, row.struck)).collect();
    charted.reverse();
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
    let stamp = |at| of.yard.stamp(at);
    let other_meters = of.state.other_meters.iter().map(|meter| OtherMeter {
        meter: key(&meter.meter),
        figure: meter.last.as_ref().map(|last| last.figure),
        at: meter.last.as_ref().map(|last| stamp(last.at)),
        total: meter.total,
        questions: meter.questions,
    });
    let estimates = now.estimates.iter().map(|one| EstimateRow {
        at: stamp(one.at),
        low: one.low,
        likely: one.likely,
        high: one.high,
    });
    let high = of.state.hours_at(of.yard.cut());
    Ok(Hours {
        due,
        offset,
        higher_of_disputed: now.higher_of_disputed,
        pages,
        readings,
        other_meters: other_meters.collect(),
        estimates: estimates.collect(),
        counted: now.counted.as_ref().map(|counted| CountedRow {
            low: counted.low,
            high,
            open_since: counted.open_since.map(stamp),
            unsure_runs: counted.unsure_runs,
        }),
        pace_hundredths: of.state.pace_at(of.yard.cut()).map(|pace| (pace.per_day * 100.0).round() as i64),
        charted,
    })
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
            html! { @if row.struck { s { (words.meter(row.figure)) } } @else { (words.meter(row.figure)) } },
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
        @for said in beside(words, hours) { p { (said) } }
        @if hours.readings.is_empty() { p { (words.t("hours-never-read")) } }
        (chart(words, &hours.charted))
        (Table::new("hours-table", &words.t("part-hours"), heads.map(|key| words.t(key))).rows(rows).draw())
        (hours.pages.links(words, here, "hours"))
        @if !hours.other_meters.is_empty() {
            h3 { (words.t("other-meters")) }
            p { (words.t("other-meters-apart")) }
            ul { @for meter in &hours.other_meters { li { (other_meter(words, meter)) } } }
        }
    }
}

/// The pace, and hours that no meter counted.
fn beside(words: &Words, hours: &Hours) -> Vec<String> {
    let pace = match hours.pace_hundredths {
        Some(pace) => {
            let pace = format!("{:.1}", pace as f64 / 100.0);
            words.with("pace-a-day", &[("hours", Arg::Text(&pace))])
        }
        None => words.t("pace-unknown"),
    };
    let mut said = vec![pace];
    if let Some(counted) = &hours.counted {
        let (low, high) =
            (words.hours(counted.low), counted.high.map_or_else(String::new, |h| words.hours(h)));
        let args = [("low", Arg::Text(&low)), ("high", Arg::Text(&high))];
        let head = words.t("hours-counted");
        // With both ends of every run there is nothing between.
        said.push(match low == high {
            true => format!("{head}: {low} h"),
            false => format!("{head}; {}", words.with("hours-counted-between", &args)),
        });
        if counted.unsure_runs > 0 {
            said.push(words.with("hours-unsure-runs", &[("count", Arg::Count(counted.unsure_runs.into()))]));
        }
        if let Some(since) = counted.open_since {
            said.push(words.with("hours-still-runs", &[("when", Arg::Text(&words.at(since)))]));
        }
    }
    for one in &hours.estimates {
        let (low, likely, high) = (words.hours(one.low), words.hours(one.likely), words.hours(one.high));
        let args = [("low", Arg::Text(&low)), ("likely", Arg::Text(&likely)), ("high", Arg::Text(&high))];
        said.push(format!("{}: {}", words.short_day_at(one.at), words.with("hours-estimated", &args)));
    }
    said
}

/// "engine hours 4,410.2, Mon 19 Oct 06:32"
fn other_meter(words: &Words, meter: &OtherMeter) -> String {
    let name = words.or_plain(&format!("meter-{}", meter.meter), &meter.meter);
    let read = meter.figure.map(|figure| format!("{name} {}", words.meter(figure)));
    let at = meter.at.map(|at| words.short_day_at(at));
    let total = meter.total.filter(|total| Some(*total) != meter.figure);
    let total = total.map(|total| words.with("meter-total", &[("hours", Arg::Text(&words.hours(total)))]));
    let open = (meter.questions > 0)
        .then(|| words.with("open-to-settle", &[("count", Arg::Count(meter.questions.into()))]));
    words.listed([read.or(Some(name)), at, total, open].into_iter().flatten())
}

/// Figures over the days: dots that count, struck ones a ring with a stroke through. A struck one far off the
/// others stands at the edge, with its figure beside it.
fn chart(words: &Words, charted: &[(Stamp, Tenths, bool)]) -> Markup {
    let along: Vec<f64> = charted.iter().map(|(at, ..)| days(at.moment(), words.zone)).collect();
    let charted = charted.get(before_shown(&along)..).unwrap_or_default();
    let counts: Vec<f64> =
        charted.iter().filter(|(.., struck)| !struck).map(|(_, f, _)| f.as_hours()).collect();
    if counts.len() < 2 {
        return html! {};
    }
    let (low, high) =
        (counts.iter().copied().fold(f64::MAX, f64::min), counts.iter().copied().fold(f64::MIN, f64::max));
    let room = (high - low).max(1.0) * 0.1;
    let (low, high) = (low - room, high + room);
    let mut points = Vec::new();
    for (at, figure, struck) in charted {
        let (x, y) = (days(at.moment(), words.zone), figure.as_hours());
        let label = (*struck).then(|| words.hours(*figure));
        let mark = if *struck { Mark::Struck } else { Mark::Figure };
        points.push(Point { mark, x, y: y.clamp(low, high), between: None, label });
    }
    let along: Vec<f64> = points.iter().map(|point| point.x).collect();
    let line = points.iter().filter(|point| point.mark == Mark::Figure).map(|point| (point.x, point.y));
    let line = line.collect();
    let struck = points.len().saturating_sub(counts.len());
    let count = |n: usize| Arg::Count(i64::try_from(n).unwrap_or(i64::MAX));
    let newest = counts.last().map_or_else(String::new, |h| words.hours(Tenths((h * 10.0).round() as i64)));
    let chart = Chart {
        says: words.with(
            "hours-say",
            &[("count", count(counts.len())), ("struck", count(struck)), ("newest", Arg::Text(&newest))],
        ),
        y_name: words.t("hours-up"),
        x: Scale::of_days(&along, 6, |day| words.tick_day(day)),
        y: Scale::of(&[low, high], 4, |at| words.hours(Tenths((at * 10.0).round() as i64))),
        line,
        points,
        limits: Vec::new(),
        posts: Vec::new(),
    };
    chart.draw(words)
}

/// What became of a figure, in words; for one above the ceiling, what the meter could show.
fn became(words: &Words, row: &ReadingRow) -> String {
    let plain = row.verdict.as_str();
    let mut said = match words.or_none(&format!("reading-{plain}")) {
        Some(said) => said,
        None => words.or_plain(&format!("aside-{plain}"), plain),
    };
    if let (true, Some(most)) = (plain == "above-ceiling", row.ceiling) {
        let most = words.meter(most);
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
