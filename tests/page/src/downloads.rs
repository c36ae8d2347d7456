//! What the page hands out as files.

use std::fs;
use std::path::PathBuf;

use anyhow::{Result, bail, ensure};

use crate::page::{Page, eventually};

impl Page<'_> {
    /// The file that was downloaded, whole.
    ///
    /// # Errors
    /// When there is none, or more than one.
    pub fn downloaded(&self) -> Result<(PathBuf, Vec<u8>)> {
        self.downloaded_as("zip")
    }

    /// The same, of a file with another ending.
    ///
    /// # Errors
    /// When there is none, or more than one.
    pub fn downloaded_as(&self, ending: &str) -> Result<(PathBuf, Vec<u8>)> {
        let folder = self.home.folder("downloads");
        let list = || {
            let entries = fs::read_dir(&folder)?.map(|entry| Ok(entry?.path()));
            let files = entries.collect::<Result<Vec<PathBuf>>>()?;
            Ok(files
                .into_iter()
                .filter(|file| file.extension().is_some_and(|end| end == ending))
                .collect::<Vec<_>>())
        };
        // A browser keeps the name with an empty file, and puts the whole one in its place at once.
        let is_whole = |file: &PathBuf| fs::metadata(file).is_ok_and(|about| about.len() > 0);
        let files = eventually("a file is downloaded", list, |files| {
            !files.is_empty() && files.iter().all(is_whole)
        })?;
        let [file] = files.as_slice() else { bail!("more than one file was downloaded: {files:?}") };
        Ok((file.clone(), fs::read(file)?))
    }
}

/// The traces as they are looked at, and the walk, are saved as the other plots are.
///
/// # Errors
/// When they are not.
pub fn traces_are_saved(page: &Page) -> Result<()> {
    let plots = [
        ("Both traces of the row", "traces", "trace B"),
        ("Difference fixed threshold − constant fraction, against distance", "walk", "time walk"),
    ];
    for (title, name, legend) in plots {
        page.choose("Plot", title)?;
        page.click("Download plot")?;
        plot_is_saved(page, &format!("-{name}.svg"), &[&format!("<title>{title}</title>"), legend])?;
    }
    Ok(())
}

/// A plot was downloaded as SVG, under a name that ends so, and holds some texts; its file is removed.
///
/// # Errors
/// When it was not, or does not.
pub fn plot_is_saved(page: &Page, ending: &str, texts: &[&str]) -> Result<()> {
    let (file, svg) = page.downloaded_as("svg")?;
    ensure!(file.to_string_lossy().ends_with(ending), "it is called {}", file.display());
    let svg = String::from_utf8(svg)?;
    for text in texts {
        ensure!(svg.contains(text), "{ending} does not hold {text:?}");
    }
    // XML 1.0, 5th edition, 2.2.
    let is_forbidden =
        |letter: char| matches!(u32::from(letter), 0..=8 | 11 | 12 | 14..=31 | 0xfffe | 0xffff);
    ensure!(!svg.contains(is_forbidden), "{ending} is no XML");
    Ok(fs::remove_file(&file)?)
}

/// The records of a table, the heads among them.
///
/// # Errors
/// When it is no table of CSV.
pub fn records_of(table: &[u8]) -> Result<Vec<Vec<String>>> {
    let mut reader = csv::ReaderBuilder::new().has_headers(false).from_reader(table);
    reader.records().map(|record| Ok(record?.iter().map(str::to_owned).collect())).collect()
}
