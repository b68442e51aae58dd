//! Which text says an item or a word that a record names.

use sumpbook_trade::procedure::{is_step_item, is_step_word};

/// The key of an item's name: one of the checklist's, or a step of a procedure.
pub fn item_key(item: &str) -> String {
    if is_step_item(item) { item.to_owned() } else { format!("item-{item}") }
}

/// The key of the word chosen for what is wrong: one of the checklist's, or of a step.
pub fn word_key(word: &str) -> String {
    if is_step_word(word) { word.to_owned() } else { format!("choice-{word}") }
}

/// Keys of every caution, in the order of their file; the first opens each list of them.
pub fn caution_keys() -> impl Iterator<Item = &'static str> {
    super::CAUTIONS
        .lines()
        .filter(|line| line.starts_with("caution-"))
        .filter_map(|line| line.split(' ').next())
}
