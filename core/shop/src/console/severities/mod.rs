//! What does each finding lock: every word of the checklist, the shop's to edit.

mod page;

use axum::Router;
use axum::response::Response;
use axum::routing::get;
use serde::Serialize;
use sumpbook_daybook::ledger::{Ledger, LedgerError};
use sumpbook_trade::Stamp;
use sumpbook_trade::checklist::{Again, Defect, Item, Severity, Template};
use sumpbook_trade::record::OwnSeverity;

use super::Console;
use super::form::Fields;
use super::place::Place;
use super::refused::Refused;
use super::visit::Visit;
use crate::ShopError;

/// Its page, and the forms on it.
pub(super) fn routes() -> Router<Console> {
    Router::new().route("/severities", get(severities).post(set))
}

/// The page and its JSON.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
struct SeveritiesView {
    known_at: Stamp,
    /// In walking order; what is answered before the walk comes first and has no stop's name.
    stops: Vec<StopOfThem>,
}

/// Items that are first looked at on one stop.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
struct StopOfThem {
    stop: Option<String>,
    items: Vec<ItemOfThem>,
}

/// One item with its words.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
struct ItemOfThem {
    item: String,
    /// Where it is written, its key and its text: "49 CFR 396.11".
    cites: String,
    stands_on: String,
    /// What may be chosen for it.
    choices: Vec<Severity>,
    words: Vec<WordOfThem>,
}

/// What one word locks.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
struct WordOfThem {
    word: String,
    severity: Severity,
    /// As the checklist has it; where the two differ the page says so.
    usual: Severity,
    /// The second time within days, of a word that is asked about again.
    again: Option<AgainOfThem>,
}

/// What a word locks the second time.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
struct AgainOfThem {
    days: u16,
    severity: Severity,
    usual: Severity,
}

/// `GET /severities`
async fn severities(visit: Visit) -> Result<Response, Refused> {
    visit.show(Place::Due, |ledger, now| read(ledger, now).map(Some), page::body).await
}

fn read(ledger: &Ledger, now: Stamp) -> Result<SeveritiesView, ShopError> {
    let own = ledger.fleet().checklist().map_err(LedgerError::from)?;
    let usual = Template::common_practice().map_err(LedgerError::from)?;
    let before = own.before_the_walk.iter().map(|id| (None, id));
    let walked = own.stops.iter().flat_map(|stop| stop.lines.iter().map(|line| (Some(&stop.id), &line.item)));
    let mut told: Vec<&String> = Vec::new();
    let mut stops: Vec<StopOfThem> = Vec::new();
    for (stop, id) in before.chain(walked) {
        let Some((item, shipped)) = own.item(id).zip(usual.item(id)) else { continue };
        if told.contains(&id) || item.defects.is_empty() {
            continue;
        }
        told.push(id);
        let cites = usual.citation(&item.cites).map(|citation| citation.text.clone());
        let of_them = item_of(item, shipped, cites.unwrap_or_default());
        match stops.last_mut().filter(|last| last.stop.as_ref() == stop) {
            Some(last) => last.items.push(of_them),
            None => stops.push(StopOfThem { stop: stop.cloned(), items: vec![of_them] }),
        }
    }
    Ok(SeveritiesView { known_at: now, stops })
}

fn item_of(item: &Item, usual: &Item, stands_on: String) -> ItemOfThem {
    let word = |Defect(word, severity): &Defect| WordOfThem {
        word: word.clone(),
        severity: *severity,
        usual: usual.severity(word).unwrap_or(*severity),
        again: again_of(item, usual, word),
    };
    let choices = Severity::ALL.into_iter().rev();
    ItemOfThem {
        item: item.id.clone(),
        cites: item.cites.clone(),
        stands_on,
        choices: choices.filter(|to| *to != Severity::Outlet || usual.is_of_an_outlet()).collect(),
        words: item.defects.iter().map(word).collect(),
    }
}

fn again_of(item: &Item, usual: &Item, word: &str) -> Option<AgainOfThem> {
    let of = |item: &Item| item.again.clone().filter(|again: &Again| again.word == word);
    let (own, usual) = of(item).zip(of(usual))?;
    Some(AgainOfThem { days: own.days, severity: own.severity, usual: usual.severity })
}

/// `POST /severities`: those of the words that are named, `s:item:word` and `a:item:word` for the second time; every
/// other word stays as it is.
async fn set(visit: Visit, fields: Fields) -> Result<Response, Refused> {
    let mut changed: Vec<OwnSeverity> = Vec::new();
    for (name, given) in &fields.0 {
        let Some((item, word)) = name.strip_prefix("s:").and_then(|rest| rest.split_once(':')) else {
            continue;
        };
        let again = fields.text(&format!("a:{item}:{word}")).map(severity).transpose()?;
        changed.push(OwnSeverity { item: item.into(), word: word.into(), severity: severity(given)?, again });
    }
    if changed.is_empty() {
        return Err(Refused::Asked("severities-none"));
    }
    let why = fields.owned("why");
    visit
        .write("/severities", move |shop, hand| {
            shop.change_severities(changed, why.as_deref(), hand).map(|_| ())
        })
        .await
}

fn severity(given: &str) -> Result<Severity, Refused> {
    let known = Severity::ALL.into_iter().find(|severity| severity.key() == given);
    known.ok_or(Refused::Asked("severities-unknown"))
}
