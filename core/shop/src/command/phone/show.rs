//! `phone DIR show`: a screen of the phone, for people; with `--json` the record that a shell would draw.

use serde::Serialize;
use sumpbook_daybook::draft::{Draft, EndOfDayDraft, PreTripDraft, TopUpDraft};
use sumpbook_daybook::ledger::{Ledger, LedgerError, new_id};
use sumpbook_daybook::phone::Daybook;
use sumpbook_daybook::screen::{
    DisplayQuery, GlassQuery, LastReportQuery, Standing, StopQuery, TodayQuery, UnitQuery, WhereQuery,
    display, end_of_day, glass, last_report, stop, today, top_up, unit, where_it_is,
};
use sumpbook_trade::{EntryId, Fluid, PersonId, Stamp, Template, TruckId, WalkId};

use crate::ShopError;
use crate::command::CommandError;
use crate::command::args::ScreenAsked;
use crate::command::out::Said;

mod end_of_day;
mod glass;
mod last_report;
mod notes;
mod stop;
mod today;
mod top_up;
mod unit;
mod where_it_is;
mod words;

use words::Words;

/// Which screen, of what.
pub(super) struct Asked<'a> {
    pub(super) screen: ScreenAsked,
    pub(super) unit: Option<&'a str>,
    pub(super) person: Option<&'a str>,
    pub(super) stop: Option<usize>,
}

/// What a phone knows of this moment alone: it keeps no history of what the shop had acknowledged.
const OF_NOW: [&str; 4] = ["news", "counts", "locked_only_here", "became"];

/// The screen as it stands at `now`; with `as_of` by what the phone held then, with nothing that is begun.
pub(super) fn show(
    phone: &Daybook,
    asked: &Asked<'_>,
    now: Stamp,
    as_of: bool,
) -> Result<Said, CommandError> {
    if !as_of {
        let drafts = phone.ledger().drafts()?.drafts;
        return Screen {
            ledger: phone.ledger(),
            drafts,
            standing: phone.standing()?,
            asked,
            now,
            of_now: true,
        }
        .said();
    }
    if asked.screen == ScreenAsked::Where {
        let why = "what the shop had is known of this moment alone. Leave out --as-of; the shop's own `day-sheet --as-of` tells what it had.";
        return Err(CommandError::Asked(why.to_owned()));
    }
    let upto = phone.ledger().store().truth().upto(now.unix_ms()).map_err(LedgerError::from)?;
    let then = phone.ledger().as_of(upto)?;
    let standing = Standing::default();
    Screen { ledger: &then, drafts: Vec::new(), standing, asked, now, of_now: false }.said()
}

/// One screen, of what one ledger holds.
struct Screen<'a> {
    ledger: &'a Ledger,
    drafts: Vec<Draft>,
    standing: Standing,
    asked: &'a Asked<'a>,
    now: Stamp,
    of_now: bool,
}

impl Screen<'_> {
    fn said(&self) -> Result<Said, CommandError> {
        let Screen { ledger, standing, asked, now, .. } = self;
        let now = *now;
        let words = Words::new(ledger.fleet(), ledger.fleet().yard_day(now), self.of_now);
        let template = &**ledger.fleet().checklist().map_err(|e| CommandError::Asked(e.to_string()))?;
        match asked.screen {
            ScreenAsked::Today => {
                let screen = today(ledger, &TodayQuery { person: self.person()? }, standing, now)?;
                self.both(&today::told(&words, &screen), &screen)
            }
            ScreenAsked::Where => {
                let screen = where_it_is(ledger, &WhereQuery { days_back: 7 }, standing, now)?;
                self.both(&where_it_is::told(&words, &screen), &screen)
            }
            ScreenAsked::Unit => {
                let query = UnitQuery { unit: self.truck()?, person: self.person()? };
                let screen = unit(ledger, &query, standing, now)?;
                self.both(&unit::told(&words, &screen), &screen)
            }
            ScreenAsked::LastReport => {
                let query = LastReportQuery { unit: self.truck()?, seen: Default::default() };
                let screen = last_report(ledger, &query, template, standing, now)?;
                self.both(&last_report::told(&words, &screen), &screen)
            }
            ScreenAsked::Stop => self.stop(&words, template),
            ScreenAsked::Glass => {
                let query = GlassQuery {
                    unit: self.truck()?,
                    given: None,
                    said_stopped: None,
                    warmth: None,
                    oil_temperature: None,
                };
                let screen = glass(ledger, &query, template, now)?;
                self.both(&glass::told(&words, &screen), &screen)
            }
            ScreenAsked::TopUp => {
                let (truck, who) = (self.truck()?, self.person()?);
                let begun = TopUpDraft::begin(id(now)?, truck, who, Fluid::CompressorOil, now);
                let kept = self.drafts.iter().find_map(|draft| match draft {
                    Draft::TopUp(kept) if kept.unit == truck => Some(kept.clone()),
                    _ => None,
                });
                let screen = top_up(ledger, &kept.unwrap_or(begun), now)?;
                self.both(&top_up::told(&words, &screen), &screen)
            }
            ScreenAsked::Notes => {
                let query = DisplayQuery { unit: self.truck()?, note: None };
                let screen = display(ledger, &query, standing, now)?;
                self.both(&notes::told(&words, &screen), &screen)
            }
            ScreenAsked::EndOfDay => {
                let (truck, who) = (self.truck()?, self.person()?);
                let begun = EndOfDayDraft::begin(id(now)?, truck, who, now);
                let kept = self.drafts.iter().find_map(|draft| match draft {
                    Draft::EndOfDay(kept) if kept.unit == truck => Some(kept.clone()),
                    _ => None,
                });
                let screen = end_of_day(ledger, &kept.unwrap_or(begun), now)?;
                self.both(&end_of_day::told(&words, &screen), &screen)
            }
        }
    }

    fn stop(&self, words: &Words, template: &Template) -> Result<Said, CommandError> {
        let asked = self.asked.stop.map(|n| n.to_string());
        let query = StopQuery { stop: asked.clone(), seen: Default::default(), open_ms: 0 };
        match stop(self.ledger, &self.walk(template)?, &query, template, self.now)? {
            Some(screen) if asked.as_ref().is_some_and(|asked| *asked != screen.label) => {
                Err(CommandError::Asked(format!(
                    "this walk has no stop {}: it has {}, from 1. Nothing was changed.",
                    asked.unwrap_or_default(),
                    screen.of
                )))
            }
            Some(screen) => self.both(&stop::told(words, &screen), &screen),
            None => Err(CommandError::Asked(
                "this walk has no stop. Give its unit an item of the checklist first.".to_owned(),
            )),
        }
    }

    /// The walk this person has begun, or a new one of which nothing is kept.
    fn walk(&self, template: &Template) -> Result<PreTripDraft, CommandError> {
        let (truck, who) = (self.truck()?, self.person()?);
        let kept = self.drafts.iter().find_map(|draft| match draft {
            Draft::PreTrip(kept) if kept.unit == truck && kept.person == who => Some(kept.clone()),
            _ => None,
        });
        let id = id(self.now)?;
        Ok(kept.unwrap_or_else(|| PreTripDraft::begin(id, WalkId(id.0), truck, who, template, self.now)))
    }

    fn truck(&self) -> Result<TruckId, CommandError> {
        let fleet = self.ledger.fleet();
        let door =
            self.asked.unit.ok_or_else(|| CommandError::Asked("say which unit: --unit TH-01".to_owned()))?;
        let known = || fleet.trucks.values().map(|t| t.door.as_str()).collect::<Vec<_>>().join(", ");
        let found = fleet.truck_by_door(door).map(|truck| truck.truck);
        found.ok_or_else(|| ShopError::UnknownUnit { door: door.to_owned(), known: known() }.into())
    }

    fn person(&self) -> Result<PersonId, CommandError> {
        let fleet = self.ledger.fleet();
        let name = self
            .asked
            .person
            .ok_or_else(|| CommandError::Asked("say whose screen: --person 'Amos Tillery'".to_owned()))?;
        let known = || fleet.people.values().map(|p| p.name.as_str()).collect::<Vec<_>>().join(", ");
        let found = fleet.person_by_name(name).map(|person| person.person);
        found.ok_or_else(|| ShopError::UnknownPerson { name: name.to_owned(), known: known() }.into())
    }

    /// For people and for programs.
    fn both(&self, lines: &[String], screen: &impl Serialize) -> Result<Said, CommandError> {
        let mut record = serde_json::to_value(screen)?;
        if let (false, Some(fields)) = (self.of_now, record.as_object_mut()) {
            for name in OF_NOW {
                fields.remove(name);
            }
        }
        let lines: Vec<&str> = lines.iter().map(String::as_str).filter(|line| !line.is_empty()).collect();
        Said::new(lines.join("\n"), &record)
    }
}

fn id(now: Stamp) -> Result<EntryId, CommandError> {
    new_id(now).map_err(|e| CommandError::Asked(e.to_string()))
}
