//! Snow that lies on some spans of a continuous beam and half gone from others.

/// One way the balanced snow may lie on a row of spans.
#[derive(Clone, Debug, PartialEq)]
pub struct Pattern {
    /// What is where.
    pub name: String,
    /// Share of the balanced snow on each span, left to right; a cantilever is a span.
    pub shares: Vec<f64>,
}

/// The partial loads of a continuous beam (ASCE 7, 7.5, from memory): full on an end span and half elsewhere; half on an
/// end span and full elsewhere; full on any two neighbours and half elsewhere.
///
/// `n_between` spans lie between supports; each cantilever counts as a span of its own, and is then the end span. The even
/// load is not among them, and patterns that come out alike are given once. One span alone has none.
#[must_use]
pub fn partial_patterns(left_cantilever: bool, n_between: usize, right_cantilever: bool) -> Vec<Pattern> {
    let n_spans = usize::from(left_cantilever) + n_between + usize::from(right_cantilever);
    if n_spans < 2 {
        return Vec::new();
    }
    let last = n_spans - 1;
    let title = |span: usize| match span {
        0 if left_cantilever => "the left cantilever".to_owned(),
        span if span == last && right_cantilever => "the right cantilever".to_owned(),
        span => format!("span {}", span + usize::from(!left_cantilever)),
    };
    let row = |chosen: &[usize], on: f64, off: f64| -> Vec<f64> {
        (0..n_spans).map(|span| if chosen.contains(&span) { on } else { off }).collect()
    };
    let mut all = Vec::new();
    for end in [0, last] {
        all.push((format!("full on {}, half elsewhere", title(end)), row(&[end], 1.0, 0.5)));
        all.push((format!("half on {}, full elsewhere", title(end)), row(&[end], 0.5, 1.0)));
    }
    for first in 0..last {
        let name = format!("full on {} and {}, half elsewhere", title(first), title(first + 1));
        all.push((name, row(&[first, first + 1], 1.0, 0.5)));
    }
    let mut patterns: Vec<Pattern> = Vec::new();
    for (name, shares) in all {
        let is_even = shares.iter().all(|share| *share == 1.0);
        if !is_even && patterns.iter().all(|pattern| pattern.shares != shares) {
            patterns.push(Pattern { name, shares });
        }
    }
    patterns
}

#[cfg(test)]
mod tests {
    use super::*;

    fn shares(left: bool, n: usize, right: bool) -> Vec<Vec<f64>> {
        partial_patterns(left, n, right).into_iter().map(|pattern| pattern.shares).collect()
    }

    #[test]
    fn one_span_has_none() {
        assert!(shares(false, 1, false).is_empty());
        assert!(shares(false, 0, false).is_empty());
    }

    #[test]
    fn two_spans() {
        assert_eq!(shares(false, 2, false), [vec![1.0, 0.5], vec![0.5, 1.0]]);
        // A rafter with its eave overhang is two spans.
        assert_eq!(shares(false, 1, true), shares(false, 2, false));
    }

    #[test]
    fn four_spans() {
        let expected = [
            vec![1.0, 0.5, 0.5, 0.5],
            vec![0.5, 1.0, 1.0, 1.0],
            vec![0.5, 0.5, 0.5, 1.0],
            vec![1.0, 1.0, 1.0, 0.5],
            vec![1.0, 1.0, 0.5, 0.5],
            vec![0.5, 1.0, 1.0, 0.5],
            vec![0.5, 0.5, 1.0, 1.0],
        ];
        assert_eq!(shares(false, 4, false), expected);
    }

    #[test]
    fn names_count_spans_from_the_left_support() {
        let names: Vec<String> = partial_patterns(true, 2, true).into_iter().map(|pattern| pattern.name).collect();
        assert_eq!(names[0], "full on the left cantilever, half elsewhere");
        assert_eq!(names[5], "full on span 1 and span 2, half elsewhere");
        assert_eq!(partial_patterns(false, 2, false)[0].name, "full on span 1, half elsewhere");
    }
}
