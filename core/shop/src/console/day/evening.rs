//! The 17:00 view: what happened, section by section.

use maud::{Markup, html};
use sumpbook_daybook::text::Arg;

use super::found::{self, marked};
use super::later;
use super::steps::Steps;
use super::visits::tomorrow;
use crate::console::mark::{self, LockNow};
use crate::console::table::{Table, door, said, section};
use crate::console::words::Words;
use crate::sheet::{AgainstRow, Evening, ExpectedRow, HappenedRow, NotReported, WithoutRow};

/// `today`: the sheet is of the day that runs now.
pub(super) fn draw(words: &Words, sheet: &Evening, today: bool, steps: &Steps) -> Markup {
    let none = |count: usize, key: &str| if count == 0 { words.t(key) } else { String::new() };
    let name = |key: &str| words.t(key);
    let locked = name(if today { "section-locked" } else { "section-locked-then" });
    html! {
        @if !sheet.happened.is_empty() {
            (section("happened", sheet.happened.count, &name("section-happened"), "",
                &happened(words, &sheet.happened.rows)))
        }
        (section("without", sheet.without.count, &name("section-without"),
            &none(sheet.without.count, "none-recorded"), &without(words, &sheet.without.rows)))
        (section("against", sheet.against.count, &name("section-against"),
            &none(sheet.against.count, "none-recorded"), &against(words, &sheet.against.rows)))
        (not_reported(words, &sheet.not_reported))
        (section("defects", sheet.new_defects.count, &name("section-defects"),
            &none(sheet.new_defects.count, "none-recorded"),
            &found::defects(words, ("defects-table", &name("section-defects")), &sheet.new_defects.rows, steps)))
        (section("locked", sheet.locked.count, &locked,
            &none(sheet.locked.count, "no-lock"),
            &found::locked(words, ("locked-table", &locked), &sheet.locked.rows, steps)))
        (later::draw(words, sheet))
        (tomorrow(words, sheet))
    }
}

fn happened(words: &Words, rows: &[HappenedRow]) -> Markup {
    let heads =
        ["head-unit", "head-when", "head-what", "head-where", "head-how-much", "head-told-whom", "head-who"];
    let own = |text: &Option<String>| said(text.clone().unwrap_or_else(|| words.t("not-said")));
    let rows = rows.iter().map(|row| {
        let what = row
            .what
            .as_ref()
            .map_or_else(|| words.t("not-said"), |what| words.t(&format!("happened-{what}")));
        let photos =
            (row.photos > 0).then(|| words.with("photos-count", &[("count", Arg::Count(row.photos as i64))]));
        let what = words.listed([Some(what), row.words.clone(), photos].into_iter().flatten());
        vec![
            door(&row.unit),
            said(words.at(row.when)),
            said(what),
            own(&row.place),
            own(&row.how_much),
            own(&row.told),
            said(words.who(row.who.as_deref())),
        ]
    });
    let heads = heads.map(|key| words.t(key));
    Table::new("happened-table", &words.t("section-happened"), heads).named(&[6]).rows(rows).draw()
}

fn without(words: &Words, rows: &[WithoutRow]) -> Markup {
    let heads = ["head-unit", "head-first-use", "head-what", "head-who", "head-pre-trip-came", "head-reason"];
    let rows = rows.iter().map(|row| {
        let mut what = words.t(&format!("use-{}", row.what));
        if row.more > 0 {
            what = words
                .with("use-and-more", &[("what", Arg::Text(&what)), ("more", Arg::Count(row.more as i64))]);
        }
        vec![
            door(&row.unit),
            said(words.at(row.first_use)),
            said(what),
            said(words.who(row.who.as_deref())),
            said(words.at_or(row.pre_trip_came, "none-word")),
            said(row.reason.clone().unwrap_or_else(|| words.t("none-word"))),
        ]
    });
    let heads = heads.map(|key| words.t(key));
    Table::new("without-table", &words.t("section-without"), heads).named(&[3]).rows(rows).draw()
}

fn against(words: &Words, rows: &[AgainstRow]) -> Markup {
    let heads = ["head-unit", "head-lock", "head-used", "head-driver", "head-could-know", "head-reason"]
        .map(|key| words.t(key));
    let rows = rows.iter().map(|row| {
        let used = format!("{} {}", words.t(&format!("used-{}", row.what)), words.at(row.used));
        let since = words.at(row.since);
        vec![
            door(&row.unit),
            html! {
                span class="lock" {
                    (mark::pair(&marked(&row.lock, LockNow::Locked))) " "
                    span {
                        (words.with("lock-since", &[
                            ("lock", Arg::Text(&words.lock(&row.lock))), ("when", Arg::Text(&since)),
                        ]))
                    }
                }
            },
            said(used),
            said(words.who(row.driver.as_deref())),
            said(could_know(words, row)),
            said(row.reason.clone().unwrap_or_else(|| words.t("none-word"))),
        ]
    });
    Table::new("against-table", &words.t("section-against"), heads).named(&[3]).rows(rows).draw()
}

fn could_know(words: &Words, row: &AgainstRow) -> String {
    if row.could_know {
        return words.t("could-know");
    }
    if row.on_paper {
        let shop = words.at_or(row.shop_knew, "not-yet");
        return words.with("could-know-paper", &[("shop", Arg::Text(&shop))]);
    }
    let (shop, driver) = (words.at_or(row.shop_knew, "not-yet"), words.at_or(row.driver_knew, "not-yet"));
    words.with("could-not-know", &[("shop", Arg::Text(&shop)), ("driver", Arg::Text(&driver))])
}

fn not_reported(words: &Words, of: &NotReported) -> Markup {
    let name = words.with("section-not-reported", &[("of", Arg::Count(of.expected as i64))]);
    let beside: Vec<String> =
        of.due_out.iter().chain(&of.not_expected).map(|row| expected(words, row)).collect();
    let heads = ["head-unit", "head-expected", "head-its-phone", "head-last-heard", "head-day"]
        .map(|key| words.t(key));
    let rows = of.rows.iter().map(|row| {
        let quiet = row.quiet_days.map_or_else(
            || words.t("none-dash"),
            |n| words.with("quiet-days", &[("n", Arg::Count(n as i64))]),
        );
        vec![
            door(&row.unit),
            said(words.at_or(row.expected, "any-time")),
            said(row.phone.clone().unwrap_or_else(|| words.t("none-word"))),
            said(words.at_or(row.last_heard, "never")),
            said(quiet),
        ]
    });
    let table = Table::new("not-reported-table", &name, heads).rows(rows).draw();
    let reported = html! {
        @if !of.reported.is_empty() {
            details class="rows" {
                summary { (words.with("reported-all", &[("count", Arg::Count(of.reported.len() as i64))])) }
                ul class="run" {
                    @for row in &of.reported { li { (door(&row.unit)) " " (state(words, row)) } }
                }
            }
        }
    };
    section("not-reported", of.count, &name, &beside.join("; "), &html! { (table) (reported) })
}

/// "TH-07 due out 19:00".
fn expected(words: &Words, row: &ExpectedRow) -> String {
    format!("{} {}", row.unit, state(words, row))
}

/// "done 06:32", "covered Mon 18:52 to Tue 18:52", "due out 19:00", "stored".
pub(in crate::console) fn state(words: &Words, row: &ExpectedRow) -> String {
    let at = words.at_or(row.at, "any-time");
    let said = match row.state.as_str() {
        "covered" => {
            let until = words.at_or(row.until, "any-time");
            words.with("expected-covered", &[("from", Arg::Text(&at)), ("until", Arg::Text(&until))])
        }
        "done" | "due-out" | "laid-up" => {
            words.with(&format!("expected-{}", row.state), &[("when", Arg::Text(&at))])
        }
        other => words.or_plain(&format!("expected-{other}"), other),
    };
    let alone = row.trainee_alone.then(|| words.t("trainee-alone"));
    words.listed([Some(said), alone].into_iter().flatten())
}
