//! A bundle that is packed entry by entry: what was packed can be laid elsewhere before the next entry is made.

use std::cell::RefCell;
use std::io::{Result as Written, Write};
use std::rc::Rc;

use rawzip::ZipArchiveWriter;

use super::container::{Gate, LIMITS, damaged, method_for, write_entry};
use super::contents::{CONTENTS, Listed, list_of};
use super::entry::Entry;
use super::error::ArchiveError;

/// A bundle on the way. Its bytes are all that [`add`](Self::add) gave, in turn, and what [`end`](Self::end) does.
pub struct Packing {
    writer: ZipArchiveWriter<Outlet>,
    outlet: Outlet,
    gate: Gate,
    listed: Vec<Listed>,
}

impl Packing {
    /// Begins one.
    ///
    /// # Errors
    /// As of an entry: the list is let through like one.
    pub fn begin() -> Result<Self, ArchiveError> {
        let mut gate = Gate::new(LIMITS, 0)?;
        // The list comes last, since it says what is in all others.
        gate.admit_name(CONTENTS)?;
        let outlet = Outlet::default();
        Ok(Self { writer: ZipArchiveWriter::new(outlet.clone()), outlet, gate, listed: Vec::new() })
    }

    /// The next bytes, with an entry in them.
    ///
    /// # Errors
    /// What [`unpack`](super::unpack) would refuse is not written: bad or repeated names, too many or too large entries.
    pub fn add(&mut self, entry: &Entry) -> Result<Vec<u8>, ArchiveError> {
        // With this one and the list.
        self.gate.admit_count(self.listed.len() + 2)?;
        self.gate.admit_name(&entry.name)?;
        self.gate.admit_bytes(&entry.name, entry.bytes.len())?;
        self.listed.push(Listed::of(entry));
        write_entry(&mut self.writer, entry, method_for(entry)).map_err(|error| damaged(&error))?;
        Ok(self.outlet.taken())
    }

    /// The last bytes: the list of all entries, and the table of the zip.
    ///
    /// # Errors
    /// As of an entry.
    pub fn end(mut self) -> Result<Vec<u8>, ArchiveError> {
        let list = list_of(self.listed);
        self.gate.admit_bytes(CONTENTS, list.bytes.len())?;
        write_entry(&mut self.writer, &list, method_for(&list)).map_err(|error| damaged(&error))?;
        self.writer.finish().map_err(|error| damaged(&error))?;
        Ok(self.outlet.taken())
    }
}

/// Where the bytes of a zip come out: here until they are taken.
#[derive(Clone, Default)]
struct Outlet(Rc<RefCell<Vec<u8>>>);

impl Outlet {
    fn taken(&self) -> Vec<u8> {
        self.0.take()
    }
}

impl Write for Outlet {
    fn write(&mut self, bytes: &[u8]) -> Written<usize> {
        self.0.borrow_mut().extend_from_slice(bytes);
        Ok(bytes.len())
    }

    fn flush(&mut self) -> Written<()> {
        Ok(())
    }
}

#[cfg(test)]
#[path = "packing_test.rs"]
mod tests;
