//! The pages of the console, in the order they are named at the top.

/// A page that is named at the top.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Place {
    /// The day sheet.
    Day,
    /// Every unit.
    Units,
    /// What runs out, and who comes in when.
    Due,
    /// Air for the job.
    Air,
    /// People and phones.
    People,
    /// What waits for a person's word.
    Aside,
    /// In and out.
    InOut,
    /// A page of paper, typed in.
    Paper,
}

impl Place {
    pub(super) const ALL: [Place; 8] = [
        Place::Day,
        Place::Units,
        Place::Due,
        Place::Air,
        Place::People,
        Place::Aside,
        Place::InOut,
        Place::Paper,
    ];

    /// Its address.
    pub(super) fn path(self) -> &'static str {
        match self {
            Place::Day => "/",
            Place::Units => "/units",
            Place::Due => "/due",
            Place::Air => "/air",
            Place::People => "/people",
            Place::Aside => "/set-aside",
            Place::InOut => "/in-and-out",
            Place::Paper => "/paper",
        }
    }

    /// Key of its name.
    pub(super) fn key(self) -> &'static str {
        match self {
            Place::Day => "place-day",
            Place::Units => "place-units",
            Place::Due => "place-due",
            Place::Air => "place-air",
            Place::People => "place-people",
            Place::Aside => "place-aside",
            Place::InOut => "place-in-out",
            Place::Paper => "place-paper",
        }
    }
}
