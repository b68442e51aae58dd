//! The words of the screens, by key.

use sumpbook_daybook::phone::online::TriedWhy;
use sumpbook_daybook::screen::{
    self, DisabledReason, EndOfDayNotice, LevelNow, LockState, MainAct, PreTripNow,
};
use sumpbook_daybook::state::hint_key;
use sumpbook_daybook::text::{Arg, Language, Texts, caution_keys, item_key, word_key};
use sumpbook_trade::clock::Standing;
use sumpbook_trade::hours::Hint;
use sumpbook_trade::oil::OilVerdict;
use sumpbook_trade::wear::WhyCalled;

/// A value that stands in a text.
#[derive(Clone, Debug, PartialEq, uniffi::Enum)]
pub enum TextValue {
    /// Words, or a figure as it is to stand there.
    Words(String),
    /// A count: it also chooses between one and many.
    Count(i64),
}

/// A text with its values.
#[derive(Clone, Debug, PartialEq, uniffi::Record)]
pub struct TextAsk {
    /// Its key, such as `main-go-on`, or that of a part, such as `item-horn.ok`.
    pub key: String,
    /// Its values by name.
    pub values: std::collections::HashMap<String, TextValue>,
}

/// One text, in the language of a tag (BCP 47); English where we have none in it. A key that is nowhere comes back as
/// `<key>`.
#[uniffi::export]
pub fn text(language: &str, asked: &TextAsk) -> String {
    let texts = Texts::of(Language::from_tag(language).unwrap_or_default());
    let values: Vec<(&str, Arg<'_>)> = asked
        .values
        .iter()
        .map(|(name, value)| {
            let value = match value {
                TextValue::Words(words) => Arg::Text(words),
                TextValue::Count(count) => Arg::Count(*count),
            };
            (name.as_str(), value)
        })
        .collect();
    texts.get(&asked.key, &values)
}

/// Many texts by one call, in the order they were asked for.
#[uniffi::export]
pub fn texts(language: &str, asked: Vec<TextAsk>) -> Vec<String> {
    asked.iter().map(|one| text(language, one)).collect()
}

/// Whether there is a text of this key, in this language or in English.
#[uniffi::export]
pub fn has_text(language: &str, key: &str) -> bool {
    Texts::of(Language::from_tag(language).unwrap_or_default()).has(key)
}

/// Key of the main button's label.
#[uniffi::export]
pub fn key_of_main(act: &MainAct) -> String {
    act.text_key().to_owned()
}

/// Key of why something cannot be pressed yet.
#[uniffi::export]
pub fn key_of_why_not(reason: &DisabledReason) -> String {
    reason.text_key().to_owned()
}

/// Key of what is on record for road, air or an outlet.
#[uniffi::export]
pub fn key_of_lock(state: LockState) -> String {
    state.text_key().to_owned()
}

/// Key of where a pre-trip stands.
#[uniffi::export]
pub fn key_of_pre_trip(now: &PreTripNow) -> String {
    now.text_key().to_owned()
}

/// Key of a level against the middle.
#[uniffi::export]
pub fn key_of_level(level: LevelNow) -> String {
    level.text_key().to_owned()
}

/// Key of why the shop was tried in vain.
#[uniffi::export]
pub fn key_of_tried(why: TriedWhy) -> String {
    why.text_key().to_owned()
}

/// Keys of every caution, in the order they are listed to be read; the first opens the list.
#[uniffi::export]
pub fn keys_of_cautions() -> Vec<String> {
    caution_keys().map(str::to_owned).collect()
}

/// Key of how a task stands.
#[uniffi::export]
pub fn key_of_standing(standing: Standing) -> String {
    screen::standing_key(standing).to_owned()
}

/// Key of an item's name: one of the checklist's, or a step of a procedure.
#[uniffi::export]
pub fn key_of_item(item: String) -> String {
    item_key(&item)
}

/// Key of the word chosen for what is wrong.
#[uniffi::export]
pub fn key_of_word(word: String) -> String {
    word_key(&word)
}

/// Key of why the oil calls for its service.
#[uniffi::export]
pub fn key_of_called(why: WhyCalled) -> String {
    screen::called_key(why).to_owned()
}

/// Key of what a balance says of the limit.
#[uniffi::export]
pub fn key_of_oil_verdict(verdict: OilVerdict) -> String {
    screen::verdict_key(verdict).to_owned()
}

/// Key of what would explain a figure that is asked about.
#[uniffi::export]
pub fn key_of_hint(hint: &Hint) -> String {
    hint_key(hint)
}

/// Key of what stands above the end-of-day report's button.
#[uniffi::export]
pub fn key_of_notice(notice: EndOfDayNotice) -> String {
    notice.text_key().to_owned()
}
