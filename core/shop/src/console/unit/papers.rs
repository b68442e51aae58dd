//! Papers of one unit: those with their dates, then its certificates, newest first.

use axum::extract::Path;
use axum::response::Response;
use maud::{Markup, html};
use serde::Serialize;
use sumpbook_daybook::judgement::Judged;
use sumpbook_trade::{EntryId, Fact, FactKind, Stamp};

use super::view::Reading;
use crate::ShopError;
use crate::console::form::Fields;
use crate::console::language::escaped;
use crate::console::papers as told;
use crate::console::refused::Refused;
use crate::console::table::{Table, name, said};
use crate::console::visit::{Telling, Visit};
use crate::console::words::Words;
use crate::papers::{DatedPaper, annual_inspection, renew_annual_inspection};
use crate::sheet::key;

/// As many are listed.
const MOST: i64 = 100;

/// One certificate.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct Paper {
    pub(super) entry: EntryId,
    pub(super) at: Stamp,
    /// The item certified: a key of the texts.
    pub(super) item: String,
    pub(super) place: Option<String>,
    /// `repaired`, `not-needed`.
    pub(super) verdict: String,
    /// The work done, or the reason.
    pub(super) words: String,
    pub(super) who: Option<String>,
    /// It counts; otherwise it is shown and struck.
    pub(super) counts: bool,
}

pub(super) fn read(of: &Reading<'_>) -> Result<Vec<Paper>, ShopError> {
    let mut papers = Vec::new();
    for (fact, entry) in of.ledger.unit_entries(of.truck, FactKind::Certificate, MOST)? {
        let Fact::Certificate(certificate) = entry.fact else { continue };
        papers.push(Paper {
            entry: entry.id,
            at: of.yard.stamp(entry.at.moment()),
            item: certificate.defect.item,
            place: certificate.defect.place,
            verdict: key(&certificate.verdict),
            words: certificate.words,
            who: of.yard.name(of.ledger, entry.person),
            counts: fact.judged == Judged::Counts,
        });
    }
    Ok(papers)
}

/// Papers that hold until a day; none of a truck that is not registered.
pub(super) fn dated(of: &Reading<'_>) -> Vec<DatedPaper> {
    let truck = of.ledger.fleet().trucks.get(&of.truck);
    truck.map(|truck| annual_inspection(truck, of.yard.day)).into_iter().collect()
}

/// `POST /units/TH-01/papers`: until which day its annual inspection holds.
pub(super) async fn keep(
    visit: Visit,
    Path(door): Path<String>,
    fields: Fields,
) -> Result<Response, Refused> {
    let until = fields.day("annual-inspection")?.ok_or(Refused::Asked("papers-no-day"))?;
    let then = format!("/units/{}#papers", escaped(&door));
    visit
        .write(then, move |shop, hand| {
            let truck = shop.unit(&door)?;
            renew_annual_inspection(shop, truck, until, hand).map(|_| ())
        })
        .await
}

pub(super) fn draw(telling: &Telling, here: &str, dated: &[DatedPaper], papers: &[Paper]) -> Markup {
    html! {
        @for paper in dated {
            p class=[(matches!(paper.state.as_str(), "runs-out" | "ran-out")).then_some("strip")] {
                (told::said(telling, paper))
            }
        }
        @if telling.writes() && !dated.is_empty() {
            form method="post" action={ (here) "/papers" } class="inline" {
                (telling.token())
                label for="annual-inspection" { (telling.t("one-annual")) }
                input id="annual-inspection" name="annual-inspection" type="date" required;
                button { (telling.t("papers-keep")) }
            }
        }
        (certificates(telling, papers))
    }
}

fn certificates(words: &Words, papers: &[Paper]) -> Markup {
    if papers.is_empty() {
        return html! { p { (words.t("no-certificate-yet")) } };
    }
    let heads = ["head-when", "head-what", "head-certified", "head-in-words", "head-who", "head-print"];
    let rows = papers.iter().map(|paper| {
        let verdict = words.or_plain(&format!("verdict-{}", paper.verdict), &paper.verdict);
        vec![
            said(words.at(paper.at)),
            said(words.item(&paper.item, paper.place.as_deref())),
            html! { @if paper.counts { (verdict) } @else { s { (verdict) } } },
            said(&paper.words),
            name(&words.who(paper.who.as_deref())),
            html! { a href=(format!("/certificates/{}/slip", paper.entry)) { (words.t("print-slip")) } },
        ]
    });
    Table::new("papers-table", &words.t("papers-certificates"), heads.map(|key| words.t(key)))
        .rows(rows)
        .draw()
}
