//! Writes the SHA-256 of the analysis of the demo and of 200 random notebooks, one a line: what another build of the
//! program, such as the one in a browser, must reach to the bit.

#[path = "../../tests/page/sameness.rs"]
mod sameness;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    for digest in sameness::digests()? {
        println!("{digest}");
    }
    Ok(())
}
