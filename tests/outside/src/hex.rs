//! Bytes as published tables print them.

/// Lower-case hexadecimal.
pub fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}

/// Bytes from hexadecimal in either case.
///
/// # Panics
/// On anything else: the tables are ours.
pub fn unhex(text: &str) -> Vec<u8> {
    assert!(text.len().is_multiple_of(2), "half a byte in {text}");
    (0..text.len())
        .step_by(2)
        .map(|at| u8::from_str_radix(&text[at..at + 2], 16).expect("hexadecimal"))
        .collect()
}

/// A fixed number of bytes from hexadecimal.
///
/// # Panics
/// When there are more or fewer.
pub fn unhex_array<const N: usize>(text: &str) -> [u8; N] {
    unhex(text).try_into().expect("as many bytes as the field has")
}
