//! Tests of `noise`.
