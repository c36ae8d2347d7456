//! Videos whose frames serve as photographs.

use anyhow::{Result, ensure};
use serde_json::json;

use crate::bench::describe_rail;
use crate::names;
use crate::page::eventually;
use crate::pictures::REFUSED;
use crate::stage::Stage;

const STATUS: &str = "#picture-status";

/// Records a video that is red at first and blue later, as the browser itself does it (W3C MediaStream Recording: such a
/// file does not say how long it is), and drops it beside files that only call themselves one.
pub(crate) const DROP: &str = r"
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [320, 240];
    const context = canvas.getContext('2d');
    const parts = [];
    const recorder = new MediaRecorder(canvas.captureStream(25), { mimeType: 'video/webm;codecs=vp8' });
    recorder.ondataavailable = ({ data }) => parts.push(data);
    recorder.start();
    for (let shown = 0; shown < 60; shown += 1) {
        context.fillStyle = shown < 30 ? '#f00' : '#00f';
        context.fillRect(0, 0, 320, 240);
        await new Promise((done) => setTimeout(done, 40));
    }
    await new Promise((done) => { recorder.onstop = done; recorder.stop(); });
    const dataTransfer = new DataTransfer();
    for (const name of ['broken.mp4', 'torn.mp4']) dataTransfer.items.add(new File(['no video'], name, { type: 'video/mp4' }));
    dataTransfer.items.add(new File(parts, '1250 mm.webm', { type: 'video/webm' }));
    document.body.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));";

/// Goes to a share of the video, and gives the end of the slider.
const GO: &str = r"
    const slider = document.getElementById('video-place');
    slider.value = String(arguments[0] * slider.max);
    slider.dispatchEvent(new Event('input', { bubbles: true }));
    return Number(slider.max);";

/// Red, green and blue in the middle of the open picture.
const COLOUR: &str = r"
    const board = document.querySelector('.board-picture');
    if (!board?.checkVisibility() || board.width === 0) return null;
    const copy = new OffscreenCanvas(1, 1).getContext('2d', { willReadFrequently: true });
    copy.drawImage(board, -Math.round(board.width * 0.46), -Math.round(board.height * 0.45));
    const [red, green, blue] = copy.getImageData(0, 0, 1, 1).data;
    return [red > 128, green > 128, blue > 128];";

/// A frame found in a video becomes a photo with the reading that the video's name tells: the one that is shown, not the
/// first. Videos that the browser can't show are refused by their names.
///
/// # Errors
/// When it is otherwise.
pub fn a_frame_of_a_video_is_a_photo(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    describe_rail(&page)?;
    page.browser.run(&format!("return (async (...arguments) => {{ {DROP} }})()"), vec![])?;
    page.reads("#video-title", "1250 mm.webm")?;
    let found = || page.browser.run("return !document.getElementById('video-place').disabled", vec![]);
    eventually("the length of the video is known", found, |is| *is == json!(true))?;
    let length = page.browser.run(GO, vec![json!(0.9)])?;
    ensure!(length.as_f64().is_some_and(|length| (1.5..20.0).contains(&length)), "it is {length} s long");
    page.click("Use this frame")?;
    page.reads(STATUS, "1 photo was added")?;
    for name in ["broken.mp4", "torn.mp4"] {
        page.reads(REFUSED, &format!("{name}: the browser can’t show this video"))?;
    }
    ensure!(page.cell("Ruler reading", 1)? == "1250 mm", "the frame has not the reading of its video");
    page.click("Done with this video")?;
    let hidden = || page.browser.run("return document.querySelector('.video-frames').hidden", vec![]);
    eventually("the video is gone", hidden, |is| *is == json!(true))?;
    ensure!(!page.text(names::MESSAGE)?.contains("not opened"), "one was opened as a notebook");
    page.is_silent()?;

    page.browser.is_chromium_or("Firefox finds no place in a video that it recorded itself")?;
    let colour = || page.browser.run(COLOUR, vec![]);
    eventually("the frame shown is the photo", colour, |is| *is == json!([false, false, true]))?;
    Ok(())
}
