//! TypeScript declarations of the types that cross, by ts-rs.

use std::collections::BTreeMap;
use std::fmt::{self, Display};

use ts_rs::{Config, TS, TypeVisitor};

/// Types with all that they are made of, to be printed as the declarations of one module.
///
/// # Example
/// ```
/// use slope_evidence::border::{Declarations, Thrown};
///
/// let declared = Declarations::new("cargo run").with::<Thrown>().to_string();
/// assert!(declared.contains("export type Thrown = {"));
/// ```
#[derive(Clone, Debug)]
pub struct Declarations {
    command: &'static str,
    /// By name.
    types: BTreeMap<String, String>,
}

impl Declarations {
    /// None yet; `command` prints them.
    pub fn new(command: &'static str) -> Self {
        Self { command, types: BTreeMap::new() }
    }

    /// The same with a type and all that it is made of.
    #[must_use]
    pub fn with<T: TS + 'static>(mut self) -> Self {
        self.visit::<T>();
        self
    }
}

impl TypeVisitor for Declarations {
    fn visit<T: TS + 'static + ?Sized>(&mut self) {
        // What has no file to be written to is no type of ours: a text, a list.
        if T::output_path().is_none() {
            return;
        }
        let config = Config::new();
        let declaration = tidy(&format!("{}export {}", T::docs().unwrap_or_default(), T::decl(&config)));
        match self.types.insert(T::ident(&config), declaration.clone()) {
            Some(known) => assert_eq!(known, declaration, "two types that cross have one name"),
            None => T::visit_dependencies(self),
        }
    }
}

/// Comments without lines of their own for their marks, and no spaces at the ends of lines.
fn tidy(declaration: &str) -> String {
    declaration.replace("/**\n * ", "/** ").replace("\n */", " */").replace(" \n", "\n")
}

impl Display for Declarations {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(
            formatter,
            "// Made from the Rust types by `{}`. Change those, and run it again.",
            self.command
        )?;
        self.types.values().try_for_each(|declaration| write!(formatter, "\n{declaration}\n"))
    }
}
