//! The calculator drawn: the answer first, then the form that holds what was asked.

use maud::{Markup, html};
use sumpbook_daybook::text::Arg;

use super::AirView;
use super::answer::{Answered, Warning};
use super::asked::{Asked, TOOLS};
use super::runs::ShortRuns;
use crate::console::visit::{Body, Telling};
use crate::console::words::Words;

/// What a figure is given in: US, metric.
type Unit = (&'static str, &'static str);

const FLOW: Unit = ("cfm", "m³/min");
const PRESSURE: Unit = ("psi", "kPa");
const HEIGHT: Unit = ("ft", "m");
const WARMTH: Unit = ("°F", "°C");
const BORE: Unit = ("in", "mm");

impl Asked {
    fn unit(&self, (us, metric): Unit) -> &'static str {
        if self.is_metric() { metric } else { us }
    }
}

pub(super) fn body(telling: &Telling, view: &AirView) -> Body {
    let words: &Words = telling;
    let main = html! {
        div class="head" {
            h1 { (words.t("place-air")) }
            p class="known" { (words.t("air-says-what")) }
        }
        p { (words.t("caution-opening")) }
        ul {
            li { (words.t("caution-not-breathing")) }
            li { (words.t("caution-blow-clean")) }
        }
        @for bad in &view.asked.bad {
            p class="strip" {
                (words.with("air-bad", &[
                    ("field", Arg::Text(&words.t(bad.field))), ("said", Arg::Text(&bad.said)),
                ]))
            }
        }
        section id="answer" aria-labelledby="answer-head" {
            h2 id="answer-head" { (words.t("air-answer")) }
            @match &view.answer {
                Some(answer) => (answered(words, &view.asked, answer)),
                None => p { (words.t("air-no-answer")) },
            }
            @if let Some(runs) = &view.short_runs { p { (short_runs(words, runs)) } }
        }
        section id="ask" aria-labelledby="ask-head" {
            h2 id="ask-head" { (words.t("air-ask")) }
            (form(words, view))
        }
    };
    Body { title: words.t("place-air"), main }
}

fn number(figure: f64) -> String {
    figure.to_string()
}

fn answered(words: &Words, asked: &Asked, answer: &Answered) -> Markup {
    let with = |figure: f64, unit: Unit| format!("{} {}", number(figure), asked.unit(unit));
    let (key, left) = match answer.left_over < 0.0 {
        true => ("air-missing", -answer.left_over),
        false => ("air-left-over", answer.left_over),
    };
    let about = |said: String| words.with("air-about", &[("figure", Arg::Text(&said))]);
    let at_tool =
        answer.at_tool.map_or_else(|| words.t("air-at-tool-unknown"), |gauge| about(with(gauge, PRESSURE)));
    let mut rows = vec![
        ("air-delivered", about(with(answer.delivered, FLOW))),
        ("air-taken", with(answer.taken, FLOW)),
        (key, about(with(left, FLOW))),
        ("air-at-tool", at_tool),
    ];
    match answer.dew_point.zip(answer.over_by) {
        Some((dew, over)) => {
            rows.push(("air-dew-point", about(with(dew, WARMTH))));
            let by = with(over.abs(), WARMTH);
            let key = if over < 0.0 { "air-oil-under" } else { "air-oil-over" };
            rows.push(("air-oil-is", words.with(key, &[("by", Arg::Text(&by))])));
        }
        None => rows.push(("air-dew-point", words.t("air-dew-point-unknown"))),
    }
    html! {
        dl class="facts" {
            @for (head, value) in &rows { dt { (words.t(head)) } dd { (value) } }
        }
        @if answer.at_sea_level { p { (words.t("air-at-sea-level")) } }
        @if answer.standard_intake { p { (words.t("air-standard-intake")) } }
        @if answer.warnings.is_empty() { p { (words.t("air-no-warning")) } }
        @for warning in &answer.warnings { p class="strip" { (warned(words, asked, warning)) } }
    }
}

/// "The tools take 5 cfm more than is delivered here: a smaller tool, or one at a time. (Source ..)"
fn warned(words: &Words, asked: &Asked, warning: &Warning) -> Markup {
    let unit = match warning.what {
        "air-warn-too-little" => FLOW,
        "air-warn-cut-off" => BORE,
        "air-warn-run-warm" => WARMTH,
        _ => PRESSURE,
    };
    let figure = warning.figure.map(|figure| format!("{} {}", number(figure), asked.unit(unit)));
    let said = words.with(warning.what, &[("figure", Arg::Text(figure.as_deref().unwrap_or_default()))]);
    let source = warning.cites.clone().unwrap_or_else(|| words.t(&format!("{}-source", warning.what)));
    html! { (said) " " span class="fine" { (words.with("air-source", &[("source", Arg::Text(&source))])) } }
}

fn short_runs(words: &Words, runs: &ShortRuns) -> String {
    let count = |n: u32| Arg::Count(n.into());
    let said = words.with(
        "air-short-runs",
        &[("runs", count(runs.runs)), ("short", count(runs.short)), ("percent", count(runs.percent))],
    );
    if runs.run_it_warm { format!("{said} {}", words.t("air-run-it-warm")) } else { said }
}

fn form(words: &Words, view: &AirView) -> Markup {
    let asked = &view.asked;
    let field = |name: &str, key: &str, unit: Option<Unit>, value: Option<f64>| {
        let value = value.map(number);
        field(words, name, key, unit.map(|unit| asked.unit(unit)), value.as_deref())
    };
    let count = |n: usize| (n > 0).then_some(n as f64);
    html! {
        form class="sheet-form air" method="get" action="/air" {
            input type="hidden" name="measures" value=(asked.measures);
            fieldset {
                legend { (words.t("air-where")) }
                label for="air-unit" { (words.t("head-unit")) }
                select id="air-unit" name="unit" {
                    option value="" { (words.t("air-any-unit")) }
                    @for door in &view.units {
                        option value=(door) selected[asked.unit.as_ref() == Some(door)] { (door) }
                    }
                }
                (field("delivery", "air-delivery", Some(FLOW), asked.delivery.filter(|_| !asked.delivery_of_unit)))
                @if let (true, Some(own)) = (asked.delivery_of_unit, asked.delivery) {
                    p class="fine" {
                        (words.with("air-own-delivery", &[
                            ("figure", Arg::Text(&format!("{} {}", number(own), asked.unit(FLOW)))),
                        ]))
                    }
                }
                (field("holds", "air-holds", Some(PRESSURE), asked.holds))
                (field("altitude", "air-altitude", Some(HEIGHT), asked.altitude))
                (field("intake", "air-intake", Some(WARMTH), asked.intake))
                (field("humidity", "air-humidity", Some(("%", "%")), asked.humidity))
                (field("oil", "air-oil", Some(WARMTH), asked.oil))
            }
            @for n in 0..TOOLS { (tool(words, asked, n)) }
            fieldset {
                legend { (words.t("air-hose")) }
                (field("bore", "air-bore", Some(BORE), asked.bore))
                (field("length", "air-length", Some(HEIGHT), asked.length))
                (field("couplings", "air-couplings", None, count(asked.couplings)))
                (field("quick", "air-quick", None, count(asked.quick_couplings)))
                (field("elbows", "air-elbows", None, count(asked.elbows)))
                (field("valves", "air-valves", None, count(asked.valves)))
                (field("oilers", "air-oilers", None, count(asked.oilers)))
                label for="air-cut-off" { (words.t("air-cut-off")) }
                select id="air-cut-off" name="cut-off" {
                    option value="" { (words.t("not-said")) }
                    option value="yes" selected[asked.cut_off == Some(true)] { (words.t("air-yes")) }
                    option value="no" selected[asked.cut_off == Some(false)] { (words.t("air-no")) }
                }
            }
            fieldset {
                legend { (words.t("air-cleaning")) }
                label class="show" {
                    input type="checkbox" name="blowing" value="yes" checked[asked.blowing]; (words.t("air-blowing"))
                }
                (field("nozzle", "air-nozzle", Some(PRESSURE), asked.nozzle))
                label class="show" {
                    input type="checkbox" name="guarded" value="yes" checked[asked.guarded]; (words.t("air-guarded"))
                }
            }
            button class="main" { (words.t("air-work-out")) }
        }
    }
}

fn tool(words: &Words, asked: &Asked, n: usize) -> Markup {
    let tool = asked.tools.get(n);
    let place = n.saturating_add(1);
    let of = |name: &str| format!("{name}-{place}");
    let value = |pick: fn(&super::asked::ToolAsked) -> Option<f64>| tool.and_then(pick).map(number);
    let row = |name: &str, key: &str, unit: Option<Unit>, value: Option<String>| {
        field(words, &of(name), key, unit.map(|unit| asked.unit(unit)), value.as_deref())
    };
    let inside = html! {
        fieldset {
            legend { (words.with("air-tool", &[("n", Arg::Count(place as i64))])) }
            (field(words, &of("tool"), "air-tool-name", None, tool.map(|tool| tool.name.as_str())))
            (row("takes", "air-takes", Some(FLOW), value(|tool| tool.takes)))
            (row("at", "air-at", Some(PRESSURE), value(|tool| tool.at)))
            (row("count", "air-count", None, value(|tool| tool.count)))
            (row("share", "air-share", Some(("%", "%")), value(|tool| tool.share)))
        }
    };
    // One tool is the rule; more are a press away.
    if n == 0 || tool.is_some() {
        return inside;
    }
    html! {
        details { summary { (words.with("air-tool", &[("n", Arg::Count(place as i64))])) } (inside) }
    }
}

fn field(words: &Words, name: &str, key: &str, unit: Option<&str>, value: Option<&str>) -> Markup {
    let id = format!("air-{name}");
    html! {
        label for=(id) { (words.t(key)) @if let Some(unit) = unit { ", " (unit) } }
        input id=(id) name=(name) size="12" autocomplete="off" value=(value.unwrap_or_default());
    }
}
