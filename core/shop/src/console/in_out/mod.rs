//! In and out: tables and files that come in and go out.

mod ask;

pub(super) use ask::asked;
