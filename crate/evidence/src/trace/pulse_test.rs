//! Tests of `pulse`.
