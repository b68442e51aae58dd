//! The oil drawn: what it comes to in sentences, two charts, and the same figures as tables.

use maud::{Markup, html};
use sumpbook_daybook::screen::{BalanceRow, CarryOverRow, ChangeRow, OilUseRow, verdict_key};
use sumpbook_daybook::text::Arg;
use sumpbook_trade::oil::{Direction, OilClass, OilVerdict};
use sumpbook_trade::record::Glass;

use super::levels::{LevelRow, What};
use super::{Oil, SoFarRow};
use crate::console::chart::{Chart, Mark, Point, Scale, before_shown, days};
use crate::console::table::{Table, said};
use crate::console::unit::told;
use crate::console::words::Words;
use crate::sheet::key;

pub(in crate::console::unit) fn draw(words: &Words, oil: &Oil) -> Markup {
    if oil.fill.is_none() && oil.levels.is_empty() {
        return html! { p { (words.t("oil-nothing-known")) } };
    }
    html! {
        @if let Some(called) = &oil.called {
            p class="strip" {
                (words.t(&format!("called-{}", called.why))) " "
                (words.with("since-when", &[("when", Arg::Text(&words.at(called.since)))]))
            }
        }
        @if let Some(change) = oil.fill.as_ref().and_then(|fill| fill.change) {
            p class="strip" { (changed(words, &change)) }
        }
        @for row in oil.levels.iter().filter(|row| row.rose).take(1) {
            p class="strip" { (words.with("oil-rose", &[("when", Arg::Text(&words.at(row.at)))])) }
        }
        @for said in sentences(words, oil) { p { (said) } }
        (levels_chart(words, &oil.levels, oil.middle))
        @if let Some(fill) = &oil.fill {
            (use_chart(words, fill, oil.most_mg_m3))
        }
        @if let Some(fill) = &oil.fill { @if !fill.lab.is_empty() {
            h3 { (words.t("oil-lab")) }
            ul { @for lab in &fill.lab { li { (lab_words(words, lab)) } } }
        } }
        (tables(words, oil))
    }
}

/// "Using 2.1x its usual since Tue 3 Nov. Look at separator, scavenge line, leaks."
pub(in crate::console) fn changed(words: &Words, change: &ChangeRow) -> String {
    let key = match (change.direction, change.times_tenths) {
        (Direction::More, Some(_)) => "oil-use-more",
        (Direction::Less, Some(_)) => "oil-use-less",
        (Direction::More, None) => "oil-use-more-unknown",
        (Direction::Less, None) => "oil-use-less-unknown",
    };
    let times = change.times_tenths.map(tenths).unwrap_or_default();
    let since = words.short_day(change.since);
    words.with(key, &[("times", Arg::Text(&times)), ("since", Arg::Text(&since))])
}

fn tenths(n: i64) -> String {
    format!("{:.1}", n as f64 / 10.0)
}

/// "1.20"
pub(in crate::console) fn hundredths(n: i64) -> String {
    format!("{:.2}", n as f64 / 100.0)
}

fn volume(words: &Words, ml: i64) -> String {
    words.measure(&format!("{ml} mL"))
}

/// What is known of the fill, a sentence each.
fn sentences(words: &Words, oil: &Oil) -> Vec<String> {
    let Some(fill) = &oil.fill else { return vec![words.t("oil-too-little")] };
    let mut said = vec![filled(words, fill)];
    let own = fill.balances.iter().find(|balance| !balance.settling);
    match own.or(fill.balances.first()) {
        Some(balance) => said.push(balance_words(words, balance)),
        None => said.push(words.t("oil-no-balance")),
    }
    if let Some(usual) = fill.usual_hundredths {
        said.push(words.with("oil-usual", &[("rate", Arg::Text(&hundredths(usual)))]));
    }
    if let Some(air) = &fill.carry_over {
        said.push(carried(words, air));
    }
    if let (Some(verdict), Some(limit)) = (fill.verdict, fill.limit_hundredths) {
        said.push(verdict_words(words, verdict, limit, oil.most_mg_m3));
    }
    said.extend(oil.so_far.as_ref().map(|so_far| so_far_words(words, so_far)));
    said
}

/// "Filled Fri 6 Nov at 2,926.0 h; 199 mL poured since."
fn filled(words: &Words, fill: &OilUseRow) -> String {
    let poured = match fill.made_up_ml {
        0 => words.t("nothing-word"),
        ml => volume(words, ml),
    };
    let Some(at) = fill.filled else {
        return words.with("oil-before-records", &[("poured", Arg::Text(&poured))]);
    };
    let at = words.short_day_at(at);
    let hours = fill.filled_hours.map(|hours| words.hours(hours));
    let key = if hours.is_some() { "oil-filled" } else { "oil-filled-no-hours" };
    let hours = hours.unwrap_or_default();
    let args = [("when", Arg::Text(&at)), ("hours", Arg::Text(&hours)), ("poured", Arg::Text(&poured))];
    let filled = words.with(key, &args);
    if fill.settling { format!("{filled} {}", words.t("oil-settling")) } else { filled }
}

/// "used 114 mL in 94.5 h: about 1.20 mL/h, between 0.60 and 1.80 mL/h by two readings of the glass; 85 mL over
/// the middle, carried to the next"
fn balance_words(words: &Words, balance: &BalanceRow) -> String {
    let rate = balance.ml_per_hour_hundredths.map(hundredths);
    let used = words.with(
        if rate.is_some() { "oil-used" } else { "oil-used-no-rate" },
        &[
            ("volume", Arg::Text(&volume(words, balance.used_ml))),
            ("hours", Arg::Text(&words.hours(balance.hours))),
            ("rate", Arg::Text(rate.as_deref().unwrap_or_default())),
        ],
    );
    let between = balance.between_hundredths.map(|(low, high)| {
        let (low, high) = (hundredths(low), hundredths(high));
        words.with("oil-used-between", &[("least", Arg::Text(&low)), ("most", Arg::Text(&high))])
    });
    let carried = (balance.carried_ml != 0).then(|| {
        let key = if balance.carried_ml > 0 { "oil-carried-over" } else { "oil-carried-under" };
        words.with(key, &[("volume", Arg::Text(&volume(words, balance.carried_ml.abs())))])
    });
    let settling = balance.settling.then(|| words.t("oil-settling-here"));
    let corrected = balance.corrected.then(|| words.t("oil-corrected"));
    let (from, to) = (words.short_day_at(balance.from), words.short_day_at(balance.to));
    let span = words.with("from-to", &[("from", Arg::Text(&from)), ("to", Arg::Text(&to))]);
    let all = [Some(used), between, carried, settling, corrected].into_iter().flatten();
    format!("{span}: {}", words.listed(all))
}

/// "at least 3.3 mg/m3 of oil in the air, ISO 8573-1 oil class 4 or worse"
fn carried(words: &Words, air: &CarryOverRow) -> String {
    let mg = tenths(air.mg_m3_tenths);
    let key = if air.at_least { "oil-air-at-least" } else { "oil-air-about" };
    let mg = words.with(key, &[("mg", Arg::Text(&mg))]);
    let class = match air.class {
        OilClass::Class1 => "1",
        OilClass::Class2 => "2",
        OilClass::Class3 => "3",
        OilClass::Class4 => "4",
        OilClass::ClassX => return words.listed([mg, words.t("oil-class-x")]),
    };
    let key = if air.or_worse { "oil-class-or-worse" } else { "oil-class" };
    words.listed([mg, words.with(key, &[("class", Arg::Text(class))])])
}

fn verdict_words(words: &Words, verdict: OilVerdict, limit: i64, most: f64) -> String {
    let limit = hundredths(limit);
    let said = words.with(verdict_key(verdict), &[("limit", Arg::Text(&limit))]);
    let most = most.to_string();
    let is = words.with("oil-limit-is", &[("mg", Arg::Text(&most)), ("limit", Arg::Text(&limit))]);
    format!("{is}: {said}")
}

fn so_far_words(words: &Words, so_far: &SoFarRow) -> String {
    let at = words.short_day_at(so_far.to);
    let used = volume(words, so_far.used_ml);
    let rate = so_far.ml_per_hour_hundredths.map(hundredths);
    let key = match (so_far.used_ml < 0, &rate) {
        (true, _) => "oil-so-far-rose",
        (false, Some(_)) => "oil-so-far",
        (false, None) => "oil-so-far-no-rate",
    };
    let rate = rate.unwrap_or_default();
    words.with(key, &[("when", Arg::Text(&at)), ("volume", Arg::Text(&used)), ("rate", Arg::Text(&rate))])
}

fn lab_words(words: &Words, lab: &sumpbook_daybook::screen::LabRow) -> String {
    let drawn = words.short_day(lab.drawn.moment().with_timezone(&words.zone).date_naive());
    let hours = lab.hours_on_oil.map(|hours| words.hours(hours));
    let key = if hours.is_some() { "oil-lab-row" } else { "oil-lab-row-no-hours" };
    let hours = hours.unwrap_or_default();
    let head = words.with(
        key,
        &[("bottle", Arg::Text(&lab.bottle)), ("drawn", Arg::Text(&drawn)), ("hours", Arg::Text(&hours))],
    );
    let old = if lab.changed_since { format!(" ({})", words.t("lab-other-fill")) } else { String::new() };
    format!("{head}{old}: {}", lab.words)
}

/// Percent of the glass as it is drawn: what is out of view stands at its end.
fn percent(glass: Glass) -> f64 {
    match glass {
        Glass::Percent(percent) => f64::from(percent),
        Glass::BelowView => 0.0,
        Glass::AboveView => 100.0,
    }
}

fn levels_chart(words: &Words, rows: &[LevelRow], (from, to): (f64, f64)) -> Markup {
    let along: Vec<f64> = rows.iter().rev().map(|row| days(row.at.moment(), words.zone)).collect();
    let rows = rows.get(..rows.len().saturating_sub(before_shown(&along))).unwrap_or_default();
    let seen = rows.iter().filter(|row| row.glass.is_some() || row.before.is_some()).count();
    if seen == 0 {
        return html! {};
    }
    let (mut points, mut line, mut posts, mut along) = (Vec::new(), Vec::new(), Vec::new(), Vec::new());
    for row in rows.iter().rev() {
        let x = days(row.at.moment(), words.zone);
        along.push(x);
        let ends: Vec<f64> = [row.before, row.glass].into_iter().flatten().map(percent).collect();
        for level in &ends {
            points.push(Point { mark: Mark::Ring, x, y: *level, between: None, label: None });
            line.push((x, *level));
        }
        match row.what {
            What::Pour => {
                // A pour at which nobody looked has no place in the glass: the table alone tells it.
                let middle = match ends[..] {
                    [from, to] => Some(f64::midpoint(from, to)),
                    [one] => Some(one),
                    _ => None,
                };
                let pour = middle.map(|y| Point { mark: Mark::Pour, x, y, between: None, label: None });
                points.extend(pour);
            }
            What::Filled => posts.push((x, words.t("oil-chart-filled"))),
            What::Level => {}
        }
    }
    let pours = rows.iter().filter(|row| row.what == What::Pour).count();
    let last = rows.iter().find_map(|row| Some((row.at, row.glass?)));
    let last = last.map(|(at, glass)| format!("{} {}", told::glass(words, glass), words.short_day_at(at)));
    let count = |n: usize| Arg::Count(i64::try_from(n).unwrap_or(i64::MAX));
    let middle = [("from", Arg::Count(from.round() as i64)), ("to", Arg::Count(to.round() as i64))];
    let [lower, upper] = middle;
    let chart = Chart {
        says: words.with(
            "oil-levels-say",
            &[
                lower,
                upper,
                ("levels", count(seen)),
                ("pours", count(pours)),
                ("last", Arg::Text(last.as_deref().unwrap_or("-"))),
            ],
        ),
        y_name: words.t("oil-levels-up"),
        x: Scale::of_days(&along, 6, |day| words.tick_day(day)),
        y: Scale::of(&[0.0, 100.0], 5, |at| format!("{at:.0} %")),
        line,
        points,
        limits: vec![(to, words.with("oil-middle-to", &middle)), (from, String::new())],
        posts,
    };
    html! { h3 { (words.t("oil-levels")) } (chart.draw(words)) }
}

fn use_chart(words: &Words, fill: &OilUseRow, most: f64) -> Markup {
    let rate = |n: i64| n as f64 / 100.0;
    let points: Vec<Point> = fill
        .balances
        .iter()
        .rev()
        .filter_map(|balance| {
            Some(Point {
                mark: Mark::Ring,
                x: balance.at_hours.as_hours(),
                y: rate(balance.ml_per_hour_hundredths?),
                between: balance.between_hundredths.map(|(low, high)| (rate(low).max(0.0), rate(high))),
                label: None,
            })
        })
        .collect();
    let Some(newest) = points.last() else { return html! {} };
    let mut limits = Vec::new();
    if let Some(usual) = fill.usual_hundredths {
        limits.push((rate(usual), words.with("oil-usual-line", &[("rate", Arg::Text(&hundredths(usual)))])));
    }
    if let Some(limit) = fill.limit_hundredths {
        let (mg, at) = (most.to_string(), hundredths(limit));
        let args = [("mg", Arg::Text(&mg)), ("limit", Arg::Text(&at))];
        limits.push((rate(limit), words.with("oil-limit-is", &args)));
    }
    let up = points.iter().flat_map(|point| [point.y, point.between.map_or(point.y, |(_, high)| high)]);
    let up: Vec<f64> = [0.0].into_iter().chain(up).chain(limits.iter().map(|(at, _)| *at)).collect();
    let filled = fill.filled_hours.map(|hours| hours.as_hours());
    let along: Vec<f64> = points.iter().map(|point| point.x).chain(filled).collect();
    let newest = format!("{:.2}", newest.y);
    let count = i64::try_from(points.len()).unwrap_or(i64::MAX);
    let listed = words.listed(limits.iter().map(|(_, said)| said.clone()));
    let chart = Chart {
        says: words.with(
            "oil-use-says",
            &[("count", Arg::Count(count)), ("newest", Arg::Text(&newest)), ("limits", Arg::Text(&listed))],
        ),
        y_name: words.t("oil-use-up"),
        x: Scale::of(&along, 5, |at| words.hours(sumpbook_trade::Tenths((at * 10.0).round() as i64))),
        y: Scale::of(&up, 4, |at| format!("{at:.1}")),
        line: points.iter().map(|point| (point.x, point.y)).collect(),
        points,
        limits,
        posts: filled.map(|at| (at, words.t("oil-chart-filled"))).into_iter().collect(),
    };
    html! { h3 { (words.t("oil-use")) } (chart.draw(words)) }
}

/// The figures of both charts.
fn tables(words: &Words, oil: &Oil) -> Markup {
    let dash = || words.t("none-dash");
    let level = |glass: Option<Glass>| glass.map_or_else(dash, |glass| told::glass(words, glass));
    let heads = ["head-when", "head-what", "head-poured", "head-before-after", "head-hours", "head-finding"];
    let levels = oil.levels.iter().map(|row| {
        let what = words.t(&format!("oil-what-{}", key(&row.what)));
        let warmth =
            row.warmth.map(|warmth| words.or_plain(&format!("warmth-{}", key(&warmth)), &key(&warmth)));
        let stands = match row.before {
            Some(_) => {
                let (from, to) = (level(row.before), level(row.glass));
                words.with("from-to", &[("from", Arg::Text(&from)), ("to", Arg::Text(&to))])
            }
            None => level(row.glass),
        };
        vec![
            said(words.short_day_at(row.at)),
            said(words.listed([Some(what), warmth].into_iter().flatten())),
            said(row.poured.as_deref().map_or_else(dash, |poured| words.measure(poured))),
            said(stands),
            said(row.hours.map_or_else(dash, |hours| words.hours(hours))),
            said(finding(words, row)),
        ]
    });
    let levels =
        Table::new("levels-table", &words.t("oil-levels"), heads.map(|key| words.t(key))).rows(levels);
    let heads =
        ["head-when", "head-hours", "oil-head-over", "oil-head-used", "oil-head-rate", "head-finding"];
    let balances = oil.fill.iter().flat_map(|fill| &fill.balances).map(|balance| {
        let rate = balance.ml_per_hour_hundredths.map_or_else(dash, hundredths);
        let rate = match balance.between_hundredths {
            Some((low, high)) => format!("{rate} ({} - {})", hundredths(low), hundredths(high)),
            None => rate,
        };
        let settling = balance.settling.then(|| words.t("oil-settling-here"));
        let corrected = balance.corrected.then(|| words.t("oil-corrected"));
        let beside = words.listed([settling, corrected].into_iter().flatten());
        vec![
            said(words.short_day_at(balance.to)),
            said(words.hours(balance.at_hours)),
            said(words.hours(balance.hours)),
            said(volume(words, balance.used_ml)),
            said(rate),
            said(if beside.is_empty() { dash() } else { beside }),
        ]
    });
    let balances =
        Table::new("balances-table", &words.t("oil-use"), heads.map(|key| words.t(key))).rows(balances);
    html! {
        details class="figures" {
            summary { (words.t("chart-figures")) }
            (levels.draw())
            (balances.draw())
        }
    }
}

fn finding(words: &Words, row: &LevelRow) -> String {
    let astray = row.astray_ml.map(|ml| {
        let key = if ml > 0 { "oil-astray" } else { "oil-astray-more" };
        words.with(key, &[("volume", Arg::Text(&volume(words, ml.abs())))])
    });
    let rose = row.rose.then(|| words.t("oil-rose-here"));
    let all = words.listed([astray, rose].into_iter().flatten());
    if all.is_empty() { words.t("none-dash") } else { all }
}
