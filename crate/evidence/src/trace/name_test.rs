//! Tests of `name`.
