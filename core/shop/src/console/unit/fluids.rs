//! What was poured into one unit: by month, and each pour with the level before and after.

use std::collections::BTreeMap;

use chrono::{Datelike, NaiveDate};
use maud::{Markup, html};
use serde::Serialize;
use sumpbook_daybook::judgement::Judged;
use sumpbook_daybook::text::Arg;
use sumpbook_trade::record::{Glass, Pour};
use sumpbook_trade::{EntryId, Fact, FactKind, Stamp, Tenths};

use super::told;
use super::view::Reading;
use crate::ShopError;
use crate::console::stock::line as on_truck;
use crate::console::table::{Table, name, said};
use crate::console::words::Words;
use crate::sheet::{key, poured};
use crate::stock::{self, StockRow};

/// As many top-ups are looked through, newest first: more than a unit has in years.
const MOST: i64 = 1_000;
/// As many pours are listed one by one.
const LISTED: usize = 30;

/// What was poured.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct Fluids {
    /// Sums by fluid and month, newest month first.
    pub(super) months: Vec<Month>,
    /// The newest pours.
    pub(super) pours: Vec<PourRow>,
    /// What lies on the truck.
    pub(super) stock: Vec<StockRow>,
}

/// One fluid in one month.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct Month {
    /// Its first day.
    pub(super) month: NaiveDate,
    /// The fluid: a key of the texts.
    pub(super) fluid: String,
    /// How often.
    pub(super) times: usize,
    /// How much in all, by the units it was given in.
    pub(super) poured: String,
}

/// One top-up.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct PourRow {
    pub(super) entry: EntryId,
    pub(super) at: Stamp,
    pub(super) fluid: String,
    /// Grade on the drum.
    pub(super) grade: Option<String>,
    /// Oil family on the drum: a key of the texts.
    pub(super) family: Option<String>,
    pub(super) poured: String,
    pub(super) before: Option<Glass>,
    pub(super) after: Option<Glass>,
    /// Compressor hours then.
    pub(super) hours: Option<Tenths>,
    pub(super) who: Option<String>,
}

pub(super) fn read(of: &Reading<'_>) -> Result<Fluids, ShopError> {
    let mut sums: BTreeMap<(NaiveDate, String), (usize, Vec<Pour>)> = BTreeMap::new();
    let mut pours = Vec::new();
    for (fact, entry) in of.ledger.unit_entries(of.truck, FactKind::TopUp, MOST)? {
        if fact.judged != Judged::Counts || fact.at_ms > of.yard.cut_ms {
            continue;
        }
        let Fact::TopUp(top_up) = entry.fact else { continue };
        let fluid = key(&top_up.fluid);
        let day = of.yard.day_of(entry.at.moment());
        let sum = sums.entry((day.with_day(1).unwrap_or(day), fluid.clone())).or_default();
        sum.0 = sum.0.saturating_add(1);
        sum.1.extend(top_up.pours.iter().cloned());
        if pours.len() < LISTED {
            pours.push(PourRow {
                entry: entry.id,
                at: of.yard.stamp(entry.at.moment()),
                fluid,
                grade: top_up.grade,
                family: top_up.family.map(|family| key(&family)),
                poured: poured(&top_up.pours),
                before: top_up.before,
                after: top_up.after,
                hours: entry.hours,
                who: of.yard.name(of.ledger, entry.person),
            });
        }
    }
    let months = sums.into_iter().rev().map(|((month, fluid), (times, pours))| Month {
        month,
        fluid,
        times,
        poured: poured(&pours),
    });
    let stock = stock::of_unit(of.ledger, of.yard, &of.ledger.fleet().door(of.truck), of.truck)?;
    Ok(Fluids { months: months.collect(), pours, stock })
}

pub(super) fn draw(words: &Words, fluids: &Fluids) -> Markup {
    let stock = html! {
        @for said in fluids.stock.iter().filter_map(|row| on_truck(words, row)) {
            p { (said) ", " a href="/stock" { (words.t("stock-open")) } }
        }
    };
    if fluids.pours.is_empty() {
        return html! { (stock) p { (words.t("nothing-poured")) } };
    }
    let fluid = |fluid: &str| words.or_plain(&format!("fluid-{fluid}"), fluid);
    let months = fluids.months.iter().map(|month| {
        let times = Arg::Count(i64::try_from(month.times).unwrap_or(i64::MAX));
        vec![
            said(words.month(month.month)),
            said(fluid(&month.fluid)),
            said(words.measure(&month.poured)),
            said(words.with("poured-times", &[("count", times)])),
        ]
    });
    let heads = ["head-month", "head-fluid", "head-poured", "head-times"].map(|key| words.t(key));
    let by_month = Table::new("fluids-table", &words.t("part-fluids"), heads).rows(months).draw();
    let level = |level: Option<Glass>| level.map_or_else(|| words.t("not-said"), |g| told::glass(words, g));
    let pours = fluids.pours.iter().map(|pour| {
        let family = pour.family.as_deref().map(|family| words.or_plain(&format!("family-{family}"), family));
        let label = [Some(fluid(&pour.fluid)), family, pour.grade.clone()].into_iter().flatten();
        let (before, after) = (level(pour.before), level(pour.after));
        vec![
            said(words.at(pour.at)),
            said(words.listed(label)),
            said(words.measure(&pour.poured)),
            said(words.with("from-to", &[("from", Arg::Text(&before)), ("to", Arg::Text(&after))])),
            said(pour.hours.map_or_else(|| words.t("none-dash"), |hours| words.hours(hours))),
            name(&words.who(pour.who.as_deref())),
        ]
    });
    let heads = ["head-when", "head-fluid", "head-poured", "head-before-after", "head-hours", "head-who"];
    html! {
        (stock)
        (by_month)
        h3 { (words.t("pours-newest")) }
        (Table::new("pours-table", &words.t("pours-newest"), heads.map(|key| words.t(key))).rows(pours).draw())
    }
}
