//! An amount as somebody types it.

use sumpbook_trade::{Figure, Unit};

use crate::table_in::volume_unit;

/// An amount with its unit, such as "0.60 qt" or "7.6 L"; quarts where no unit is written. None where it does not read.
pub(super) fn read(text: &str) -> Option<Figure> {
    let end = text.rfind(|c: char| c.is_ascii_digit()).map_or(0, |at| at.saturating_add(1));
    let (number, unit) = text.split_at_checked(end).unwrap_or((text, ""));
    let unit = if unit.trim().is_empty() { Some(Unit::Quart) } else { volume_unit(unit) };
    unit.and_then(|unit| Figure::parse(number.trim(), unit).ok())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_amount_has_a_unit_or_is_quarts() {
        let text = |typed: &str| read(typed).map(|figure| figure.to_string());
        assert_eq!(text("4").as_deref(), Some("4 qt"));
        assert_eq!(text("0.60 qt").as_deref(), Some("0.60 qt"));
        assert_eq!(text("7.6 L").as_deref(), Some("7.6 L"));
        assert_eq!(text("1 gal").as_deref(), Some("1 gal"));
        assert_eq!((text("half a jug"), text("4 jugs"), text("")), (None, None, None));
    }
}
