//! `serve`: the hub runs until it is asked to end.

use std::path::Path;

use super::args::Serve;
use super::{CommandError, out};
use crate::hub::{self, Hub, HubClock, HubError, ServeOptions};
use crate::{Shop, ShopError};

/// Opens the shop, listens, and says where.
///
/// # Errors
/// As opening the shop, and as [`hub::serve`].
pub(super) fn serve(folder: &Path, args: &Serve, json: bool) -> Result<(), CommandError> {
    let shop = Shop::open(folder)?;
    if args.clock.is_some() && !shop.ledger.fleet().demo {
        return Err(ShopError::ReceivedGiven.into());
    }
    let clock = args.clock.map_or_else(HubClock::real, HubClock::beginning_at);
    let threads = tokio::runtime::Builder::new_multi_thread().enable_all().build();
    let threads = threads.map_err(|error| HubError::Thread(error.to_string()))?;
    threads.block_on(async {
        let options = ServeOptions {
            address: args.address.clone(),
            a_second: args.requests,
            closes_days: !args.close_by_hand,
        };
        let hub = Hub::over(shop, clock)?;
        let running = hub::serve(hub.clone(), &options).await?;
        let address = running.address.to_string();
        let shown = hub.shown_fingerprint()?;
        out::line(&match json {
            true => serde_json::json!({ "address": address, "browsers": shown }).to_string(),
            false => format!(
                "The hub answers at https://{address}. Ctrl-C ends it.\n\
                 A browser asks about its certificate, whose SHA-256 is\n  {shown}"
            ),
        })?;
        asked_to_end().await;
        running.stop().await?;
        if !json {
            out::line("Stopped. What was acknowledged is kept.")?;
        }
        Ok(())
    })
}

/// Ctrl-C, or the system's own request.
pub(super) async fn asked_to_end() {
    let interrupted = tokio::signal::ctrl_c();
    #[cfg(unix)]
    {
        let terminate = tokio::signal::unix::signal(tokio::signal::unix::SignalKind::terminate());
        if let Ok(mut terminate) = terminate {
            tokio::select! {
                _ = interrupted => {}
                _ = terminate.recv() => {}
            }
            return;
        }
    }
    let _ = interrupted.await;
}
