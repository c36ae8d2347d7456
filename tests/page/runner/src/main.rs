//! Runs the wasm file of a test in a headless browser. Its own package, so that only `cargo verify` compiles it.

fn main() -> anyhow::Result<()> {
    wasm_bindgen_cli::wasm_bindgen_test_runner::run_cli_with_args(std::env::args_os())
}
