//! Any schedule of exchanges, with requests and answers lost on the way, ends with equal heads.

use proptest::prelude::*;

use super::forks::copy_of;
use super::online::settled;
use super::*;

#[derive(Clone, Debug)]
enum Step {
    Records {
        phone: usize,
        truck: u8,
    },
    /// The request is sent; it, or the answer to it, may be lost.
    Exchanges {
        phone: usize,
        request_lost: bool,
        answer_lost: bool,
    },
    ShopSays {
        truck: u8,
    },
    /// The phone is replaced by a copy of itself made before.
    Copies {
        phone: usize,
    },
    Restores {
        phone: usize,
    },
    Forgets {
        phone: usize,
    },
}

fn step() -> impl Strategy<Value = Step> {
    let phone = 0usize..3;
    prop_oneof![
        4 => (phone.clone(), 1u8..4).prop_map(|(phone, truck)| Step::Records { phone, truck }),
        6 => (phone.clone(), any::<bool>(), any::<bool>()).prop_map(|(phone, request_lost, answer_lost)| {
            Step::Exchanges { phone, request_lost: request_lost && answer_lost, answer_lost }
        }),
        1 => (1u8..4).prop_map(|truck| Step::ShopSays { truck }),
        1 => phone.clone().prop_map(|phone| Step::Copies { phone }),
        1 => phone.clone().prop_map(|phone| Step::Restores { phone }),
        1 => phone.prop_map(|phone| Step::Forgets { phone }),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, ..ProptestConfig::default() })]

    #[test]
    fn every_schedule_ends_with_equal_heads(steps in proptest::collection::vec(step(), 1..40)) {
        let mut shop = Shop::new(1);
        let mut phones: Vec<Phone> = (1..=3)
            .map(|n| shop.lets_in(&format!("yard phone {n}"), &[truck(1), truck(2), truck(3)]))
            .collect();
        let mut copies: Vec<Option<Phone>> = vec![None, None, None];
        let mut recorded = Vec::new();
        for (minute, step) in (10..).zip(steps) {
            match step {
                Step::Records { phone, truck: number } => {
                    recorded.push((phone, phones[phone].reads(truck(number), minute, at(minute))));
                }
                Step::Exchanges { phone, request_lost, answer_lost } => {
                    let asked = phones[phone].asks(at(minute));
                    if !request_lost {
                        let answered = shop.answers(&asked, at(minute));
                        if !answer_lost {
                            phones[phone].hears(&asked, &answered, at(minute));
                        }
                    }
                }
                Step::ShopSays { truck: number } => {
                    shop.says(Some(truck(number)), reading(minute));
                }
                Step::Copies { phone } => copies[phone] = Some(copy_of(&phones[phone])),
                Step::Restores { phone } => {
                    if let Some(copy) = copies[phone].take() {
                        phones[phone] = copy;
                        // What was on it alone is lost with it; what ever left it comes back.
                        recorded.retain(|(by, id)| {
                            *by != phone
                                || !shop.ledger.store().truth().by_id(*id).unwrap().is_empty()
                                || !phones[phone].book.ledger().store().truth().by_id(*id).unwrap().is_empty()
                        });
                    }
                }
                Step::Forgets { phone } => {
                    let store = phones[phone].book.ledger_mut().store_mut();
                    crate::exchange::memory::drop_cursor(store).unwrap();
                    store.forget_receipts().unwrap();
                }
            }
        }
        for _ in 0..2 {
            for phone in &mut phones {
                shop.exchanges(phone, at(5_000));
            }
        }
        let count = shop.ledger.store().truth().count().unwrap();
        for phone in &phones {
            settled(&shop, phone);
            prop_assert_eq!(phone.book.ledger().store().truth().count().unwrap(), count);
        }
        for (_, id) in recorded {
            prop_assert_eq!(shop.ledger.store().truth().by_id(id).unwrap().len(), 1);
        }
    }
}
