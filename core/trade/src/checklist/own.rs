//! A checklist as the shop has it: what its words lock, edited.

use super::{Item, Severity, Template};
use crate::record::OwnSeverity;

/// Why an edit does not fit the checklist.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum NotOnTheChecklist {
    /// No such item.
    #[error("the checklist has no item '{0}'")]
    Item(String),
    /// The item does not offer the word.
    #[error("'{item}' has no word '{word}'")]
    Word {
        /// The item.
        item: String,
        /// The word.
        word: String,
    },
    /// An outlet is locked, and the item is looked at on none.
    #[error("'{0}' is looked at on no single outlet: it cannot lock one")]
    NoOutlet(String),
    /// The word is not asked about again.
    #[error("'{word}' of '{item}' locks the same each time: it has no second time")]
    NotAgain {
        /// The item.
        item: String,
        /// The word.
        word: String,
    },
    /// A second time may not lock less than the first.
    #[error("'{word}' of '{item}' would lock less the second time than the first")]
    LessAgain {
        /// The item.
        item: String,
        /// The word.
        word: String,
    },
    /// One word stands twice among the edits.
    #[error("'{word}' of '{item}' is edited twice")]
    Twice {
        /// The item.
        item: String,
        /// The word.
        word: String,
    },
}

impl OwnSeverity {
    /// Whether a checklist has it so by itself.
    pub fn is_usual(&self, checklist: &Template) -> bool {
        let Some(item) = checklist.item(&self.item) else { return false };
        let again = item.again.as_ref().filter(|again| again.word == self.word);
        item.severity(&self.word) == Some(self.severity)
            && self.again.is_none_or(|own| again.is_some_and(|again| again.severity == own))
    }

    /// Whether it locks less than a checklist has it by itself, the first time or the second.
    pub fn locks_less(&self, checklist: &Template) -> bool {
        let less = |own: Severity, usual: Severity| own.and(usual) != own;
        let Some(item) = checklist.item(&self.item) else { return false };
        let again = item.again.as_ref().filter(|again| again.word == self.word);
        item.severity(&self.word).is_some_and(|usual| less(self.severity, usual))
            || self.again.zip(again).is_some_and(|(own, again)| less(own, again.severity))
    }
}

impl Template {
    /// This checklist with what the shop made its own.
    ///
    /// # Errors
    /// The first edit that does not fit it.
    pub fn with_own(&self, own: &[OwnSeverity]) -> Result<Template, NotOnTheChecklist> {
        let mut template = self.clone();
        for (nth, edit) in own.iter().enumerate() {
            if own.iter().take(nth).any(|before| before.item == edit.item && before.word == edit.word) {
                return Err(NotOnTheChecklist::Twice { item: edit.item.clone(), word: edit.word.clone() });
            }
            template.edit(edit)?;
        }
        Ok(template)
    }

    /// The same, without what does not fit: an edit by a newer program, of a word this one does not have.
    pub fn with_what_fits(&self, own: &[OwnSeverity]) -> Template {
        let mut template = self.clone();
        for edit in own {
            let _ = template.edit(edit);
        }
        template
    }

    /// The same for a walk on which these words, each of an item, are given a second time within days: they lock what
    /// they lock then.
    pub fn with_second_times<'a>(&self, words: impl Iterator<Item = (&'a str, &'a str)>) -> Template {
        let mut template = self.clone();
        for (item, word) in words {
            for known in template.items.iter_mut().filter(|known| known.id == item) {
                let Some(severity) = known.severity_again(word) else { continue };
                for defect in known.defects.iter_mut().filter(|defect| defect.0 == word) {
                    defect.1 = severity;
                }
            }
        }
        template
    }

    fn edit(&mut self, edit: &OwnSeverity) -> Result<(), NotOnTheChecklist> {
        let OwnSeverity { item, word, severity, again } = edit;
        let named = || (item.clone(), word.clone());
        let known = self.items.iter_mut().find(|known| known.id == *item);
        let known = known.ok_or_else(|| NotOnTheChecklist::Item(item.clone()))?;
        if known.severity(word).is_none() || word == Item::OTHER {
            let (item, word) = named();
            return Err(NotOnTheChecklist::Word { item, word });
        }
        if (*severity == Severity::Outlet || *again == Some(Severity::Outlet)) && !known.is_of_an_outlet() {
            return Err(NotOnTheChecklist::NoOutlet(item.clone()));
        }
        let second = known.again.as_mut().filter(|second| second.word == *word);
        match (second, again) {
            (None, Some(_)) => {
                let (item, word) = named();
                return Err(NotOnTheChecklist::NotAgain { item, word });
            }
            (_, Some(again)) if severity.and(*again) != *again => {
                let (item, word) = named();
                return Err(NotOnTheChecklist::LessAgain { item, word });
            }
            (Some(second), Some(again)) => second.severity = *again,
            (_, None) => {}
        }
        for defect in known.defects.iter_mut().filter(|defect| defect.0 == *word) {
            defect.1 = *severity;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::Severity::{Air, Note, Outlet, Road};
    use super::*;

    fn own(item: &str, word: &str, severity: Severity, again: Option<Severity>) -> OwnSeverity {
        OwnSeverity { item: item.into(), word: word.into(), severity, again }
    }

    fn shipped() -> &'static Template {
        Template::common_practice().unwrap()
    }

    #[test]
    fn a_word_locks_what_the_shop_says_and_other_is_still_the_worst_of_them() {
        let edited = shipped().with_own(&[own("mirrors", "cracked", Note, None)]).unwrap();
        let mirrors = edited.item("mirrors").unwrap();
        assert_eq!(mirrors.severity("cracked"), Some(Note));
        assert_eq!(mirrors.severity(Item::OTHER), Some(mirrors.worst()));
        let only = |item: &str| edited.item(item) == shipped().item(item);
        assert!(shipped().items.iter().filter(|item| item.id != "mirrors").all(|item| only(&item.id)));
        edited.check().unwrap();

        let all: Vec<OwnSeverity> = shipped()
            .items
            .iter()
            .find(|item| item.id == "mirrors")
            .into_iter()
            .flat_map(|item| item.defects.iter().map(|defect| own("mirrors", &defect.0, Note, None)))
            .collect();
        let notes = shipped().with_own(&all).unwrap();
        assert_eq!(notes.item("mirrors").unwrap().severity(Item::OTHER), Some(Note));
    }

    #[test]
    fn a_second_time_is_edited_with_its_word_and_never_locks_less() {
        let coolant =
            |edit| shipped().with_own(&[edit]).map(|t| t.item("coolant").unwrap().severity_again("low"));
        assert_eq!(coolant(own("coolant", "low", Note, None)), Ok(Some(Road)));
        assert_eq!(coolant(own("coolant", "low", Note, Some(Note))), Ok(Some(Note)));
        assert_eq!(coolant(own("coolant", "low", Air, None)), Ok(Some(Severity::RoadAndAir)));
        assert!(matches!(
            coolant(own("coolant", "low", Road, Some(Note))),
            Err(NotOnTheChecklist::LessAgain { .. })
        ));
    }

    #[test]
    fn what_does_not_fit_is_refused_by_name_and_left_out_where_it_only_came() {
        for (wrong, why) in [
            (own("wings", "cracked", Note, None), "the checklist has no item 'wings'"),
            (own("mirrors", "milky", Note, None), "'mirrors' has no word 'milky'"),
            (own("mirrors", Item::OTHER, Note, None), "'mirrors' has no word 'other'"),
            (
                own("mirrors", "cracked", Outlet, None),
                "'mirrors' is looked at on no single outlet: it cannot lock one",
            ),
            (
                own("mirrors", "cracked", Note, Some(Road)),
                "'cracked' of 'mirrors' locks the same each time: it has no second time",
            ),
        ] {
            let good = own("horn", "weak", Note, None);
            let edits = [wrong, good];
            assert_eq!(shipped().with_own(&edits).unwrap_err().to_string(), why);
            let fits = shipped().with_what_fits(&edits);
            assert_eq!(fits.item("horn").unwrap().severity("weak"), Some(Note));
            assert_eq!(fits.item("mirrors"), shipped().item("mirrors"));
        }
        let twice = [own("horn", "weak", Note, None), own("horn", "weak", Road, None)];
        let told = shipped().with_own(&twice).unwrap_err().to_string();
        assert_eq!(told, "'weak' of 'horn' is edited twice");
    }
}
