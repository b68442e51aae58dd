//! People, phones and sign-ins, drawn.

use maud::{Markup, html};
use sumpbook_daybook::text::Arg;

use super::stop::plain;
use super::view::{AskRow, PeopleView, PhoneRow};
use super::{ROLES, says};
use crate::console::language::escaped;
use crate::console::session::Role;
use crate::console::table::{Table, said, section};
use crate::console::visit::{Body, Telling};
use crate::console::words::clock_off;

pub(super) fn body(telling: &Telling, view: &PeopleView) -> Body {
    let main = html! {
        div class="head" {
            h1 { (telling.t("place-people")) }
            ul class="ways" {
                li { a href="#phones" { (telling.t("section-all-phones")) } }
                li { a href="#says" { (telling.t("section-says")) } }
                li { a href="#signs" { (telling.t("section-signs")) } }
                li { a href="/crew" { (telling.t("crew-open-page")) } }
                li { button type="button" class="print" id="print" hidden { (telling.t("print")) } }
            }
        }
        (people(telling, view))
        (phones(telling, view))
        (says::draw(telling, &view.says))
        (signs(telling, view))
    };
    Body { title: telling.t("place-people"), main }
}

fn people(telling: &Telling, view: &PeopleView) -> Markup {
    let name = telling.t("section-people");
    let heads = ["head-name", "head-role", "head-on-phones", "head-last-signed", "head-pin"]
        .map(|key| telling.t(key));
    let rows = view.people.iter().map(|person| {
        let phones = if person.phones.is_empty() {
            telling.t("none-dash")
        } else {
            telling.listed(person.phones.clone())
        };
        vec![
            said(&person.name),
            said(telling.t(&format!("role-{}", person.role))),
            said(phones),
            said(telling.at_or(person.last_signed, "people-not-lately")),
            html! {
                (telling.t(match person.pin_given {
                    Some(true) => "word-yes",
                    Some(false) => "word-no",
                    None => "none-dash",
                }))
                @if let Some(at) = person.new_pin_asked {
                    ", " (telling.with("pin-asked", &[("when", Arg::Text(&telling.at(at)))]))
                }
            },
        ]
    });
    let beside = if view.people.is_empty() { telling.t("first-people") } else { telling.t("people-of-days") };
    let below = html! {
        (Table::new("people-table", &name, heads).rows(rows).draw())
        @if telling.writes() {
            @if let Some(kept) = &view.kept {
                p class="strip" role="status" {
                    (telling.with(if kept.gone { "people-kept-gone" } else { "people-kept" }, &[
                        ("name", Arg::Text(&kept.name)),
                        ("role", Arg::Text(&telling.t(&format!("role-{}", kept.role)))),
                    ]))
                }
            }
            form method="post" action="/people/person" class="inline" {
                (telling.token())
                label for="person-name" { (telling.t("head-name")) }
                input id="person-name" name="name" size="20" required autocomplete="off" list="known-people";
                datalist id="known-people" { @for person in &view.people { option value=(person.name) {} } }
                label for="person-role" { (telling.t("head-role")) }
                select id="person-role" name="role" {
                    @for (_, word) in ROLES { option value=(word) { (telling.t(&format!("role-{word}"))) } }
                }
                label class="show" { input type="checkbox" name="gone" value="yes"; " " (telling.t("people-gone")) }
                label class="show" { input type="checkbox" name="change" value="yes"; " " (telling.t("people-change")) }
                button { (telling.t("people-add")) }
            }
            form method="post" action="/people/new-pin" class="inline" {
                (telling.token())
                label for="pin-name" { (telling.t("pin-of")) }
                select id="pin-name" name="name" required {
                    option value="" { (telling.t("pin-nobody")) }
                    @for person in &view.people { option { (person.name) } }
                }
                button { (telling.t("pin-ask")) }
            }
        }
    };
    section("people", view.people.len(), &name, &beside, &below)
}

fn phones(telling: &Telling, view: &PeopleView) -> Markup {
    let name = telling.t("section-all-phones");
    let heads = ["head-phone", "head-last-heard", "head-news", "head-clock-off", "head-program"];
    let heads =
        heads.iter().chain(&["head-only-there", "head-key", "head-next-step"]).map(|key| telling.t(key));
    let rows = view.phones.iter().map(|phone| phone_row(telling, phone));
    let quiet = view.phones.iter().filter(|phone| phone.quiet).count();
    let beside = match (view.phones.is_empty(), quiet) {
        (true, _) => telling.t("phones-none"),
        (false, 0) => telling.t("all-heard"),
        (false, n) => {
            telling.with("phones-quiet", &[("count", Arg::Count(i64::try_from(n).unwrap_or(i64::MAX)))])
        }
    };
    let below = html! {
        (Table::new("phones-table", &name, heads).rows(rows).draw())
        @for ask in &view.asks { (ask_row(telling, ask)) }
        @if telling.writes() { (add(telling, view)) }
    };
    section("phones", view.phones.len(), &name, &beside, &below)
}

fn phone_row(telling: &Telling, phone: &PhoneRow) -> Vec<Markup> {
    let heard = match phone.last_heard {
        Some(at) => telling.at(at),
        None => {
            let key = if phone.quiet || phone.stopped { "never-since-added" } else { "added-not-heard" };
            telling.with(key, &[("when", Arg::Text(&telling.at(phone.added)))])
        }
    };
    let news = match (phone.has_all, phone.news_upto) {
        (true, _) => telling.t("news-all"),
        (false, Some(at)) => telling.with("news-upto", &[("when", Arg::Text(&telling.at(at)))]),
        (false, None) => telling.t("none-word"),
    };
    let only = match phone.last_heard {
        Some(_) => telling.with("only-there-since", &[("when", Arg::Text(&heard))]),
        None => telling.t("only-there-unknown"),
    };
    vec![
        said(&phone.name),
        html! {
            @if phone.quiet { strong class="quiet" { (heard) ", " (telling.t("phone-quiet")) } } @else { (heard) }
        },
        said(news),
        said(phone.clock_off_ms.map_or_else(|| telling.t("none-dash"), clock_off)),
        said(program(telling, phone)),
        said(only),
        said(&phone.key),
        html! {
            @if phone.stopped { (telling.t("phone-stopped")) }
            @else if telling.writes() {
                a class="button" href=(format!("/people/phone/{}/stop", escaped(&plain(&phone.key)))) {
                    (telling.t("lost-phone"))
                }
            } @else { (telling.t("none-dash")) }
        },
    ]
}

/// "0.1.0, since Tue 20 Oct 16:48"; a phone that never said has an older program, or none was heard yet.
fn program(telling: &Telling, phone: &PhoneRow) -> String {
    let Some((version, since)) = phone.program.as_deref().zip(phone.program_since) else {
        return telling.t("not-said");
    };
    telling.with("program-since", &[("version", Arg::Text(version)), ("when", Arg::Text(&telling.at(since)))])
}

fn ask_row(telling: &Telling, ask: &AskRow) -> Markup {
    let args = [("name", Arg::Text(ask.name.as_str())), ("key", Arg::Text(ask.key.as_str()))];
    html! {
        div class="strip ask" {
            p { (telling.with("ask-row", &args)) }
            p { (telling.t(&format!("ask-{}", ask.code))) }
            @if ask.code == "open" && telling.writes() {
                form method="post" action="/people/let-in" class="decide" {
                    (telling.token())
                    input type="hidden" name="key" value=(ask.key);
                    label class="show" {
                        input type="checkbox" name="same" value="yes" required; " " (telling.t("ask-same"))
                    }
                    button { (telling.with("let-in", &[("who", Arg::Text(&telling.name))])) }
                }
            }
        }
    }
}

fn add(telling: &Telling, view: &PeopleView) -> Markup {
    html! {
        form method="post" action="/people/code" class="inline" {
            (telling.token())
            label for="code-hub" { (telling.t("code-hub")) }
            input id="code-hub" name="hub" size="24" required value=(view.hub);
            label for="code-units" { (telling.t("code-units")) }
            input id="code-units" name="units" size="20";
            button { (telling.t("add-phone")) }
        }
    }
}

fn signs(telling: &Telling, view: &PeopleView) -> Markup {
    let name = telling.t("section-signs");
    let heads = ["head-name", "head-may", "head-next-step"].map(|key| telling.t(key));
    let rows = view.signs.iter().map(|sign| {
        vec![
            said(&sign.name),
            html! {
                (telling.t(role_key(sign.role)))
                @if !sign.is_person { ", " (telling.t("signs-nobody")) }
            },
            html! {
                @if telling.writes() {
                    form method="post" action="/people/sign-in/remove" {
                        (telling.token())
                        input type="hidden" name="name" value=(sign.name);
                        button { (telling.t("signs-remove")) }
                    }
                } @else { (telling.t("none-dash")) }
            },
        ]
    });
    let below = html! {
        (Table::new("signs-table", &name, heads).rows(rows).draw())
        @if telling.writes() {
            form method="post" action="/people/sign-in" class="sheet-form" {
                (telling.token())
                label for="sign-name" { (telling.t("head-name")) }
                select id="sign-name" name="name" {
                    @for person in &view.people { option { (person.name) } }
                }
                label for="sign-role" { (telling.t("head-may")) }
                select id="sign-role" name="role" {
                    option value="shop" { (telling.t("may-shop")) }
                    option value="reader" { (telling.t("may-reader")) }
                }
                label for="sign-password" { (telling.t("sign-in-password")) }
                input id="sign-password" name="password" type="password" autocomplete="new-password" minlength="8" required;
                label for="sign-again" { (telling.t("signs-again")) }
                input id="sign-again" name="again" type="password" autocomplete="new-password" minlength="8" required;
                button { (telling.t("signs-set")) }
            }
        }
    };
    section("signs", view.signs.len(), &name, "", &below)
}

fn role_key(role: Role) -> &'static str {
    match role {
        Role::Shop => "may-shop",
        Role::Reader => "may-reader",
    }
}
