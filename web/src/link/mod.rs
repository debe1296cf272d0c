//! The link that carries the whole job.

mod fault;

pub use fault::LinkFault;
