//! What every drawing of a sled must be.
