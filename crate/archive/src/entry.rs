//! What a bundle holds: named contents.

/// One named content of a bundle.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// Its name, with forward slashes between folders.
    pub name: String,
    /// What it holds.
    pub bytes: Vec<u8>,
}

/// The checked entries of a bundle, in the order in which they were packed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Entries(pub(super) Vec<Entry>);

impl Entries {
    /// The content of the entry called `name`.
    pub fn get(&self, name: &str) -> Option<&[u8]> {
        self.iter().find(|entry| entry.name == name).map(|entry| entry.bytes.as_slice())
    }

    /// The entries themselves.
    pub fn into_vec(self) -> Vec<Entry> {
        self.0
    }

    /// Every entry.
    pub fn iter(&self) -> std::slice::Iter<'_, Entry> {
        self.0.iter()
    }
}

impl<'a> IntoIterator for &'a Entries {
    type Item = &'a Entry;
    type IntoIter = std::slice::Iter<'a, Entry>;

    fn into_iter(self) -> Self::IntoIter {
        self.iter()
    }
}
