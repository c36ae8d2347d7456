//! Tests of `decimal`.
