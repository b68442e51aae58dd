//! What holds of every service.

use proptest::prelude::*;

use super::*;

proptest! {
    #[test]
    fn a_service_done_later_or_at_more_hours_never_falls_due_sooner(
        hours in 0i64..60_000,
        more in 0i64..20_000,
        days in 0u64..4_000,
        later in 0u64..900,
    ) {
        let on = |days: u64| (day("2020-01-31") + chrono::Days::new(days)).to_string();
        for task in [OIL, COOLER, SEPARATOR] {
            let one = Unit::default().done(task, &Tenths(hours).to_string(), &on(days)).clock(task);
            let two = Unit::default().done(task, &Tenths(hours + more).to_string(), &on(days + later)).clock(task);
            prop_assert!(one.due_hours <= two.due_hours, "{task}: {:?} {:?}", one.due_hours, two.due_hours);
            prop_assert!(one.due_day <= two.due_day, "{task}: {:?} {:?}", one.due_day, two.due_day);
            prop_assert_eq!(one.due_hours.is_some(), task != COOLER);
        }
    }
}
