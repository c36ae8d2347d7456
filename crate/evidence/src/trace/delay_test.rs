//! Tests of `delay`.
