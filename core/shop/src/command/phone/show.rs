//! `phone DIR show`: a screen of the phone as the record a shell would draw.

use serde::Serialize;
use sumpbook_daybook::draft::{Draft, EndOfDayDraft, PreTripDraft, TopUpDraft};
use sumpbook_daybook::ledger::{LedgerError, new_id};
use sumpbook_daybook::phone::Daybook;
use sumpbook_daybook::screen::{
    DisplayQuery, GlassQuery, LastReportQuery, StopQuery, TodayQuery, UnitQuery, WhereQuery, display,
    end_of_day, glass, last_report, stop, today, top_up, unit, where_it_is,
};
use sumpbook_trade::{EntryId, Fluid, PersonId, Stamp, Template, TruckId, WalkId};

use crate::ShopError;
use crate::command::CommandError;
use crate::command::args::ScreenAsked;
use crate::command::out::Said;

/// Which screen, of what.
pub(super) struct Asked<'a> {
    pub(super) screen: ScreenAsked,
    pub(super) unit: Option<&'a str>,
    pub(super) person: Option<&'a str>,
    pub(super) stop: Option<usize>,
}

/// The screen as it stands at `now`.
pub(super) fn show(phone: &Daybook, asked: &Asked<'_>, now: Stamp) -> Result<Said, CommandError> {
    let ledger = phone.ledger();
    let standing = phone.standing()?;
    let template = &**ledger.fleet().checklist().map_err(|e| CommandError::Asked(e.to_string()))?;
    match asked.screen {
        ScreenAsked::Today => {
            record(&today(ledger, &TodayQuery { person: person(phone, asked)? }, &standing, now)?)
        }
        ScreenAsked::Where => record(&where_it_is(ledger, &WhereQuery { days_back: 7 }, &standing, now)?),
        ScreenAsked::Unit => {
            let query = UnitQuery { unit: truck(phone, asked)?, person: person(phone, asked)? };
            record(&unit(ledger, &query, &standing, now)?)
        }
        ScreenAsked::LastReport => {
            let query = LastReportQuery { unit: truck(phone, asked)?, seen: Default::default() };
            record(&last_report(ledger, &query, template, &standing, now)?)
        }
        ScreenAsked::Stop => {
            let draft = walk_of(phone, asked, template, now)?;
            let query =
                StopQuery { stop: asked.stop.map(|n| n.to_string()), seen: Default::default(), open_ms: 0 };
            match stop(ledger, &draft, &query, template, now)? {
                Some(screen) if asked.stop.is_some_and(|n| n.to_string() != screen.label) => {
                    Err(CommandError::Asked(format!(
                        "this walk has no stop {}: it has {}, from 1. Nothing was changed.",
                        asked.stop.unwrap_or_default(),
                        screen.of
                    )))
                }
                Some(screen) => record(&screen),
                None => Err(CommandError::Asked(
                    "this walk has no stop. Give its unit an item of the checklist first.".to_owned(),
                )),
            }
        }
        ScreenAsked::Glass => {
            let query = GlassQuery {
                unit: truck(phone, asked)?,
                given: None,
                said_stopped: None,
                warmth: None,
                oil_temperature: None,
            };
            record(&glass(ledger, &query, template, now)?)
        }
        ScreenAsked::TopUp => {
            let (truck, who) = (truck(phone, asked)?, person(phone, asked)?);
            let begun = TopUpDraft::begin(id(now)?, truck, who, Fluid::CompressorOil, now);
            let kept = drafts(phone)?.into_iter().find_map(|draft| match draft {
                Draft::TopUp(kept) if kept.unit == truck => Some(kept),
                _ => None,
            });
            record(&top_up(ledger, &kept.unwrap_or(begun), now)?)
        }
        ScreenAsked::Notes => {
            let query = DisplayQuery { unit: truck(phone, asked)?, note: None };
            record(&display(ledger, &query, &standing, now)?)
        }
        ScreenAsked::EndOfDay => {
            let (truck, who) = (truck(phone, asked)?, person(phone, asked)?);
            let begun = EndOfDayDraft::begin(id(now)?, truck, who, now);
            let kept = drafts(phone)?.into_iter().find_map(|draft| match draft {
                Draft::EndOfDay(kept) if kept.unit == truck => Some(kept),
                _ => None,
            });
            record(&end_of_day(ledger, &kept.unwrap_or(begun), now)?)
        }
    }
}

/// The walk this person has begun, or a new one of which nothing is kept.
fn walk_of(
    phone: &Daybook,
    asked: &Asked<'_>,
    template: &Template,
    now: Stamp,
) -> Result<PreTripDraft, CommandError> {
    let (truck, who) = (truck(phone, asked)?, person(phone, asked)?);
    let kept = drafts(phone)?.into_iter().find_map(|draft| match draft {
        Draft::PreTrip(kept) if kept.unit == truck && kept.person == who => Some(kept),
        _ => None,
    });
    let id = id(now)?;
    Ok(kept.unwrap_or_else(|| PreTripDraft::begin(id, WalkId(id.0), truck, who, template, now)))
}

fn drafts(phone: &Daybook) -> Result<Vec<Draft>, LedgerError> {
    Ok(phone.ledger().drafts()?.drafts)
}

fn id(now: Stamp) -> Result<EntryId, CommandError> {
    new_id(now).map_err(|e| CommandError::Asked(e.to_string()))
}

fn truck(phone: &Daybook, asked: &Asked<'_>) -> Result<TruckId, CommandError> {
    let fleet = phone.ledger().fleet();
    let door = asked.unit.ok_or_else(|| CommandError::Asked("say which unit: --unit TH-01".to_owned()))?;
    let known = || fleet.trucks.values().map(|t| t.door.as_str()).collect::<Vec<_>>().join(", ");
    let found = fleet.truck_by_door(door).map(|truck| truck.truck);
    found.ok_or_else(|| ShopError::UnknownUnit { door: door.to_owned(), known: known() }.into())
}

fn person(phone: &Daybook, asked: &Asked<'_>) -> Result<PersonId, CommandError> {
    let fleet = phone.ledger().fleet();
    let name = asked
        .person
        .ok_or_else(|| CommandError::Asked("say whose screen: --person 'Amos Tillery'".to_owned()))?;
    let known = || fleet.people.values().map(|p| p.name.as_str()).collect::<Vec<_>>().join(", ");
    let found = fleet.person_by_name(name).map(|person| person.person);
    found.ok_or_else(|| ShopError::UnknownPerson { name: name.to_owned(), known: known() }.into())
}

/// A screen has no sentences of its own: what a shell would get is shown as it is.
fn record(screen: &impl Serialize) -> Result<Said, CommandError> {
    let text = serde_json::to_string_pretty(screen)?;
    Said::new(text, screen)
}
