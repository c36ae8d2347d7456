//! Runs the wasm file of a test in a headless browser. An example, so that only `cargo verify` compiles what it needs.

fn main() -> anyhow::Result<()> {
    wasm_bindgen_cli::wasm_bindgen_test_runner::run_cli_with_args(std::env::args_os())
}
