//! Hours, oil and air as the pages tell them. Invented data; figures of the worked month, or worked by rule.

use chrono::{Days, NaiveDate};
use sumpbook_trade::fluid::{Fluid, OilFamily};
use sumpbook_trade::record::*;
use sumpbook_trade::{Figure, Unit};

use super::Browser;
use crate::NewSet;
use crate::calendar_feed;
use crate::plan::fleet_due;
use crate::sheet::OilFound;
use crate::tests::yard::*;

fn quarts(text: &str) -> Figure {
    Figure::parse(text, Unit::Quart).unwrap()
}

/// TH-01's set as the month has it: 185 cfm, a glass of 0.60 qt.
fn with_set(yard: &mut Yard) {
    let profile = SetProfile {
        delivery: Some(Figure::parse("185", Unit::CubicFootPerMinute).unwrap()),
        glass: Some(quarts("0.60")),
        oil_family: Some(OilFamily::Mineral),
        oil_grade: Some("ISO VG 46".into()),
        weights: vec![],
        load_share: None,
        oil_volume: None,
    };
    let hand = yard.hand("Ilse", "2026-01-05T08:00:00-07:00");
    let on = Some(yard.truck("TH-01"));
    yard.shop.add_set(NewSet { serial: None, on, profile }, &hand).unwrap();
}

fn pour(qt: &str, before: Option<u8>, after: u8) -> TopUp {
    TopUp {
        fluid: Fluid::CompressorOil,
        family: Some(OilFamily::Mineral),
        grade: Some("ISO VG 46".into()),
        gauge_zero: Some(true),
        blow_down_silent: Some(true),
        before: before.map(Glass::Percent),
        pours: vec![Pour { volume: quarts(qt), after: None, waited_ms: None }],
        after: Some(Glass::Percent(after)),
        warmth: Some(Warmth::Cold),
        stopped: Some(StopWait { minutes: Some(30), how: How::Timed }),
        cap_tight: Some(true),
        oil_temperature: None,
        label_scanned: None,
    }
}

/// Event 7: at the middle at 2,790.4 h; on 26 October at 2,884.9 h 0.21 qt lift it from 30 to 65 %.
fn event_7() -> Yard {
    let mut yard = Yard::new();
    with_set(&mut yard);
    let middle = LevelCheck {
        fluid: Fluid::CompressorOil,
        glass: Glass::Percent(50),
        warmth: Some(Warmth::Cold),
        stopped: Some(StopWait { minutes: Some(30), how: How::Timed }),
        look: None,
        photo: None,
        oil_temperature: None,
    };
    // A fill begins with a level: the pour that settled it closes at the middle, long after.
    yard.sign_with(1, "Amos", "TH-01", "2026-09-20T07:05:00-06:00", Some(27_904), pour("0.05", None, 50));
    yard.sign_with(1, "Amos", "TH-01", "2026-09-20T07:15:00-06:00", Some(27_904), middle);
    yard.sign_with(1, "Amos", "TH-01", "2026-10-26T07:05:00-06:00", Some(28_849), pour("0.21", Some(30), 65));
    yard.exchange(1, "2026-10-26T16:48:00-06:00");
    yard
}

#[tokio::test(flavor = "multi_thread")]
async fn event_7_is_told_with_its_rate_its_floor_and_what_is_carried() {
    let yard = event_7();
    let evening = yard.evening("2026-10-26", "2026-10-26T17:00:00-06:00");
    let found = &evening.top_ups.rows[0].oil;
    assert_eq!(*found, [OilFound::OverMiddle { percent: 15, volume: Some("0.09 qt".into()) }]);
    let browser = Browser::of(yard, "2026-10-26T17:00:00-06:00").await;
    let page = browser.get("/units/TH-01").await.whole();
    let words = page.words();
    // 20 % of 0.60 qt = 113.6 mL in 94.5 h; 15 % = 85 mL carried; 185 cfm.
    assert!(words.contains("(114 mL) in 94.5 h: about 1.20 mL/h"), "{words}");
    assert!(words.contains("(85 mL) over the middle, carried to the next"), "{words}");
    assert!(
        words.contains("at least 3.3 mg/m3 of oil in the air, ISO 8573-1 oil class 4 or worse"),
        "{words}"
    );
    assert!(
        page.body.contains("role=\"img\" aria-label=\"Levels of the sight glass: 3 levels"),
        "{}",
        page.body
    );
    assert!(page.body.contains("class=\"pour\"") && page.body.contains("class=\"limit\""));
    let view = browser.get("/units/TH-01.json").await.json();
    let balance = &view["oil"]["fill"]["balances"][0];
    assert_eq!((&balance["ml_per_hour_hundredths"], &balance["used_ml"]), (&120.into(), &114.into()));
    let sheet = browser.get("/day/2026-10-26").await.whole().words();
    assert!(sheet.contains("over the middle by 15 % = 0.09 qt"), "{sheet}");
    assert!(sheet.contains("0 Who's drinking oil?"), "{sheet}");
    let units = browser.get("/units?table=true").await.whole().words();
    assert!(units.contains("Oil use too little known"), "one balance is no usual: {units}");
}

#[tokio::test(flavor = "multi_thread")]
async fn a_fill_that_begins_to_drink_is_an_alarm_with_its_day() {
    let mut yard = Yard::new();
    with_set(&mut yard);
    // Each pour brings it back to the middle: 1.26 mL/h, then 3.15.
    for (day, hours, qt) in [
        ("2026-08-01", 24_400, "0.05"),
        ("2026-08-11", 25_000, "0.08"),
        ("2026-08-21", 25_600, "0.08"),
        ("2026-08-31", 26_200, "0.20"),
        ("2026-09-10", 26_800, "0.20"),
    ] {
        yard.sign_with(1, "Amos", "TH-01", &format!("{day}T07:00:00-06:00"), Some(hours), pour(qt, None, 50));
    }
    yard.exchange(1, "2026-10-20T16:48:00-06:00");
    let browser = Browser::of(yard, "2026-10-20T17:00:00-06:00").await;
    let said = "2.5x its usual since Fri 21 Aug";
    let units = browser.get("/units?table=true&sort=oil").await.whole().words();
    assert!(units.contains(&format!("Oil use {said}, over the limit")), "{units}");
    let words = browser.get("/units/TH-01").await.whole().words();
    let change = format!("Using {said}. Look at separator, scavenge line, leaks.");
    assert!(words.contains(&change), "{words}");
    assert!(words.contains("5 mg/m3 is 1.83 mL/h: over the limit of 1.83 mL/h"), "{words}");
    assert!(words.contains("usual 1.26 mL/h"), "{words}");
    let sheet = browser.get("/day/2026-10-20").await.whole();
    assert!(
        sheet.words().contains("1 Who's drinking oil?") && sheet.words().contains(said),
        "{}",
        sheet.words()
    );
    assert!(sheet.body.contains("href=\"/units/TH-01#oil\""));
    let es = browser.speaks("es").get("/units/TH-01").await.whole().words();
    assert!(es.contains("Usa 2.5 veces lo normal desde vie 21 ago"), "{es}");
}

/// TH-01 runs 5.0 h every day: 2,882.4 on Monday 19 October at 16:00.
fn steady() -> Yard {
    let mut yard = Yard::new();
    let first = NaiveDate::from_ymd_opt(2026, 10, 12).unwrap();
    for n in 0..8u64 {
        let day = first.checked_add_days(Days::new(n)).unwrap();
        let figure = 28_474 + 50 * i64::try_from(n).unwrap();
        yard.sign(1, "Amos", "TH-01", &format!("{day}T16:00:00-06:00"), reading(figure));
    }
    yard.exchange(1, "2026-10-19T16:48:00-06:00");
    yard
}

#[tokio::test(flavor = "multi_thread")]
async fn the_likely_day_stands_in_the_list_on_the_ruler_and_among_the_units() {
    let browser = Browser::of(steady(), "2026-10-19T17:00:00-06:00").await;
    // 35.6 h left at 5.0 a day: 7 days and 3 hours from Monday 16:00.
    let view = browser.get("/due.json").await.json();
    let rows = view["rows"].as_array().unwrap();
    let oil = rows.iter().find(|row| row["unit"] == "TH-01" && row["task"] == "oil-and-filters").unwrap();
    assert_eq!(oil["forecast"]["likely"], "2026-10-26");
    assert_eq!((&oil["runs-out-first"], &oil["hours-left"]), (&"hours".into(), &"35.6".into()));
    let page = browser.get("/due").await.whole().words();
    assert!(page.contains("hours, likely Mon 26 Oct ("), "{page}");
    assert!(page.contains("by the calendar, pace unknown"), "the others are not read: {page}");
    let unit = browser.get("/units/TH-01").await.whole();
    assert!(unit.body.contains("class=\"forecast\"") && unit.body.contains("class=\"likely\""));
    assert!(unit.words().contains("At this pace likely Mon 26 Oct"), "{}", unit.words());
    assert!(unit.words().contains("about 5.0 h a day"), "{}", unit.words());
    let other = browser.get("/units/TH-08").await.whole();
    assert!(!other.body.contains("class=\"forecast\""), "no pace, no line");
    let units = browser.get("/units?table=true").await.whole().words();
    assert!(units.contains("hours, likely Mon 26 Oct"), "{units}");
    let es = browser.speaks("es").get("/due").await.whole().words();
    assert!(es.contains("probable lun 26 oct"), "{es}");
}

#[tokio::test(flavor = "multi_thread")]
async fn a_likely_day_that_came_and_went_with_no_reading_says_so() {
    let browser = Browser::of(steady(), "2026-10-28T17:00:00-06:00").await;
    let page = browser.get("/due").await.whole().words();
    assert!(page.contains("gone by with no hours told since"), "{page}");
    let unit = browser.get("/units/TH-01").await.whole().words();
    assert!(unit.contains("That day has gone by, and no hours that count were told since."), "{unit}");
    let es = browser.speaks("es").get("/due").await.whole().words();
    assert!(es.contains("ya pasó sin horas anotadas desde entonces"), "{es}");
    let before = Browser::of(steady(), "2026-10-26T17:00:00-06:00").await.get("/due").await.whole().words();
    assert!(!before.contains("gone by"), "{before}");
}

#[test]
fn parts_are_ordered_for_the_earliest_day_and_the_feed_tells_the_likely_one() {
    let mut yard = steady();
    let hand = yard.hand("Ilse", "2026-10-19T16:50:00-06:00");
    let mut programme = yard.shop.ledger.fleet().programme.clone();
    for task in &mut programme.tasks {
        task.parts_lead_days = if task.id.0 == "oil-and-filters" { 3 } else { 0 };
    }
    yard.shop.set_programme(None, programme, &hand).unwrap();
    let now = at("2026-10-19T17:00:00-06:00");
    let due = fleet_due(&yard.shop.ledger, now).unwrap();
    let row = |unit: &str| due.rows.iter().find(|row| row.due.unit == unit && row.lead_days == 3).unwrap();
    let earliest = row("TH-01").due.forecast.unwrap().earliest;
    assert!(earliest <= day("2026-10-26") && earliest > day("2026-10-19"), "{earliest}");
    // TH-08's last good day is tomorrow, three days' lead before it: that comes first.
    assert_eq!(due.orders[0].by, Some(day("2026-10-17")));
    let feed = calendar_feed::keep(&mut yard.shop, now).unwrap().to_ics("en");
    let event = feed.split("BEGIN:VEVENT").find(|event| event.contains("TH-01: Oil")).unwrap();
    assert!(event.contains("DTSTART;VALUE=DATE:20261026") && event.contains("STATUS:TENTATIVE"), "{event}");
    assert!(event.contains("hours likely run out") && event.contains("SEQUENCE:0"), "{event}");
    // Another day at the same pace is the same answer.
    yard.sign(1, "Amos", "TH-01", "2026-10-20T16:00:00-06:00", reading(28_874));
    yard.exchange(1, "2026-10-20T16:48:00-06:00");
    let later = calendar_feed::keep(&mut yard.shop, at("2026-10-20T17:00:00-06:00")).unwrap().to_ics("en");
    let event = later.split("BEGIN:VEVENT").find(|event| event.contains("TH-01: Oil")).unwrap();
    assert!(event.contains("20261026") && event.contains("SEQUENCE:0"), "{event}");
}

#[test]
fn an_open_task_of_which_no_day_can_be_told_any_more_stays_as_it_was_told() {
    let mut yard = steady();
    let hand = yard.hand("Ilse", "2026-10-19T16:50:00-06:00");
    let mut programme = yard.shop.ledger.fleet().programme.clone();
    // By the hours alone.
    programme
        .tasks
        .iter_mut()
        .filter(|task| task.id.0 == "oil-and-filters")
        .for_each(|task| task.months = None);
    yard.shop.set_programme(None, programme, &hand).unwrap();
    let oil = |yard: &mut Yard, when: &str| {
        let feed = calendar_feed::keep(&mut yard.shop, at(when)).unwrap().to_ics("en");
        feed.split("BEGIN:VEVENT").find(|event| event.contains("TH-01: Oil")).unwrap().to_owned()
    };
    let told = oil(&mut yard, "2026-10-19T17:00:00-06:00");
    assert!(told.contains("STATUS:TENTATIVE") && told.contains("SEQUENCE:0"), "{told}");
    // Nobody read the meter for months: there is no pace left to tell a day by, and nothing was done.
    let later = oil(&mut yard, "2027-01-10T17:00:00-07:00");
    assert!(later.contains("STATUS:TENTATIVE") && later.contains("SEQUENCE:0"), "{later}");
}

#[tokio::test(flavor = "multi_thread")]
async fn event_9_counts_weighted_hours_and_says_what_they_mean_on_this_meter() {
    let mut yard = Yard::new();
    let profile = SetProfile {
        delivery: None,
        glass: None,
        oil_family: None,
        oil_grade: None,
        weights: vec![(SiteDust::Clean, 100), (SiteDust::Dusty, 150), (SiteDust::VeryDusty, 200)],
        load_share: None,
        oil_volume: None,
    };
    let hand = yard.hand("Ilse", "2026-04-01T08:00:00-06:00");
    let on = Some(yard.truck("TH-03"));
    yard.shop.add_set(NewSet { serial: None, on, profile }, &hand).unwrap();
    let dusty = SiteCondition { dust: SiteDust::Dusty };
    let very = SiteCondition { dust: SiteDust::VeryDusty };
    let mut read = |when: &str, figure| {
        yard.sign(1, "Carmelo", "TH-03", when, reading(figure));
    };
    // From 402.6: 120.0 dusty, 30.0 very dusty, 193.4 clean, then 31.0 dusty.
    read("2026-04-30T16:00:00-06:00", 4_026);
    read("2026-05-06T16:00:00-06:00", 5_226);
    read("2026-05-08T16:00:00-06:00", 5_526);
    read("2026-05-09T06:00:00-06:00", 5_526);
    read("2026-10-22T16:30:00-06:00", 7_460);
    read("2026-10-30T16:00:00-06:00", 7_770);
    yard.sign(1, "Carmelo", "TH-03", "2026-05-05T08:00:00-06:00", dusty.clone());
    yard.sign(1, "Carmelo", "TH-03", "2026-05-07T08:00:00-06:00", very);
    yard.sign(1, "Carmelo", "TH-03", "2026-10-29T08:00:00-06:00", dusty.clone());
    yard.sign(1, "Carmelo", "TH-03", "2026-10-30T08:00:00-06:00", dusty);
    yard.exchange(1, "2026-10-30T16:48:00-06:00");
    let browser = Browser::of(yard, "2026-10-30T17:00:00-06:00").await;
    let view = browser.get("/units/TH-03.json").await.json();
    let oil = view["tasks"].as_array().unwrap().iter().find(|t| t["task"] == "oil-and-filters").unwrap();
    assert_eq!((&oil["hours-left"], &oil["state"]), (&"20.1".into(), &"coming-up".into()), "{oil}");
    assert_eq!((&oil["weight"], &oil["meter-hours-left"]), (&150.into(), &"13.4".into()));
    let words = browser.get("/units/TH-03").await.whole().words();
    assert!(words.contains("20.1 h left of 500.0 h, due at 790.4 h"), "{words}");
    let weighted = "Weighted: an hour counts 1.5 now, so 13.4 h on the meter, to 790.4 h.";
    assert!(words.contains(weighted), "{words}");
    let due = browser.get("/due").await.whole().words();
    assert!(due.contains("20.1 (weighted)"), "{due}");
}

#[tokio::test(flavor = "multi_thread")]
async fn a_milky_oil_calls_the_service_now_and_the_page_says_why() {
    let mut yard = event_7();
    let look = OilCondition { look: OilLook::Milky };
    yard.sign(1, "Amos", "TH-01", "2026-10-26T16:00:00-06:00", look);
    yard.exchange(1, "2026-10-26T16:50:00-06:00");
    let browser = Browser::of(yard, "2026-10-26T17:00:00-06:00").await;
    let words = browser.get("/units/TH-01").await.whole().words();
    assert!(words.contains("Due now: milky oil was seen. since 16:00"), "{words}");
    assert!(browser.get("/due").await.whole().words().contains("called now: milky oil"), "{words}");
}

#[tokio::test(flavor = "multi_thread")]
async fn a_struck_figure_and_a_jump_are_drawn_and_other_meters_stand_apart() {
    let mut yard = Yard::new();
    for (when, figure) in [
        ("2026-10-19T16:40:00-06:00", 7_319),
        ("2026-10-20T16:40:00-06:00", 7_384),
        ("2026-10-21T16:35:00-06:00", 74_210),
        ("2026-10-22T16:30:00-06:00", 7_460),
    ] {
        yard.sign(1, "Carmelo", "TH-03", when, reading(figure));
    }
    let engine = HourReading { meter: Meter::Engine, ..reading(44_102) };
    yard.sign(1, "Carmelo", "TH-03", "2026-10-22T16:31:00-06:00", engine);
    yard.exchange(1, "2026-10-22T16:48:00-06:00");
    let browser = Browser::of(yard, "2026-10-22T17:00:00-06:00").await;
    let page = browser.get("/units/TH-03").await.whole();
    assert!(page.body.contains("class=\"stroke\""), "{}", page.body);
    assert!(page.body.contains("1 struck; the newest that counts 746.0 h"), "{}", page.body);
    assert!(page.words().contains("4,410.2 h, Thu 22 Oct 16:31"), "{}", page.words());
    let view = browser.get("/units/TH-03.json").await.json();
    assert_eq!(view["hours"]["other-meters"][0]["meter"], "engine");
}

#[tokio::test(flavor = "multi_thread")]
async fn each_rule_says_its_word_about_a_drop_on_the_unit_and_on_the_cab_report() {
    let mut yard = Yard::new();
    let drop = ItemFigure { figure: Figure::parse("3", Unit::Psi).unwrap(), how: How::Chosen };
    let watched = Some(64_000);
    let told =
        Answer { figures: vec![drop], on_screen_ms: watched, ..answer("air-leak-applied", None, None, "") };
    yard.sign(1, "Amos", "TH-01", "2026-10-19T06:32:00-06:00", walk(vec![told], 7));
    yard.exchange(1, "2026-10-19T16:48:00-06:00");
    let browser = Browser::of(yard, "2026-10-19T17:00:00-06:00").await;
    let words = browser.get("/units/TH-01").await.whole().words();
    assert!(
        words.contains("3 psi: keeps the rule, at most 3 psi: United States, driver test (modernized)"),
        "{words}"
    );
    assert!(
        words.contains("breaks the rule, less than 3 psi: United States, driver test (older)"),
        "{words}"
    );
    assert!(words.contains("keeps the rule, at most 21 kPa (3 psi): Ontario"), "{words}");
    let view = browser.get("/units/TH-01/cab-report.json").await.json();
    assert_eq!(view["rules"].as_array().unwrap().len(), 4, "{view}");
    browser.get("/units/TH-01/cab-report").await.whole();
}

/// How a line of the calculator's answer is told, and its figure.
fn row<'a>(view: &'a serde_json::Value, key: &str) -> (&'a str, String) {
    let rows = view["job"]["answer"]["rows"].as_array().unwrap();
    let row = rows.iter().find(|row| row["key"] == key).unwrap_or_else(|| panic!("{key}: {rows:?}"));
    let figure = row["figure"]
        .as_object()
        .map(|figure| format!("{} {}", figure["value"].as_str().unwrap(), figure["unit"].as_str().unwrap()));
    (row["told"].as_str().unwrap(), figure.unwrap_or_default())
}

#[tokio::test(flavor = "multi_thread")]
async fn the_calculator_tells_what_is_left_over_and_warns_with_its_sources() {
    let mut yard = Yard::new();
    with_set(&mut yard);
    let browser = Browser::of(yard, "2026-10-20T17:00:00-06:00").await;
    browser.get("/air").await.whole();
    // At 1,800 m a plate of 185 cfm is 155.
    let job =
        "/air.json?unit=TH-01&measures=us&holds=100&altitude=5,906&at-1=90&bore=3/4&length=50&cut-off=yes";
    let one = browser.get(&format!("{job}&takes-1=80")).await.json();
    assert_eq!(row(&one, "air-delivered"), ("air-about", "155 cfm".to_owned()));
    assert_eq!(row(&one, "air-left-over"), ("air-about", "75 cfm".to_owned()));
    assert_eq!(one["job"]["answer"]["warnings"], serde_json::json!([]));
    assert_eq!(
        (&one["job"]["fields"][0]["own"], &one["job"]["fields"][0]["said"]),
        (&"185".into(), &().into())
    );
    let two = browser.get(&format!("{job}&takes-1=80&count-1=2")).await.json();
    let short = &two["job"]["answer"]["warnings"][0];
    assert_eq!((&short["key"], &short["figure"]["value"]), (&"air-warn-too-little".into(), &"5".into()));
    assert_eq!(row(&two, "air-missing"), ("air-about", "5 cfm".to_owned()));
    // Tools that take more than is delivered pull the pressure down: no more than this reaches them.
    assert_eq!((row(&one, "air-at-tool").0, row(&two, "air-at-tool").0), ("air-about", "air-at-most-about"));
    // A second tool of which only the pressure is known takes air all the same.
    let unknown = browser.get(&format!("{job}&takes-1=80&at-2=90")).await.json();
    assert_eq!(row(&unknown, "air-taken"), ("air-at-least", "80 cfm".to_owned()));
    assert_eq!(row(&unknown, "air-left-over"), ("air-at-most-about", "75 cfm".to_owned()));
    assert_eq!(unknown["job"]["answer"]["warnings"][0]["key"], "air-warn-tool");
    let none = browser.get(&job.replace("at-1=90&", "")).await.json();
    assert_eq!(row(&none, "air-taken"), ("air-no-tool", String::new()));
    let page = "/air?unit=TH-01&measures=us&holds=100&altitude=high&takes-1=80&at-1=90&bore=3/4&length=50\
                &blowing=yes&nozzle=30&intake=86&humidity=70&oil=110";
    let words = browser.get(page).await.whole().words();
    for said in [
        "Altitude: \"high\" is no figure for it and was left out.",
        "No altitude given: worked out for sea level.",
        "A hose of 0.75 in inside is over 1/2 in",
        "1926.302(b)(7)",
        "30 psi at the nozzle: cleaning air must be under 30 psi",
        "29 CFR 1910.242(b)",
        "Cleaning air wants a chip guard and eye protection.",
        "under the dew point in the receiver",
        "The maker's manual, local law and licensed people come first.",
        "This is not breathing air",
    ] {
        assert!(words.contains(said), "{said}: {words}");
    }
    let metric = browser.get("/air.json?measures=metric&delivery=5.24&holds=690&altitude=1800").await.json();
    assert_eq!(row(&metric, "air-delivered"), ("air-about", "4.39 m³/min".to_owned()));
    assert!(browser.get("/units/TH-01").await.body.contains("href=\"/air?unit=TH-01\""));
    let es = browser.speaks("es").get(page).await.whole().words();
    assert!(es.contains("no es una cifra para eso"), "{es}");
}

#[tokio::test(flavor = "multi_thread")]
async fn short_runs_ask_to_run_it_warm() {
    let mut yard = Yard::new();
    for n in 0..4 {
        let at = |minute: u32| format!("2026-10-19T{:02}:{minute:02}:00-06:00", 8 + n);
        let start = StartAir { steps: vec![], in_spite_of_lock: None };
        yard.sign(1, "Amos", "TH-01", &at(0), start);
        let minutes = if n < 2 { 10 } else { 50 };
        yard.sign(1, "Amos", "TH-01", &at(minutes), StopAir { steps: vec![], blew_down: None });
    }
    yard.exchange(1, "2026-10-19T16:48:00-06:00");
    let browser = Browser::of(yard, "2026-10-20T17:00:00-06:00").await;
    let words = browser.get("/air?unit=TH-01").await.whole().words();
    assert!(words.contains("2 of 4 runs in the last 60 days were under 15 min (50 %)."), "{words}");
    assert!(words.contains("run it warm once a day"), "{words}");
}

#[tokio::test(flavor = "multi_thread")]
async fn a_service_entered_twice_filled_it_once() {
    let mut yard = event_7();
    for (who, when, hours) in
        [("Dov", "2026-11-06T13:30:00-07:00", 29_260), ("Amos", "2026-11-09T06:40:00-07:00", 29_263)]
    {
        yard.sign_with(1, who, "TH-01", when, Some(hours), service(&["oil-and-filters"]));
    }
    yard.exchange(1, "2026-11-09T16:48:00-07:00");
    let browser = Browser::of(yard, "2026-11-09T17:00:00-07:00").await;
    let page = browser.get("/units/TH-01").await.whole();
    assert!(
        page.words().contains("Filled Fri 6 Nov 13:30 at 2,926.0 h; nothing poured since."),
        "{}",
        page.words()
    );
    assert!(!page.words().contains("Filled Mon 9 Nov"), "{}", page.words());
}

#[tokio::test(flavor = "multi_thread")]
async fn a_fluid_that_should_need_none_is_a_finding_in_its_own_row() {
    let mut yard = Yard::new();
    let coolant = TopUp { fluid: Fluid::Coolant, family: None, grade: None, ..pour("0.25", None, 50) };
    yard.sign(1, "Amos", "TH-01", "2026-10-20T07:05:00-06:00", coolant);
    yard.exchange(1, "2026-10-20T16:48:00-06:00");
    let evening = yard.evening("2026-10-20", "2026-10-20T17:00:00-06:00");
    let row = &evening.top_ups.rows[0];
    assert!(row.finding.is_some() && row.oil.is_empty(), "{row:?}");
    let browser = Browser::of(yard, "2026-10-20T17:00:00-06:00").await;
    let words = browser.get("/day/2026-10-20").await.whole().words();
    assert!(words.contains("Finding low"), "{words}");
}
