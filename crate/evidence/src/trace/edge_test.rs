//! Tests of `edge`.
