//! The wasm boundary: what the page may call. The only module that knows a browser.
