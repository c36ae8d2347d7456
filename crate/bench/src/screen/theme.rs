//! Colours of screens: made up, and like no maker's.

use serde::{Deserialize, Serialize};

/// Red, green and blue, 0 to 255.
pub type Rgb = [u8; 3];

/// The colours of a screen and of what is around it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct ScreenTheme {
    /// Behind the grid.
    pub ground: Rgb,
    /// The grid's lines.
    pub grid: Rgb,
    /// The traces.
    pub traces: [Rgb; 2],
    /// The frame around the screen.
    pub frame: Rgb,
    /// The table on which it stands.
    pub table: Rgb,
}

/// Dark, light and coloured screens; two with both traces of one colour.
pub const THEMES: [ScreenTheme; 8] = [
    // Slate.
    ScreenTheme {
        ground: [38, 44, 54],
        grid: [112, 116, 122],
        traces: [[230, 159, 0], [204, 121, 167]],
        frame: [176, 172, 164],
        table: [120, 104, 88],
    },
    // Paper.
    ScreenTheme {
        ground: [238, 233, 220],
        grid: [168, 158, 142],
        traces: [[0, 96, 150], [190, 74, 0]],
        frame: [92, 96, 98],
        table: [196, 200, 196],
    },
    // Night, one colour.
    ScreenTheme {
        ground: [14, 15, 18],
        grid: [70, 66, 62],
        traces: [[226, 222, 210], [226, 222, 210]],
        frame: [52, 50, 50],
        table: [24, 22, 22],
    },
    // Plum.
    ScreenTheme {
        ground: [52, 30, 50],
        grid: [136, 88, 118],
        traces: [[240, 228, 160], [110, 200, 190]],
        frame: [208, 204, 200],
        table: [150, 140, 126],
    },
    // Mist, one colour.
    ScreenTheme {
        ground: [214, 222, 226],
        grid: [150, 166, 172],
        traces: [[40, 44, 60], [40, 44, 60]],
        frame: [240, 240, 238],
        table: [88, 94, 104],
    },
    // Moss.
    ScreenTheme {
        ground: [40, 52, 36],
        grid: [104, 122, 88],
        traces: [[236, 120, 70], [222, 222, 230]],
        frame: [120, 116, 104],
        table: [68, 60, 50],
    },
    // Sand, red lines.
    ScreenTheme {
        ground: [250, 246, 238],
        grid: [226, 150, 140],
        traces: [[30, 60, 110], [20, 110, 80]],
        frame: [160, 150, 140],
        table: [210, 196, 170],
    },
    // Ink, blue lines.
    ScreenTheme {
        ground: [20, 26, 44],
        grid: [58, 92, 150],
        traces: [[240, 150, 130], [190, 214, 120]],
        frame: [30, 32, 38],
        table: [140, 136, 130],
    },
];
