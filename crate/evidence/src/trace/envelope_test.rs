//! Tests of `envelope`.
