//! Why the shop says no, in the reader's language. The command has its own sentences; a page says what can be done on
//! a page.

use sumpbook_daybook::line::{AnswerError, ReturnLineError};
use sumpbook_daybook::text::Arg;
use sumpbook_trade::campaign::RangeError;
use sumpbook_trade::checklist::NotOnTheChecklist;
use sumpbook_trade::clock::NotAProgramme;
use sumpbook_trade::record::NotANumberOfARule;

use super::language::Language;
use super::texts;
use crate::ShopError;
use crate::archive::ArchiveError;
use crate::campaign::CampaignError;
use crate::hub::HubError;
use crate::sealed_key::SealError;

/// A sentence that is said later, when the reader is known.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct No {
    key: &'static str,
    with: Vec<(&'static str, With)>,
}

/// What stands in the sentence.
#[derive(Clone, Debug, PartialEq, Eq)]
enum With {
    /// As it was given.
    Given(String),
    /// What a text names; as given where none does.
    Named { kind: &'static str, id: String },
}

impl No {
    fn because(key: &'static str) -> No {
        No { key, with: Vec::new() }
    }

    fn given(mut self, name: &'static str, given: impl ToString) -> No {
        self.with.push((name, With::Given(given.to_string())));
        self
    }

    fn named(mut self, name: &'static str, kind: &'static str, id: impl ToString) -> No {
        self.with.push((name, With::Named { kind, id: id.to_string() }));
        self
    }

    fn item(self, id: impl ToString) -> No {
        self.named("item", "item", id)
    }

    fn word(self, id: impl ToString) -> No {
        self.named("word", "choice", id)
    }

    /// The sentence.
    pub(super) fn said(&self, language: Language) -> String {
        let with: Vec<(&str, String)> =
            self.with.iter().map(|(name, with)| (*name, with.in_words(language))).collect();
        let args: Vec<(&str, Arg<'_>)> = with.iter().map(|(name, text)| (*name, Arg::Text(text))).collect();
        language.say(self.key, &args)
    }

    /// Why the hub does not do it; none where the books themselves cannot be read or written.
    pub(super) fn of_hub(error: &HubError) -> Option<No> {
        Some(match error {
            HubError::Shop(error) => return No::of_shop(error),
            HubError::Busy => No::because("no-busy"),
            HubError::Stopping => No::because("no-stopping"),
            HubError::Unwritten { full: true } => No::because("no-full"),
            HubError::Unwritten { full: false } => No::because("no-unwritten"),
            HubError::Random(_)
            | HubError::Thread(_)
            | HubError::Address { .. }
            | HubError::Certificate { .. } => No::because("no-hub"),
        })
    }

    /// Why the shop does not do it; none where the books themselves cannot be read or written.
    fn of_shop(error: &ShopError) -> Option<No> {
        Some(match error {
            // No folder is chosen on a page.
            ShopError::Ledger(_)
            | ShopError::Folder { .. }
            | ShopError::Broken { .. }
            | ShopError::Taken(_)
            | ShopError::NotEmpty(_)
            | ShopError::NoShop { .. }
            | ShopError::BookLost(_)
            | ShopError::Zone(_) => return None,
            // A page asks and answers about its table itself.
            ShopError::Table(_) => return None,
            ShopError::Feed(_) => No::because("no-feed"),
            ShopError::Archive(error) => No::of_archive(error),
            ShopError::Campaign(error) => No::of_campaign(error),
            ShopError::Number(NotANumberOfARule::OutOfBounds { given, least, most, .. }) => {
                No::because("no-number").given("given", given).given("least", least).given("most", most)
            }
            ShopError::Programme(error) => No::of_programme(error),
            ShopError::OtherEdition(edition) => No::because("no-programme-edition").given("edition", edition),
            ShopError::Severity(error) => No::of_severity(error),
            ShopError::Seal(error) => No::of_seal(error),
            ShopError::ReceivedGiven => No::because("no-received"),
            ShopError::Name => No::because("no-name"),
            ShopError::NoPerson => No::because("no-person"),
            ShopError::UnknownPerson { name, known } => {
                No::because("no-person-unknown").given("name", name).given("known", known)
            }
            ShopError::UnknownUnit { door, known } => {
                No::because("no-unit-unknown").given("door", door).given("known", known)
            }
            ShopError::SetElsewhere { serial, door } => {
                No::because("no-set-elsewhere").given("serial", serial).given("door", door)
            }
            ShopError::InServiceLater { door, first, said } => No::because("no-in-service-later")
                .given("door", door)
                .given("first", first)
                .given("said", said),
            ShopError::BeforeInService { unit, since, said } => No::because("no-before-in-service")
                .given("unit", unit)
                .given("since", since)
                .given("said", said),
            ShopError::OilOfAnotherFamily { unit, is, said } => No::because("no-service-oil")
                .given("unit", unit)
                .named("is", "family", is)
                .named("said", "family", said),
            ShopError::UnknownTarget(_) => No::because("no-entry"),
            ShopError::SeveralUnits => No::because("no-several-units"),
            ShopError::DecidedMeanwhile => No::because("no-decided-meanwhile"),
            ShopError::NoTargets => No::because("no-targets"),
            ShopError::NoWords => No::because("no-words"),
            ShopError::LocksLess { item, word } => No::because("no-severity-why").item(item).word(word),
            ShopError::NoSuchDefect { unit, item, .. } => {
                No::because("no-defect").given("unit", unit).item(item)
            }
            ShopError::NoSuchWait(unit) => No::because("no-wait").given("unit", unit),
            ShopError::DayOver(day) => No::because("no-day-over").given("day", day),
            ShopError::NoSuchVisit(unit) => No::because("no-visit").given("unit", unit),
            ShopError::UnknownTask { task, unit, known } => {
                No::because("no-task").named("task", "task", task).given("unit", unit).given("known", known)
            }
            ShopError::LaidUpAlready { unit, since } => {
                No::because("no-laid-up").given("unit", unit).given("since", since)
            }
            ShopError::NotLaidUp(unit) => No::because("no-not-laid-up").given("unit", unit),
            ShopError::NoReturnLine(_) => No::because("no-return-line"),
            ShopError::ReturnLine(error) => No::of_return_line(error),
            ShopError::Ahead(when) => No::because("no-ahead").given("when", when),
            ShopError::Answer(error) => No::of_answer(error),
            ShopError::Checklist(_) => No::because("no-checklist"),
            ShopError::SignedAhead(when) => No::because("no-signed-ahead").given("when", when),
            ShopError::PageEmpty => No::because("no-page-empty"),
            ShopError::PageTyped(page) => No::because("no-page-twice").given("page", page),
            ShopError::UnknownPhone(_) | ShopError::NoSuchFingerprint(_) => No::because("no-phone"),
            ShopError::StoppedAlready(phone) => No::because("no-phone-stopped").given("phone", phone),
            ShopError::DayAhead(day) => No::because("no-day-ahead").given("day", day),
            ShopError::DayBeyond(day) => No::because("no-day-beyond").given("day", day),
        })
    }

    fn of_archive(error: &ArchiveError) -> No {
        No::because(match error {
            ArchiveError::File { .. } | ArchiveError::Zip(_) => "no-file",
            ArchiveError::NotOurs(_) => "no-not-ours",
            ArchiveError::Newer(_) => "no-newer",
            ArchiveError::OtherPurpose(_) => "no-other-purpose",
            ArchiveError::Changed(_) => "no-changed",
        })
    }

    fn of_seal(error: &SealError) -> No {
        No::because(match error {
            SealError::NoPhrase(_) => "no-phrase-yet",
            SealError::Phrase(_) | SealError::Closed => "no-phrase",
            SealError::Broken | SealError::File { .. } | SealError::Random => "no-sealed",
        })
    }

    fn of_campaign(error: &CampaignError) -> No {
        match error {
            CampaignError::Name => No::because("no-campaign-name"),
            CampaignError::Words => No::because("no-campaign-words"),
            CampaignError::Reason => No::because("no-campaign-reason"),
            CampaignError::Paper => No::because("no-campaign-paper"),
            CampaignError::NoRange => No::because("no-campaign-ranges"),
            CampaignError::Range(RangeError::Empty) => No::because("no-campaign-range-empty"),
            CampaignError::Range(RangeError::DoNotCompare(from, to)) => {
                No::because("no-campaign-range-alike").given("from", from).given("to", to)
            }
            CampaignError::Range(RangeError::Backwards(from, to)) => {
                No::because("no-campaign-range-backwards").given("from", from).given("to", to)
            }
            CampaignError::Outlet => No::because("no-campaign-outlet"),
            CampaignError::StopsNothing => No::because("no-campaign-stops-nothing"),
            CampaignError::Hours => No::because("no-campaign-hours"),
            CampaignError::Day(day) => No::because("no-day-beyond").given("day", day),
            CampaignError::Unknown { name, known } => {
                No::because("no-campaign-unknown").given("name", name).given("known", known)
            }
            CampaignError::Gone(name) => No::because("no-campaign-gone").given("name", name),
            CampaignError::SerialTells { unit, name } => {
                No::because("no-campaign-serial").given("unit", unit).given("name", name)
            }
            CampaignError::NoSet(unit) => No::because("no-campaign-set").given("unit", unit),
        }
    }

    fn of_programme(error: &NotAProgramme) -> No {
        match error {
            NotAProgramme::Name(name) => No::because("no-programme-name").given("task", name),
            NotAProgramme::Twice(task) => No::because("no-programme-twice").named("task", "task", task),
            NotAProgramme::NoClock(task) => No::because("no-programme-clock").named("task", "task", task),
            NotAProgramme::OutOfBounds { task, given, least, most, .. } => No::because("no-programme-bounds")
                .named("task", "task", task)
                .given("given", given)
                .given("least", least)
                .given("most", most),
        }
    }

    fn of_severity(error: &NotOnTheChecklist) -> No {
        match error {
            NotOnTheChecklist::Item(item) => No::because("no-severity-item").item(item),
            NotOnTheChecklist::Word { item, word } => No::because("no-severity-word").item(item).word(word),
            NotOnTheChecklist::NoOutlet(item) => No::because("no-severity-outlet").item(item),
            NotOnTheChecklist::NotAgain { item, word } => {
                No::because("no-severity-again").item(item).word(word)
            }
            NotOnTheChecklist::LessAgain { item, word } => {
                No::because("no-severity-less-again").item(item).word(word)
            }
            NotOnTheChecklist::Twice { item, word } => No::because("no-severity-twice").item(item).word(word),
        }
    }

    fn of_return_line(error: &ReturnLineError) -> No {
        let line = |key, line: &str| No::because(key).named("line", "return", line);
        match error {
            ReturnLineError::List(_) => No::because("no-return-list"),
            ReturnLineError::UnknownLine { line: id, .. } => line("no-return-unknown", id),
            ReturnLineError::Twice(id) => line("no-return-twice", id),
            ReturnLineError::NoReason(id) => line("no-return-reason", id),
            ReturnLineError::NoPerson => No::because("no-return-person"),
        }
    }

    fn of_answer(error: &AnswerError) -> No {
        match error {
            AnswerError::UnknownItem { item, .. } => No::because("no-answer-item").item(item),
            AnswerError::UnknownPlace { item, known, .. } => {
                No::because("no-answer-place").item(item).given("known", known)
            }
            AnswerError::NoWord { item, .. } => No::because("no-answer-word").item(item),
            AnswerError::UnknownWord { item, word, .. } => {
                No::because("no-answer-word-unknown").item(item).word(word)
            }
            AnswerError::Lowered { item, word, own, given } => No::because("no-answer-lowered")
                .item(item)
                .word(word)
                .named("own", "severity", own)
                .named("given", "severity", given),
            AnswerError::SoundOfNoDefect { item } => No::because("no-answer-sound").item(item),
            AnswerError::NotADefect { item } => No::because("no-answer-no-defect").item(item),
        }
    }
}

impl With {
    fn in_words(&self, language: Language) -> String {
        match self {
            With::Given(given) => given.clone(),
            With::Named { kind, id } => {
                texts::find(language, &format!("{kind}-{id}"), &[]).unwrap_or_else(|| id.clone())
            }
        }
    }
}
