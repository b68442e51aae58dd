//! The page a reader opens first: what is missing, what the units are, which programme was in force, what else is here
//! and how to check it.

use maud::{DOCTYPE, Markup, html};
use sumpbook_daybook::book::BookId;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::clock::Programme;
use sumpbook_trade::{Entry, Fact, Stamp, TruckId};

use super::Gap;
use crate::ShopError;
use crate::console::{say_in, task_in};
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

/// The page, in English.
pub(super) fn page(
    ledger: &Ledger,
    yard: &Yard,
    units: &[(String, TruckId)],
    gaps: &[Gap],
    fingerprint: &str,
) -> Result<String, ShopError> {
    let fleet = ledger.fleet();
    let say = |key: &str| say_in("en", key, &[]);
    let when = |at: Stamp| yard.stamp(at.moment()).to_string();
    let programmes = programmes(ledger)?;
    let here = |set: &InForce| set.of.is_none_or(|truck| units.iter().any(|(_, known)| *known == truck));
    let page = html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                title { "Evidence pack, " (fleet.name) }
                style { (maud::PreEscaped(STYLE)) }
            }
            body {
                h1 { "Evidence pack: " (units.iter().map(|(door, _)| door.as_str()).collect::<Vec<_>>().join(", ")) }
                p { (fleet.name) ", as known at " (when(yard.now)) ", yard time " (fleet.zone.name()) "." }
                @if fleet.demo { p { strong { "An invented fleet: nothing in here happened." } } }
                p { "This says what was recorded, no more. The maker's manual, local law and licensed people come first." }
                h2 { "1. Gaps" }
                @if gaps.is_empty() { p { "None of the gaps that are looked for was found." } }
                @for gap in gaps {
                    h3 { (gap.unit) ": " (say(&format!("gap-{}", gap.what))) ", " (gap.count) }
                    ul {
                        @for case in gap.cases.iter().filter(|case| !case.is_empty()) { li { (case) } }
                        @if gap.count > gap.cases.len() { li { "and " (gap.count - gap.cases.len()) " more" } }
                    }
                }
                h2 { "2. Identity" }
                table {
                    tr { th { "Unit" } th { "Truck serial" } th { "Plate" } th { "Compressor set serial" } th { "In service" } th { "Hours then" } }
                    @for (door, truck) in units { (identity(ledger, door, *truck)) }
                }
                h2 { "3. Programmes, and since when" }
                @for set in programmes.iter().filter(|set| here(set)) {
                    h3 {
                        @match set.of { Some(truck) => (fleet.door(truck)), None => "Every unit without one of its own" }
                        ", edition " (set.programme.edition) ", "
                        @match set.since { Some(at) => { "since " (when(at)) }, None => "common practice, until another is set" }
                    }
                    (tasks(&set.programme))
                }
                h2 { "4. Records" }
                p { "Each file of the folder tables holds one kind of record: all of it, void entries too; all-records.csv holds every entry. " code { "photos" } " holds the photos that entries name, each under its SHA-256." }
                ul { @for kind in Kind::ALL { li { code { "tables/" (kind.name()) ".csv" } " " (say(&format!("out-kind-{}", kind.name()))) } } }
                h2 { "5. Signatures, and how to check them" }
                (how_to_check(fingerprint))
            }
        }
    };
    Ok(page.into_string())
}

fn identity(ledger: &Ledger, door: &str, truck: TruckId) -> Markup {
    let fleet = ledger.fleet();
    let registered = fleet.trucks.get(&truck);
    let or_unknown = |text: Option<&String>| text.map_or("not recorded", String::as_str).to_owned();
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

fn tasks(programme: &Programme) -> Markup {
    html! {
        table {
            tr { th { "Task" } th { "Every" } th { "First" } }
            @for task in &programme.tasks {
                tr {
                    td { (task_in("en", &task.id.0)) }
                    td {
                        @if let Some(hours) = task.hours { (hours) " h " }
                        @if task.hours.is_some() && task.months.is_some() { "or " }
                        @if let Some(months) = task.months { (months) " months" }
                    }
                    td { @if let Some(first) = &task.first_service { "at " (first.at) " h" } }
                }
            }
        }
    }
}

fn how_to_check(fingerprint: &str) -> Markup {
    html! {
        p {
            "Every entry was signed on the device that recorded it, over what it says and over its place: fleet, book, device, "
            "number, and the entries that device had seen (COSE_Sign1, RFC 9052; Ed25519, RFC 8032). The shop's key let each device "
            "in, by a signed entry. " code { "entries.jsonl" } " holds all entries of these units' books and of the fleet's, one a line."
        }
        p { "The shop's key: " code { (fingerprint) } ". Everything rests on it: ask the shop by another way whether it is theirs." }
        ol {
            li { "With Python and nothing of this program: " code { "python3 check.py ." } " in this folder. Its own words say what it does." }
            li { "With this program: " code { "sumpbook verify --pack FILE --key \"" (fingerprint) "\"" } }
            li { "By hand: SHA-256 of each file stands in " code { "manifest.json" } ", and the shop's signature over that in " code { "manifest.cose" } "." }
        }
        p {
            "A signature says: this device, unlocked by whoever it was unlocked by, recorded this at this place. Whether the person's "
            "own PIN was given stands with each entry. Entries brought in from older records, typed from paper or taken from "
            "invoices were signed by the shop and not by whoever first wrote them down."
        }
    }
}

const STYLE: &str = "body{font:16px/1.4 sans-serif;max-width:60em;margin:1em auto;padding:0 1em}\
table{border-collapse:collapse}th,td{border:1px solid;padding:.2em .6em;text-align:left}code{overflow-wrap:anywhere}";
