//! What a screen says of an exchange: keys of texts and the values in them.

use super::{Exchanged, OnlineError, TriedWhy};
use crate::phone::PhoneError;
use crate::store::StoreError;
use crate::text::{Arg, Texts};

/// One sentence, in whatever language its reader has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sentence {
    /// Key of its text.
    pub key: &'static str,
    /// The value `count` in it.
    pub count: Option<u64>,
}

impl Sentence {
    /// The sentence itself.
    pub fn text(&self, texts: &Texts) -> String {
        let count = self.count.and_then(|count| i64::try_from(count).ok());
        let args: Vec<_> = count.map(|count| ("count", Arg::Count(count))).into_iter().collect();
        texts.get(self.key, &args)
    }
}

impl Exchanged {
    /// What somebody should hear of it beside the counts; most often nothing.
    pub fn sentences(&self) -> Vec<Sentence> {
        let of = |key, count| Sentence { key, count };
        let (again, back) = (self.placed_again as u64, self.own_back as u64);
        let said = [
            self.two_shops.then_some(of("error-two-shops", None)),
            self.shop_set_back.then_some(of("error-shop-set-back", None)),
            (again > 0).then_some(of("error-placed-again", Some(again))),
            (back > 0).then_some(of("error-own-back", Some(back))),
        ];
        said.into_iter().flatten().collect()
    }
}

impl OnlineError {
    /// The kind of cause: what is kept of it.
    pub(super) fn tried_why(&self) -> TriedWhy {
        match self {
            OnlineError::NoWay(_) | OnlineError::NoHub => TriedWhy::NoSignal,
            OnlineError::OtherKey => TriedWhy::OtherShop,
            OnlineError::Declined { .. } => TriedWhy::SaidNo,
            OnlineError::Exchange(_) | OnlineError::Phone(_) => TriedWhy::Other,
        }
    }

    /// Key of its words on a screen; none when the hub's own words say it, or its cause is told elsewhere.
    pub fn text_key(&self) -> Option<&'static str> {
        match self {
            OnlineError::NoWay(_) | OnlineError::NoHub => Some("error-no-signal"),
            OnlineError::OtherKey => Some("error-other-shop"),
            OnlineError::Declined { why: Some(why), .. } => Some(why.text_key()),
            OnlineError::Declined { status: 503, words, .. } if words.contains("disk is full") => {
                Some("error-shop-disk-full")
            }
            OnlineError::Phone(PhoneError::Store(StoreError::Full)) => Some("error-phone-full"),
            OnlineError::Declined { .. } | OnlineError::Exchange(_) | OnlineError::Phone(_) => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_happened_is_said_in_both_languages() {
        let done = Exchanged {
            two_shops: true,
            shop_set_back: true,
            placed_again: 2,
            own_back: 3,
            ..Exchanged::default()
        };
        for texts in [Texts::english(), Texts::spanish()] {
            let said: Vec<String> = done.sentences().iter().map(|sentence| sentence.text(texts)).collect();
            assert_eq!(said.len(), 4);
            assert!(said.iter().all(|said| !said.contains('<') && !said.contains('{')), "{said:?}");
            assert!(said[2].starts_with('2') && said[3].starts_with('3'), "{said:?}");
        }
        assert!(Exchanged::default().sentences().is_empty());
        assert_eq!(OnlineError::OtherKey.text_key(), Some("error-other-shop"));
    }
}
