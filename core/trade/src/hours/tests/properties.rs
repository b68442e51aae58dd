//! What holds for any rows at all.

use proptest::prelude::*;

use super::*;

fn any_meter() -> impl Strategy<Value = Meter> {
    let reading = (0i64..600, 0i64..80);
    let exchange = (0i64..600, proptest::option::of(0i64..80), 0i64..40, any::<bool>());
    (
        proptest::collection::vec(reading, 0..40),
        proptest::collection::vec(exchange, 0..3),
        proptest::collection::vec((0u128..45, any::<bool>()), 0..4),
    )
        .prop_map(|(readings, exchanges, decisions)| {
            let mut meter = Meter::default();
            for (n, (hours, figure)) in readings.into_iter().enumerate() {
                // Mostly on a steady pace, so that good readings, runs and ties all come about.
                let figure = Tenths(hours * 2 + if figure < 20 { figure * 7 } else { 0 });
                meter = meter.read(n as u128, hour(hours), &figure.to_string());
            }
            for (n, (hours, end, start, round)) in exchanges.into_iter().enumerate() {
                meter.exchanges.push(ExchangeRow {
                    entry: id(40 + n as u128),
                    at: hour(hours),
                    old_end: end.map(|e| Tenths(hours * 2 + e)),
                    new_start: Tenths(start),
                    went_round: round,
                });
            }
            for (n, stands) in decisions {
                let settlement = if stands { Settlement::Stands } else { Settlement::DoesNotCount };
                meter = meter.decide(n, settlement);
            }
            meter
        })
}

proptest! {
    #[test]
    fn the_order_rows_come_in_does_not_matter(meter in any_meter(), turn in 0usize..40) {
        let mut other = meter.clone();
        other.readings.reverse();
        let by = turn % other.readings.len().max(1);
        other.readings.rotate_left(by);
        other.exchanges.reverse();
        prop_assert_eq!(meter.judge(), other.judge());
    }

    #[test]
    fn without_a_person_accepted_totals_never_run_backwards(mut meter in any_meter()) {
        meter.decisions.clear();
        let ledger = meter.judge();
        let totals: Vec<Tenths> = ledger.accepted().map(|r| r.total).collect();
        prop_assert!(totals.is_sorted());
        let hours = ledger.for_due().map(|d| d.hours);
        prop_assert!(hours >= totals.last().copied());
    }

    #[test]
    fn every_accepted_reading_can_follow_the_one_before(mut meter in any_meter()) {
        meter.decisions.clear();
        meter.exchanges.clear();
        let ledger = meter.judge();
        let accepted: Vec<_> = ledger.accepted().collect();
        for pair in accepted.windows(2) {
            let elapsed = (pair[1].at - pair[0].at).num_minutes();
            prop_assert!((pair[1].total - pair[0].total).0 <= (elapsed + 5) / 6);
        }
    }

    #[test]
    fn a_reading_set_aside_where_none_can_vote_changes_no_accepted_figure(
        mut meter in any_meter(), hours in 0i64..600, above in any::<bool>()
    ) {
        meter.decisions.clear();
        // Far above any ceiling, or below every figure: neither can ever be part of a deciding run.
        meter.readings.retain(|r| r.at != hour(hours) && r.figure > Tenths(1));
        meter.exchanges.clear();
        let meter = meter.read(76, hour(-1), "0.2");
        let before = meter.judge();
        let after = meter.read(77, hour(hours), if above { "90000.0" } else { "0.0" }).judge();
        prop_assert!(!verdict(&after, 77).counts());
        let figures = |l: &HoursLedger| l.accepted().map(|r| (r.entry, r.total)).collect::<Vec<_>>();
        prop_assert_eq!(figures(&before), figures(&after));
    }

    #[test]
    fn what_is_aside_and_unanswered_is_asked_or_contradicted_later(mut meter in any_meter()) {
        meter.decisions.clear();
        let ledger = meter.judge();
        let last = ledger.accepted().map(|r| r.at).next_back();
        for reading in ledger.rows().iter().filter(|r| Some(r.at) > last) {
            let silent = reading.verdict == Verdict::Aside(AsideWhy::SlippedBack);
            prop_assert!(reading.in_question || silent, "{reading:?}");
        }
    }

    #[test]
    fn extreme_rows_are_harmless(
        rows in proptest::collection::vec((any::<i64>(), any::<i64>(), any::<u64>()), 0..12),
        ends in proptest::collection::vec((any::<i64>(), proptest::option::of(any::<i64>()), any::<i64>(), any::<bool>()), 0..4)
    ) {
        let far = |secs: i64| {
            let latest = DateTime::<chrono::Utc>::MAX_UTC.timestamp();
            DateTime::from_timestamp(secs % latest, 0).unwrap_or_default().fixed_offset()
        };
        let meter = Meter {
            readings: rows.iter().enumerate().map(|(n, (at, figure, order))| ReadingRow {
                entry: id(n as u128), at: far(*at), figure: Tenths(*figure), order: *order, source_brought_in: true,
            }).collect(),
            exchanges: ends.iter().enumerate().map(|(n, (at, end, start, round))| ExchangeRow {
                entry: id(100 + n as u128), at: far(*at), old_end: end.map(Tenths), new_start: Tenths(*start), went_round: *round,
            }).collect(),
            decisions: rows.iter().enumerate().filter(|(n, _)| n % 3 == 0)
                .map(|(n, _)| (id(n as u128), Settlement::Stands)).collect(),
        };
        let ledger = meter.judge();
        for (at, figure, _) in &rows {
            ledger.ask(Tenths(*figure), far(*at), &ledger.recent_use_days(far(*at)));
            ledger.turns_offered(Tenths(*figure), far(*at));
        }
    }
}
