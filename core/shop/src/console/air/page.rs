//! The calculator drawn: the answer first, then the form that holds what was asked.

use maud::{Markup, html};
use sumpbook_daybook::screen::{
    AIR_TOOLS, AirAnswer, AirFieldRow, AirFigure, AirForTheJob, AirPart, AirWarningRow, ShortRuns,
};
use sumpbook_daybook::text::Arg;

use super::AirView;
use super::asked::name;
use crate::console::language::Measures;
use crate::console::visit::{Body, Telling};
use crate::console::words::Words;

pub(super) fn body(telling: &Telling, view: &AirView) -> Body {
    let words: &Words = telling;
    let job = &view.job;
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
        @for row in job.fields.iter().filter(|row| row.wrong) {
            p class="strip" {
                (words.with("air-bad", &[
                    ("field", Arg::Text(&words.t(&row.key))),
                    ("said", Arg::Text(row.said.as_deref().unwrap_or_default())),
                ]))
            }
        }
        section id="answer" aria-labelledby="answer-head" {
            h2 id="answer-head" { (words.t("air-answer")) }
            @match &job.answer {
                Some(answer) => (answered(words, answer)),
                None => p { (words.t("air-no-answer")) },
            }
            @if let Some(runs) = &job.short_runs { p { (short_runs(words, runs)) } }
        }
        section id="ask" aria-labelledby="ask-head" {
            h2 id="ask-head" { (words.t("air-ask")) }
            (form(words, view))
        }
    };
    Body { title: words.t("place-air"), main }
}

/// A text about a figure: "about 155 cfm".
fn about(words: &Words, key: &str, figure: Option<&AirFigure>) -> String {
    let figure = figure.map(|figure| format!("{} {}", figure.value, figure.unit));
    words.with(key, &[("figure", Arg::Text(figure.as_deref().unwrap_or_default()))])
}

fn answered(words: &Words, answer: &AirAnswer) -> Markup {
    html! {
        dl class="facts" {
            @for row in &answer.rows {
                dt { (words.t(&row.key)) }
                dd { (about(words, &row.told, row.figure.as_ref())) }
            }
        }
        @for key in &answer.stood_in { p { (words.t(key)) } }
        @if answer.warnings.is_empty() { p { (words.t("air-no-warning")) } }
        @for warning in &answer.warnings { p class="strip" { (warned(words, warning)) } }
    }
}

/// "The tools take 5 cfm more than is delivered here: a smaller tool, or one at a time. (Source ..)"
fn warned(words: &Words, warning: &AirWarningRow) -> Markup {
    let said = about(words, &warning.key, warning.figure.as_ref());
    // A source that has words of its own is told in the reader's language.
    let own = format!("{}-source", warning.key);
    let source = words.or_none(&own).or_else(|| warning.cites.clone()).unwrap_or_else(|| words.t(&own));
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
    let job = &view.job;
    let measures = if job.metric { Measures::Metric } else { Measures::Us };
    html! {
        form class="sheet-form air" method="get" action="/air" {
            input type="hidden" name="measures" value=(measures.tag());
            fieldset {
                legend { (words.t("air-where")) }
                label for="air-unit" { (words.t("head-unit")) }
                select id="air-unit" name="unit" {
                    option value="" { (words.t("air-any-unit")) }
                    @for door in &view.units {
                        option value=(door) selected[job.door.as_ref() == Some(door)] { (door) }
                    }
                }
                (figures(words, job, AirPart::Place, 0))
            }
            @for tool in 1..=AIR_TOOLS { (tool_form(words, view, tool)) }
            fieldset {
                legend { (words.t("air-hose")) }
                (figures(words, job, AirPart::Hose, 0))
                label for="air-cut-off" { (words.t("air-cut-off")) }
                select id="air-cut-off" name="cut-off" {
                    option value="" { (words.t("not-said")) }
                    option value="yes" selected[job.cut_off == Some(true)] { (words.t("air-yes")) }
                    option value="no" selected[job.cut_off == Some(false)] { (words.t("air-no")) }
                }
            }
            fieldset {
                legend { (words.t("air-cleaning")) }
                label class="show" {
                    input type="checkbox" name="blowing" value="yes" checked[job.blowing]; (words.t("air-blowing"))
                }
                (figures(words, job, AirPart::Cleaning, 0))
                label class="show" {
                    input type="checkbox" name="guarded" value="yes" checked[job.guarded]; (words.t("air-guarded"))
                }
            }
            button class="main" { (words.t("air-work-out")) }
        }
    }
}

fn tool_form(words: &Words, view: &AirView, tool: u8) -> Markup {
    let named = view.tool_names.get(usize::from(tool).saturating_sub(1)).map_or("", String::as_str);
    let begun = !named.is_empty() || view.job.fields.iter().any(|row| row.tool == tool && row.said.is_some());
    let head = words.with("air-tool", &[("n", Arg::Count(tool.into()))]);
    let inside = html! {
        fieldset {
            legend { (head) }
            (input(words, &format!("tool-{tool}"), "air-tool-name", "", named))
            (figures(words, &view.job, AirPart::Tool, tool))
        }
    };
    // One tool is the rule; more are a press away.
    if tool == 1 || begun {
        inside
    } else {
        html! { details { summary { (head) } (inside) } }
    }
}

/// The figures of one part of the form.
fn figures(words: &Words, job: &AirForTheJob, part: AirPart, tool: u8) -> Markup {
    html! {
        @for row in job.fields.iter().filter(|row| row.part == part && row.tool == tool) {
            (figure(words, row))
        }
    }
}

fn figure(words: &Words, row: &AirFieldRow) -> Markup {
    // What was left out is to be written again.
    let said = row.said.as_deref().filter(|_| !row.wrong).unwrap_or_default();
    html! {
        (input(words, &name(row.field, row.tool), &row.key, &row.unit, said))
        @if let (Some(own), None) = (&row.own, &row.said) {
            p class="fine" {
                (words.with("air-own-delivery", &[("figure", Arg::Text(&format!("{own} {}", row.unit)))]))
            }
        }
    }
}

fn input(words: &Words, name: &str, key: &str, unit: &str, value: &str) -> Markup {
    let id = format!("air-{name}");
    html! {
        label for=(id) { (words.t(key)) @if !unit.is_empty() { ", " (unit) } }
        input id=(id) name=(name) size="12" autocomplete="off" value=(value);
    }
}
