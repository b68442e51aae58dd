//! Every key that code names has its text, and no text approves of a unit.

use std::collections::BTreeSet;

use serde::Serialize;
use sumpbook_trade::checklist::{Severity, Template};
use sumpbook_trade::clock::{Nearer, Programme, Standing};
use sumpbook_trade::day::DayStatus;
use sumpbook_trade::oil::{NoVerdict, OilVerdict};
use sumpbook_trade::record::{AnswerKind, How, Meter, NoteKind, OilLook, Role, SiteDust, Source, Warmth};
use sumpbook_trade::wear::WhyCalled;
use sumpbook_trade::{FactKind, Feature, Fluid, OilFamily};

use super::{Arg, ENGLISH, Language, Texts, caution_keys};
use crate::judgement::Judged;
use crate::label::{NotADrum, NotAUnit};
use crate::screen::{
    AirField, ChangeWords, DisabledReason, EndOfDayNotice, LevelNow, LockState, MainAct, SoundAct,
    SoundTrouble, called_key, standing_key, verdict_key,
};
use crate::sound::SoundError;

mod spanish;

fn kebab(value: &impl Serialize) -> String {
    let json = serde_json::to_value(value).unwrap();
    let name = json.as_str().unwrap_or_else(|| panic!("{json} is no name"));
    name.chars().fold(String::new(), |mut key, c| {
        if c.is_ascii_uppercase() && !key.is_empty() {
            key.push('-');
        }
        key.push(c.to_ascii_lowercase());
        key
    })
}

fn keys() -> BTreeSet<String> {
    let mut keys: BTreeSet<String> =
        MainAct::KEYS.iter().chain(&DisabledReason::KEYS).map(|key| (*key).to_owned()).collect();
    let mut with = |prefix: &str, names: Vec<String>| {
        keys.extend(names.into_iter().map(|name| format!("{prefix}-{name}")));
    };
    let each = |all: &[FactKind]| all.iter().map(kebab).collect();
    with("kind", each(FactKind::ALL));
    with("kind", vec!["newer".into()]);
    with("feature", Feature::ALL.iter().map(kebab).collect());
    with("fluid", Fluid::ALL.iter().map(kebab).collect());
    with("family", OilFamily::ALL.iter().map(kebab).collect());
    with("aside", (0..9).map(|n| kebab(&Judged::from_number(n))).collect());
    with("aside", vec!["reading".into(), "by-shop".into()]);
    let became = ["title", "not-yet-at-shop", "at-shop", "visit", "waiting-for-part", "waiting-promised"];
    let asides = (1..9).map(|n| kebab(&Judged::from_number(n))).chain(["reading".into(), "by-shop".into()]);
    let asides: Vec<String> = asides.collect();
    with("aside-why", asides.clone());
    with("aside-do", asides);
    with("aside", ["counts-again", "no-words", "at-most", "belongs-to"].map(str::to_owned).to_vec());
    with("became", became.map(str::to_owned).to_vec());
    use NotAUnit as U;
    let not_a_unit =
        [U::OtherFleet, U::NotHere, U::OtherTruck, U::DrumLabel, U::ShopCode, U::NoTag].iter().map(kebab);
    with("scan", not_a_unit.chain([NotADrum::DoorTag, NotADrum::ShopCode].iter().map(kebab)).collect());
    use DayStatus as D;
    with("status", D::ALL.iter().map(kebab).collect());
    use Role as R;
    with("role", [R::Driver, R::Crew, R::Trainee, R::Mechanic, R::Manager].iter().map(kebab).collect());
    use Source as S;
    with(
        "source",
        [S::Phone, S::Paper, S::Invoice, S::Estimate, S::BroughtIn, S::Shop].iter().map(kebab).collect(),
    );
    use Severity as V;
    with("severity", [V::RoadAndAir, V::Road, V::Air, V::Outlet, V::Note].iter().map(kebab).collect());
    use AnswerKind as A;
    with("answer", [A::Ok, A::Defect, A::NotFitted, A::CouldNotCheck].iter().map(kebab).collect());
    with("how", [How::Asked, How::Chosen, How::Timed, How::Offered, How::Said].iter().map(kebab).collect());
    with("warmth", [Warmth::Cold, Warmth::Hot].iter().map(kebab).collect());
    use OilLook as O;
    with("look", [O::Clear, O::Dark, O::Milky, O::Foaming, O::Burnt].iter().map(kebab).collect());
    with("dust", [SiteDust::Clean, SiteDust::Dusty, SiteDust::VeryDusty].iter().map(kebab).collect());
    with("note", [NoteKind::Fault, NoteKind::Warning, NoteKind::Reminder].iter().map(kebab).collect());
    with("meter", [Meter::Compressor, Meter::Engine, Meter::Pto].iter().map(kebab).collect());
    with("nearer", [Nearer::Hours, Nearer::Calendar, Nearer::Unknown].iter().map(kebab).collect());
    for task in Programme::common_practice().tasks {
        with("task", vec![task.id.0]);
        with("task", task.first_service.map(|first| first.id.0).into_iter().collect());
    }
    use Standing as T;
    let standings = [T::Closed, T::FarOff, T::Unknown, T::ComingUp, T::DueToday, T::PastDue];
    keys.extend(standings.map(|standing| standing_key(standing).to_owned()));
    use LevelNow as L;
    let levels = [L::NotGiven, L::BelowView, L::Under(1), L::Middle, L::Over(1), L::AboveView];
    keys.extend(levels.map(|level| level.text_key().to_owned()));
    use LockState as K;
    keys.extend([K::NoLockOnRecord, K::AwaitingReview, K::Locked].map(|lock| lock.text_key().to_owned()));
    use EndOfDayNotice as N;
    keys.extend([N::NoPreTrip, N::AirStillOn].map(|notice| notice.text_key().to_owned()));
    use WhyCalled as W;
    keys.extend([W::WrongOil, W::Milky, W::Burnt].map(|why| called_key(why).to_owned()));
    use OilVerdict as O2;
    let none = [NoVerdict::TooFewHours, NoVerdict::BandTooWide, NoVerdict::GlassUnknown, NoVerdict::Settling];
    let verdicts = none.map(O2::None).into_iter().chain([O2::Under, O2::Over]);
    keys.extend(verdicts.map(|verdict| verdict_key(verdict).to_owned()));
    keys.extend([ChangeWords::OilUseMore, ChangeWords::OilUseLess].iter().map(kebab));
    let template = Template::common_practice().unwrap();
    for item in &template.items {
        keys.extend(["", ".ok", ".look"].map(|part| format!("item-{}{part}", item.id)));
        keys.extend(item.defects.iter().map(|defect| format!("choice-{}", defect.0)));
        keys.extend(item.caution.iter().map(|caution| format!("caution-{caution}")));
    }
    keys.extend(template.stops.iter().map(|stop| format!("stop-{}", stop.id)));
    keys.extend(AirField::ALL.map(|field| field.text_key().to_owned()));
    use SoundAct as B;
    let acts = [B::Record, B::Choose, B::Stop, B::Listen, B::StopListening, B::TakeAway];
    keys.extend(acts.map(|act| act.key().to_owned()));
    use SoundTrouble as X;
    let troubles = [X::NotAllowed, X::NoMicrophone, X::NotPlayed];
    keys.extend(troubles.map(|trouble| trouble.key().to_owned()));
    use SoundError as Y;
    let refused = [Y::NotASound, Y::Cut, Y::TooLong, Y::TooLarge, Y::Full, Y::Damaged("".into())];
    keys.extend(refused.iter().filter_map(Y::text_key).map(str::to_owned));
    for warning in
        ["too-little", "pressure", "cut-off", "nozzle", "nozzle-unknown", "guard", "run-warm", "hose", "tool"]
    {
        keys.insert(format!("air-warn-{warning}"));
    }
    for key in [
        "pre-trip-not-started",
        "pre-trip-under-way",
        "pre-trip-covers",
        "pre-trip-ended",
        "sign-missing-gauge-zero",
        "sign-missing-blow-down-silent",
        "sign-missing-both",
        "choice-other",
        "choice-wrong-oil",
        "choice-other-grade",
        "choice-unknown-oil",
        "sound-goes-with-it",
        "sound-recording",
        "sound-stand-clear",
        "sound-of-defect",
        "sound-not-here",
        "error-sound-stopped",
    ] {
        keys.insert(key.to_owned());
    }
    keys
}

#[test]
fn the_files_read_without_a_problem() {
    for language in Language::ALL {
        assert_eq!(Texts::of(language).problems(), [""; 0], "{language:?}");
    }
}

#[test]
fn a_broken_file_shows_what_it_can_and_says_what_is_wrong() {
    let texts = Texts::read(Language::En, &[("a", "one = 1\n= lost\n"), ("b", "one = 2\n")], None);
    assert_eq!(texts.get("one", &[]), "1");
    assert_eq!(texts.problems().len(), 2, "{:?}", texts.problems());
}

#[test]
fn every_key_that_code_names_has_its_text() {
    let missing: Vec<String> = keys().into_iter().filter(|key| !Texts::english().has(key)).collect();
    assert!(missing.is_empty(), "{missing:#?}");
}

#[test]
fn the_words_of_the_rule_on_readings_have_their_texts() {
    // The folded state names them by these words; see state::hours.
    let words = include_str!("../state/hours.rs");
    let named = |prefix: &str, rust: &str| {
        let lines = words.lines().filter(|line| line.trim_start().starts_with(rust));
        let quoted: Vec<String> =
            lines.filter_map(|line| line.split('"').nth(1)).map(|word| format!("{prefix}-{word}")).collect();
        assert!(quoted.len() >= 5, "{prefix}: {quoted:?}");
        quoted
    };
    for key in named("question", "QuestionWhy::").into_iter().chain(named("hint", "Hint::")) {
        assert!(Texts::english().has(&key), "{key}");
    }
}

#[test]
fn the_cautions_are_listed_whole_and_open_with_the_first() {
    let all: Vec<&str> = caution_keys().collect();
    assert_eq!(all.first(), Some(&"caution-opening"));
    let named: BTreeSet<String> = keys().into_iter().filter(|key| key.starts_with("caution-")).collect();
    assert!(named.iter().all(|key| all.contains(&key.as_str())), "{named:?}");
    for texts in [Texts::english(), Texts::spanish()] {
        assert!(all.iter().all(|key| texts.holds(key)));
    }
}

#[test]
fn a_missing_key_is_seen() {
    assert_eq!(Texts::english().get("no-such-key", &[]), "<no-such-key>");
    assert_eq!(Texts::english().get("item-horn.no-such-part", &[]), "<item-horn.no-such-part>");
}

#[test]
fn values_stand_in_their_text_without_marks_around_them() {
    let texts = Texts::english();
    assert_eq!(texts.get("main-start-pre-trip", &[("door", "TH-01".into())]), "Start pre-trip, TH-01");
    assert_eq!(texts.get("main-all-ok", &[("lines", 8u32.into())]), "All 8 looked at: OK");
    assert_eq!(texts.get("main-all-ok", &[("lines", 1u32.into())]), "Looked at: OK");
    assert_eq!(texts.get("task-days-left", &[("days", Arg::Count(0))]), "today is the last good day");
    assert_eq!(texts.get("task-days-left", &[("days", Arg::Count(109))]), "109 days left");
    assert_eq!(texts.get("item-horn.ok", &[]), "loud at once");
}

/// Words of a text, whatever stands between them.
fn words(text: &str) -> Vec<&str> {
    text.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty()).collect()
}

#[test]
fn no_text_approves_of_a_unit_or_shows_a_letter_for_a_lock() {
    for (file, text) in ENGLISH {
        for line in text.lines().filter(|line| !line.starts_with('#')) {
            let said = line.split_once('=').map_or(line, |(_, said)| said);
            let lower = said.to_lowercase();
            for word in words(&lower) {
                assert!(
                    !["safe", "safely", "fit", "pass", "passed", "roadworthy"].contains(&word),
                    "{file}: {line}"
                );
            }
            for phrase in ["good to go", "ok to drive", "ok to use", "nothing wrong"] {
                assert!(!lower.contains(phrase), "{file}: {line}");
            }
            for word in words(said) {
                assert!(!["R", "N"].contains(&word), "{file}: {line}");
            }
            // "A" is an article at the beginning of a sentence and a letter anywhere else.
            let inner =
                said.trim().split(['.', ':']).flat_map(|sentence| words(sentence).into_iter().skip(1));
            assert!(!inner.into_iter().any(|word| word == "A"), "{file}: {line}");
        }
    }
}
