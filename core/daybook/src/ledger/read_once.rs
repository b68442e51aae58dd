//! What was read of kept bytes already, so that the same bytes are not decoded again for the next screen.

use std::any::Any;
use std::cell::RefCell;
use std::collections::BTreeMap;

use sumpbook_trade::TruckId;

/// More units than most phones have on their Today; a hub, which has thousands, holds no more of them either.
const MOST: usize = 64;

/// Kept bytes and what was read of them.
type Read = (Vec<u8>, Box<dyn Any + Send>);

/// The last bytes of each unit and what was read of them.
#[derive(Default)]
pub(crate) struct ReadOnce(RefCell<BTreeMap<TruckId, Read>>);

impl ReadOnce {
    /// What `read` makes of these bytes, or made of the same bytes before: what another process kept meanwhile is
    /// other bytes. None when they do not read.
    pub(crate) fn of<T: Clone + Send + 'static>(
        &self,
        truck: TruckId,
        bytes: Vec<u8>,
        read: impl FnOnce(&[u8]) -> Option<T>,
    ) -> Option<T> {
        let mut all = self.0.borrow_mut();
        if let Some((of, made)) = all.get(&truck)
            && *of == bytes
            && let Some(made) = made.downcast_ref::<T>()
        {
            return Some(made.clone());
        }
        let made = read(&bytes)?;
        // Whoever goes through more than that in one order finds the first of them each time; to make room for the last
        // would find none.
        if all.len() < MOST || all.contains_key(&truck) {
            all.insert(truck, (bytes, Box::new(made.clone())));
        }
        Some(made)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn truck(n: u8) -> TruckId {
        TruckId::from_bytes([n; 16])
    }

    #[test]
    fn the_same_bytes_are_read_once_and_others_again() {
        let once = ReadOnce::default();
        let length = |bytes: &[u8]| Some(bytes.len());
        assert_eq!(once.of(truck(1), vec![1, 2], length), Some(2));
        assert_eq!(once.of(truck(1), vec![1, 2], |_| None::<usize>), Some(2));
        assert_eq!(once.of(truck(1), vec![1, 2, 3], length), Some(3));
        assert_eq!(once.of(truck(1), vec![1, 2], |_| None::<usize>), None);
        assert_eq!(once.of(truck(2), vec![1, 2, 3], |_| None::<usize>), None);
    }

    #[test]
    fn no_more_is_held_than_the_limit_and_the_first_are_found_again() {
        let once = ReadOnce::default();
        for n in 0..100 {
            assert_eq!(once.of(truck(n), vec![n], |bytes| bytes.first().copied()), Some(n));
        }
        assert_eq!(once.0.borrow().len(), MOST);
        assert_eq!(once.of(truck(0), vec![0], |_| None::<u8>), Some(0));
        assert_eq!(once.of(truck(99), vec![99], |_| None::<u8>), None);
    }
}
