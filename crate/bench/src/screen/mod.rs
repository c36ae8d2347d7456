//! A plain screen of our own drawing, and a photograph of it.
