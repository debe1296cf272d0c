//! Parts of a job.

mod expression;
pub use expression::{Expression, ExpressionError, ExpressionFault, Kind, Lookup, Trouble, Value};
