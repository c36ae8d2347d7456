//! Tests of `correlate`.
