use super::*;

const TABLE: &str =
    "figure,meaning,value,u,unit\r\nslope,\"a, b\",3.335640952,0.012,ns/m\r\nc,c,299792458,,m/s\r\n";

fn computed(slope: f64, u: Option<f64>, c: f64) -> Vec<GivenFigure> {
    let figure = |id: &str, value, uncertainty| GivenFigure { id: id.into(), value, uncertainty };
    vec![figure("slope", slope, u), figure("c", c, None)]
}

#[test]
fn figures_that_came_are_held_against_those_computed() {
    let differing = |slope, u, c| differing(TABLE, &computed(slope, u, c));
    assert_eq!(differing(3.335_640_952, Some(0.012), 299_792_458.0), Vec::<String>::new());
    // Within another order of adding up.
    assert_eq!(differing(3.335_640_952_000_1, Some(0.012), 299_792_458.0), Vec::<String>::new());
    assert_eq!(differing(3.335_640_952, Some(0.012), 299_792_459.0), ["c"]);
    assert_eq!(differing(3.335_640_952, Some(0.013), 299_792_458.0), ["slope"]);
    assert_eq!(differing(3.335_640_952, None, 299_792_458.0), ["slope"]);
}

#[test]
fn what_cannot_be_read_is_no_agreement_and_what_is_unknown_no_difference() {
    let ours = computed(3.0, None, 3e8);
    assert_eq!(differing("slope,b,3.x,,ns/m", &ours), ["slope"]);
    assert_eq!(differing("of another version,1,2,3\r\n", &ours), Vec::<String>::new());
    assert_eq!(differing("", &ours), Vec::<String>::new());
}
