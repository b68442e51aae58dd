//! Whatever happens between a shop and its phones, in whatever order: at the end all know the same.

use proptest::prelude::*;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};
use sumpbook_daybook::book::document::rebuild;
use sumpbook_daybook::ledger::{Incoming, Ledger};
use sumpbook_simulation::fleet::{ledger_in_memory, root, shop_key};
use sumpbook_simulation::world::{HANDS, Step, World, settle_in};

/// Cases without a word from outside: about a minute. `PROPTEST_CASES` asks for another number.
const CASES: u32 = 300;

fn runner() -> TestRunner {
    let asked = std::env::var("PROPTEST_CASES").ok().and_then(|cases| cases.parse().ok());
    let config = Config {
        cases: asked.unwrap_or(CASES),
        failure_persistence: None,
        max_shrink_time: 120_000,
        ..Config::default()
    };
    // The same cases on every machine; another number of cases is other cases as well.
    TestRunner::new_with_rng(config, TestRng::deterministic_rng(RngAlgorithm::ChaCha))
}

fn steps() -> impl Strategy<Value = Vec<Step>> {
    prop::collection::vec((0u8..4, 0u8..20, 0u32..100_000, 0u32..100_000, 0u32..100_000), 1..70)
}

fn text(ledger: &mut Ledger) -> Vec<String> {
    ledger.settle().unwrap();
    ledger.store().projection_text().unwrap()
}

fn assert_same(one: &[String], other: &[String], what: &str) -> Result<(), TestCaseError> {
    let only = |a: &[String], b: &[String]| {
        a.iter().filter(|line| !b.contains(line)).take(4).cloned().collect::<Vec<_>>().join("\n  ")
    };
    prop_assert!(
        one == other,
        "{what}\n only first:\n  {}\n only second:\n  {}",
        only(one, other),
        only(other, one)
    );
    Ok(())
}

fn meet(steps: &[Step], order: u32) -> World {
    let mut world = World::new();
    steps.iter().for_each(|step| world.step(*step));
    world.meet(order);
    world
}

#[test]
fn everyone_ends_with_the_same() {
    let tried = runner().run(&(steps(), any::<u32>()), |(steps, order)| ends_the_same(&steps, order));
    tried.unwrap_or_else(|failed| panic!("{failed}"));
}

fn ends_the_same(steps: &[Step], order: u32) -> Result<(), TestCaseError> {
    let mut world = meet(steps, order);
    let first = text(&mut world.hands[0]);
    for hand in 1..HANDS {
        let books = world.hands[0].store().truth().books().unwrap();
        prop_assert_eq!(&books, &world.hands[hand].store().truth().books().unwrap());
        for book in books {
            let heads = |hand: usize| world.hands[hand].store().truth().heads(book).unwrap();
            prop_assert_eq!(heads(0), heads(hand));
        }
        let theirs = text(&mut world.hands[hand]);
        assert_same(&first, &theirs, &format!("the shop and phone {hand}"))?;
        let fleet = world.hands[hand].fleet();
        prop_assert_eq!(world.hands[0].fleet(), fleet);
    }
    documents_have_the_heads(&world.hands[0])?;

    // Arrival in one go and in another order changes nothing.
    let mut late = ledger_in_memory(shop_key(), 99);
    let rest = settle_in(&mut late, world.all_of(0, Some(order ^ 0x5a5a)), 0);
    prop_assert!(rest.is_empty());
    assert_same(&first, &text(&mut late), "the shop and one that got all at once")?;

    // What was worked out on the way is what is worked out anew.
    let shop = &mut world.hands[0];
    let fleet = shop.fleet().clone();
    shop.rebuild().unwrap();
    prop_assert_eq!(&fleet, shop.fleet());
    assert_same(&first, &text(shop), "before and after rebuilding")?;

    // The shop's knowledge of an earlier moment is that of a shop that had only the entries before it.
    let last = shop.store().truth().last_n().unwrap();
    let upto = i64::from(order) % last + 1;
    let rows = shop.store().truth().between(0, upto, i64::MAX).unwrap();
    let parts: Vec<_> = rows.iter().map(|held| Incoming::of_row(root().fleet, &held.row)).collect();
    let mut then = ledger_in_memory(shop_key(), 98);
    prop_assert!(settle_in(&mut then, parts, 0).is_empty());
    let mut as_of = shop.as_of(upto).unwrap();
    assert_same(&text(&mut then), &text(&mut as_of), "as of a number and fed up to it")?;
    Ok(())
}

fn documents_have_the_heads(ledger: &Ledger) -> Result<(), TestCaseError> {
    let truth = ledger.store().truth();
    for book in truth.books().unwrap() {
        let rows = truth.of_book(book).unwrap();
        let document = rebuild(rows.into_iter().map(|held| held.row)).unwrap();
        let mut heads: Vec<[u8; 32]> = document.get_heads().iter().map(|head| head.0).collect();
        heads.sort_unstable();
        let held: Vec<[u8; 32]> = truth.heads(book).unwrap().iter().map(|head| head.0).collect();
        prop_assert_eq!(heads, held);
    }
    Ok(())
}
