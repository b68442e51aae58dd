//! The hub over real TLS, reached as a phone reaches it.

use std::time::{Duration, Instant};

use sumpbook_daybook::gate::DeviceKey;
use sumpbook_daybook::phone::online::{Hub as Way, Unreached};
use sumpbook_trade::Stamp;

use super::{Hub, HubClock, Running, ServeOptions, serve};
use crate::{InitOptions, Shop};

fn shop(folder: &std::path::Path) -> Shop {
    let options = InitOptions {
        name: "Tern Hollow Water".to_owned(),
        zone: "America/Denver".to_owned(),
        demo: true,
        now: Stamp::from_parts(1_791_000_000_000, 0).unwrap(),
    };
    Shop::init(folder, &options).unwrap()
}

async fn running(folder: &std::path::Path) -> (Hub, Running) {
    let hub = Hub::over(shop(folder), HubClock::real()).unwrap();
    let options = ServeOptions { address: "127.0.0.1:0".to_owned(), ..ServeOptions::default() };
    let running = serve(hub.clone(), &options).await.unwrap();
    (hub, running)
}

fn soon() -> Instant {
    Instant::now() + Duration::from_secs(10)
}

#[tokio::test(flavor = "multi_thread")]
async fn a_phone_that_knows_the_shops_key_is_answered_and_another_key_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    let (hub, running) = running(folder.path()).await;
    let (address, root) = (running.address.to_string(), hub.root());
    tokio::task::spawn_blocking(move || {
        let way = Way::new(&address, root.fleet, root.shop).unwrap();
        let said = way.exchange(b"nothing", soon()).unwrap();
        assert!((400..500).contains(&said.status), "{said:?}");
        let stranger = DeviceKey::generate().unwrap().public();
        let other = Way::new(&address, root.fleet, stranger).unwrap();
        let refused = other.exchange(b"nothing", soon());
        assert!(matches!(refused, Err(Unreached::OtherKey)), "{refused:?}");
    })
    .await
    .unwrap();
    running.stop().await.unwrap();
}

#[tokio::test(flavor = "multi_thread")]
async fn a_hub_that_was_switched_off_closes_the_days_that_ended_meanwhile() {
    let folder = tempfile::tempdir().unwrap();
    // Made on the 3rd in the yard, begun again on the 6th at noon.
    let clock = HubClock::beginning_at("2026-10-06T12:00:00-06:00".parse().unwrap());
    let hub = Hub::over(shop(folder.path()), clock).unwrap();
    let options =
        ServeOptions { address: "127.0.0.1:0".to_owned(), closes_days: true, ..ServeOptions::default() };
    let running = serve(hub.clone(), &options).await.unwrap();
    let until = soon();
    let days = loop {
        let closed = hub.read(|ledger| Ok(ledger.store().newest_closings()?)).await.unwrap();
        let days: Vec<String> = closed.into_iter().map(|(day, ..)| day).collect();
        if days.last().is_some_and(|day| day == "2026-10-05") {
            break days;
        }
        assert!(Instant::now() < until, "{days:?}");
        tokio::time::sleep(Duration::from_millis(50)).await;
    };
    assert_eq!(days.first().map(String::as_str), Some("2026-10-02"), "{days:?}");
    running.stop().await.unwrap();
}

#[tokio::test(flavor = "multi_thread")]
async fn the_calendar_feed_is_read_by_its_secret_alone() {
    let folder = tempfile::tempdir().unwrap();
    let (hub, running) = running(folder.path()).await;
    let token = hub.write(crate::calendar_feed::make_address).await.unwrap();
    let asked = |file: String| {
        let hub = hub.clone();
        async move {
            let answer = super::calendar::feed(
                axum::extract::State(hub),
                axum::extract::Path(file),
                axum::extract::Query(super::calendar::Asked::default()),
            );
            let answer = answer.await;
            let kind =
                answer.headers().get("content-type").and_then(|kind| kind.to_str().ok()).unwrap().to_owned();
            (answer.status().as_u16(), kind)
        }
    };
    assert_eq!(asked(format!("{token}.ics")).await, (200, "text/calendar; charset=utf-8".to_owned()));
    for wrong in [format!("{token}x.ics"), ".ics".to_owned(), token.clone(), format!("{}.ics", &token[1..])] {
        assert_eq!(asked(wrong).await.0, 404);
    }
    hub.write(crate::calendar_feed::end_address).await.unwrap();
    assert_eq!(asked(format!("{token}.ics")).await.0, 404);
    running.stop().await.unwrap();
}
