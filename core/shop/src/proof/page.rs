//! The page a reader opens first: what is missing, what the units are, which programme was in force, what else is here
//! and how to check it.

use maud::{DOCTYPE, Markup, html};
use sumpbook_daybook::book::BookId;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::text::Arg;
use sumpbook_trade::clock::{FirstService, Programme, Task};
use sumpbook_trade::{Entry, Fact, Stamp, TruckId};

use super::{Gap, own_rules};
use crate::ShopError;
use crate::console::{gap_case_in, say_in, task_in};
use crate::sheet::Yard;
use crate::table_out::Kind;

/// A programme and from when on it was in force.
struct InForce {
    since: Option<Stamp>,
    of: Option<TruckId>,
    programme: Programme,
}

/// Every programme the fleet ever set, in the order they were set; before the first the common practice.
fn programmes(ledger: &Ledger) -> Result<Vec<InForce>, ShopError> {
    let mut all = vec![InForce { since: None, of: None, programme: Programme::common_practice() }];
    let truth = ledger.store().truth();
    for held in truth.of_book(BookId::Fleet)? {
        if let Ok(Entry { at, fact: Fact::ProgrammeSet(set), .. }) = Entry::from_payload(&held.row.payload) {
            all.push(InForce { since: Some(at), of: set.truck, programme: set.programme });
        }
    }
    Ok(all)
}

/// A page's language and where its tables lie.
#[derive(Clone, Copy, Debug)]
pub(super) struct Spoken {
    /// The language's tag.
    pub(super) tag: &'static str,
    /// The page's file.
    pub(super) page: &'static str,
    /// The folder of tables with heads in this language.
    pub(super) tables: &'static str,
}

/// Always there.
pub(super) const ENGLISH: Spoken = Spoken { tag: "en", page: "READ-ME-FIRST.html", tables: "tables" };
/// When it was asked for.
pub(super) const SPANISH: Spoken = Spoken { tag: "es", page: "LEER-PRIMERO.html", tables: "tablas" };

impl Spoken {
    pub(super) fn say(self, key: &str, args: &[(&str, Arg<'_>)]) -> String {
        say_in(self.tag, key, args)
    }

    pub(super) fn t(self, key: &str) -> String {
        self.say(key, &[])
    }
}

/// The page, in a language.
pub(super) fn page(
    spoken: Spoken,
    ledger: &Ledger,
    yard: &Yard,
    units: &[(String, TruckId)],
    gaps: &[Gap],
    fingerprint: &str,
) -> Result<String, ShopError> {
    let fleet = ledger.fleet();
    let t = |key: &str| spoken.t(key);
    let with = |key: &str, name: &str, value: &str| spoken.say(key, &[(name, Arg::Text(value))]);
    let when = |at: Stamp| yard.stamp(at.moment()).to_string();
    let programmes = programmes(ledger)?;
    let own_rules = own_rules::own_rules(spoken, ledger)?;
    let here = |set: &InForce| set.of.is_none_or(|truck| units.iter().any(|(_, known)| *known == truck));
    let doors = units.iter().map(|(door, _)| door.as_str()).collect::<Vec<_>>().join(", ");
    let known = spoken.say(
        "pack-known",
        &[
            ("fleet", Arg::Text(&fleet.name)),
            ("when", Arg::Text(&when(yard.now))),
            ("zone", Arg::Text(fleet.zone.name())),
        ],
    );
    let records = spoken.say(
        "pack-records-say",
        &[
            ("folder", Arg::Text(spoken.tables)),
            ("all", Arg::Text(&format!("{}.csv", Kind::AllRecords.name()))),
        ],
    );
    let page = html! {
        (DOCTYPE)
        html lang=(spoken.tag) {
            head {
                meta charset="utf-8";
                title { (with("pack-title-of", "fleet", &fleet.name)) }
                style { (maud::PreEscaped(STYLE)) }
            }
            body {
                h1 { (with("pack-head", "units", &doors)) }
                p { (known) }
                @if fleet.demo { p { strong { (t("pack-demo")) } } }
                p { (t("pack-says")) }
                h2 { "1. " (t("pack-gaps")) }
                @if gaps.is_empty() { p { (t("pack-no-gaps")) } }
                @for gap in gaps {
                    h3 { (gap.unit) ": " (t(&format!("gap-{}", gap.what))) ", " (gap.count) }
                    ul {
                        @for case in gap.cases.iter().filter(|case| !case.is_empty()) { li { (gap_case_in(spoken.tag, fleet.zone, yard.day, case)) } }
                        @if gap.count > gap.cases.len() {
                            li { (with("pack-more", "count", &(gap.count - gap.cases.len()).to_string())) }
                        }
                    }
                }
                h2 { "2. " (t("pack-identity")) }
                table {
                    tr {
                        th { (t("head-unit")) }
                        @for key in ["truck-serial", "plate", "set-serial", "in-service", "hours-then"] {
                            th { (t(&format!("pack-{key}"))) }
                        }
                    }
                    @for (door, truck) in units { (identity(spoken, ledger, door, *truck)) }
                }
                h2 { "3. " (t("pack-programmes")) }
                @for set in programmes.iter().filter(|set| here(set)) {
                    h3 {
                        @match set.of { Some(truck) => (fleet.door(truck)), None => (t("pack-every-unit")) }
                        ", " (with("pack-edition", "edition", &set.programme.edition.to_string())) ", "
                        @match set.since {
                            Some(at) => (with("pack-since", "when", &when(at))),
                            None => (t("pack-common")),
                        }
                    }
                    (tasks(spoken, &set.programme))
                }
                h2 { "4. " (t("pack-own")) }
                (own_rules::drawn(spoken, &own_rules, when))
                h2 { "5. " (t("pack-records")) }
                p { (records) }
                ul {
                    @for kind in Kind::ALL {
                        li {
                            code { (spoken.tables) "/" (kind.name()) ".csv" } " "
                            (t(&format!("out-kind-{}", kind.name())))
                        }
                    }
                }
                h2 { "6. " (t("pack-signatures")) }
                (how_to_check(spoken, fingerprint))
            }
        }
    };
    Ok(page.into_string())
}

fn identity(spoken: Spoken, ledger: &Ledger, door: &str, truck: TruckId) -> Markup {
    let fleet = ledger.fleet();
    let registered = fleet.trucks.get(&truck);
    let or_unknown = |text: Option<&String>| text.cloned().unwrap_or_else(|| spoken.t("pack-not-recorded"));
    html! {
        tr {
            td { (door) }
            td { (or_unknown(registered.and_then(|truck| truck.serial.as_ref()))) }
            td { (or_unknown(registered.and_then(|truck| truck.plate.as_ref()))) }
            td { (or_unknown(fleet.set_on(truck).and_then(|set| set.serial.as_ref()))) }
            td { @if let Some(truck) = registered { (truck.in_service) } }
            td { @if let Some(truck) = registered { (truck.in_service_hours) " h" } }
        }
    }
}

fn tasks(spoken: Spoken, programme: &Programme) -> Markup {
    let every = |task: &Task| {
        let hours = task.hours.map(|hours| hours.to_string()).unwrap_or_default();
        let months = task.months.map(|months| months.to_string()).unwrap_or_default();
        let args = [("hours", Arg::Text(hours.as_str())), ("months", Arg::Text(months.as_str()))];
        match (task.hours, task.months) {
            (Some(_), Some(_)) => spoken.say("pack-hours-or-months", &args),
            (Some(_), None) => spoken.say("pack-hours", &args),
            (None, Some(_)) => spoken.say("pack-months", &args),
            (None, None) => String::new(),
        }
    };
    let first =
        |first: &FirstService| spoken.say("pack-first-at", &[("hours", Arg::Text(&first.at.to_string()))]);
    html! {
        table {
            tr { @for key in ["pack-task", "pack-every", "pack-first"] { th { (spoken.t(key)) } } }
            @for task in &programme.tasks {
                tr {
                    td { (task_in(spoken.tag, &task.id.0)) }
                    td { (every(task)) }
                    td { @if let Some(of) = &task.first_service { (first(of)) } }
                }
            }
        }
    }
}

fn how_to_check(spoken: Spoken, fingerprint: &str) -> Markup {
    html! {
        p { (spoken.t("pack-signed")) }
        p { (spoken.say("pack-key", &[("key", Arg::Text(fingerprint))])) }
        ol {
            li { (spoken.t("pack-by-python")) " " code { "python3 check.py ." } }
            li { (spoken.t("pack-by-program")) " " code { "sumpbook verify --pack FILE --key \"" (fingerprint) "\"" } }
            li { (spoken.t("pack-by-hand")) }
        }
        p { (spoken.t("pack-means")) }
    }
}

const STYLE: &str = "body{font:16px/1.4 sans-serif;max-width:60em;margin:1em auto;padding:0 1em}\
table{border-collapse:collapse}th,td{border:1px solid;padding:.2em .6em;text-align:left}code{overflow-wrap:anywhere}";
