//! Slanting lines that fill an outline.
use crate::units::sort_by_number;

/// Ends of 45° lines, `step` apart, inside a polygon (even-odd rule). Points and lines in one plane, any unit.
pub fn hatch(outline: &[(f64, f64)], step: f64) -> Vec<((f64, f64), (f64, f64))> {
    // Lines x + y = c: run over c, find where each edge crosses it.
    let sums = outline.iter().map(|(x, y)| x + y);
    let (low, high) = sums.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), c| (low.min(c), high.max(c)));
    let mut lines = Vec::new();
    if outline.len() < 3 || step <= 0.0 || (high - low) / step > 4000.0 {
        return lines;
    }
    let mut c = (low / step).floor() * step + step / 2.0;
    while c < high {
        let mut crossings: Vec<(f64, f64)> = Vec::new();
        for (index, a) in outline.iter().enumerate() {
            let b = outline[(index + 1) % outline.len()];
            let (at_a, at_b) = (a.0 + a.1 - c, b.0 + b.1 - c);
            if (at_a < 0.0) != (at_b < 0.0) {
                let share = at_a / (at_a - at_b);
                crossings.push((a.0 + (b.0 - a.0) * share, a.1 + (b.1 - a.1) * share));
            }
        }
        sort_by_number(&mut crossings, |crossing| crossing.0);
        lines.extend(crossings.chunks_exact(2).map(|pair| (pair[0], pair[1])));
        c += step;
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::hatch;

    #[test]
    fn a_square_is_filled_and_nothing_beyond_it() {
        let lines = hatch(&[(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)], 2.0);
        assert_eq!(lines.len(), 10);
        for ((ax, ay), (bx, by)) in lines {
            assert!([ax, ay, bx, by].iter().all(|value| (-1e-9..=10.0 + 1e-9).contains(value)));
            assert!((ax + ay - bx - by).abs() < 1e-9);
        }
    }
}
