//! What is loaded at once, by what the bundler says of its work.

#![expect(clippy::unwrap_used, reason = "tests")]

use serde_json::json;

use super::loaded_by_facts;

/// The form of the facts: the bundler's own documentation of its metafile.
#[test]
fn what_comes_when_asked_for_is_not_loaded_at_once() {
    let import = |path: &str, kind: &str| json!({ "path": path, "kind": kind });
    let facts = json!({ "outputs": {
        "../out/main.js": { "imports": [
            import("../out/shared-AB.js", "import-statement"), import("../out/plan-CD.js", "dynamic-import")] },
        "../out/shared-AB.js": { "imports": [import("../out/deep-EF.js", "import-statement")] },
        "../out/deep-EF.js": { "imports": [import("../out/shared-AB.js", "import-statement")] },
        "../out/plan-CD.js": { "imports": [import("../out/far-GH.js", "import-statement")] },
        "../out/far-GH.js": { "imports": [] },
    } });
    let loaded: Vec<String> = loaded_by_facts(&facts, "main.js").unwrap().into_iter().collect();
    assert_eq!(loaded, ["deep-EF.js", "main.js", "shared-AB.js"]);
    assert!(loaded_by_facts(&facts, "other.js").is_err());
}
