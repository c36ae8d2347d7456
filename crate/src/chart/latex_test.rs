use super::super::theme::Theme;
use super::*;

const INK: Colour = Colour::new(0, 0, 0);
const PEN: Pen = Pen { colour: INK, width: 1.0 };

fn drawn(draw: impl FnOnce(&mut Scene)) -> String {
    let mut scene = Scene::default();
    draw(&mut scene);
    picture(&scene, (760.0, 340.0))
}

/// ISO 32000-1:2008, tables 51, 57, 59, 60 and 74: RG and rg colour, w width, m, l and c paths, S, s and f paint them.
#[test]
fn shapes_are_operators_of_pdf() {
    let stroke = drawn(|scene| scene.stroke((1.0, 2.0), (3.0, 4.0), PEN));
    assert!(stroke.contains("0.000 0.000 0.000 RG 1.00 w 1.00 2.00 m 3.00 4.00 l S\n"), "{stroke}");
    let filled =
        drawn(|scene| scene.filled(vec![(0.0, 0.0), (1.0, 0.0), (0.0, 1.0)], Colour::new(255, 0, 0)));
    assert!(filled.contains("1.000 0.000 0.000 rg 0.00 0.00 m 1.00 0.00 l 0.00 1.00 l f\n"), "{filled}");
    let disc = drawn(|scene| scene.disc((10.0, 10.0), 2.0, INK));
    assert_eq!(disc.matches(" c ").count(), 4);
    assert!(stroke.contains("\\begin{picture}(760,340)"));
    assert!(stroke.contains("q 0.63 0 0 -0.63 0 214.20 cm"), "y grows downwards from the top");
}

/// Half of black on white paper is grey.
#[test]
fn a_colour_is_as_on_paper() {
    assert_eq!(on_paper(INK.with_alpha(0.5)), [0.5; 3]);
    let [red, green, blue] = on_paper(Colour::new(255, 0, 51));
    // Equal but for rounding.
    assert!((red - 1.0).abs() + green.abs() + (blue - 0.2).abs() < 1e-12);
}

#[test]
fn words_stay_words() {
    let theme = Theme::print();
    let text = drawn(|scene| scene.text("\\end{picture} 5 %", (10.0, 40.0), Anchor::End, INK, &theme));
    assert!(text.contains("\\put(10.0,300.0){\\makebox(0,0)[r]{"), "{text}");
    assert!(text.contains("\\textbackslash{}end\\{picture\\} 5 \\%"), "{text}");
}

#[test]
fn what_is_off_any_paper_is_left_out() {
    let nowhere = [f64::NAN, f64::INFINITY, 1e300];
    for place in nowhere {
        let text = drawn(|scene| {
            scene.stroke((place, 0.0), (1.0, 1.0), PEN);
            scene.disc((place, 0.0), 2.0, INK);
        });
        assert!(!text.contains("NaN") && !text.contains("inf") && text.len() < 400, "{text}");
    }
}
