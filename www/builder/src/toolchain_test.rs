//! Reading the LLVM version, which names the linker's package.

use super::llvm_major;

#[test]
fn the_linker_is_that_of_the_compilers_llvm() {
    let version = "rustc 1.96.0\nbinary: rustc\nrelease: 1.96.0\nLLVM version: 22.1.8";
    assert_eq!(llvm_major(version), Some("22"));
    assert_eq!(llvm_major("rustc 1.96.0"), None);
}
