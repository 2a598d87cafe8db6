//! A speed, held in miles an hour.

use super::quantity::{quantity, unit};

/// Metres a second in one mile an hour, exact: 1609.344 m ÷ 3600 s, international yard and pound agreement (1959).
const METRES_PER_SECOND: f64 = 0.447_04;

quantity! {
    /// A speed, held in miles an hour.
    Speed
}
unit!(Speed, "miles an hour", mph, try_mph, to_mph, (*1.0), (/ 1.0));
unit!(
    Speed,
    "metres a second",
    metres_per_second,
    try_metres_per_second,
    to_metres_per_second,
    (/ METRES_PER_SECOND),
    (*METRES_PER_SECOND)
);
unit!(
    Speed,
    "kilometres an hour",
    kilometres_per_hour,
    try_kilometres_per_hour,
    to_kilometres_per_hour,
    (/ (METRES_PER_SECOND * 3.6)),
    (*(METRES_PER_SECOND * 3.6))
);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn units() {
        // 100 mi/h = 160,934.4 m ÷ 3,600 s = 44.704 m/s.
        assert!((Speed::mph(100.0).to_metres_per_second() - 44.704).abs() < 1e-12);
        assert!((Speed::kilometres_per_hour(160.934_4).to_mph() - 100.0).abs() < 1e-12);
        assert!(Speed::try_mph(f64::INFINITY).is_none());
    }
}
