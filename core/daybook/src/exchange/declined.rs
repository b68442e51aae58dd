//! Why the hub gives no answer to a request.

use super::{CodeState, ExchangeError};
use crate::gate::KeyId;
use crate::ledger::LedgerError;
use crate::parcel::{OpenError, SealError};
use crate::store::StoreError;

/// Why a request gets no answer. Nothing of it was stored; other requests are unharmed.
#[derive(Debug, thiserror::Error)]
pub enum Declined {
    /// Not a signed parcel within its limits.
    #[error("not a parcel: {0}")]
    NotAParcel(OpenError),
    /// Signed, but no request: a file's parcel, an answer, an invitation.
    #[error("this parcel is not a request")]
    NotARequest,
    /// Nobody here knows the sender, and it does not ask to be let in.
    #[error("the sender is not known here: {0}")]
    UnknownSender(KeyId),
    /// The named sender did not sign this.
    #[error("the signature is not {0}'s")]
    Signature(KeyId),
    /// Another fleet's.
    #[error("it belongs to another fleet")]
    OtherFleet,
    /// Its challenge is not one that holds now: give a fresh one, and the phone asks once more.
    #[error("its challenge no longer holds")]
    StaleChallenge,
    /// It asks to be let in under a code that is unknown, ran out, or was used by another.
    #[error("its code does not hold: {0:?}")]
    Code(CodeState),
    /// This folder is not the shop's.
    #[error("only the shop's own folder answers requests")]
    NotTheShop,
    /// The store could not do it, or the answer could not be made.
    #[error(transparent)]
    Failed(#[from] ExchangeError),
}

impl From<OpenError> for Declined {
    fn from(error: OpenError) -> Declined {
        match error {
            OpenError::UnknownSigner(id) => Declined::UnknownSender(id),
            OpenError::Signature(id) => Declined::Signature(id),
            other => Declined::NotAParcel(other),
        }
    }
}

impl From<LedgerError> for Declined {
    fn from(error: LedgerError) -> Declined {
        Declined::Failed(error.into())
    }
}

impl From<StoreError> for Declined {
    fn from(error: StoreError) -> Declined {
        Declined::Failed(error.into())
    }
}

impl From<SealError> for Declined {
    fn from(error: SealError) -> Declined {
        Declined::Failed(error.into())
    }
}
