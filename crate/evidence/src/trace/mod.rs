//! Recorded traces: files to samples, samples to edges, edges to a delay.
