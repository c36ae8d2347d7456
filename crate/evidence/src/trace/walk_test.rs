//! Tests of `walk`.
