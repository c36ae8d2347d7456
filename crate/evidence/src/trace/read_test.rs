//! Tests of `read`.
