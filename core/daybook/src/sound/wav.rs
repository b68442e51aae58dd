//! WAV: one channel of PCM and nothing beside it.

use super::{SoundError, lasts};

/// Samples a second that are kept.
const RATES: std::ops::RangeInclusive<u32> = 8_000..=48_000;

/// How its samples lie.
struct Form {
    rate: u32,
    bits: u16,
}

/// The same samples under the shortest header: what a recorder wrote about itself stands in chunks of its own.
pub(super) fn cleaned(bytes: &[u8]) -> Result<Vec<u8>, SoundError> {
    let (form, samples) = parts(bytes)?;
    let block = u32::from(form.bits / 8);
    let length = u32::try_from(samples.len()).map_err(|_| SoundError::TooLarge)?;
    if length % block != 0 {
        return Err(SoundError::Cut);
    }
    lasts(u64::from(length), form.rate.saturating_mul(block))?;
    // Chunks begin at even places.
    let padded = length.saturating_add(length % 2);
    let mut clean = Vec::with_capacity(samples.len().saturating_add(46));
    clean.extend(b"RIFF");
    clean.extend(padded.saturating_add(36).to_le_bytes());
    clean.extend(b"WAVEfmt ");
    clean.extend(16u32.to_le_bytes());
    clean.extend([1u16, 1].map(u16::to_le_bytes).concat());
    clean.extend([form.rate, form.rate.saturating_mul(block)].map(u32::to_le_bytes).concat());
    clean.extend([form.bits / 8, form.bits].map(u16::to_le_bytes).concat());
    clean.extend(b"data");
    clean.extend(length.to_le_bytes());
    clean.extend(samples);
    clean.resize(clean.len().saturating_add(samples.len() % 2), 0);
    Ok(clean)
}

/// The form and the samples of the first of each chunk.
fn parts(bytes: &[u8]) -> Result<(Form, &[u8]), SoundError> {
    let said = bytes.get(4..8).and_then(number).ok_or(SoundError::Cut)?;
    // What the header counts begins after it and includes the four letters of the kind.
    let mut rest = said.checked_add(8).and_then(|end| bytes.get(12..end)).ok_or(SoundError::Cut)?;
    let (mut form, mut samples) = (None, None);
    while !rest.is_empty() {
        let (head, after) = rest.split_at_checked(8).ok_or(SoundError::Cut)?;
        let (name, length) = head.split_at_checked(4).ok_or(SoundError::Cut)?;
        let length = number(length).ok_or(SoundError::Cut)?;
        let body = after.get(..length).ok_or(SoundError::Cut)?;
        match name {
            b"fmt " if form.is_none() => form = Some(formed(body)?),
            b"data" if samples.is_none() => samples = Some(body),
            _ => {}
        }
        // Some recorders leave out the last chunk's filler.
        rest = length.checked_add(length % 2).and_then(|next| after.get(next..)).unwrap_or_default();
    }
    form.zip(samples).ok_or(SoundError::Cut)
}

/// One channel of PCM (tag 1), 8 or 16 bits.
fn formed(body: &[u8]) -> Result<Form, SoundError> {
    let [1, 0, 1, 0, r0, r1, r2, r3, _, _, _, _, _, _, b0, b1, ..] = body else {
        return Err(if body.len() < 16 { SoundError::Cut } else { SoundError::NotASound });
    };
    let form = Form { rate: u32::from_le_bytes([*r0, *r1, *r2, *r3]), bits: u16::from_le_bytes([*b0, *b1]) };
    let known = RATES.contains(&form.rate) && matches!(form.bits, 8 | 16);
    if known { Ok(form) } else { Err(SoundError::NotASound) }
}

fn number(bytes: &[u8]) -> Option<usize> {
    usize::try_from(u32::from_le_bytes(bytes.try_into().ok()?)).ok()
}
