//! What the real sizes of sticks mean for their mates.
//!
//! Common practice: a joint cut down to an inner size takes up what a stick is over size, and no mate changes; a stick under
//! the inner size leaves a gap there. Where stock is trusted as true, a stick that is not moves its mates' shoulders.
use crate::design::Shape;
use crate::geometry::{BirdsMouth, RafterShape, laid_out, reduced_beam_depth};
use crate::joinery::posts_of;
use crate::project::{Problem, Project, StockRule};
use crate::units::{Length, UnitSystem};
use crate::wording::length;

/// Off by less than this nobody sees it.
const SEEN: Length = Length::inches(1.0 / 32.0);

/// The sticks whose real size changes a mate, or asks for a shim.
#[must_use]
pub fn size_problems(project: &Project, shape: &Shape) -> Vec<Problem> {
    let mut problems = over_posts(project, shape);
    problems.extend(rafters(project, shape));
    problems
}

/// The beam where it lies on its posts.
fn over_posts(project: &Project, shape: &Shape) -> Vec<Problem> {
    let (rules, beam) = (&project.joinery, &project.frame.timbers.beam);
    let reduced = reduced_beam_depth(&project.frame, rules);
    let mut problems = Vec::new();
    for piece in &shape.beam.pieces {
        let mark = format!("B{}", piece.number);
        for post in posts_of(shape, piece) {
            let real = project.progress.size_at(&mark, beam.sawn, post.middle() - piece.start).depth;
            let says = match rules.stock {
                StockRule::InnerSize if real < reduced - SEEN => {
                    let gap = say(reduced - real, project.units);
                    format!(
                        "{mark} is {gap} under the inner size over P{}: a shim there, or a deeper housing rule.",
                        post.number
                    )
                }
                StockRule::TrueStock if (real - laid_out(beam, rules).depth).abs() > SEEN => {
                    let (off, way) = if real < beam.sawn.depth {
                        (beam.sawn.depth - real, "higher")
                    } else {
                        (real - beam.sawn.depth, "lower")
                    };
                    let off = say(off, project.units);
                    format!(
                        "{mark} is not as sawn over P{0}: P{0}'s shoulder must lie {off} {way}, or its housing be cut to the inner size.",
                        post.number
                    )
                }
                _ => continue,
            };
            problems.push(Problem::caution(format!("progress.sizes.{mark}"), says));
        }
    }
    problems
}

/// Rafters whose seat runs out, or is longer than its support.
fn rafters(project: &Project, shape: &Shape) -> Vec<Problem> {
    let sawn = project.frame.timbers.rafter.sawn;
    let supports = [
        (&shape.rafter.ledger, "ledger", project.frame.timbers.ledger.sawn.breadth),
        (&shape.rafter.beam, "beam", project.frame.timbers.beam.sawn.breadth),
    ];
    let mut problems = Vec::new();
    for number in (1..=shape.rafters.len()).filter(|number| project.progress.sizes.contains_key(&format!("R{number}")))
    {
        let mark = format!("R{number}");
        for (notch, on, wide) in supports {
            let real = project.progress.size_at(&mark, sawn, notch.heel_on_top).depth;
            let seat = seat_in_depth(&shape.rafter, notch, real);
            let least = Length::inches(1.5);
            if seat < least || seat > wide {
                let says = format!(
                    "{mark}'s seat on the {on} would be {} long in that depth; it must be {} to {}.",
                    say(seat, project.units),
                    say(least, project.units),
                    say(wide, project.units)
                );
                problems.push(Problem::caution(format!("progress.sizes.{mark}"), says));
            }
        }
    }
    problems
}

/// Level length of a seat in a rafter of that depth: its height above the seat stays.
#[must_use]
pub fn seat_in_depth(rafter: &RafterShape, notch: &BirdsMouth, depth: Length) -> Length {
    (depth / rafter.pitch.cos() - notch.height_above_seat) / rafter.pitch.tan()
}

fn say(value: Length, units: UnitSystem) -> String {
    length(value, units)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::lay_out;
    use crate::project::{MeasuredSize, demo};
    use crate::tickets::{MarkKind, Stick};

    fn measured(mark: &str, breadth: f64, depth: f64) -> Project {
        let mut project = demo::wool_barn();
        let (from_zero, breadth, depth) = (Length::ZERO, Length::inches(breadth), Length::inches(depth));
        project.progress.sizes.insert(mark.to_owned(), vec![MeasuredSize { from_zero, breadth, depth }]);
        project
    }

    fn stick(project: &Project, mark: &str) -> Stick {
        lay_out(project).built.unwrap().stick(mark).unwrap().clone()
    }

    fn depth_of(stick: &Stick, what: &str) -> f64 {
        stick.marks.iter().find(|mark| mark.what == what).unwrap().depth.unwrap().to_inches()
    }

    fn check_says(project: &Project, words: &str) {
        let problems = lay_out(project).problems;
        assert!(problems.iter().any(|problem| problem.says.contains(words)), "{problems:?}");
    }

    /// By hand: inner size 10 − ½ = 9½; a beam of 10¼ is housed ¾ and its mortise is ¼ deeper from the face; one of 9⅜ is
    /// ⅛ under.
    #[test]
    fn an_inner_size_takes_up_what_the_beam_is_over() {
        let over = measured("B1", 8.0, 10.25);
        assert_eq!(depth_of(&stick(&over, "B1"), "housing of P2"), 0.75);
        assert_eq!(depth_of(&stick(&over, "B1"), "mortise of P2"), 0.75 + 4.25);
        assert_eq!(depth_of(&stick(&over, "B1"), "housing of K2R"), 0.75);
        assert!(lay_out(&over).problems.iter().all(|problem| !problem.field.starts_with("progress.sizes")));
        check_says(&measured("B1", 8.0, 9.375), "B1 is 1⁄8″ under the inner size over P2");
    }

    /// Where the stock is trusted, a beam ⅛ shallow wants its post's shoulder ⅛ higher.
    #[test]
    fn trusted_stock_that_is_not_true_moves_its_mate() {
        let mut project = measured("B1", 8.0, 9.875);
        project.joinery.stock = StockRule::TrueStock;
        check_says(&project, "P2's shoulder must lie 1⁄8″ higher");
    }

    /// By hand: the right face of an 8¼ in post is ¼ farther from the inner size: ¾ deep; its head is cut down by ¼.
    #[test]
    fn a_wide_post_is_housed_deeper_and_its_head_cut_down() {
        let post = stick(&measured("P2", 8.25, 8.0), "P2");
        assert_eq!(depth_of(&post, "housing of K2R"), 0.75);
        assert_eq!(depth_of(&post, "housing of K2L"), 0.5);
        let head = post.marks.iter().find(|mark| mark.what.starts_with("head cut down")).unwrap();
        assert_eq!(head.kind, MarkKind::Housing);
        assert_eq!(head.across.unwrap().1 - head.across.unwrap().0, Length::inches(0.25));
    }

    /// Common practice: ¼ in of depth moves the seat 1 in at 3 in 12 (¼/cos θ/tan θ = 1.031).
    #[test]
    fn a_deep_rafter_has_a_longer_seat_and_the_same_height() {
        let marks = |project: &Project| stick(project, "R3").marks;
        let seat = |project: &Project| {
            let all = marks(project);
            let edge = |what: &str| all.iter().find(|mark| mark.what == what).unwrap().near.to_inches();
            (edge("beam heel") - edge("beam seat end")) * 0.970_142_5
        };
        let (as_sawn, deep) = (demo::wool_barn(), measured("R3", 4.0, 8.25));
        assert!((seat(&deep) - seat(&as_sawn) - 1.0308).abs() < 1e-3);
        let height =
            |project: &Project| marks(project).iter().find(|mark| mark.what == "beam heel").unwrap().note.clone();
        assert_eq!(height(&deep), height(&as_sawn));
        check_says(&measured("R3", 4.0, 7.5), "R3's seat on the ledger would be");
    }
}
