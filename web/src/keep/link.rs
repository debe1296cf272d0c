//! The fragment of the address that carries the whole job, so that a bookmark is a copy of it.
//!
//! `#j=`, the version, a point, and the state as compact JSON, compressed with a checksum (zlib, RFC 1950) and written in
//! letters that an address carries unchanged. Without the checksum a link that lost a letter on its way
//! could open with another number in it.

use miniz_oxide::deflate::compress_to_vec_zlib;
use miniz_oxide::inflate::{TINFLStatus, decompress_to_vec_zlib_with_limit};

use super::{LARGEST, Restored, Unreadable, VERSION, json, letters};
use crate::state::{State, Stored};

const PREFIX: &str = "#j=";
const BEST_COMPRESSION: u8 = 9;

/// Writes a state as a fragment.
#[must_use]
pub fn write(state: &State) -> String {
    let json = json::write(&Stored::write(state));
    let packed = compress_to_vec_zlib(json.as_bytes(), BEST_COMPRESSION);
    format!("{PREFIX}{VERSION}.{}", letters::write(&packed))
}

/// Reads a fragment; `None` when it does not even claim to be a job.
#[must_use]
pub fn read(fragment: &str) -> Option<Result<Restored, Unreadable>> {
    fragment.trim().strip_prefix(PREFIX).map(unpack)
}

fn unpack(text: &str) -> Result<Restored, Unreadable> {
    if text.len() > LARGEST {
        return Err(Unreadable::TooLarge);
    }
    let (version, packed) = text.split_once('.').ok_or(Unreadable::Damaged)?;
    let version = version.parse().map_err(|_| Unreadable::Damaged)?;
    if version > VERSION {
        return Err(Unreadable::NewerVersion);
    }
    let packed = letters::read(packed).ok_or(Unreadable::Damaged)?;
    let json = decompress_to_vec_zlib_with_limit(&packed, LARGEST).map_err(|error| {
        if error.status == TINFLStatus::HasMoreOutput {
            Unreadable::TooLarge
        } else {
            Unreadable::Damaged
        }
    })?;
    let plain = json::read(&json).ok_or(Unreadable::Damaged)?;
    super::restore(version, plain)
}
