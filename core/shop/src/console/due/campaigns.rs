//! Makers' campaigns below the due list: each with its units, taking one back, looking at a unit, entering one.

use axum::response::Response;
use maud::{Markup, html};
use sumpbook_daybook::text::Arg;
use sumpbook_trade::checklist::Severity;
use sumpbook_trade::record::{CampaignOf, SerialRange};

use super::DueView;
use crate::campaign::{CampaignRow, CampaignUnitRow, NewCampaign, ranges_of};
use crate::console::due_words as told;
use crate::console::form::Fields;
use crate::console::refused::Refused;
use crate::console::table::{Table, door, name, said, section};
use crate::console::visit::{Telling, Visit};

/// Where every form here leads back to.
const BACK: &str = "/due#campaigns";
/// Words of what a campaign locks, as the form has them.
const LOCKS: [(Severity, &str); 4] = [
    (Severity::Note, "note"),
    (Severity::Air, "air"),
    (Severity::Road, "road"),
    (Severity::RoadAndAir, "road-and-air"),
];

/// `POST /due/campaign`: one is entered, or the one of that name is changed.
pub(super) async fn enter(visit: Visit, fields: Fields) -> Result<Response, Refused> {
    let locks = fields.text("locks").and_then(|word| LOCKS.iter().find(|(_, known)| *known == word));
    let new = NewCampaign {
        name: fields.owned("name").ok_or(Refused::Asked("campaign-no-name"))?,
        words: fields.owned("words").ok_or(Refused::Asked("campaign-no-words"))?,
        paper: fields.owned("paper"),
        read_at: fields.owned("read-at"),
        of: if fields.text("of") == Some("truck") { CampaignOf::Truck } else { CampaignOf::Set },
        ranges: ranges_of(fields.text("ranges").ok_or(Refused::Asked("campaign-no-range"))?),
        deadline: fields.day("deadline")?.ok_or(Refused::Asked("campaign-no-day"))?,
        hours: fields.hours("hours")?,
        severity: locks.map_or(Severity::Note, |(severity, _)| *severity),
        stop: fields.text("stop").is_some(),
    };
    visit.write(BACK, move |shop, hand| shop.enter_campaign(new, hand).map(|_| ())).await
}

/// `POST /due/campaign/withdraw`: who takes it back types his own name, and why.
pub(super) async fn withdraw(visit: Visit, fields: Fields) -> Result<Response, Refused> {
    let campaign = fields.owned("campaign").ok_or(Refused::NotThere)?;
    let why = visit.why_by_name(&fields)?;
    visit.write(BACK, move |shop, hand| shop.withdraw_campaign(&campaign, &why, hand).map(|_| ())).await
}

/// `POST /due/campaign/look`: who looked at a unit says whether it is meant, and what its plate said.
pub(super) async fn look(visit: Visit, fields: Fields) -> Result<Response, Refused> {
    let campaign = fields.owned("campaign").ok_or(Refused::NotThere)?;
    let unit = fields.owned("unit").ok_or(Refused::NotThere)?;
    let is_meant = match fields.text("is") {
        Some("meant") => true,
        Some("not-meant") => false,
        _ => return Err(Refused::Asked("campaign-no-answer")),
    };
    let why = visit.why_by_name(&fields)?;
    visit
        .write(BACK, move |shop, hand| {
            let truck = shop.unit(&unit)?;
            shop.look_campaign(&campaign, truck, is_meant, &why, hand).map(|_| ())
        })
        .await
}

/// The section.
pub(super) fn draw(telling: &Telling, view: &DueView) -> Markup {
    let rows = &view.due.campaigns;
    let stand = rows.iter().filter(|row| row.withdrawn.is_none()).count();
    let beside = if rows.is_empty() { telling.t("campaigns-none") } else { String::new() };
    let below = html! {
        @for (place, row) in rows.iter().enumerate() { (one(telling, place, row)) }
        @if telling.writes() { (entering(telling)) }
    };
    section("campaigns", stand, &telling.t("section-campaigns"), &beside, &below)
}

fn one(telling: &Telling, place: usize, row: &CampaignRow) -> Markup {
    html! {
        details open[row.withdrawn.is_none()] {
            summary { (row.name) ": " (row.words) " (" (counts(telling, row)) ")" }
            p { (range(telling, row)) }
            p { (telling.listed(paper(telling, row))) }
            @if let Some(gone) = &row.withdrawn {
                p class="strip" {
                    (telling.with("campaign-withdrawn", &[
                        ("when", Arg::Text(&telling.at(gone.at))), ("why", Arg::Text(&gone.why)),
                    ]))
                    (name(&format!(", {}", telling.who(gone.by.as_deref()))))
                }
            }
            (units(telling, place, row))
            @if telling.writes() && row.withdrawn.is_none() { (withdrawing(telling, place, row)) }
        }
    }
}

/// "of compressor sets KX-1000 to KX-1999, by Mon 30 Nov or at 3,000.0 h; locks air after its last good day".
fn range(telling: &Telling, row: &CampaignRow) -> String {
    let of = if row.of == CampaignOf::Set { "campaign-of-set" } else { "campaign-of-truck" };
    let one = |range: &SerialRange| match range.from == range.to {
        true => range.from.clone(),
        false => {
            telling.with("campaign-range", &[("from", Arg::Text(&range.from)), ("to", Arg::Text(&range.to))])
        }
    };
    let ranges = telling.listed(row.ranges.iter().map(one));
    let day = telling.short_day(row.deadline);
    let hours = row.hours.map_or_else(String::new, |hours| telling.hours(hours));
    let until = match row.hours {
        Some(_) => {
            telling.with("campaign-until-hours", &[("day", Arg::Text(&day)), ("hours", Arg::Text(&hours))])
        }
        None => telling.with("campaign-until", &[("day", Arg::Text(&day))]),
    };
    let locks = told::campaign_locks(telling, &row.locks, row.stop);
    telling.listed([telling.with(of, &[("ranges", Arg::Text(&ranges))]), until, locks])
}

fn paper(telling: &Telling, row: &CampaignRow) -> Vec<String> {
    let by = telling.who(row.by.as_deref());
    let entered = telling
        .with("campaign-entered", &[("when", Arg::Text(&telling.at(row.entered))), ("who", Arg::Text(&by))]);
    let of = |key: &str, value: &Option<String>| {
        value.as_deref().map(|value| telling.with(key, &[("paper", Arg::Text(value))]))
    };
    let paper = of("campaign-paper-said", &row.paper).unwrap_or_else(|| telling.t("campaign-no-paper"));
    [Some(paper), of("campaign-read-at-said", &row.read_at), Some(entered)].into_iter().flatten().collect()
}

/// "8 units looked at: 2 to be done, 1 of them past its last good day, 1 to be looked at, 3 done".
fn counts(telling: &Telling, row: &CampaignRow) -> String {
    let of = |count: usize| Arg::Count(i64::try_from(count).unwrap_or(i64::MAX));
    let past = row.count("past-deadline");
    telling.with(
        "campaign-counts",
        &[
            ("all", of(row.looked_at)),
            ("open", of(row.count("open").saturating_add(past))),
            ("past", of(past)),
            ("look", of(row.count("look"))),
            ("done", of(row.count("done"))),
        ],
    )
}

fn units(telling: &Telling, place: usize, row: &CampaignRow) -> Markup {
    let heads = ["head-unit", "head-serial", "head-state", "head-next-step"].map(|key| telling.t(key));
    let rows = row.units.iter().map(|unit| {
        vec![
            door(&unit.unit),
            said(unit.serial.clone().unwrap_or_else(|| telling.t("campaign-no-serial"))),
            said(state(telling, unit)),
            next(telling, row, unit),
        ]
    });
    let caption = telling.with("campaign-units", &[("name", Arg::Text(&row.name))]);
    Table::new(&format!("campaign-{place}"), &caption, heads).rows(rows).draw()
}

fn state(telling: &Telling, unit: &CampaignUnitRow) -> String {
    let mut all = vec![telling.t(&format!("campaign-state-{}", unit.state))];
    if let Some(why) = &unit.look_why {
        all.push(telling.t(&format!("campaign-look-{why}")));
    }
    if let Some(day) = unit.done_on {
        all.push(telling.short_day(day));
    }
    if let Some(hours) = unit.done_hours {
        all.push(format!("{} h", telling.hours(hours)));
    }
    let days = |key: &str, days: i64| telling.with(key, &[("days", Arg::Count(days))]);
    all.extend(unit.late_days.map(|late| days("campaign-late", late)));
    all.extend(unit.days_left.map(|left| match left {
        left if left < 0 => days("due-days", left.saturating_neg()),
        left => days("campaign-days-left", left),
    }));
    if let Some(left) = unit.hours_left.as_deref().and_then(|left| left.parse::<f64>().ok()) {
        let hours = told::tenth(telling, left);
        all.push(telling.with("left-hours", &[("hours", Arg::Text(&hours))]));
    }
    if let Some(looked) = &unit.looked {
        all.push(telling.with("campaign-looked", &[("why", Arg::Text(looked))]));
    }
    telling.listed(all)
}

/// What is to be done with one unit: its service, or somebody looks.
fn next(telling: &Telling, row: &CampaignRow, unit: &CampaignUnitRow) -> Markup {
    use crate::console::language::escaped;
    match unit.state.as_str() {
        "open" | "past-deadline" => html! {
            a href=(format!(
                "/due/service?unit={0}&tick={1}%40{0}", escaped(&unit.unit), escaped(&row.task)
            )) { (telling.t("service-open")) }
        },
        "look" if telling.writes() => looking(telling, row, unit),
        _ => said(telling.t("none-dash")),
    }
}

fn looking(telling: &Telling, row: &CampaignRow, unit: &CampaignUnitRow) -> Markup {
    let named = |key: &str| telling.with(key, &[("unit", Arg::Text(&unit.unit))]);
    html! {
        details {
            summary { (named("campaign-look-at")) }
            form method="post" action="/due/campaign/look" class="acts" {
                (telling.token())
                input type="hidden" name="campaign" value=(row.name);
                input type="hidden" name="unit" value=(unit.unit);
                label class="show" {
                    input type="radio" name="is" value="meant" required; " " (telling.t("campaign-is-meant"))
                }
                label class="show" {
                    input type="radio" name="is" value="not-meant"; " " (telling.t("campaign-is-not-meant"))
                }
                label { (telling.t("campaign-look-why")) " " input name="why" size="24" required; }
                label { (telling.t("campaign-own-name")) " " input name="name" size="16" autocomplete="name" required; }
                button { (telling.t("campaign-look-keep")) }
            }
        }
    }
}

fn withdrawing(telling: &Telling, place: usize, row: &CampaignRow) -> Markup {
    let (why, who) = (format!("withdraw-why-{place}"), format!("withdraw-who-{place}"));
    html! {
        details {
            summary { (telling.with("campaign-withdraw", &[("name", Arg::Text(&row.name))])) }
            form method="post" action="/due/campaign/withdraw" class="acts" {
                (telling.token())
                input type="hidden" name="campaign" value=(row.name);
                label for=(why) { (telling.t("head-why")) }
                input id=(why) name="why" size="30" required;
                label for=(who) { (telling.t("campaign-own-name")) }
                input id=(who) name="name" size="16" autocomplete="name" required;
                button { (telling.t("campaign-withdraw-keep")) }
            }
        }
    }
}

fn entering(telling: &Telling) -> Markup {
    html! {
        details {
            summary { (telling.t("campaign-enter")) }
            form method="post" action="/due/campaign" class="sheet-form" {
                (telling.token())
                p { (telling.t("campaign-enter-says")) }
                label for="c-name" { (telling.t("campaign-name")) }
                input id="c-name" name="name" size="20" maxlength="40" required;
                label for="c-words" { (telling.t("campaign-words")) }
                textarea id="c-words" name="words" rows="2" cols="40" maxlength="400" required {}
                label for="c-paper" { (telling.t("campaign-paper")) }
                input id="c-paper" name="paper" size="20";
                label for="c-read-at" { (telling.t("campaign-read-at")) }
                input id="c-read-at" name="read-at" size="30";
                label for="c-of" { (telling.t("campaign-of")) }
                select id="c-of" name="of" {
                    option value="set" { (telling.t("campaign-sets")) }
                    option value="truck" { (telling.t("campaign-trucks")) }
                }
                label for="c-ranges" { (telling.t("campaign-ranges")) }
                textarea id="c-ranges" name="ranges" rows="3" cols="30" placeholder="KX-1000..KX-1999" required {}
                label for="c-deadline" { (telling.t("campaign-deadline")) }
                input id="c-deadline" name="deadline" type="date" required;
                label for="c-hours" { (telling.t("campaign-hours")) }
                input id="c-hours" name="hours" inputmode="decimal" size="10";
                label for="c-locks" { (telling.t("campaign-locks")) }
                select id="c-locks" name="locks" {
                    @for (_, word) in LOCKS {
                        option value=(word) {
                            @if word == "note" { (telling.t("campaign-locks-nothing")) }
                            @else { (telling.t(&format!("severity-{word}"))) }
                        }
                    }
                }
                label class="show" { input type="checkbox" name="stop" value="yes"; " " (telling.t("campaign-stop")) }
                button class="main" { (telling.t("campaign-keep")) }
            }
        }
    }
}
