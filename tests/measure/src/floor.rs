//! An edit of 200 rows beside the least that any page would have to do for it, in one run in the same browser.
//!
//! Of an edit and of its undoing by the same cell it is recorded what they do to the page: the nodes and attributes that
//! they leave changed, and every call and setting of the canvases' contexts. Then edits and replays alternate, both
//! timed as `edit_200_rows_ms` is. A replay sets the cell, the same texts and attributes, and paints the same charts,
//! all from ready arrays, so that the browser has the same layout and painting to do; each is a change, as the edit
//! and its undoing follow one another.
//!
//! A replay holds no reading of the entry, no analysis, no choosing of what has changed, no asking for sizes and widths of
//! text, and nothing that is stored. The page's own scripts are loaded but see no event of it.

use std::thread::sleep;
use std::time::Duration;

use anyhow::{Context, Result, ensure};
use serde_json::{Value, json};

use crate::effort::Effort;
use crate::stage::stage;
use crate::timing::Times;
use crate::visits::of_200_rows;

/// Cells edited in turn, each to another value and back, and so timed twice.
const CELLS: usize = 30;

/// Cells before those that are timed: until then the browser compiles what runs often.
const WARMING: usize = 10;

/// The time of an edit over the time of its replay, each from its event to the first task after the frame in which
/// it was painted: medians of one run. The same without the wait for that frame stands on standard error.
///
/// # Errors
/// When the page does not draw both plots, or changes nothing.
pub fn edit_over_floor(effort: Effort) -> Result<f64> {
    let stage = stage()?;
    let page = of_200_rows(&stage)?;
    page.browser.run(PREPARE, vec![])?;
    // Plots that have just come into sight are drawn once before they are measured.
    sleep(Duration::from_millis(500));
    let mut times: [Vec<f64>; 4] = Default::default();
    let mut recorded = (0.0, 0.0);
    let (warming, cells) = effort.of((WARMING, CELLS), (0, 1));
    for place in 0..warming + cells {
        let answer = page.browser.run("return window.compare(arguments[0])", vec![json!(place)])?;
        ensure!(answer["plots"] == json!(2), "of the two plots it drew {}", answer["plots"]);
        let count =
            |name: &str| answer[name].as_f64().filter(|count| *count > 0.0).context("nothing changed");
        recorded = (count("changes")?, count("calls")?);
        for round in answer["times"].as_array().context("no times")? {
            for (which, list) in times.iter_mut().enumerate().filter(|_| place >= warming) {
                list.push(round.get(which).and_then(Value::as_f64).context("no time")?);
            }
        }
    }
    let [edit, edit_work, floor, floor_work] = times.map(Times::of);
    eprintln!(
        "  the last edit changed {} nodes and attributes, with {} calls of canvases",
        recorded.0, recorded.1
    );
    for (name, edit, floor) in [("with the wait", &edit, &floor), ("the work alone", &edit_work, &floor_work)]
    {
        let (edit, floor) = (edit.median(), floor.median());
        eprintln!("  {name}: edit {edit:.1} ms, floor {floor:.1} ms, ratio {:.2}", edit / floor);
    }
    Ok(edit.median() / floor.median())
}

/// Gives the page `compare(place)`.
const PREPARE: &str = "
    document.querySelector('#line').scrollIntoView();
    const pause = () => new Promise((done) => { setTimeout(done, 400); });

    // What wrapped setters and methods do on the canvases goes into `calls` as well; gives what takes the wraps off.
    function wrapCanvases(calls) {
      const undo = [];
      for (const [{ prototype }, only] of [[CanvasRenderingContext2D], [HTMLCanvasElement, ['width', 'height']]]) {
        for (const [name, own] of Object.entries(Object.getOwnPropertyDescriptors(prototype))) {
          if (only ? !only.includes(name) : /^(constructor|measureText|is|get(?!$))/.test(name)) continue;
          const key = own.set ? 'set' : 'value';
          if (typeof own[key] !== 'function') continue;
          const wrapped = function (...given) {
            calls.push({ on: this, does: own[key], given });
            return own[key].apply(this, given);
          };
          Object.defineProperty(prototype, name, { ...own, [key]: wrapped });
          undo.push(() => Object.defineProperty(prototype, name, own));
        }
      }
      return () => undo.forEach((each) => each());
    }

    // From the event to the first task after the frame: the whole time, and without the wait for the frame.
    const timed = (work) => new Promise((done) => {
      let frame = 0;
      let handled = 0;
      requestAnimationFrame(() => { frame = performance.now(); });
      const start = performance.now();
      work();
      queueMicrotask(() => { handled = performance.now(); });
      requestAnimationFrame(() => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => {
          const end = performance.now();
          done([end - start, handled - start + end - frame]);
        };
        port2.postMessage(null);
      });
    });

    const edit = (cell, text) => () => {
      cell.value = text;
      cell.dispatchEvent(new Event('input', { bubbles: true }));
      cell.dispatchEvent(new Event('change', { bubbles: true }));
    };

    // The changes that an edit leaves, by the state in which it leaves each node.
    async function record(cell, text) {
      const calls = [];
      const changes = new Map();
      const note = (records) => {
        for (const { type, target, attributeName } of records) {
          if (target instanceof HTMLCanvasElement) continue;
          changes.set(target, (changes.get(target) ?? new Set()).add(attributeName ?? type));
        }
      };
      const watch = new MutationObserver(note);
      watch.observe(document, { subtree: true, childList: true, characterData: true, attributes: true });
      const unwrap = wrapCanvases(calls);
      await timed(edit(cell, text));
      unwrap();
      note(watch.takeRecords());
      watch.disconnect();
      const sets = [...changes].flatMap(([node, kinds]) => [...kinds].map((kind) => {
        if (kind === 'characterData') return { does: 'text', node, to: node.data };
        if (kind === 'childList') return { does: 'children', node, to: [...node.childNodes] };
        return { does: 'attribute', node, kind, to: node.getAttribute(kind) };
      }));
      return { cell, text, sets, calls };
    }

    const replay = ({ cell, text, sets, calls }) => () => {
      cell.value = text;
      for (const { does, node, kind, to } of sets) {
        if (does === 'text') node.data = to;
        else if (does === 'children') node.replaceChildren(...to);
        else if (to === null) node.removeAttribute(kind);
        else node.setAttribute(kind, to);
      }
      for (const { on, does, given } of calls) does.apply(on, given);
    };

    window.compare = async (place) => {
      const cell = document.querySelectorAll('input[id^=cell-][id$=-edge_b]')[(place * 7) % 200];
      const texts = [(Number(cell.value) + 0.001).toFixed(3), cell.value];
      cell.focus({ preventScroll: true });
      const both = [];
      for (const text of texts) {
        both.push(await record(cell, text));
        await pause();
      }
      const edits = [];
      for (const text of texts) {
        edits.push(await timed(edit(cell, text)));
        await pause();
      }
      const times = [];
      for (const [which, one] of both.entries()) {
        times.push([...edits[which], ...(await timed(replay(one)))]);
        await pause();
      }
      const drawn = new Set(both[0].calls.map(({ on }) => on.canvas?.id));
      const plots = ['line-plot', 'residual-plot'].filter((id) => drawn.has(id)).length;
      return { times, plots, changes: both[0].sets.length, calls: both[0].calls.length };
    };";
