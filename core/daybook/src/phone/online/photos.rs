//! Photos on their way to the shop: after the entries, piece by piece, going on where they stopped.

use std::time::Instant;

use sumpbook_trade::Stamp;
use sumpbook_trade::record::Digest;

use super::{Hub, OnlineError};
use crate::phone::{Daybook, PhoneError};
use crate::photo::PIECE;
use crate::store::PhotoRow;

/// So often one photo is begun anew in one exchange.
const MOST_BEGINNINGS: u32 = 2;

/// What became of photos in one exchange. Entries are never kept waiting by them.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PhotosSent {
    /// Whole at the shop for the first time.
    pub arrived: u32,
    /// Held here, named by an entry at the shop, and not there yet.
    pub left: u32,
    /// Bytes sent.
    pub bytes: u64,
    /// Why the rest did not go.
    pub stopped: Option<PhotoStop>,
}

/// Why photos stopped. They go on by themselves with the next exchange.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PhotoStop {
    /// The signal went, or time ran out.
    NoWay,
    /// The shop has no room, or too many write at once.
    NoRoom,
    /// The shop said no, with this status.
    Declined(u16),
    /// The file on this phone is damaged or cannot be read.
    Unreadable,
}

/// Where one photo ended.
enum End {
    There,
    /// This one did not go, others may.
    Skipped(PhotoStop),
    /// None goes now.
    Stopped(PhotoStop),
}

impl Daybook {
    /// Sends what can be sent until `until`. What goes wrong with photos is told, never an error of the exchange.
    pub(super) fn send_photos(
        &mut self,
        hub: &Hub,
        token: &[u8; 32],
        clock: &dyn Fn() -> Stamp,
        until: Instant,
    ) -> Result<PhotosSent, OnlineError> {
        let mut sent = PhotosSent::default();
        let to_send = self.photos_to_send()?;
        sent.left = u32::try_from(to_send.len()).unwrap_or(u32::MAX);
        let way = Way { hub, token, clock, until };
        for photo in to_send {
            match self.send_photo(&way, photo, &mut sent.bytes)? {
                End::There => {
                    sent.arrived += 1;
                    sent.left = sent.left.saturating_sub(1);
                }
                End::Skipped(why) => sent.stopped = Some(why),
                End::Stopped(why) => {
                    sent.stopped = Some(why);
                    break;
                }
            }
        }
        Ok(sent)
    }

    fn send_photo(&mut self, way: &Way<'_>, photo: Digest, bytes_sent: &mut u64) -> Result<End, OnlineError> {
        let bytes = match self.photos().read(photo) {
            Ok(Some(bytes)) => bytes,
            _ => return Ok(End::Skipped(PhotoStop::Unreadable)),
        };
        let size = bytes.len() as u64;
        let mut row = PhotoRow { photo, size, reached: 0, there_ms: None };
        let mut beginnings = 0;
        let mut said = way.hub.photo_at(photo, way.token, way.until);
        let end = loop {
            let Ok(now) = &said else { break End::Stopped(PhotoStop::NoWay) };
            match now.status {
                200 | 201 | 204 if now.complete => {
                    row = PhotoRow { reached: size, there_ms: Some((way.clock)().unix_ms()), ..row };
                    break End::There;
                }
                // How far it is there: after a piece, or where another has to begin.
                200 | 204 | 409 => row.reached = now.offset.unwrap_or(0),
                // Together it is not what its name says: once more from the start.
                422 => row.reached = 0,
                503 | 429 => break End::Stopped(PhotoStop::NoRoom),
                401 => break End::Stopped(PhotoStop::Declined(401)),
                other => break End::Skipped(PhotoStop::Declined(other)),
            }
            if row.reached == 0 {
                beginnings += 1;
            }
            if beginnings > MOST_BEGINNINGS || row.reached >= size {
                break End::Skipped(PhotoStop::Declined(now.status));
            }
            if Instant::now() >= way.until {
                break End::Stopped(PhotoStop::NoWay);
            }
            let from = usize::try_from(row.reached).unwrap_or(bytes.len());
            let piece = bytes.get(from..bytes.len().min(from.saturating_add(PIECE))).unwrap_or_default();
            said = way.hub.send_piece(photo, way.token, row.reached, size, piece, way.until);
            *bytes_sent = bytes_sent.saturating_add(piece.len() as u64);
        };
        let known = self.ledger().store().photo(photo).map_err(PhoneError::from)?;
        if known != Some(row) && (row.reached > 0 || known.is_some()) {
            self.ledger_mut().store_mut().keep_photo_row(&row).map_err(PhoneError::from)?;
        }
        Ok(end)
    }
}

struct Way<'a> {
    hub: &'a Hub,
    token: &'a [u8; 32],
    clock: &'a dyn Fn() -> Stamp,
    until: Instant,
}
