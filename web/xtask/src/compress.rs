//! Compression as hosts do it, once, for files that do not change.

use std::fs;
use std::io::Write;
use std::path::Path;

use anyhow::Result;
use notchwright_site::brotli_of;

use crate::build::{Files, write_below};

/// Brotli's strongest setting.
const QUALITY: u32 = 11;
/// Brotli's own default: a window of four megabytes.
const WINDOW_BITS: u32 = 22;
const BUFFER: usize = 1 << 16;

/// The bytes as they travel.
pub(crate) fn compressed(bytes: &[u8]) -> Result<Vec<u8>> {
    let mut writer = brotli::CompressorWriter::new(Vec::new(), BUFFER, QUALITY, WINDOW_BITS);
    writer.write_all(bytes)?;
    Ok(writer.into_inner())
}

/// Writes the files into a folder, each with its compressed form beside it where that is smaller.
pub(crate) fn write_with_compressed(folder: &Path, files: &Files) -> Result<()> {
    write_below(folder, files)?;
    for (name, bytes) in files {
        let small = compressed(bytes)?;
        if small.len() < bytes.len() {
            fs::write(brotli_of(&folder.join(name)), small)?;
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn repetition_shrinks_to_next_to_nothing_and_comes_back() {
        let whole = [b'a'; 100_000];
        let small = compressed(&whole).unwrap();
        assert!((1..100).contains(&small.len()), "{}", small.len());
        let mut back = Vec::new();
        brotli::BrotliDecompress(&mut &*small, &mut back).unwrap();
        assert_eq!(back, whole);
    }
}
