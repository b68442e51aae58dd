//! Where each entry is, for people.

use sumpbook_daybook::screen::{Aside, Place, WhereRow, WhereScreen};
use sumpbook_daybook::text::Arg;

use super::words::Words;
use crate::sheet::key;
use crate::table::table;

pub(super) fn told(words: &Words, screen: &WhereScreen) -> Vec<String> {
    let counts = &screen.counts;
    let mut lines = vec![
        format!("{}: {}", words.t("where-on-phone"), counts.on_phone),
        format!("{}: {}", words.t("where-at-shop"), counts.at_shop),
        format!("{}: {}", words.t("where-aside"), counts.aside),
    ];
    if screen.photos.on_phone > 0 {
        lines.push(format!("Photos on this phone: {}", screen.photos.on_phone));
    }
    lines.extend(words.news(&screen.news));
    if let Some(tried) = screen.tried {
        let when = words.at(tried);
        lines.push(match screen.tried_why {
            Some(why) => {
                let why = words.t(why.text_key());
                words.with("where-tried-why", &[("when", Arg::Text(&when)), ("why", Arg::Text(&why))])
            }
            None => words.with("where-tried", &[("when", Arg::Text(&when))]),
        });
    }
    if let Some(again) = screen.again {
        lines.push(words.with("where-again", &[("when", Arg::Text(&words.at(again)))]));
    }
    if let Some(stopped) = screen.stopped {
        lines.push(format!("The shop stopped this phone on {}.", words.at(stopped)));
    }
    if screen.days.is_empty() {
        lines.push(words.t("where-empty"));
    }
    for day in &screen.days {
        let unit = day.door.as_deref().unwrap_or("fleet");
        lines.push(format!("\n{}, {unit}", day.day.format("%a %-d %b")));
        let rows = day.rows.iter().map(|row| {
            [words.choice("kind", &row.kind), words.at(row.at), words.who(&row.by), place(words, row)]
        });
        lines.push(table(["What", "When", "Who", "Where"], rows));
    }
    lines.push(words.main(&screen.main, "", None));
    lines
}

fn place(words: &Words, row: &WhereRow) -> String {
    let place = match row.place {
        Place::OnPhone => words.t("where-on-phone"),
        Place::AtShop => words.t("where-at-shop"),
    };
    let why = match &row.aside {
        None => return place,
        Some(Aside::Judged(judged)) => key(judged),
        Some(Aside::Reading) => "reading".to_owned(),
        Some(Aside::ByShop) => "by-shop".to_owned(),
    };
    format!("{place}, {}", words.named(&format!("aside-{why}"), &why))
}
