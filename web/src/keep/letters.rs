//! Bytes as letters that an address carries unchanged: base64url without padding (RFC 4648, section 5).
//!
//! A few lines instead of a library, whose unrolled loops take two kilobytes of what a phone fetches.

const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/// Writes bytes as letters.
pub(super) fn write(bytes: &[u8]) -> String {
    let mut text = String::with_capacity(bytes.len().div_ceil(3) * 4);
    for chunk in bytes.chunks(3) {
        let group = chunk
            .iter()
            .fold(0, |group, byte| group << 8 | u32::from(*byte));
        let group = group << (8 * (3 - chunk.len()));
        let letters = [18, 12, 6, 0].map(|shift| LETTERS.get((group >> shift & 63) as usize));
        let letters = letters.into_iter().flatten().take(chunk.len() + 1);
        text.extend(letters.map(|letter| char::from(*letter)));
    }
    text
}

/// Reads letters; `None` where something else stands, or where letters are missing at the end.
pub(super) fn read(text: &str) -> Option<Vec<u8>> {
    let mut bytes = Vec::with_capacity(text.len() / 4 * 3);
    for chunk in text.as_bytes().chunks(4) {
        let mut group = 0_u32;
        for letter in chunk {
            group = group << 6 | value(*letter)?;
        }
        group <<= 6 * (4 - chunk.len());
        let [_, read @ ..] = group.to_be_bytes();
        // One letter alone is less than a byte; what the last byte leaves over must be nothing.
        let whole = chunk.len().checked_sub(1).filter(|whole| *whole > 0)?;
        if read.iter().skip(whole).any(|rest| *rest != 0) {
            return None;
        }
        bytes.extend(read.iter().take(whole));
    }
    Some(bytes)
}

fn value(letter: u8) -> Option<u32> {
    Some(u32::from(match letter {
        b'A'..=b'Z' => letter - b'A',
        b'a'..=b'z' => letter - b'a' + 26,
        b'0'..=b'9' => letter - b'0' + 52,
        b'-' => 62,
        b'_' => 63,
        _ => return None,
    }))
}

#[cfg(test)]
mod tests {
    use proptest::collection::vec;
    use proptest::prelude::*;

    use super::{read, write};

    /// RFC 4648, section 10, without the padding.
    #[test]
    fn the_vectors_of_the_standard() {
        for (bytes, text) in [
            ("", ""),
            ("f", "Zg"),
            ("fo", "Zm8"),
            ("foo", "Zm9v"),
            ("foob", "Zm9vYg"),
            ("fooba", "Zm9vYmE"),
            ("foobar", "Zm9vYmFy"),
        ] {
            assert_eq!(write(bytes.as_bytes()), text);
            assert_eq!(read(text).as_deref(), Some(bytes.as_bytes()));
        }
    }

    #[test]
    fn what_nobody_wrote_is_refused() {
        for text in [
            "Z", "Zm9vY", "Zh", "Zm9", "Zg==", "Zm 8", "Zm+v", "Zm/v", "Zmö",
        ] {
            assert_eq!(read(text), None, "{text}");
        }
    }

    proptest! {
        #[test]
        fn bytes_come_back(bytes in vec(any::<u8>(), 0..200)) {
            let text = write(&bytes);
            prop_assert!(text.bytes().all(|letter| letter.is_ascii_alphanumeric() || b"-_".contains(&letter)));
            prop_assert_eq!(read(&text), Some(bytes));
        }
    }
}
