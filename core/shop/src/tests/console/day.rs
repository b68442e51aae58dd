//! The day sheet's page: closing, versions, the mark of what came in since, and the board's print.

use sumpbook_trade::checklist::Severity;
use sumpbook_trade::record::DriveWhat;

use super::Browser;
use crate::console::session::Role;
use crate::tests::yard::*;

const FIVE: &str = "2026-10-20T17:00:00-06:00";

fn tuesday() -> Yard {
    let mut yard = Yard::new();
    let ok = walk(vec![answer("lamps-stop", Some("left"), None, "")], 6);
    yard.sign(1, "Bettina", "TH-02", "2026-10-20T06:41:00-06:00", ok);
    let out = answer("lamps-stop", Some("left"), Some(Severity::Road), "out");
    yard.sign(2, "Hattie", "TH-02", "2026-10-20T06:44:00-06:00", walk(vec![out], 6));
    yard.sign(1, "Bettina", "TH-02", "2026-10-20T06:50:00-06:00", drive(DriveWhat::LeftYard));
    yard.exchange(2, "2026-10-20T11:05:00-06:00");
    yard.exchange(1, "2026-10-20T15:50:00-06:00");
    yard
}

#[tokio::test(flavor = "multi_thread")]
async fn a_day_is_closed_from_its_page_and_the_version_is_kept_as_it_was_answered() {
    let browser = Browser::of(tuesday(), FIVE).await;
    let open = browser.get("/").await.whole();
    assert!(open.words().contains("Close as version 1"), "{}", open.words());
    assert!(open.words().contains("open"), "{}", open.words());
    assert_eq!(browser.post_bare("/day/2026-10-20/close", "").await.status, 403);
    let closed = browser.post("/day/2026-10-20/close", "").await;
    assert_eq!((closed.status.as_u16(), closed.to.as_deref()), (303, Some("/day/2026-10-20")));
    let after = browser.get("/day/2026-10-20").await.whole();
    assert!(after.words().contains("Closed once"), "{}", after.words());
    assert!(after.words().contains("closed by Ilse Marrow"), "{}", after.words());
    assert!(after.words().contains("Close as version 2"), "{}", after.words());
    let version = browser.get("/day/2026-10-20?version=1").await.whole();
    assert!(version.words().contains("version 1, closed"), "{}", version.words());
    assert!(!version.body.contains("id=\"came-in\""), "a closed version is not asked about again");
    assert_eq!(browser.get("/day/2026-10-20?version=2").await.status, 404);
    assert_eq!(browser.post("/day/2026-10-21/close", "").await.status, 422, "it has not begun");
}

#[tokio::test(flavor = "multi_thread")]
async fn a_reader_sees_no_form_and_closes_nothing() {
    let (shop, folder) = tuesday().into_shop();
    let reader = Browser::over(shop, folder, FIVE, Role::Reader).await;
    let page = reader.get("/").await.whole();
    assert!(!page.body.contains("/close"), "{}", page.body);
    assert_eq!(reader.post("/day/2026-10-20/close", "").await.status, 403);
}

#[tokio::test(flavor = "multi_thread")]
async fn what_comes_in_is_counted_and_changes_nothing_under_the_hand() {
    let browser = Browser::of(tuesday(), FIVE).await;
    let page = browser.get("/day/2026-10-20").await.whole();
    let mark = page.body.split("id=\"mark\" href=\"").nth(1).unwrap().split('"').next().unwrap().to_owned();
    assert_eq!(browser.get(&mark).await.json()["new"], 0);
    assert!(page.words().contains("new since 17:00: show"), "{}", page.words());
    let form = "unit=TH-02&item=lamps-stop%2Fleft&verdict=repaired&words=new+bulb";
    assert_eq!(browser.post("/certificates", form).await.status, 303);
    assert_eq!(browser.get(&mark).await.json()["new"], 1);
}

#[tokio::test(flavor = "multi_thread")]
async fn a_defect_leads_to_what_can_be_done_and_the_board_has_no_name_beside_it() {
    let browser = Browser::of(tuesday(), FIVE).await;
    let page = browser.get("/day/2026-10-20?view=evening").await.whole();
    for to in [
        "/certificates?unit=TH-02&amp;item=lamps-stop/left",
        "/due?unit=TH-02&amp;defect=lamps-stop/left#visit",
        "/due?unit=TH-02&amp;defect=lamps-stop/left#wait",
        "/units/TH-02",
    ] {
        assert!(page.body.contains(&format!("href=\"{to}\"")), "{to}");
    }
    // On the board's print whatever is named is left out: every person's name of the sections stands so.
    let sections = page.body.split("<section").skip(1).collect::<String>();
    let printed: String = sections
        .split("<span class=\"named\">")
        .enumerate()
        .map(|(n, part)| if n == 0 { part } else { part.split_once("</span>").unwrap().1 })
        .collect::<String>()
        .split("<td role=\"cell\" class=\"named\">")
        .enumerate()
        .map(|(n, part)| if n == 0 { part } else { part.split_once("</td>").unwrap().1 })
        .collect();
    for name in PEOPLE.iter().filter(|(name, _)| *name != "Ilse Marrow") {
        assert!(!printed.contains(name.0), "{} stands on the board", name.0);
    }
    assert!(page.body.contains("class=\"board\"") && page.body.contains("/board.css\""));
    let css = include_str!("../../../face/board.css");
    assert!(css.contains(".board .named { display: none") && css.contains("size: landscape"), "{css}");
}

#[tokio::test(flavor = "multi_thread")]
async fn the_morning_signs_the_next_certificate() {
    let browser = Browser::of(tuesday(), "2026-10-21T06:00:00-06:00").await;
    let page = browser.get("/").await.whole();
    assert!(page.body.contains("href=\"/certificates\""), "{}", page.body);
    assert!(page.words().contains("Sign the next"), "{}", page.words());
    for path in ["/", "/day/2026-10-20", "/units", "/certificates"] {
        browser.get(path).await.whole();
    }
    let spanish = browser.speaks("es");
    for path in ["/", "/day/2026-10-20", "/units", "/units?table=true", "/certificates"] {
        spanish.get(path).await.whole();
    }
}
