//! From notebook and analysis to a [`View`].
