//! What the shop's week asks: parts and oil, papers with their dates, the bays, what came in, pages to type.

use axum::http::StatusCode;
use sumpbook_trade::checklist::Severity;
use sumpbook_trade::fluid::OilFamily;
use sumpbook_trade::record::SetProfile;
use sumpbook_trade::{Figure, Unit};

use super::paper::jpeg_of_a_camera;
use super::{Desk, no_key_shows};
use crate::NewSet;
use crate::console::session::Role;
use crate::tests::yard::{Yard, answer, walk};

const MORNING: &str = "2026-10-20T06:00:00-06:00";
const EVENING: &str = "2026-10-20T17:00:00-06:00";

/// TH-08's set holds six quarts of mineral oil.
fn yard() -> Yard {
    let mut yard = Yard::new();
    let hand = yard.hand("Ilse", "2026-10-18T13:00:00-06:00");
    let profile = SetProfile {
        oil_family: Some(OilFamily::Mineral),
        oil_grade: Some("VG 46".into()),
        oil_volume: Figure::parse("6", Unit::Quart).ok(),
        ..SetProfile::unknown()
    };
    let truck = yard.truck("TH-08");
    yard.shop.add_set(NewSet { serial: None, on: Some(truck), profile }, &hand).unwrap();
    yard
}

#[tokio::test]
async fn the_week_is_laid_out_with_parts_and_whole_jugs() {
    let desk = Desk::of(yard(), EVENING).await;
    let visit =
        [("tick", "oil-and-filters@TH-08"), ("tick", "cooler-and-scavenge@TH-08"), ("day", "2026-10-22")];
    assert_eq!(desk.post("/due/plan", &visit).await.status, StatusCode::SEE_OTHER);
    let due = desk.get("/due").await;
    due.says("6 qt mineral VG 46, 2 jugs").says("no numbers on record for");
    due.says("mineral VG 46: 6.00 qt (5.68 L) in all, 2 jugs of 1 gal, for TH-08.");
    no_key_shows(&due);
    let es = desk.get_in("/due", "es").await;
    es.says("6 qt mineral VG 46, 2 garrafas");
    no_key_shows(&es);
    // What was used once is what is laid out the next time.
    let done = [
        ("unit", "TH-08"),
        ("task", "oil-and-filters"),
        ("hours", "611.0"),
        ("day", "2026-10-20"),
        ("time", "15:10"),
        ("parts", "F-118\r\nE-20"),
        ("oil-volume", "8.0"),
        ("oil-unit", "qt"),
    ];
    assert_eq!(desk.post("/due/service", &done).await.status, StatusCode::SEE_OTHER);
    assert_eq!(desk.post("/due/plan", &visit).await.status, StatusCode::SEE_OTHER);
    desk.get("/due").await.says("F-118, E-20").says("8.0 qt mineral VG 46, 2 jugs");
}

#[tokio::test]
async fn papers_have_their_dates_and_a_warning_and_get_newer_ones() {
    let desk = Desk::of(yard(), EVENING).await;
    desk.get("/units/TH-01").await.says("annual inspection: its date is not on record");
    desk.get("/due").await.says_not("annual inspection");
    let to = |day: &'static str| [("annual-inspection", day)];
    let kept = desk.post("/units/TH-01/papers", &to("2026-11-19")).await;
    assert_eq!((kept.status, kept.to.as_str()), (StatusCode::SEE_OTHER, "/units/TH-01#papers"));
    let warned = "annual inspection runs out: 30 days left, until 19 Nov 2026";
    desk.get("/units/TH-01").await.says(&format!("<p class=\"strip\">{warned}"));
    desk.get("/due").await.says(warned);
    desk.get_in("/due", "es").await.says("inspección anual por vencer: quedan 30 días");
    desk.get("/units/TH-01/cab-report").await.says("Next annual inspection by");
    desk.post("/units/TH-01/papers", &to("2027-11-19")).await;
    desk.get("/units/TH-01")
        .await
        .says("annual inspection holds until 19 Nov 2027")
        .says_not("class=\"strip\">annual");
    desk.get("/due").await.says_not(warned);
    let json = desk.get("/units/TH-01.json").await.json();
    assert_eq!(json["dated-papers"][0]["state"], "holds");
    desk.post("/units/TH-01/papers", &to("2026-10-19")).await;
    desk.get("/units/TH-01").await.says("annual inspection ran out on 19 Oct 2026");
    // Who sends a truck out in the morning reads it first; the evening has it beside what is due.
    let morning = desk.get("/day/2026-10-20?view=morning").await;
    morning.says("Annual inspection ran out: TH-01.").says("annual inspection ran out on 19 Oct 2026");
    let evening = desk.get("/day/2026-10-20?view=evening").await;
    evening.says("1 paper ran out or does within 30 days").says("annual inspection ran out on 19 Oct 2026");
    let spanish = desk.get_in("/day/2026-10-20?view=morning", "es").await;
    spanish.says("Inspección anual vencida: TH-01.");
    no_key_shows(&spanish);
    let none = desk.post("/units/TH-01/papers", &[]).await;
    assert_eq!(none.status, StatusCode::UNPROCESSABLE_ENTITY);
    none.says("The paper has no date.");
    assert_eq!(
        desk.post("/units/TH-99/papers", &to("2027-11-19")).await.status,
        StatusCode::UNPROCESSABLE_ENTITY
    );
    let reader = Desk::with(yard(), EVENING, "Edric Loomis", Role::Reader).await;
    reader.get("/units/TH-01").await.says_not("/units/TH-01/papers\"");
    assert_eq!(reader.post("/units/TH-01/papers", &to("2027-11-19")).await.status, StatusCode::FORBIDDEN);
}

#[tokio::test]
async fn the_morning_says_what_came_in_what_is_in_the_bays_and_what_is_to_be_typed() {
    let mut yard = yard();
    let hand = yard.hand("Ilse", "2026-10-19T08:00:00-06:00");
    let wait = |over| sumpbook_trade::record::WaitingForPart {
        task: Some("oil-and-filters".into()),
        part: "filter F-118".into(),
        promised: None,
        over,
        defect: None,
    };
    let truck = yard.truck("TH-08");
    crate::wait::wait_for_part(&mut yard.shop, truck, wait(false), &hand).unwrap();
    let desk = Desk::of(yard, MORNING).await;
    let morning = "/day/2026-10-20?view=morning";
    let page = desk.get(morning).await;
    page.says_not("parts in:").says("none kept at the desk");
    let came = [("tick", "oil-and-filters@TH-08"), ("part", "filter F-118"), ("over", "yes")];
    assert_eq!(desk.post("/due/wait", &came).await.status, StatusCode::SEE_OTHER);
    let visit = [("tick", "oil-and-filters@TH-08"), ("day", "2026-10-20"), ("bay", "bay 2")];
    assert_eq!(desk.post("/due/plan", &visit).await.status, StatusCode::SEE_OTHER);
    let page = desk.get(morning).await;
    page.says("parts in: 1").says("filter F-118 came in").says("6 qt mineral VG 46, 2 jugs").says("bay 2");
    no_key_shows(&page);
    no_key_shows(&desk.get_in(morning, "es").await);
    // A visit that moves is in that day's bays alone.
    let moved = [("tick", "oil-and-filters@TH-08"), ("day", "2026-10-21")];
    assert_eq!(desk.post("/due/plan", &moved).await.status, StatusCode::SEE_OTHER);
    assert_eq!(
        desk.get(&morning.replace('?', ".json?")).await.json()["sheet"]["sections"]["in-the-bays"]["count"],
        0
    );

    // A page of paper whose photo is at the desk is counted until a page typed in names it, or it is left out.
    let photo = jpeg_of_a_camera();
    let sent = desk.post_file("/paper/photo", &[("unit", "TH-05")], ("photo", &photo)).await;
    let digest = sent.to.split("photo=").nth(1).unwrap().to_owned();
    desk.get(morning).await.says("<span class=\"count\">1</span> Paper pages to type");
    let choose = desk.get("/paper").await;
    choose.says(&format!("name=\"kept\" value=\"{digest}\"")).says(&format!("/photo/{digest}"));
    no_key_shows(&choose);
    let fields = [("unit", "TH-05"), ("kept", digest.as_str())];
    let again = desk.post_file("/paper/photo", &fields, ("photo", b"")).await;
    assert_eq!(again.to, format!("/paper/TH-05?photo={digest}"));
    let left = desk.post("/paper/photo/leave", &[("photo", &digest)]).await;
    assert_eq!((left.status, left.to.as_str()), (StatusCode::SEE_OTHER, "/paper#pages"));
    desk.get(morning).await.says("<span class=\"count\">0</span> Paper pages to type");
    assert_eq!(desk.post("/paper/photo/leave", &[("photo", &digest)]).await.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn the_board_ends_with_tomorrow() {
    let mut yard = yard();
    let lamp = answer("lamps-stop", Some("left"), Some(Severity::Road), "out");
    yard.sign(1, "Hattie", "TH-02", "2026-10-20T06:44:00-06:00", walk(vec![lamp], 7));
    yard.exchange(1, "2026-10-20T07:00:00-06:00");
    let desk = Desk::of(yard, EVENING).await;
    let evening = "/day/2026-10-20?view=evening";
    desk.get(evening).await.says("Tomorrow: not to go out TH-02.");
    let visit = [("tick", "oil-and-filters@TH-08"), ("day", "2026-10-21")];
    assert_eq!(desk.post("/due/plan", &visit).await.status, StatusCode::SEE_OTHER);
    desk.get(evening).await.says("Tomorrow: not to go out TH-02; bay TH-08.");
    desk.get_in(evening, "es").await.says("Mañana no sale: TH-02; en la bahía: TH-08.");
    // So it stands on the board of the closed day, too.
    assert_eq!(desk.post("/day/2026-10-20/close", &[]).await.status, StatusCode::SEE_OTHER);
    desk.get("/day/2026-10-20?version=1").await.says("Tomorrow: not to go out TH-02; bay TH-08.");
    let earlier = desk.get("/day/2026-10-19?view=evening").await;
    earlier.says("Tomorrow: nothing locked, no visit planned.");
    earlier.says("Locked at the end of that day").says_not("Locked now");
    desk.get(evening).await.says("Locked now");
}

#[tokio::test]
async fn what_changed_between_versions_is_told_in_the_readers_language_and_the_sheets_stay() {
    let mut yard = yard();
    yard.close("2026-10-20", "2026-10-20T17:00:00-06:00");
    let lamp = answer("lamps-stop", Some("left"), Some(Severity::Road), "out");
    yard.sign(1, "Hattie", "TH-02", "2026-10-20T06:44:00-06:00", walk(vec![lamp], 7));
    yard.exchange(1, "2026-10-20T18:00:00-06:00");
    yard.close("2026-10-20", "2026-10-20T18:30:00-06:00");
    let kept = |yard: &Yard| {
        let rows = yard.shop.ledger.store().sheets_of("2026-10-20").unwrap();
        rows.into_iter().map(|row| (row.body, row.changes)).collect::<Vec<_>>()
    };
    let before = kept(&yard);
    assert!(before[1].1.iter().any(|line| line.contains("new-defects: now TH-02")), "{:?}", before[1].1);
    let folder = yard.folder.path().to_owned();
    let desk = Desk::of(yard, "2026-10-20T19:00:00-06:00").await;
    let page = "/day/2026-10-20?version=2";
    let es = desk.get_in(page, "es").await;
    es.says("defectos nuevos: ahora TH-02").says("con bloqueo: ahora TH-02").says_not("new-defects");
    let told = es.text.split("class=\"versions\"").nth(1).unwrap().split("</details>").next().unwrap();
    assert!(!told.contains("lang=\"en\""), "{told}");
    for english in ["now ", "was ", "locked", "came in late", "new defects", "answer", "Stop lamps", "[", "{"]
    {
        assert!(!told.contains(english), "'{english}' stands in: {told}");
    }
    desk.get(page).await.says("new defects: now TH-02, Stop lamps, left");
    let again = sumpbook_daybook::store::Store::reader(&folder).unwrap().sheets_of("2026-10-20").unwrap();
    let again: Vec<_> = again.into_iter().map(|row| (row.body, row.changes)).collect();
    assert_eq!(again, before);
}
