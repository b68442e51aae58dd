//! Words of a phone's screen: the same texts that a shell shows, as lines for a terminal.

use chrono::NaiveDate;
use serde::Serialize;
use sumpbook_daybook::fleet::Fleet;
use sumpbook_daybook::screen::{DisabledReason, LevelNow, Main, MainAct, News, PartNow, RoadAir};
use sumpbook_daybook::text::{Arg, Texts, word_key};
use sumpbook_trade::defect::LockPart;
use sumpbook_trade::record::Glass;
use sumpbook_trade::{Stamp, Tenths};

use crate::command::day_sheet::Words as SheetWords;
use crate::sheet::{glass, key};

/// The words of one phone's screens on one day.
pub(super) struct Words {
    sheet: SheetWords,
    texts: &'static Texts,
    /// Of this moment: only of it does a phone know what the shop has.
    pub(super) of_now: bool,
}

impl Words {
    pub(super) fn new(fleet: &Fleet, day: NaiveDate, of_now: bool) -> Words {
        Words { sheet: SheetWords::new(fleet, day), texts: Texts::english(), of_now }
    }

    /// A text that needs nothing.
    pub(super) fn t(&self, key: &str) -> String {
        self.texts.get(key, &[])
    }

    /// A text with what stands in it.
    pub(super) fn with(&self, key: &str, args: &[(&str, Arg<'_>)]) -> String {
        self.texts.get(key, args)
    }

    /// The text of a choice, such as `look-clear`.
    pub(super) fn choice<T: Serialize>(&self, of: &str, choice: &T) -> String {
        self.sheet.text(&format!("{of}-{}", key(choice)), &key(choice))
    }

    /// Several choices, listed.
    pub(super) fn choices<T: Serialize>(&self, of: &str, choices: &[T]) -> String {
        choices.iter().map(|choice| self.choice(of, choice)).collect::<Vec<_>>().join(", ")
    }

    /// A moment as the yard has it.
    pub(super) fn at(&self, at: Stamp) -> String {
        self.sheet.at(at)
    }

    /// A day.
    pub(super) fn day(&self, day: Option<NaiveDate>) -> String {
        self.sheet.day(day)
    }

    /// A name, or that nobody said one.
    pub(super) fn who(&self, who: &Option<String>) -> String {
        self.sheet.who(who)
    }

    /// An item with its place.
    pub(super) fn item(&self, item: &str, place: Option<&str>) -> String {
        self.sheet.item(item, place)
    }

    /// What is wrong with an item: "cracked".
    pub(super) fn wrong(&self, word: &str) -> String {
        self.sheet.text(&word_key(word), word)
    }

    /// A task of the programme.
    pub(super) fn task(&self, task: &str) -> String {
        self.sheet.task(task)
    }

    /// A name of the unit's own: a procedure, a kind, a feature; the plain word where no text has it.
    pub(super) fn named(&self, key: &str, plain: &str) -> String {
        self.sheet.text(key, plain)
    }

    /// A level: "38 %", "below view".
    pub(super) fn glass(&self, level: Option<Glass>) -> String {
        level.map_or_else(|| "-".to_owned(), glass)
    }

    /// Where a level stands to the middle.
    pub(super) fn level(&self, level: LevelNow) -> String {
        let percent = match level {
            LevelNow::Under(percent) | LevelNow::Over(percent) => i64::from(percent),
            _ => 0,
        };
        self.with(level.text_key(), &[("percent", Arg::Count(percent))])
    }

    /// ROAD, AIR, an outlet.
    pub(super) fn part(&self, part: &LockPart) -> String {
        match part {
            LockPart::Road => self.t("part-road"),
            LockPart::Air => self.t("part-air"),
            LockPart::Outlet(name) => self.with("part-outlet", &[("name", Arg::Text(name))]),
        }
    }

    /// How old the shop's news is.
    pub(super) fn news(&self, news: &News) -> Vec<String> {
        if !self.of_now {
            return Vec::new();
        }
        let mut lines = match news.heard {
            Some(heard) => vec![self.with("news-heard", &[("when", Arg::Text(&self.at(heard)))])],
            None => vec![self.t("news-never")],
        };
        if news.old {
            lines.push(self.t("news-old"));
        }
        lines
    }

    /// One part: what, since when, why.
    pub(super) fn part_now(&self, part: &PartNow) -> String {
        let mut text = format!("{}: {}", self.part(&part.part), self.t(part.state.text_key()));
        if let Some(since) = part.since {
            text.push_str(" since ");
            text.push_str(&self.at(since));
        }
        for why in &part.why {
            let item = self.item(&why.item, why.place.as_deref());
            let word = why.word.as_deref().map_or_else(String::new, |word| format!(", {}", self.wrong(word)));
            let by = why.by.as_deref().map_or_else(String::new, |by| format!(" ({by})"));
            text.push_str(&format!("; {item}{word}{by}"));
        }
        text
    }

    /// Road, air and what outlets are locked.
    pub(super) fn road_air(&self, now: &RoadAir) -> Vec<String> {
        [&now.road, &now.air].into_iter().chain(&now.outlets).map(|part| self.part_now(part)).collect()
    }

    /// The main button as it reads, and why it does not take a tap yet.
    pub(super) fn main(&self, main: &Main, door: &str, level: Option<Glass>) -> String {
        let level = level.map_or_else(|| "...".to_owned(), glass);
        let door = ("door", Arg::Text(door));
        let figure = |figure: &Tenths| figure.to_string();
        let text = match &main.act {
            MainAct::GoOn { stop, at, .. } | MainAct::NextStop { stop, at } => {
                let stop = at.map_or_else(|| stop.clone().unwrap_or_default(), |at| at.to_string());
                self.with(main.act.text_key(), &[door, ("stop", Arg::Text(&stop))])
            }
            MainAct::AllOk { lines } | MainAct::OtherOk { lines } => {
                self.with(main.act.text_key(), &[("lines", Arg::Count(i64::from(*lines)))])
            }
            MainAct::StillAsShown { percent, .. } => {
                self.with(main.act.text_key(), &[("percent", Arg::Count(i64::from(*percent)))])
            }
            MainAct::GiveHours { figure: given }
            | MainAct::YesItReads { figure: given }
            | MainAct::KeepWithPhoto { figure: given } => {
                self.with(main.act.text_key(), &[("figure", Arg::Text(&figure(given)))])
            }
            act => self.with(act.text_key(), &[door, ("level", Arg::Text(&level))]),
        };
        match &main.why_not {
            Some(reason) => format!("[{text}]  not yet: {}", self.why_not(reason)),
            None => format!("[{text}]"),
        }
    }

    fn why_not(&self, reason: &DisabledReason) -> String {
        let key = reason.text_key();
        match reason {
            DisabledReason::MoreBelow { left } => self.with(key, &[("left", Arg::Count(i64::from(*left)))]),
            DisabledReason::FigureMissing { item } => {
                self.with(key, &[("item", Arg::Text(&self.item(item, None)))])
            }
            DisabledReason::SignMissing(sign) => {
                format!("{} {}", self.t(key), self.choice("sign-missing", sign))
            }
            _ => self.t(key),
        }
    }
}
