//! Finding what a person would mark: the lines of the grid, and the traces with their edges.
//!
//! A chain of plain steps, each in its module and none of them random:
//! [`ridge`] thin lines of any colour against what is beside them; [`pencil`] the two families of lines that meet far
//! off, and their even spacing; [`lattice`] the plane fitted to every stretch of line; [`curve`] the traces in what the
//! grid does not explain; [`edge`] half of each one's height; [`thickness`] how thick each is;
//! [`white`] whether a reflection hides one.

pub mod ridge;
pub mod curve;
pub mod edge;
pub mod thickness;
pub mod white;
pub mod pencil;
pub mod lattice;
