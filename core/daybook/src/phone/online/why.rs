//! Why the hub lets nobody in, as one word in a header: the phone has its own sentence for it, in its own language.

use crate::exchange::CodeState;

/// The header that carries it. A phone that does not know the word shows the hub's own sentence.
pub const WHY: &str = "sumpbook-why";

/// What is the matter with the code a phone asks to be let in under.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Why {
    /// Its time is over.
    CodeRanOut,
    /// Another phone used it.
    CodeUsed,
    /// The shop gave out no such code.
    CodeUnknown,
}

impl Why {
    const ALL: [Why; 3] = [Why::CodeRanOut, Why::CodeUsed, Why::CodeUnknown];

    /// What is the matter with a code that does not hold.
    pub fn of(code: &CodeState) -> Why {
        match code {
            CodeState::Expired(_) => Why::CodeRanOut,
            CodeState::Used(_) => Why::CodeUsed,
            CodeState::Unknown | CodeState::Open => Why::CodeUnknown,
        }
    }

    /// The word in the header.
    pub fn word(self) -> &'static str {
        match self {
            Why::CodeRanOut => "code-ran-out",
            Why::CodeUsed => "code-used",
            Why::CodeUnknown => "code-unknown",
        }
    }

    /// The one of this word.
    pub(super) fn read(word: &str) -> Option<Why> {
        Why::ALL.into_iter().find(|why| why.word() == word)
    }

    /// Key of its sentence.
    pub(super) fn text_key(self) -> &'static str {
        match self {
            Why::CodeRanOut => "error-code-ran-out",
            Why::CodeUsed => "error-code-used",
            Why::CodeUnknown => "error-code-unknown",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::text::Texts;

    #[test]
    fn each_word_is_read_back_and_has_a_sentence_in_both_languages() {
        for why in Why::ALL {
            assert_eq!(Why::read(why.word()), Some(why));
            for texts in [Texts::english(), Texts::spanish()] {
                assert!(texts.has(why.text_key()), "{}", why.text_key());
            }
        }
        assert_eq!(Why::read("said-by-a-newer-hub"), None);
    }
}
