//! Whether a word is given a second time: coolant low, filled up, and low again within the week.
//!
//! What counts is how often it came to be so. Told twice while nobody did anything about it, it is still the first
//! time; told and then put right is one time; put right without a word is one too.

use chrono::{DateTime, FixedOffset, TimeDelta};

/// What bears on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Bears {
    /// The word was given.
    Given,
    /// It was put right: a top-up.
    PutRight,
    /// It was found to be well.
    Well,
}

/// The moments at which it came to be so for the second time, or once more, within so many days of the time before.
/// The order of the events does not matter.
pub fn second_times(events: &[(DateTime<FixedOffset>, Bears)], days: u16) -> Vec<DateTime<FixedOffset>> {
    let mut second = Vec::new();
    let mut last: Option<DateTime<FixedOffset>> = None;
    let mut open = false;
    for (at, bears) in in_order(events) {
        match bears {
            Bears::Well => open = false,
            Bears::Given | Bears::PutRight => {
                if !open && last.is_some_and(|last| at - last <= TimeDelta::days(days.into())) {
                    second.push(at);
                }
                last = Some(at);
                open = bears == Bears::Given;
            }
        }
    }
    second
}

/// Until when the word, given now, is a second time; none when it stands from before, or was never given.
pub fn second_until(events: &[(DateTime<FixedOffset>, Bears)], days: u16) -> Option<DateTime<FixedOffset>> {
    let events = in_order(events);
    let open = events.last().is_some_and(|(_, bears)| *bears == Bears::Given);
    let last = events.iter().rev().find(|(_, bears)| *bears != Bears::Well);
    last.filter(|_| !open).and_then(|(at, _)| at.checked_add_signed(TimeDelta::days(days.into())))
}

fn in_order(events: &[(DateTime<FixedOffset>, Bears)]) -> Vec<(DateTime<FixedOffset>, Bears)> {
    let mut events = events.to_vec();
    events.sort();
    events
}

#[cfg(test)]
mod tests {
    use super::Bears::{Given, PutRight, Well};
    use super::*;

    fn at(day: u32, hour: u32) -> DateTime<FixedOffset> {
        format!("2026-10-{day:02}T{hour:02}:00:00-06:00").parse().unwrap()
    }

    // Common practice, no source: below the low mark twice in 7 days.
    #[test]
    fn what_is_told_twice_and_left_is_one_time() {
        let evening_and_morning = [(at(19, 17), Given), (at(20, 7), Given), (at(20, 8), PutRight)];
        assert!(second_times(&evening_and_morning, 7).is_empty());
        assert_eq!(second_until(&evening_and_morning[..2], 7), None, "it stands from before");
        assert_eq!(second_until(&evening_and_morning, 7), Some(at(27, 8)));
    }

    #[test]
    fn low_again_after_it_was_put_right_or_well_is_the_second_time() {
        let filled = [(at(19, 7), Given), (at(19, 8), PutRight), (at(22, 7), Given)];
        assert_eq!(second_times(&filled, 7), [at(22, 7)]);
        let well = [(at(19, 7), Given), (at(20, 7), Well), (at(22, 7), Given)];
        assert_eq!(second_times(&well, 7), [at(22, 7)]);
        let poured = [(at(13, 8), PutRight), (at(20, 8), PutRight), (at(20, 9), PutRight)];
        assert_eq!(second_times(&poured, 7), [at(20, 8), at(20, 9)], "each pour found it low");
    }

    #[test]
    fn days_are_counted_to_the_minute_from_the_time_before() {
        assert_eq!(second_times(&[(at(13, 8), PutRight), (at(20, 8), Given)], 7), [at(20, 8)]);
        assert!(second_times(&[(at(13, 8), PutRight), (at(20, 9), Given)], 7).is_empty());
        assert_eq!(second_until(&[], 7), None);
        assert_eq!(second_until(&[(at(13, 8), Well)], 7), None);
    }

    #[test]
    fn the_order_in_which_it_comes_changes_nothing() {
        let mut events =
            vec![(at(19, 7), Given), (at(19, 8), PutRight), (at(22, 7), Given), (at(21, 7), Well)];
        let told = second_times(&events, 7);
        events.reverse();
        assert_eq!(second_times(&events, 7), told);
    }
}
