//! What lies on the trucks, and what to load: every pour is taken out of what was counted.

mod page;

pub(super) use page::line;

use axum::Router;
use axum::response::Response;
use axum::routing::get;
use serde::Serialize;
use sumpbook_trade::Stamp;
use sumpbook_trade::fluid::Fluid;
use sumpbook_trade::record::StockCounted;

use super::Console;
use super::form::Fields;
use super::place::Place;
use super::refused::Refused;
use super::visit::Visit;
use super::volume;
use crate::sheet::key;
use crate::stock::{Stock, count_stock, stock};

/// Its page, and the form on it.
pub(super) fn routes() -> Router<Console> {
    Router::new().route("/stock", get(show).post(count))
}

/// The page and its JSON.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
struct StockView {
    known_at: Stamp,
    #[serde(flatten)]
    stock: Stock,
    /// Door numbers.
    units: Vec<String>,
}

/// `GET /stock`
async fn show(visit: Visit) -> Result<Response, Refused> {
    visit
        .show(
            Place::Due,
            |ledger, now| {
                let fleet = ledger.fleet();
                let known_at = Stamp::from(now.moment().with_timezone(&fleet.zone).fixed_offset());
                let mut units: Vec<String> = fleet.trucks.values().map(|truck| truck.door.clone()).collect();
                units.sort();
                Ok(Some(StockView { known_at, stock: stock(ledger, now)?, units }))
            },
            page::body,
        )
        .await
}

/// `POST /stock`: so much lies on a truck from now on.
async fn count(visit: Visit, fields: Fields) -> Result<Response, Refused> {
    let unit = fields.owned("unit").ok_or(Refused::Asked("stock-no-unit"))?;
    let fluid = fields.text("fluid").and_then(|word| Fluid::ALL.iter().find(|fluid| key(*fluid) == word));
    let fluid = *fluid.ok_or(Refused::Asked("stock-no-fluid"))?;
    let counted = fields.text("volume").and_then(volume::read).filter(|figure| figure.digits >= 0);
    let volume = counted.ok_or(Refused::Asked("stock-no-volume"))?;
    if volume.litres().is_some_and(|litres| litres > StockCounted::MOST_LITRES) {
        return Err(Refused::Asked("stock-too-much"));
    }
    visit
        .write("/stock", move |shop, hand| {
            let truck = shop.unit(&unit)?;
            count_stock(shop, truck, StockCounted { fluid, volume }, hand)
        })
        .await
}
