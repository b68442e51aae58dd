//! Why the demo could not go on.

use sumpbook_daybook::exchange::ExchangeError;
use sumpbook_daybook::ledger::LedgerError;
use sumpbook_daybook::phone::PhoneError;
use sumpbook_trade::checklist::TemplateError;

use crate::ShopError;

/// Why the demo could not go on.
#[derive(Debug, thiserror::Error)]
pub enum DemoError {
    /// The shop said no.
    #[error(transparent)]
    Shop(#[from] ShopError),
    /// The hub said no.
    #[error(transparent)]
    Hub(#[from] crate::hub::HubError),
    /// A phone did not reach the hub.
    #[error(transparent)]
    Online(#[from] sumpbook_daybook::phone::online::OnlineError),
    /// A phone said no.
    #[error(transparent)]
    Phone(#[from] PhoneError),
    /// A file could not be exchanged.
    #[error(transparent)]
    Exchange(#[from] ExchangeError),
    /// The books said no.
    #[error(transparent)]
    Ledger(#[from] LedgerError),
    /// The checklist's data does not read.
    #[error(transparent)]
    Template(#[from] TemplateError),
    /// A moment in the month is mistyped.
    #[error(transparent)]
    Moment(#[from] sumpbook_trade::StampError),
    /// Hours in the month are mistyped.
    #[error(transparent)]
    Hours(#[from] sumpbook_trade::TenthsError),
    /// A figure in the month is mistyped.
    #[error(transparent)]
    Figure(#[from] sumpbook_trade::FigureError),
    /// A day in the month is mistyped.
    #[error(transparent)]
    Day(#[from] chrono::ParseError),
    /// The month names something it has not yet told of.
    #[error("the month is told wrongly: {0}")]
    Month(&'static str),
    /// A folder cannot be used.
    #[error("{0}")]
    Folder(#[from] std::io::Error),
}
