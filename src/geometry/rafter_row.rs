//! Where the rafters stand along the wall.
use crate::project::{Frame, Problem, RafterRow, RafterRule};
use crate::units::Length;

/// Most rafters that are worked out.
const MOST_RAFTERS: usize = 200;

/// Centres of the rafters from the beam's left end, left to right.
///
/// The outer two stand at the inset. Between them the spacing is stepped off from one end, or shared
/// out equally. Where stepping would leave a last bay too narrow for a block, it and the bay before it
/// are made equal.
#[must_use]
pub fn rafter_centres(row: &RafterRow, breadth: Length, beam_length: Length) -> Vec<Length> {
    let first = row.inset + breadth / 2.0;
    let last = beam_length - row.inset - breadth / 2.0;
    match row.rule {
        RafterRule::Equal => equal(first, last, row.spacing),
        RafterRule::FromLeft => stepped(first, last, row.spacing, breadth),
        RafterRule::FromRight => {
            let mirrored = stepped(first, last, row.spacing, breadth);
            mirrored.into_iter().rev().map(|x| beam_length - x).collect()
        }
    }
}

fn equal(first: Length, last: Length, spacing: Length) -> Vec<Length> {
    // A hair of slack, so that an exact multiple does not get one bay more.
    let n_bays = ((last - first) / spacing - 1e-9).ceil().max(1.0);
    let step = (last - first) / n_bays;
    (0..=n_bays as usize).map(|index| first + step * index as f64).collect()
}

fn stepped(first: Length, last: Length, spacing: Length, breadth: Length) -> Vec<Length> {
    let n_whole = ((last - first) / spacing + 1e-9).floor() as usize;
    let mut centres: Vec<Length> = (0..=n_whole).map(|index| first + spacing * index as f64).collect();
    let remainder = last - centres[n_whole];
    if remainder <= Length::inches(1e-6) {
        centres[n_whole] = last;
        return centres;
    }
    if remainder < breadth * 2.0 && n_whole > 0 {
        centres[n_whole] = (centres[n_whole - 1] + last) / 2.0;
    }
    centres.push(last);
    centres
}

/// The frame's rafters, where they have room beside each other.
///
/// # Errors
/// The field to change.
pub fn fitted_rafter_row(frame: &Frame) -> Result<Vec<Length>, Problem> {
    let breadth = frame.timbers.rafter.ordered.breadth;
    let span = frame.beam_length - frame.rafters.inset * 2.0 - breadth;
    if frame.rafters.spacing < breadth * 2.0 {
        let says = "The rafters would stand closer than their own breadth.";
        return Err(Problem::stop("frame.rafters.spacing", says).nearest(breadth * 2.0));
    }
    if span < frame.rafters.spacing {
        let says = "The beam is shorter than one bay of rafters.";
        return Err(Problem::stop("frame.rafters.spacing", says).nearest(span.max(breadth * 2.0)));
    }
    let centres = rafter_centres(&frame.rafters, breadth, frame.beam_length);
    if centres.len() > MOST_RAFTERS {
        let says = format!("{} rafters are more than the {MOST_RAFTERS} that are worked out.", centres.len());
        return Err(Problem::stop("frame.rafters.spacing", says).nearest(span / (MOST_RAFTERS - 1) as f64));
    }
    Ok(centres)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(rule: RafterRule, spacing: f64, length: f64, expected: &[f64]) {
        let row = RafterRow { spacing: Length::inches(spacing), inset: Length::ZERO, rule };
        let found = rafter_centres(&row, Length::inches(4.0), Length::inches(length));
        let found: Vec<f64> = found.iter().map(|x| (x.to_inches() * 1e6).round() / 1e6).collect();
        assert_eq!(found, expected);
    }

    #[test]
    fn spacing_is_stepped_or_shared() {
        check(RafterRule::FromLeft, 24.0, 76.0, &[2.0, 26.0, 50.0, 74.0]);
        check(RafterRule::FromLeft, 24.0, 90.0, &[2.0, 26.0, 50.0, 74.0, 88.0]);
        check(RafterRule::FromRight, 24.0, 90.0, &[2.0, 16.0, 40.0, 64.0, 88.0]);
        check(RafterRule::Equal, 24.0, 90.0, &[2.0, 23.5, 45.0, 66.5, 88.0]);
        check(RafterRule::Equal, 24.0, 76.0, &[2.0, 26.0, 50.0, 74.0]);
    }

    #[test]
    fn a_sliver_of_a_bay_is_shared_with_its_neighbour() {
        check(RafterRule::FromLeft, 24.0, 81.0, &[2.0, 26.0, 50.0, 64.5, 79.0]);
    }
}
