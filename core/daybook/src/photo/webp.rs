//! WebP without EXIF and XMP (RFC 9649, 2.7).

/// Chunks that make the picture.
const PICTURE: [&[u8]; 7] = [b"VP8 ", b"VP8L", b"VP8X", b"ALPH", b"ANIM", b"ANMF", b"ICCP"];
/// In the flags of an extended file: it has EXIF, it has XMP.
const TOLD: u8 = 0x08 | 0x04;

/// The same picture; none when it is cut off.
pub(super) fn cleaned(bytes: &[u8]) -> Option<Vec<u8>> {
    let said = usize::try_from(u32::from_le_bytes(bytes.get(4..8)?.try_into().ok()?)).ok()?;
    // What the header counts begins after it and includes the four letters of the kind.
    let mut rest = bytes.get(12..said.checked_add(8)?)?;
    let mut chunks = Vec::with_capacity(rest.len());
    let mut seen = false;
    while !rest.is_empty() {
        let (head, after) = rest.split_first_chunk::<8>()?;
        let [name @ .., l0, l1, l2, l3] = head;
        let data = usize::try_from(u32::from_le_bytes([*l0, *l1, *l2, *l3])).ok()?;
        let padded = data.checked_add(data % 2)?;
        let (body, after) = after.split_at_checked(padded)?;
        if PICTURE.contains(&&name[..]) {
            seen |= matches!(name, b"VP8 " | b"VP8L" | b"ANMF");
            chunks.extend(head);
            match (name, body.split_first()) {
                (b"VP8X", Some((flags, more))) => {
                    chunks.push(flags & !TOLD);
                    chunks.extend(more);
                }
                _ => chunks.extend(body),
            }
        }
        rest = after;
    }
    if !seen {
        return None;
    }
    let length = u32::try_from(chunks.len().checked_add(4)?).ok()?;
    let mut clean = b"RIFF".to_vec();
    clean.extend(length.to_le_bytes());
    clean.extend(b"WEBP");
    clean.extend(chunks);
    Some(clean)
}
