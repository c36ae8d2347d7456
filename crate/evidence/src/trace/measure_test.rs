//! Tests of `measure`.
