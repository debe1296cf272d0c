//! The fragment of the address that carries the open job, so that a bookmark is a copy of it.
//!
//! `#j=`, the version, a point, and the state as compact JSON, compressed with a checksum (zlib, RFC 1950) and written in
//! letters that an address carries unchanged. Without the checksum a link that lost a letter on its way
//! could open with another number in it.

use miniz_oxide::deflate::compress_to_vec_zlib;
use miniz_oxide::inflate::{TINFLStatus, decompress_to_vec_zlib_with_limit};

use super::{Extent, LARGEST, Restored, Unreadable, VERSION, json, letters, parcel};
use crate::state::{State, Stored};

const PREFIX: &str = "#j=";
const BEST_COMPRESSION: u8 = 9;

/// What every program passes on whole: messengers and mail programs break or cut what is longer.
pub const USUAL_LONGEST: usize = 2000;
/// The same without the address that a fragment stands behind, which is seldom longer than the difference.
pub const LONGEST_FRAGMENT: usize = USUAL_LONGEST - 100;

/// Writes the open job as a fragment: with the whole shop, or where that is longer than
/// [`LONGEST_FRAGMENT`] only with what the job was planned with.
///
/// It comes with the jobs' part of the program, and may only be called once that has come.
#[must_use]
#[inline(never)]
pub fn write(state: &State) -> String {
    let whole = pack(&parcel::with_shop(state));
    if whole.len() <= LONGEST_FRAGMENT {
        return whole;
    }
    write_lean(state)
}

/// Writes the open job with no more than it was planned with, as short as it goes.
///
/// It comes with the jobs' part of the program, and may only be called once that has come.
#[must_use]
#[inline(never)]
pub fn write_lean(state: &State) -> String {
    pack(&parcel::with_its_tools(state))
}

fn pack(state: &State) -> String {
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
    super::restore(version, plain, Extent::Job)
}
