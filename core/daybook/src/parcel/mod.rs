//! The parcel: one signed message that is request, answer and hand-over file.

pub mod decode;
pub mod encode;
pub mod file;
pub mod limits;
pub mod message;
pub mod run;
pub mod seal;

pub use file::{FileError, FileReader, FileWriter};
pub use message::{
    BookHeads, Bucket, Cursor, Dep, EnrolmentRequest, Invitation, Link, Parcel, Reconcile, Refusal, Run,
    RunEntry,
};
pub use run::{Known, Unpacked, pack, unpack};
pub use seal::{OpenError, Opened, SealError, Sealed, Standing, open, open_answer, seal, seal_answer};

#[cfg(test)]
mod tests;
