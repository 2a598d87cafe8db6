//! Choosing where a long member is divided.
//!
//! A shortest-path search: a state is "the last cut is at candidate i", a step is one piece.

/// The cheapest way to a cut, or to the member's end.
#[derive(Clone, Copy)]
struct Way {
    cost: f64,
    n_cuts: usize,
    /// The cut before; none where the member's start is.
    before: Option<usize>,
}

/// The cheapest choice of any number of cuts among `n_candidates` places, left to right; of equal ones that with the fewest.
///
/// `piece_cost(previous, next)` is the cost of the piece between two cuts (`None` is the member's end), never below zero, or
/// nothing where that piece cannot be. Returns nothing where no choice works.
pub(super) fn choose_cuts(
    n_candidates: usize,
    piece_cost: impl Fn(Option<usize>, Option<usize>) -> Option<f64>,
) -> Option<Vec<usize>> {
    let mut ways: Vec<Option<Way>> = Vec::with_capacity(n_candidates);
    for next in 0..n_candidates {
        ways.push(cheapest_way(&ways, |previous| piece_cost(previous, Some(next))));
    }
    let end = cheapest_way(&ways, |previous| piece_cost(previous, None))?;
    let before = |cut: &usize| ways[*cut].and_then(|way| way.before);
    let mut cuts: Vec<usize> = std::iter::successors(end.before, before).collect();
    cuts.reverse();
    Some(cuts)
}

/// The cheapest way on, past one of the cuts that are reached.
fn cheapest_way(reached: &[Option<Way>], piece_cost: impl Fn(Option<usize>) -> Option<f64>) -> Option<Way> {
    let mut least = piece_cost(None).map(|cost| Way { cost, n_cuts: 0, before: None });
    for (cut, way) in reached.iter().enumerate() {
        let Some(way) = way.filter(|way| least.is_none_or(|least| way.cost < least.cost)) else { continue };
        let Some(step) = piece_cost(Some(cut)) else { continue };
        let (cost, n_cuts) = (way.cost + step, way.n_cuts + 1);
        if least.is_none_or(|least| cost < least.cost || cost == least.cost && n_cuts < least.n_cuts) {
            least = Some(Way { cost, n_cuts, before: Some(cut) });
        }
    }
    least
}

/// The same where a piece's cost hangs on how many cuts are to its left, or their number is given.
///
/// `piece_cost(before, previous, next)` is the cost of the piece between two cuts (`None` is the member's end) with so many
/// cuts to its left, or nothing where that piece cannot be. With `n_pieces` the choice has exactly that many pieces.
/// Returns nothing where no choice works.
pub(super) fn choose_counted_cuts(
    n_candidates: usize,
    n_pieces: Option<usize>,
    piece_cost: impl Fn(usize, Option<usize>, Option<usize>) -> Option<f64>,
) -> Option<Vec<usize>> {
    // best[k][i]: cheapest way to k cuts, the last of them at i. Without a fixed count, one layer of
    // cuts at a time is tried until no layer gets any further.
    let most = n_pieces.map_or(n_candidates, |pieces| pieces.saturating_sub(1)).min(n_candidates);
    let mut best: Option<(f64, Vec<usize>)> = None;
    let mut layer: Vec<Option<(f64, Vec<usize>)>> =
        (0..n_candidates).map(|i| piece_cost(0, None, Some(i)).map(|cost| (cost, vec![i]))).collect();
    if n_pieces.is_none_or(|pieces| pieces == 1) {
        best = piece_cost(0, None, None).map(|cost| (cost, Vec::new()));
    }
    for n_cuts in 1..=most {
        if n_pieces.is_none_or(|pieces| pieces == n_cuts + 1) {
            close(&layer, |last| piece_cost(n_cuts, Some(last), None), &mut best);
        }
        if n_cuts == most || layer.iter().all(Option::is_none) {
            break;
        }
        layer = (0..n_candidates).map(|i| extend(&layer, |last| piece_cost(n_cuts, Some(last), Some(i)), i)).collect();
    }
    best.map(|(_, cuts)| cuts)
}

type Path = Option<(f64, Vec<usize>)>;

fn close(layer: &[Path], last_piece: impl Fn(usize) -> Option<f64>, best: &mut Path) {
    for (i, path) in layer.iter().enumerate() {
        let Some((cost, cuts)) = path else { continue };
        let Some(last) = last_piece(i) else { continue };
        if best.as_ref().is_none_or(|(least, _)| cost + last < *least) {
            *best = Some((cost + last, cuts.clone()));
        }
    }
}

fn extend(layer: &[Path], next_piece: impl Fn(usize) -> Option<f64>, i: usize) -> Path {
    let mut least: Option<(f64, &Vec<usize>)> = None;
    for (j, path) in layer.iter().enumerate().take(i) {
        let Some((cost, cuts)) = path else { continue };
        if least.is_some_and(|(known, _)| *cost >= known) {
            continue;
        }
        if let Some(step) = next_piece(j)
            && least.is_none_or(|(known, _)| cost + step < known)
        {
            least = Some((cost + step, cuts));
        }
    }
    least.map(|(cost, cuts)| (cost, [cuts.as_slice(), &[i]].concat()))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A 10 long member, cuts at whole numbers, pieces of 4 at most, 1 each and a little for unequal ones.
    fn check(n_pieces: Option<usize>, expected: Option<&[usize]>) {
        let found = choose_counted_cuts(9, n_pieces, |_, previous, next| {
            let start = previous.map_or(0, |i| i + 1);
            let length = next.map_or(10, |i| i + 1) - start;
            (length <= 4).then(|| 1.0 + (length as f64 - 3.3).powi(2) * 0.01)
        });
        assert_eq!(found.as_deref(), expected);
    }

    #[test]
    fn the_cheapest_allowed_cuts_are_found() {
        check(Some(3), Some(&[2, 5]));
        check(None, Some(&[2, 5]));
        check(Some(2), None);
        assert_eq!(check_count(5), Some(4));
    }

    /// Costs drawn at random, few different ones, so that many choices cost the same; some pieces cannot be.
    #[test]
    fn both_searches_find_the_same() {
        let mut seed = 11_u64;
        let mut drawn = || {
            seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            (seed >> 33) as usize
        };
        let mut n_divided = 0;
        for n in 0..200 {
            let (n_candidates, n_costs) = (n % 9, 1 + drawn() % 5);
            let costs: Vec<Option<f64>> = (0..100)
                .map(|_| Some(drawn() % n_costs).filter(|cost| *cost != 2))
                .map(|cost| cost.map(|cost| cost as f64 + 1.0))
                .collect();
            let place = |cut: Option<usize>, end: usize| cut.map_or(end, |cut| cut + 1);
            let cost = |previous, next| costs[place(previous, 0) * 10 + place(next, 9)];
            let found = choose_cuts(n_candidates, cost);
            assert_eq!(found, choose_counted_cuts(n_candidates, None, |_, previous, next| cost(previous, next)));
            n_divided += usize::from(found.is_some_and(|cuts| !cuts.is_empty()));
        }
        assert!(n_divided > 20, "{n_divided}");
    }

    fn check_count(n_pieces: usize) -> Option<usize> {
        choose_counted_cuts(9, Some(n_pieces), |_, _, _| Some(1.0)).map(|cuts| cuts.len())
    }
}
