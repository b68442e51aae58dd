//! `/paper` and the cab report: what stands on a page, what is typed in, and what an officer is shown.

use axum::http::StatusCode;
use sumpbook_daybook::judgement::Judged;
use sumpbook_trade::checklist::Severity;
use sumpbook_trade::record::{AnswerKind, EndOfDay, RepairVerdict, Source};
use sumpbook_trade::{Entry, Fact, Feature, Features};

use super::{Desk, no_key_shows};
use crate::certify::certify;
use crate::console::session::Role;
use crate::paper::{PageTyped, editions, keep_page};
use crate::tests::yard::{Yard, answer, end_of_day, walk};
use crate::{NewTruck, Shop, ShopError};

const NOW: &str = "2026-10-20T17:00:00-06:00";

/// As a camera writes one: where it was taken stands before the picture.
pub(super) fn jpeg_of_a_camera() -> Vec<u8> {
    let part = |marker: u8, body: &[u8]| {
        let length = u16::try_from(body.len() + 2).unwrap().to_be_bytes();
        [&[0xff, marker][..], &length, body].concat()
    };
    [
        vec![0xff, 0xd8],
        part(0xe0, b"JFIF\0\x01\x02\x00\x00\x01\x00\x01\x00\x00"),
        part(0xe1, b"Exif\0\0II*\0 41.1 N 104.8 W"),
        part(0xdb, &[7; 65]),
        part(0xda, &[1, 1, 0, 0, 63, 0]),
        vec![0x12, 0xff, 0x00, 0x34, 0xff, 0xd9],
    ]
    .concat()
}

/// TH-03 is found to have air brakes and an hour meter: its pages have another edition from then on.
fn changed(yard: &mut Yard) {
    let hand = yard.hand("Ilse", "2026-10-19T05:00:00-06:00");
    let old = yard.shop.ledger.fleet().truck_by_door("TH-03").unwrap().clone();
    let new = NewTruck {
        door: old.door,
        serial: Some("TRK-0003".into()),
        plate: Some("TH 103".into()),
        features: Features::of([Feature::AirBrakes, Feature::HourMeter]),
        in_service: old.in_service,
        in_service_hours: old.in_service_hours,
        annual_inspection: None,
    };
    yard.shop.add_truck(new, &hand).unwrap();
}

/// Every line of the newest page of TH-03, answered OK.
fn all_ok(shop: &Shop) -> Vec<(String, String)> {
    let truck = shop.unit("TH-03").unwrap();
    let page = editions(&shop.ledger, truck).unwrap().pop().unwrap();
    page.lines().map(|line| (format!("a:{line}"), "ok".to_owned())).collect()
}

fn borrowed(fields: &[(String, String)]) -> Vec<(&str, &str)> {
    fields.iter().map(|(name, value)| (name.as_str(), value.as_str())).collect()
}

#[tokio::test]
async fn a_blank_page_has_this_units_lines_in_both_languages_and_nothing_answered() {
    let mut yard = Yard::new();
    changed(&mut yard);
    let desk = Desk::of(yard, NOW).await;
    desk.get("/paper").await.says("/paper/TH-03/blank").says("enctype=\"multipart/form-data\"");
    let page = desk.get("/paper/TH-03/blank").await;
    page.says("edition 1.2").says("edición 1.2").says("Windshield").says("1 of 2").says("lang=\"es\"");
    page.says("air-leak-released").says_not("coupling</span>").says("class=\"glass\"");
    no_key_shows(&page);
    let lines = desk.get("/paper/TH-03/blank.json").await.json()["stops"]
        .as_array()
        .unwrap()
        .iter()
        .map(|stop| stop["lines"].as_array().unwrap().len())
        .sum::<usize>();
    // Four circles a line, in each of the two languages.
    assert_eq!(page.text.matches("class=\"o\"").count(), lines * 4 * 2);
    page.says_not("checked").says_not("All OK");
    assert_eq!(desk.get("/paper/TH-99/blank").await.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn a_signed_page_is_kept_in_the_drivers_name_with_source_paper() {
    let mut yard = Yard::new();
    changed(&mut yard);
    let mut fields = all_ok(&yard.shop);
    let lines = fields.len();
    let desk = Desk::of(yard, NOW).await;
    let sent = desk.post_file("/paper/photo", &[("unit", "TH-03")], ("photo", &jpeg_of_a_camera())).await;
    assert_eq!(sent.status, StatusCode::SEE_OTHER, "{}", sent.text);
    let form = desk.get(&sent.to).await;
    form.says(&format!("0 of {lines} typed")).says_not(" checked").says("id=\"page-photo\"");
    no_key_shows(&form);
    no_key_shows(&desk.get_in(&sent.to, "es").await);
    let digest = sent.to.split("photo=").nth(1).unwrap().to_owned();
    let shown = desk.get(&format!("/photo/{digest}")).await;
    assert_eq!(shown.status, StatusCode::OK);
    shown.says_not("Exif");

    for (name, value) in &mut fields {
        if name == "a:mirrors" {
            "defect".clone_into(value);
        }
    }
    let more = [
        ("edition", "1.2"),
        ("photo", digest.as_str()),
        ("driver", "Dinah Fosse"),
        ("day", "2026-10-20"),
        ("time", "06:40"),
        ("number", "0117"),
        ("hours", "741.2"),
        ("glass", "48"),
        ("drop-released", "1"),
        ("w:mirrors", "cracked"),
        ("t:mirrors", "hairline, low corner"),
    ];
    let whole: Vec<_> = borrowed(&fields).into_iter().chain(more).collect();
    let kept = desk.post("/paper/TH-03", &whole).await;
    assert_eq!(
        (kept.status, kept.to.as_str()),
        (StatusCode::SEE_OTHER, "/paper/TH-03?kept=1"),
        "{}",
        kept.text
    );

    let ledger = desk.hub.reader().unwrap();
    let truth = ledger.store().truth();
    let last = truth.last_n().unwrap();
    let read = |n: i64| Entry::from_payload(&truth.entry(n).unwrap().unwrap().row.payload).unwrap();
    let (walk, typed) = (read(last - 1), read(last));
    assert_eq!(walk.source, Source::Paper);
    assert_eq!(ledger.fleet().person_name(walk.person.unwrap()), Some("Dinah Fosse"));
    assert_eq!(
        (walk.at.to_string().as_str(), walk.hours.map(|h| h.0)),
        ("2026-10-20T06:40:00-06:00", Some(7_412))
    );
    let Fact::PreTripSection(section) = &walk.fact else { panic!("{walk:?}") };
    assert!(section.complete && section.answers.len() == lines);
    let mirrors = section.answers.iter().find(|answer| answer.item == "mirrors").unwrap();
    assert_eq!((mirrors.answer, mirrors.severity), (AnswerKind::Defect, Some(Severity::Road)));
    assert_eq!(mirrors.words.as_deref(), Some("hairline, low corner"));
    assert_eq!(section.answers.iter().map(|answer| answer.figures.len()).sum::<usize>(), 2);
    let Fact::PaperPage(page) = &typed.fact else { panic!("{typed:?}") };
    assert_eq!((page.signed, page.number.as_deref(), page.unit_edition), (walk.id, Some("0117"), 2));
    assert_eq!(page.photo.unwrap().to_string(), digest);
    assert_eq!(ledger.fleet().person_name(typed.person.unwrap()), Some("Ilse Marrow"));
    assert!([last - 1, last].iter().all(|n| truth.fact(*n).unwrap().unwrap().judged == Judged::Counts));

    let again = desk.post("/paper/TH-03", &whole).await;
    assert_eq!(again.status, StatusCode::UNPROCESSABLE_ENTITY);
    again.says("Page 0117 of this unit was typed in before");
}

#[tokio::test]
async fn what_does_not_hold_is_said_with_everything_typed_still_there() {
    let mut yard = Yard::new();
    changed(&mut yard);
    let mut fields = all_ok(&yard.shop);
    let desk = Desk::of(yard, NOW).await;
    let signed = [("driver", "Dinah Fosse"), ("day", "2026-10-20"), ("time", "06:40")];
    let before = desk.hub.reader().unwrap().store().truth().last_n().unwrap();
    let one = ("a:horn", "defect");
    for (given, said) in [
        (vec![], "no day and time"),
        (vec![("day", "2026-10-20"), ("time", "06:40")], "has no driver"),
        ([signed.to_vec(), vec![("a:horn", "ok")]].concat(), "Some lines are open."),
        ([signed.to_vec(), vec![one]].concat(), "A defect has no word."),
        ([signed.to_vec(), vec![one, ("w:horn", "purple"), ("blank", "yes")]].concat(), "no word"),
        (
            [signed.to_vec(), vec![("a:oil-level", "ok"), ("glass", "140"), ("blank", "yes")]].concat(),
            "no figure of its kind",
        ),
        ([signed.to_vec(), vec![("edition", "9.9")]].concat(), "no page of that edition"),
        (
            [signed.to_vec(), vec![("blank", "yes")]].concat(),
            "No line of the page is answered. Nothing was recorded.",
        ),
        (
            vec![("a:horn", "ok"), ("blank", "yes"), signed[0], ("day", "2026-10-21"), ("time", "06:40")],
            "has not come yet",
        ),
    ] {
        let answer = desk.post("/paper/TH-03", &given).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{given:?}");
        answer.says(said).says("Everything typed still stands here.");
    }
    assert_eq!(desk.hub.reader().unwrap().store().truth().last_n().unwrap(), before);
    let half = desk.post("/paper/TH-03", &[one, ("w:horn", "other"), ("t:horn", "weak")]).await;
    half.says("1 of ").says("value=\"other\" selected").says("value=\"weak\"");
    // Lines that are blank on the page are none: the walk is kept, and is not whole.
    fields.truncate(5);
    let part: Vec<_> = borrowed(&fields).into_iter().chain(signed).chain([("blank", "yes")]).collect();
    assert_eq!(desk.post("/paper/TH-03", &part).await.status, StatusCode::SEE_OTHER);
}

#[tokio::test]
async fn an_old_pad_is_seen_and_its_lines_that_differ_are_named() {
    let mut yard = Yard::new();
    changed(&mut yard);
    let desk = Desk::of(yard, NOW).await;
    let old = desk.get("/paper/TH-03?edition=1.1").await;
    old.says("an old pad")
        .says("Asked now and not on it:")
        .says("Leak, brakes released")
        .says_not("a:air-leak-released");
    desk.get("/paper/TH-03").await.says_not("an old pad").says("a:air-leak-released");
}

#[tokio::test]
async fn what_is_no_photo_is_refused_and_a_reader_sends_none() {
    let desk = Desk::of(Yard::new(), NOW).await;
    let unit = [("unit", "TH-03")];
    desk.post_file("/paper/photo", &unit, ("photo", b"GIF89a")).await.says("only JPEG, PNG and WebP");
    let mut large = jpeg_of_a_camera();
    large.truncate(large.len() - 2);
    large.resize(5 * 1024 * 1024, 0x12);
    large.extend([0xff, 0xd9]);
    desk.post_file("/paper/photo", &unit, ("photo", &large)).await.says("more than 4 MiB");
    let cut = &jpeg_of_a_camera()[..60];
    desk.post_file("/paper/photo", &unit, ("photo", cut)).await.says("is damaged");
    assert_eq!(desk.post_file("/paper/photo", &unit, ("photo", b"")).await.to, "/paper/TH-03");
    assert_eq!(desk.get("/photo/00").await.status, StatusCode::NOT_FOUND);
    let reader = Desk::with(Yard::new(), NOW, "Edric Loomis", Role::Reader).await;
    let sent = reader.post_file("/paper/photo", &unit, ("photo", &jpeg_of_a_camera())).await;
    assert_eq!(sent.status, StatusCode::FORBIDDEN);
}

#[tokio::test]
async fn the_cab_report_tells_eleven_parts_and_its_code_is_answered_again() {
    let mut yard = Yard::new();
    changed(&mut yard);
    let cracked = answer("mirrors", None, Some(Severity::Road), "cracked: hairline, low corner");
    let answers = vec![answer("horn", None, None, ""), answer("wipers", None, None, ""), cracked];
    yard.sign(3, "Carmelo", "TH-03", "2026-10-20T06:35:00-06:00", walk(answers, 7));
    // Found when the walk was over, at the horn that it found in order.
    let silent = answer("horn", None, Some(Severity::Road), "no-sound");
    yard.sign(
        3,
        "Carmelo",
        "TH-03",
        "2026-10-20T06:50:00-06:00",
        EndOfDay { defects: vec![silent], none_found: false, ..end_of_day() },
    );
    yard.exchange(3, "2026-10-20T07:10:00-06:00");
    let (truck, wren) = (yard.truck("TH-03"), yard.hand("Wren", "2026-10-20T07:55:00-06:00"));
    certify(&mut yard.shop, truck, "mirrors", RepairVerdict::NotNeeded, "outside the view", &wren).unwrap();
    let desk = Desk::of(yard, NOW).await;
    let page = desk.get("/units/TH-03/cab-report").await;
    page.says("TH 103").says("TRK-0003").says("(viii) Rear-view mirrors").says("Espejos retrovisores");
    page.says("not fitted")
        .says("repair not needed, Wren Castellane 07:55: outside the view")
        .says("not reviewed yet");
    page.says("Signed Carmelo Ruiz 20 Oct 2026 06:35 -06:00, PIN given, yard phone 3");
    page.says("shop last heard 20 Oct 2026 07:10 -06:00").says("Road: LOCKED since");
    page.says("<strong>defect*</strong>").says("an open one found at another time stands below");
    no_key_shows(&page);
    let json = desk.get("/units/TH-03/cab-report.json").await.json();
    let parts: Vec<(&str, &str)> = json["parts"]
        .as_array()
        .unwrap()
        .iter()
        .map(|part| (part["part"].as_str().unwrap(), part["answer"].as_str().unwrap()))
        .collect();
    assert_eq!(parts.len(), 11);
    for told in [("vi", "ok"), ("vii", "ok"), ("viii", "defect"), ("ix", "not-fitted"), ("v", "not-answered")]
    {
        assert!(parts.contains(&told), "{told:?} in {parts:?}");
    }
    let known: sumpbook_trade::Stamp = json["known-at"].as_str().unwrap().parse().unwrap();
    let then = desk.get(&format!("/units/TH-03/cab-report.json?as-of={}", known.unix_ms())).await.json();
    assert_eq!(then["check"], json["check"]);
    let other = desk.get(&format!("/units/TH-03/cab-report.json?as-of={}", known.unix_ms() - 1)).await.json();
    assert_ne!(other["check"], json["check"]);
    assert_eq!(desk.get("/units/TH-99/cab-report").await.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn a_door_number_that_no_unit_has_is_told_as_such_with_the_way_to_the_units() {
    let desk = Desk::of(Yard::new(), NOW).await;
    let said = "There is no unit of the number “TH-99” here. Nothing was changed.";
    let pages = [
        "/paper/TH-99",
        "/paper/TH-99/blank",
        "/units/TH-99",
        "/units/TH-99/note",
        "/units/TH-99/cab-report",
    ];
    for path in pages.iter().chain(&["/due/service?unit=TH-99", "/programme?unit=TH-99"]) {
        let answer = desk.get(path).await;
        assert_eq!(answer.status, StatusCode::NOT_FOUND, "{path}");
        answer.says(said).says("href=\"/units\"").says_not("Nothing is at this address");
        no_key_shows(&desk.get_in(path, "es").await);
    }
    // The photo of a page is not kept under a number that no unit has.
    let sent = desk.post_file("/paper/photo", &[("unit", "TH-99")], ("photo", &jpeg_of_a_camera())).await;
    assert_eq!(sent.status, StatusCode::NOT_FOUND);
    sent.says(said);
    assert_eq!(desk.get("/paper.json").await.json()["to-type"].as_array().unwrap().len(), 0);
}

#[test]
fn a_page_said_to_be_whole_without_an_answer_is_not_kept() {
    let mut yard = Yard::new();
    changed(&mut yard);
    let (truck, driver) = (yard.truck("TH-03"), yard.who("Dinah"));
    let hand = yard.hand("Ilse", NOW);
    let page = PageTyped {
        driver,
        signed_at: "2026-10-20T06:40:00-06:00".parse().unwrap(),
        answers: vec![],
        complete: true,
        hours: None,
        edition: 1,
        unit_edition: 2,
        number: None,
        photo: None,
    };
    let before = yard.shop.ledger.store().truth().last_n().unwrap();
    let refused = keep_page(&mut yard.shop, truck, page, &hand);
    assert!(matches!(refused, Err(ShopError::PageEmpty)), "{refused:?}");
    assert_eq!(yard.shop.ledger.store().truth().last_n().unwrap(), before);
}
