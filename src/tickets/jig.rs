//! Board jigs that mark many sticks alike: what to saw, and where the stops stand (common practice).
//!
//! A jig is worth its boards from a few like sticks on; below that it is left out.
use crate::design::Shape;
use crate::geometry::{Brace, PostShape};
use crate::joinery::{head_peg_height, head_peg_places};
use crate::project::Project;
use crate::units::{Length, UnitSystem};

/// Fewest like sticks a jig is made for (common practice).
const WORTH_IT: usize = 3;
/// A boring block guides a bit over this many diameters (common practice).
const GUIDE: f64 = 2.0;

/// Boards of one size.
#[derive(Clone, Debug, PartialEq)]
pub struct Board {
    /// What it becomes.
    pub what: &'static str,
    /// How many.
    pub count: usize,
    /// Its thickness.
    pub thickness: Length,
    /// Its width.
    pub width: Length,
    /// Its length.
    pub length: Length,
}

/// One jig.
#[derive(Clone, Debug, PartialEq)]
pub struct Jig {
    /// Its name.
    pub name: &'static str,
    /// What it is for.
    pub serves: String,
    /// Its cut list.
    pub boards: Vec<Board>,
    /// Where stops, lines and holes stand: what and from where, and how far.
    pub places: Vec<(String, Length)>,
    /// How it is used.
    pub note: &'static str,
}

/// The jigs this frame is worth.
#[must_use]
pub fn jigs(project: &Project, shape: &Shape) -> Vec<Jig> {
    let mut all = Vec::new();
    if shape.rafters.len() >= WORTH_IT {
        all.push(rafter_pattern(project, shape));
    }
    // A housing of its own gives a brace legs of its own; a head that is not by the rules is bored by itself.
    let n_braces = shape.braces.iter().filter(|brace| is_by_the_legs(shape, brace)).count();
    if n_braces >= WORTH_IT {
        all.push(brace_board(project, shape, n_braces));
    }
    let posts: Vec<&PostShape> = shape.posts.iter().filter(|post| post.rules == project.joinery).collect();
    if posts.len() >= WORTH_IT {
        // A post between two others has the pattern most heads share.
        let post = posts.iter().find(|post| post.end.is_none()).or(posts.first());
        let own: Vec<String> = shape.posts.iter().filter(|post| post.rules != project.joinery).map(mark).collect();
        all.extend(post.map(|post| boring_blocks(project, post, &own)));
    }
    all
}

fn mark(post: &PostShape) -> String {
    format!("P{}", post.number)
}

fn is_by_the_legs(shape: &Shape, brace: &Brace) -> bool {
    brace.form.along == shape.brace.along && brace.form.down == shape.brace.down
}

/// Sheet stock as it is sold: ¾ in, or 18 mm (common practice).
const fn sheet(units: UnitSystem) -> Length {
    match units {
        UnitSystem::Imperial => Length::inches(0.75),
        UnitSystem::Metric => Length::millimetres(18.0),
    }
}

/// The next size that is easily read off a tape.
fn up(size: Length, units: UnitSystem) -> Length {
    size.round_up_to(match units {
        UnitSystem::Imperial => Length::inches(0.5),
        UnitSystem::Metric => Length::millimetres(10.0),
    })
}

/// A board as long as the rafter, its two bird's mouths cut, a strip along its top edge that hooks over the stick.
fn rafter_pattern(project: &Project, shape: &Shape) -> Jig {
    let (rafter, units) = (&shape.rafter, project.units);
    let from_end = |x: Length| x - rafter.head.0.x;
    let thickness = sheet(units);
    Jig {
        name: "Rafter pattern",
        serves: format!("all {} rafters", shape.rafters.len()),
        boards: vec![
            Board {
                what: "pattern, straight, both edges planed parallel",
                count: 1,
                thickness,
                width: rafter.depth,
                length: up(rafter.length(), units),
            },
            Board {
                what: "strip along its top edge, hooks over the rafter",
                count: 1,
                thickness,
                width: up(thickness * 2.0, units),
                length: up(rafter.top_edge().length(), units),
            },
        ],
        places: vec![
            ("ledger heel on the top edge, from the wall end".to_owned(), from_end(rafter.ledger.heel_on_top)),
            ("beam heel on the top edge, from the wall end".to_owned(), from_end(rafter.beam.heel_on_top)),
            ("tail on the top edge, from the wall end".to_owned(), from_end(rafter.tail.0.x)),
        ],
        note: "Prick the rafter templates onto it, cut it, and try it dry at both ends of the wall before any stick is \
               marked from it.",
    }
}

/// A panel with two fences square to each other: the housed lines; a stop at the end of each leg.
fn brace_board(project: &Project, shape: &Shape, n_braces: usize) -> Jig {
    let (brace, units) = (&shape.brace, project.units);
    let (thickness, spare) = (sheet(units), Length::inches(12.0));
    let fence = |what: &'static str, leg: Length| Board {
        what,
        count: 1,
        thickness,
        width: up(Length::inches(3.0), units),
        length: up(leg + spare / 2.0, units),
    };
    Jig {
        name: "Brace layout board",
        serves: if n_braces == shape.braces.len() {
            format!("all {n_braces} braces")
        } else {
            format!("{n_braces} braces; those with a housing of their own are laid out by themselves")
        },
        boards: vec![
            Board {
                what: "panel",
                count: 1,
                thickness,
                width: up(brace.along.min(brace.down) + spare, units),
                length: up(brace.along.max(brace.down) + spare, units),
            },
            fence("fence at the post's housed line", brace.down),
            fence("fence at the beam's housed line", brace.along),
            Board {
                what: "stop at the end of each leg",
                count: 2,
                thickness,
                width: up(Length::inches(2.0), units),
                length: up(Length::inches(4.0), units),
            },
        ],
        places: vec![
            ("stop on the post's fence, from the corner where the fences meet".to_owned(), brace.down),
            ("stop on the beam's fence, from the same corner".to_owned(), brace.along),
            ("check: stop to stop, along the long edge".to_owned(), brace.long_edge()),
        ],
        note: "Lay the long edge from stop to stop, the short edge toward the corner: shoulders run along the fences.",
    }
}

/// Two blocks: one for the tenon, one for the beam, apart by the drawbore.
fn boring_blocks(project: &Project, post: &PostShape, own: &[String]) -> Jig {
    let (rules, units) = (&post.rules, project.units);
    let breadth = post.tenon.1 - post.tenon.0;
    let mut places = Vec::new();
    for (index, x) in head_peg_places(post).into_iter().enumerate() {
        let hole = head_peg_height(post, index);
        let number = index + 1;
        places.push((format!("hole {number} of both blocks, from the post's left face"), x));
        places.push((format!("hole {number} of the BEAM block, from its strip"), hole));
        places.push((format!("hole {number} of the TENON block, from its strip"), hole - rules.drawbore));
    }
    Jig {
        name: "Boring blocks for the pegs of the post heads",
        serves: if own.is_empty() {
            "post heads and the beam over them".to_owned()
        } else {
            format!("post heads and the beam over them, but not {}", own.join(", "))
        },
        boards: vec![
            Board {
                what: "block of hard wood, one TENON, one BEAM",
                count: 2,
                thickness: up(rules.peg * GUIDE, units),
                width: up(rules.post_tenon, units),
                length: up(breadth, units),
            },
            Board {
                what: "strip under each block's edge, hooks to the shoulder or the housed line",
                count: 2,
                thickness: sheet(units),
                width: up(Length::inches(1.5), units),
                length: up(breadth, units),
            },
        ],
        places,
        note: "Write TENON and BEAM on both sides of the blocks: changed over, the drawbore pulls the joint apart.",
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::evaluate;
    use crate::project::demo;

    fn of(project: &Project) -> Vec<Jig> {
        jigs(project, &evaluate(project).built.unwrap().shape)
    }

    fn place(jig: &Jig, starts: &str) -> f64 {
        jig.places.iter().find(|(what, _)| what.starts_with(starts)).unwrap().1.to_inches()
    }

    /// By hand for the barn: 3.608 from the wall end to the ledger heel, 133.486 to the beam heel, 141.732 to the tail;
    /// legs of 36 and 50.912 across; peg holes 1½ and 2 from the housed line, ⅛ less in the tenon, at 2 and 6 in.
    #[test]
    fn the_barn_by_hand() {
        let all = of(&demo::wool_barn());
        let names: Vec<&str> = all.iter().map(|jig| jig.name).collect();
        assert_eq!(names, ["Rafter pattern", "Brace layout board", "Boring blocks for the pegs of the post heads"]);
        for (jig, starts, expected) in [
            (0, "ledger heel", 3.608),
            (0, "beam heel", 133.486),
            (0, "tail", 141.732),
            (1, "stop on the post's", 36.0),
            (1, "check", 50.912),
            (2, "hole 1 of the BEAM", 1.5),
            (2, "hole 1 of the TENON", 1.375),
            (2, "hole 2 of the BEAM", 2.0),
            (2, "hole 2 of both", 6.0),
        ] {
            assert!((place(&all[jig], starts) - expected).abs() < 1e-3, "{starts}: {}", place(&all[jig], starts));
        }
        // The pattern is one board out of which the rafter can be cut: 143.73 long, 8 wide.
        assert_eq!((all[0].boards[0].length, all[0].boards[0].width), (Length::inches(144.0), Length::inches(8.0)));
    }

    #[test]
    fn two_braces_are_worth_no_board() {
        let mut project = demo::wool_barn();
        for post in &mut project.frame.posts[1..] {
            (post.brace_left, post.brace_right) = (false, false);
        }
        assert!(of(&project).iter().all(|jig| jig.name != "Brace layout board"));
    }

    #[test]
    fn boards_are_full_sizes_of_the_units_shown() {
        for jig in of(&demo::log_store()) {
            for board in &jig.boards {
                let millimetres = board.length.to_millimetres();
                assert!((millimetres / 10.0 - (millimetres / 10.0).round()).abs() < 1e-6, "{millimetres}");
            }
        }
    }
}
