//! What is refused, and how it is said. The published values are in `tests/numbers/air.rs`.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;

const ROOM: Air = Air { temperature_c: 20.0, pressure_pa: 101_325.0, humidity_percent: 50.0, co2_ppm: 450.0 };

#[test]
fn inputs_out_of_range_are_named() {
    let cases = [
        (Air { temperature_c: -40.1, ..ROOM }, 650.0, "temperature"),
        (Air { temperature_c: 100.1, ..ROOM }, 650.0, "temperature"),
        (Air { temperature_c: f64::NAN, ..ROOM }, 650.0, "temperature"),
        (Air { pressure_pa: 1013.25, ..ROOM }, 650.0, "pressure"),
        (Air { pressure_pa: 141e3, ..ROOM }, 650.0, "pressure"),
        (Air { humidity_percent: -1.0, ..ROOM }, 650.0, "relative humidity"),
        (Air { humidity_percent: 101.0, ..ROOM }, 650.0, "relative humidity"),
        (Air { co2_ppm: -1.0, ..ROOM }, 650.0, "carbon dioxide content"),
        (ROOM, 299.0, "vacuum wavelength"),
        (ROOM, 1691.0, "vacuum wavelength"),
        (ROOM, f64::INFINITY, "vacuum wavelength"),
    ];
    for (air, wavelength, expected) in cases {
        match group_refractivity(&air, wavelength) {
            Err(AirError::OutOfRange { field, .. }) => assert_eq!(field, expected),
            other => assert!(other.is_err(), "{air:?} at {wavelength} nm was accepted"),
        }
        assert!(phase_index(&air, wavelength).is_err());
    }
    assert_eq!(
        phase_index(&Air { pressure_pa: 1013.25, ..ROOM }, 650.0).unwrap_err().to_string(),
        "The pressure is 1013.25 Pa, but the index of air is known from 10000 to 140000 Pa: check the entry \
         and its unit."
    );
}

#[test]
fn more_vapour_than_pressure_is_refused() {
    let steam = Air { temperature_c: 90.0, pressure_pa: 20e3, humidity_percent: 100.0, co2_ppm: 450.0 };
    assert!(matches!(group_index(&steam, 650.0), Err(AirError::VapourAbovePressure { .. })));
}

#[test]
fn the_ends_of_the_ranges_are_allowed() {
    for wavelength in [300.0, 1690.0] {
        for (temperature_c, pressure_pa) in [(-40.0, 10e3), (-40.0, 140e3), (100.0, 140e3)] {
            let air = Air { temperature_c, pressure_pa, ..ROOM };
            assert!(group_index(&air, wavelength).is_ok_and(|n| n > 1.0));
        }
    }
    assert!(extrapolated(359.9) && !extrapolated(360.0));
}
