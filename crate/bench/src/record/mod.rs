//! Pulses, detectors and a digitiser.
