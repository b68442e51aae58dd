//! Small words of a sheet: moments as the yard has them, names of items and tasks, who.

use chrono::NaiveDate;
use sumpbook_daybook::fleet::Fleet;
use sumpbook_daybook::text::{Texts, item_key};
use sumpbook_trade::Stamp;
use sumpbook_trade::campaign::CAMPAIGN_ITEM;

use crate::parts::OilNeed;

/// The words of one day's sheet.
pub(in crate::command) struct Words {
    texts: &'static Texts,
    zone: chrono_tz::Tz,
    day: NaiveDate,
}

impl Words {
    pub(in crate::command) fn new(fleet: &Fleet, day: NaiveDate) -> Words {
        Words { texts: Texts::english(), zone: fleet.zone, day }
    }

    /// A moment: the time alone on the sheet's own day, else with its day.
    pub(in crate::command) fn at(&self, at: Stamp) -> String {
        let there = at.moment().with_timezone(&self.zone);
        let form = if there.date_naive() == self.day { "%H:%M" } else { "%a %-d %b %H:%M" };
        there.format(form).to_string()
    }

    /// A moment that may be unknown.
    pub(in crate::command) fn at_or(&self, at: Option<Stamp>, unknown: &str) -> String {
        at.map_or_else(|| unknown.to_owned(), |at| self.at(at))
    }

    /// A day.
    pub(in crate::command) fn day(&self, day: Option<NaiveDate>) -> String {
        day.map_or_else(|| "-".to_owned(), |day| day.format("%-d %b %Y").to_string())
    }

    /// A name, or that nobody said one.
    pub(in crate::command) fn who(&self, who: &Option<String>) -> String {
        who.clone().unwrap_or_else(|| "not said".to_owned())
    }

    /// An item of the checklist with its place.
    pub(in crate::command) fn item(&self, item: &str, place: Option<&str>) -> String {
        let name = self.text(&item_key(item), item);
        match place {
            // A campaign's own name stands as it was given.
            Some(place) if item == CAMPAIGN_ITEM => format!("{name}, {place}"),
            Some(place) => format!("{name}, {}", self.text(&format!("side-{place}"), place).to_lowercase()),
            None => name,
        }
    }

    /// A task of the programme.
    pub(in crate::command) fn task(&self, task: &str) -> String {
        self.text(&format!("task-{task}"), task)
    }

    /// What an entry records.
    pub(in crate::command) fn kind(&self, kind: &str) -> String {
        self.text(&format!("kind-{kind}"), kind)
    }

    /// A text by its key; the plain word where the fleet has made a word of its own.
    pub(in crate::command) fn text(&self, key: &str, plain: &str) -> String {
        if self.texts.has(key) { self.texts.get(key, &[]) } else { plain.replace('-', " ") }
    }

    /// Oil of a visit: "6 qt mineral VG 46, 2 jugs".
    pub(in crate::command) fn oil(&self, oil: &OilNeed) -> String {
        let family = oil.family.as_deref().map(|family| self.text(&format!("family-{family}"), family));
        let kind: Vec<String> = family.into_iter().chain(oil.grade.clone()).collect();
        match (&oil.volume, oil.jugs) {
            (Some(volume), Some(1)) => format!("{volume} {}, 1 jug", kind.join(" ")),
            (Some(volume), Some(jugs)) => format!("{volume} {}, {jugs} jugs", kind.join(" ")),
            _ => format!("{}, how much is not on record", kind.join(" ")),
        }
    }

    /// What is locked, as a word.
    pub(in crate::command) fn lock(&self, lock: &str) -> String {
        match lock.split_once('/') {
            Some((_, outlet)) => format!("outlet {outlet}"),
            None => lock.to_owned(),
        }
    }
}
