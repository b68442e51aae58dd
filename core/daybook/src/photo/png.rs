//! PNG without words, times and EXIF (W3C PNG, third edition, 5).

/// Chunks beside the needed ones that the colours of the picture depend on.
const COLOURS: [&[u8]; 8] = [b"tRNS", b"gAMA", b"cHRM", b"sRGB", b"iCCP", b"sBIT", b"cICP", b"bKGD"];

/// The same picture; none when it is cut off.
pub(super) fn cleaned(bytes: &[u8]) -> Option<Vec<u8>> {
    let (signature, mut rest) = bytes.split_at_checked(8)?;
    let mut clean = Vec::with_capacity(bytes.len());
    clean.extend(signature);
    let mut seen = false;
    loop {
        let (length, _) = rest.split_first_chunk::<4>()?;
        let data = usize::try_from(u32::from_be_bytes(*length)).ok()?;
        // Length, name and check are four bytes each.
        let (chunk, after) = rest.split_at_checked(data.checked_add(12)?)?;
        let name = chunk.get(4..8)?;
        // A capital first letter: no reader can do without it.
        let needed = name.first().is_some_and(u8::is_ascii_uppercase);
        if needed || COLOURS.contains(&name) {
            clean.extend(chunk);
        }
        seen |= name == b"IDAT";
        if name == b"IEND" {
            return seen.then_some(clean);
        }
        rest = after;
    }
}
