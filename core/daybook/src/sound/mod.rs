//! The noise of a defect: a clip of at most 10 s, named by what it holds and kept where photos are.
//!
//! A sound travels as a photo does: it is a file named by SHA-256, an entry names it, and it follows its entry to the
//! shop. What is not the sound itself (names, place, device, words) is taken out before it is named. Nothing here
//! decodes a sound: foreign bytes are walked box by box and no further.

mod error;
mod kind;
mod mp4;
#[cfg(test)]
mod tests;
mod wav;

pub use error::SoundError;
pub use kind::SoundKind;

/// Bytes of one sound at most: 10 s of 16-bit PCM at 24 kHz; of AAC a tenth of it is enough.
pub const MOST: usize = 512 * 1024;
/// Bytes that are looked at: what a recorder wrote about itself may be more than the sound.
const MOST_GIVEN: usize = 8 * MOST;
/// How long one may be, milliseconds.
pub const MOST_MS: u32 = 10_000;
/// A recorder that stops at 10 s ends on the frame it is in: so much more is taken for 10 s, milliseconds.
const SLACK_MS: u64 = 500;

/// A sound as it is kept: of a kind we know, whole, at most 10 s, without what a recorder wrote about itself, its
/// owner and the place.
///
/// # Errors
/// [`SoundError::NotASound`], [`SoundError::Cut`], [`SoundError::TooLong`], [`SoundError::TooLarge`].
pub fn cleaned(bytes: &[u8]) -> Result<Vec<u8>, SoundError> {
    if bytes.len() > MOST_GIVEN {
        return Err(SoundError::TooLarge);
    }
    let clean = match SoundKind::of(bytes).ok_or(SoundError::NotASound)? {
        SoundKind::Wav => wav::cleaned(bytes)?,
        SoundKind::Mp4 => mp4::cleaned(bytes)?,
    };
    if clean.len() > MOST { Err(SoundError::TooLarge) } else { Ok(clean) }
}

/// Whether `units` of `a_second` each are a sound, and not too much of one.
fn lasts(units: u64, a_second: u32) -> Result<(), SoundError> {
    let ms = units.saturating_mul(1_000).checked_div(u64::from(a_second)).ok_or(SoundError::NotASound)?;
    match ms {
        0 => Err(SoundError::NotASound),
        ms if ms > u64::from(MOST_MS) + SLACK_MS => Err(SoundError::TooLong),
        _ => Ok(()),
    }
}
