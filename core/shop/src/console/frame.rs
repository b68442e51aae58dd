//! What stands around every page: the pages by name, the find box, language and units, the way out.

use maud::{DOCTYPE, Markup, PreEscaped, html};

use super::assets::href;
use super::broken;
use super::language::{Choice, Language, Measures, escaped};
use super::place::Place;
use super::visit::{Body, Telling};
use super::{mark, words::Words};

/// A whole page for someone who is in.
pub(super) fn page(telling: &Telling, body: &Body) -> Markup {
    let choice = telling.choice;
    breaking(&html! {
        (DOCTYPE)
        html lang=(choice.language.tag()) {
            (head(&body.title, &telling.around.fleet))
            body {
                a class="skip" href="#main" { (telling.t("skip")) }
                (mark::patterns())
                header class="top" {
                    div class="brand" {
                        a href="/" { "Sumpbook" }
                        span class="fleet" { (telling.around.fleet) }
                    }
                    details class="pages" {
                        summary { (telling.t("pages")) }
                        nav aria-label=(telling.t("pages")) { (places(telling)) }
                    }
                    nav class="places" aria-label=(telling.t("pages")) { (places(telling)) }
                    (find(telling))
                }
                @if telling.around.demo { (look_here(telling)) }
                main id="main" tabindex="-1" {
                    (body.main)
                }
                footer class="foot" {
                    (choices(choice, &telling.back))
                    form class="out" method="post" action="/sign-out" {
                        (telling.token())
                        span { (telling.with("signed-in-as", &[("name", telling.name.as_str().into())])) " " }
                        button { (telling.t("sign-out")) }
                    }
                }
            }
        }
    })
}

/// A page for someone who is not in, or for whom there is no page.
pub(super) fn bare(choice: Choice, title: &str, back: &str, main: &Markup) -> Markup {
    breaking(&html! {
        (DOCTYPE)
        html lang=(choice.language.tag()) {
            (head(&choice.language.say(title, &[]), "Sumpbook"))
            body class="bare" {
                header class="top" { div class="brand" { a href="/" { "Sumpbook" } } }
                main id="main" { (main) }
                footer class="foot" { (choices(choice, back)) }
            }
        }
    })
}

/// What is typed on a phone may be one word without end: no page grows wider than its window by it.
fn breaking(page: &Markup) -> Markup {
    PreEscaped(broken::long_words(&page.0))
}

/// The page on which the form of such an address stands: of a unit and of a day it is its own.
pub(super) fn page_of_form(path: &str) -> Option<String> {
    let mut parts = path.split('/').filter(|part| !part.is_empty());
    let first = parts.next().filter(|first| *first != "sign-out")?;
    let of = parts.next().filter(|_| matches!(first, "units" | "day"));
    Some(of.map_or_else(|| format!("/{first}"), |of| format!("/{first}/{of}")))
}

/// A sentence in place of a page, with the way back to the form it answers, and a way on: an address and the text that
/// names it.
pub(super) fn sentence(choice: Choice, said: &str, form: Option<&str>, way: Option<(&str, &str)>) -> Markup {
    html! {
        h1 { (choice.language.say("refused-title", &[])) }
        p class="strip" { (said) }
        @if let Some(form) = form {
            p {
                a href=(form) { (choice.language.say("back-to-form", &[])) } ". "
                (choice.language.say("back-keeps", &[]))
            }
        }
        @if let Some((way, name)) = way { p { a href=(way) { (choice.language.say(name, &[])) } } }
        p { a href="/" { (choice.language.say("go-to-day-sheet", &[])) } }
    }
}

fn head(title: &str, of: &str) -> Markup {
    html! {
        head {
            meta charset="utf-8";
            meta name="viewport" content="width=device-width, initial-scale=1";
            meta name="color-scheme" content="light dark";
            title { (title) " · " (of) }
            link rel="icon" type="image/svg+xml" href=(href("mark.svg"));
            link rel="stylesheet" href=(href("console.css"));
            link rel="stylesheet" href=(href("chart.css"));
            link rel="stylesheet" media="print" href=(href("print.css"));
            script defer src=(href("console.js")) {}
        }
    }
}

fn places(telling: &Telling) -> Markup {
    html! {
        ul {
            @for place in Place::ALL {
                li {
                    a href=(place.path()) aria-current=[(telling.place == Some(place)).then_some("page")] {
                        (telling.t(place.key()))
                        @if place == Place::Aside && telling.around.aside > 0 { " " (telling.around.aside) }
                    }
                }
            }
        }
    }
}

/// What is worth a first look in the invented fleet: two answers about one lamp, a struck figure, two clocks.
fn look_here(words: &Words) -> Markup {
    let looks = [
        ("/day/2026-10-20?view=evening#defects", "demo-answers"),
        ("/units/TH-03#hours", "demo-struck"),
        ("/units/TH-01#due", "demo-ruler"),
    ];
    html! {
        aside class="strip demo" aria-label=(words.t("demo-label")) {
            (words.t("demo-strip")) " "
            @for (place, (to, key)) in looks.into_iter().enumerate() {
                @if place > 0 { ", " }
                a href=(to) { (words.t(key)) }
            }
        }
    }
}

fn find(words: &Words) -> Markup {
    html! {
        form class="find" role="search" aria-label=(words.t("find")) method="get" action="/find" {
            label for="find" { (words.t("find")) }
            input id="find" name="unit" type="search" size="8" autocomplete="off" accesskey="f";
            button { (words.t("find-go")) }
        }
    }
}

/// Language and units, a link each: they work before anybody is in and without a script.
fn choices(choice: Choice, back: &str) -> Markup {
    let to = |name: &str, value: &str| format!("/words?{name}={value}&back={}", escaped(back));
    let languages = [(Language::En, "English"), (Language::Es, "Español")];
    let units = [(Measures::Us, "units-us"), (Measures::Metric, "units-metric")];
    html! {
        ul class="choices" aria-label=(choice.language.say("choices", &[])) {
            @for (language, name) in languages {
                li {
                    a href=(to("language", language.tag())) lang=(language.tag()) hreflang=(language.tag())
                        aria-current=[(choice.language == language).then_some("true")] { (name) }
                }
            }
            @for (measures, key) in units {
                li {
                    a href=(to("units", measures.tag()))
                        aria-current=[(choice.measures == measures).then_some("true")] {
                        (choice.language.say(key, &[]))
                    }
                }
            }
        }
    }
}
