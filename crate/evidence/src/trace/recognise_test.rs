//! Tests of `recognise`.
