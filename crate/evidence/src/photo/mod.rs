//! Photographs of a screen: pixels to divisions by a projective transform.
