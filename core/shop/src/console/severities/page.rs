//! The page of what each finding locks.

use maud::{Markup, html};
use sumpbook_daybook::text::Arg;
use sumpbook_trade::checklist::Severity;

use super::{AgainOfThem, ItemOfThem, SeveritiesView, StopOfThem, WordOfThem};
use crate::console::visit::{Body, Telling};

pub(super) fn body(telling: &Telling, view: &SeveritiesView) -> Body {
    let known = telling.at(view.known_at);
    let title = telling.t("severities-title");
    let main = html! {
        div class="head" {
            h1 { (title) }
            p class="known" { (telling.with("known-at-short", &[("when", Arg::Text(&known))])) }
            ul class="ways" {
                li { a href="/due" { (telling.t("place-due")) } }
                li { a href="/numbers" { (telling.t("numbers-way")) } }
            }
        }
        p { (telling.t("severities-beside")) }
        @for stop in &view.stops { (stop_of(telling, stop)) }
    };
    Body { title, main }
}

fn stop_of(telling: &Telling, stop: &StopOfThem) -> Markup {
    let name = match &stop.stop {
        Some(stop) => telling.t(&format!("stop-{stop}")),
        None => telling.t("severities-before"),
    };
    let own = stop.items.iter().flat_map(|item| &item.words).filter(|word| word.is_own()).count();
    let own = i64::try_from(own).unwrap_or(i64::MAX);
    html! {
        details open[own > 0] {
            summary {
                (name)
                @if own > 0 { " " strong { (telling.with("severities-own-count", &[("count", Arg::Count(own))])) } }
            }
            @if telling.writes() {
                form method="post" action="/severities" class="sheet-form" {
                    (telling.token())
                    @for item in &stop.items { (item_of(telling, item)) }
                    @let why = format!("why-{}", stop.stop.as_deref().unwrap_or("before"));
                    p {
                        label for=(why) { (telling.t("severities-why")) } " "
                        input id=(why) name="why" size="40" autocomplete="off";
                    }
                    button { (telling.with("severities-set", &[("stop", Arg::Text(&name))])) }
                }
            } @else {
                @for item in &stop.items { (item_of(telling, item)) }
            }
        }
    }
}

fn item_of(telling: &Telling, item: &ItemOfThem) -> Markup {
    let own = telling.or_none(&format!("stands-on-{}", item.cites));
    let stands_on = own.unwrap_or_else(|| item.stands_on.clone());
    html! {
        fieldset {
            legend { (telling.item(&item.item, None)) }
            @for word in &item.words { (word_of(telling, item, word)) }
            p class="beside" { (telling.with("severities-stands-on", &[("text", Arg::Text(&stands_on))])) }
        }
    }
}

fn word_of(telling: &Telling, item: &ItemOfThem, word: &WordOfThem) -> Markup {
    let name = telling.or_plain(&format!("choice-{}", word.word), &word.word);
    let key = format!("{}:{}", item.item, word.word);
    html! {
        (choice(telling, &format!("s:{key}"), &name, item, (word.severity, word.usual)))
        @if let Some(AgainOfThem { days, severity, usual }) = &word.again {
            @let args = [("word", Arg::Text(&name)), ("days", Arg::Count(i64::from(*days)))];
            (choice(telling, &format!("a:{key}"), &telling.with("severities-again", &args), item, (*severity, *usual)))
        }
    }
}

fn choice(
    telling: &Telling,
    field: &str,
    name: &str,
    item: &ItemOfThem,
    (now, usual): (Severity, Severity),
) -> Markup {
    let said = |severity: Severity| telling.t(&format!("severity-{}", severity.key()));
    let id = field.replace(':', "-");
    let own = html! {
        @if now != usual {
            " " strong id=(format!("{id}-usual")) {
                (telling.with("severities-usual", &[("usual", Arg::Text(&said(usual)))]))
            }
        }
    };
    html! {
        p {
            @if telling.writes() {
                label for=(id) { (name) }
                " "
                select id=(id) name=(field) aria-describedby=[(now != usual).then(|| format!("{id}-usual"))] {
                    @for to in &item.choices {
                        option value=(to.key()) selected[*to == now] { (said(*to)) }
                    }
                }
            } @else {
                (name) ": " (said(now))
            }
            (own)
        }
    }
}

impl WordOfThem {
    /// Whether the shop has it otherwise than the checklist.
    fn is_own(&self) -> bool {
        self.severity != self.usual || self.again.as_ref().is_some_and(|again| again.severity != again.usual)
    }
}
