//! What fixes the sticks, as holes and screws in their wood: in a splice, near an end or an edge, under a heel, at butts.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

use outshot::joinery::{Clash, Fit, Leg, fit, goes_in};
use outshot::project::{Blocks, BoreWay, Bores, Fixings, Project, Tie, demo};
use outshot::solid::Vector;
use outshot::tickets::MarkKind;
use outshot::units::{Length, Weight};
use outshot::{lay_out, report};

fn fitted(project: &Project) -> Fit {
    fit(project, &lay_out(project).built.unwrap().shape)
}

/// The barn with its ledger's fixings changed, or whatever else.
fn changed(change: impl Fn(&mut Project)) -> Project {
    let mut barn = demo::wool_barn();
    change(&mut barn);
    barn
}

/// The one clash with those words.
fn found(project: &Project, words: &str) -> Clash {
    let fit = fitted(project);
    let all: Vec<&Clash> = fit.clashes.iter().filter(|clash| clash.says.contains(words)).collect();
    assert_eq!(all.len(), 1, "{words}: {:?}", fit.clashes);
    all[0].clone()
}

fn check_says(project: &Project, words: &str, says: &str) {
    assert_eq!(found(project, words).says, says);
}

/// Posts of the wall 8 ft apart: the splice lies over one of them, and a single row in the middle of the ledger is on the line
/// between its halves.
fn wide(project: &mut Project) {
    (project.site.first_wall_post, project.site.wall_post_spacing) = (Length::inches(12.0), Length::inches(96.0));
}

/// ¾ in screws keep 3 in over and 1⅛ under them in a half 5 in deep: at 1⅛ to 2 and 6⅛ to 7 in up. From 5 in, 1⅛ higher is the
/// nearest.
#[test]
fn a_fixing_between_the_halves_of_a_splice_is_told() {
    let barn = changed(wide);
    let clash = found(&barn, "halves of the splice");
    assert!(
        clash.says.ends_with(
            "it stands on the line between the halves of the splice with L2 and holds neither; its row 1 1⁄8″ higher clears \
             it, and another row in the other half."
        ),
        "{}",
        clash.says
    );
    assert_eq!((clash.stick.as_str(), clash.other.as_deref()), ("L1", Some("L2")));
    let two = changed(|barn| {
        wide(barn);
        let fixings = &mut barn.fixings.ledger;
        (fixings.rows, fixings.lowest, fixings.row_gap) = (2, Length::inches(2.0), Length::inches(5.0));
    });
    assert_eq!(fitted(&two).clashes, []);
    let three = changed(|barn| {
        wide(barn);
        "lag_5_8".clone_into(&mut barn.fixings.ledger.fastener);
        (barn.fixings.ledger.rows, barn.fixings.ledger.lowest) = (3, Length::inches(2.5));
    });
    let says = found(&three, "halves of the splice").says;
    assert!(says.ends_with("holds neither; the other rows hold both: leave it out there."), "{says}");
}

/// Between studs 16 in apart the barn's splice keeps clear of them: its one row could hold neither half. With rows that hold
/// both, it lies over a stud.
#[test]
fn a_splice_keeps_clear_of_studs_it_cannot_be_fixed_to() {
    let off_stud = |project: &Project| {
        let shape = lay_out(project).built.unwrap().shape.clone();
        let centre = (shape.ledger[0].end + shape.ledger[1].start).to_inches() / 2.0;
        let from = (centre - 4.0).rem_euclid(16.0);
        from.min(16.0 - from)
    };
    assert_eq!(off_stud(&demo::wool_barn()), 8.0);
    let rows = changed(|barn| {
        let fixings = &mut barn.fixings.ledger;
        (fixings.rows, fixings.lowest, fixings.row_gap) = (2, Length::inches(2.0), Length::inches(5.0));
    });
    assert_eq!(off_stud(&rows), 0.0);
    assert_eq!(fitted(&rows).clashes, []);
}

/// NDS 12.5.1 (from memory), ¾ in: two diameters to an end, four to the edge rafters press it toward, three from row to row.
#[test]
fn ends_edges_and_rows() {
    let near_end = changed(|barn| barn.site.first_wall_post = Length::inches(1.0));
    check_says(
        &near_end,
        "to the end",
        "L1: the fixing at the wall's post 1: only 1″ from its centre to the end; 1 1⁄2″ is the least; moved 1⁄2″ away from \
         the stick's zero clears it.",
    );
    assert_eq!(found(&near_end, "to the end").clears, Some(Length::inches(0.5)));
    let high = changed(|barn| barn.fixings.ledger.lowest = Length::inches(7.5));
    check_says(
        &high,
        "centre to the top",
        "L1: 26 fixings, the first at the wall's post 1: only 2 1⁄2″ from its centre to the top of the ledger; 3″ is \
         the least; its row 1⁄2″ lower clears it.",
    );
    let clash = found(&high, "centre to the top");
    assert!(clash.is_of("L1") && clash.is_of("L2") && clash.places().count() == 26);
    let close = changed(|barn| {
        let fixings = &mut barn.fixings.ledger;
        (fixings.rows, fixings.row_gap) = (2, Length::inches(1.0));
    });
    let says = "L1: the fixings at every post of the wall: only 1″ from row to row; 2 1⁄4″ is the least.";
    check_says(&close, "from row to row", says);
}

/// By hand: a seat 3 in long at 3 in 12 puts a rafter's underside ¾ in below the ledger's top at its face, and 3⁄16 lower at a
/// head's end ¾ in out: 15⁄16. A washer 2 in across, 9 in up in 10, reaches the top.
#[test]
fn a_head_under_a_heel_is_told() {
    let barn = changed(|barn| barn.fixings.ledger.lowest = Length::inches(9.0));
    let clash = found(&barn, "heel of a rafter");
    assert!(
        clash.says.ends_with("its head stands in the heel of a rafter; its row 15⁄16″ lower clears it."),
        "{}",
        clash.says
    );
    assert!(clash.other.unwrap().starts_with('R'));
    let lower = changed(|barn| barn.fixings.ledger.lowest = Length::inches(8.0));
    assert!(!fitted(&lower).clashes.iter().any(|clash| clash.says.contains("heel")));
}

/// A bolt of ¾ in goes through a hole of 13⁄16 in 4 in of wood: π/4·(13/16)²·4 = 2.074 in³ each. A maker's own screw takes none.
#[test]
fn what_is_bored_is_gone() {
    let volume = |project: &Project| {
        let all = fitted(project).bodies.into_iter().filter(|body| body.mark.starts_with('L'));
        all.map(|body| body.volume().to_cubic_inches()).sum::<f64>()
    };
    let with = |key: &'static str| volume(&changed(|barn| key.clone_into(&mut barn.fixings.ledger.fastener)));
    // One splice: 8 in of lap are there twice in half the depth, so the line is 408 in long.
    let whole = 408.0 * 40.0;
    let bored = 26.0 * std::f64::consts::FRAC_PI_4 * 0.8125 * 0.8125 * 4.0;
    assert!((with("bolt_3_4") - (whole - bored)).abs() < 1e-6);
    assert!((with("makers_own") - whole).abs() < 1e-6);
}

/// Every hole of the solids is on the sheet, where it is and how wide.
#[test]
fn the_ledgers_sheets_say_what_is_bored() {
    let two = changed(|barn| {
        let fixings = &mut barn.fixings.ledger;
        (fixings.rows, fixings.lowest, fixings.row_gap) = (2, Length::inches(2.0), Length::inches(5.0));
    });
    let built = lay_out(&two).built.unwrap();
    let pieces = built.sticks.iter().filter(|stick| stick.mark.starts_with('L'));
    let marks: Vec<_> = pieces.flat_map(|stick| &stick.marks).filter(|mark| mark.kind == MarkKind::Fixing).collect();
    assert_eq!(marks.len(), 52);
    let first = marks[0];
    assert_eq!(first.what, "fixing to the wall's post 1, row 1 from below");
    assert_eq!((first.near, first.across.unwrap().0), (Length::inches(4.0), Length::inches(8.0)));
    // Hemlock takes 0.7·¾ in under the thread, a ½ in drill; 6 of 10 in of screw stand in the wall's post.
    assert_eq!(
        first.note,
        "bore 3⁄4″ through; in the wall’s post 1⁄2″, 6″ deep; check the post is there before you bore; packing 0″"
    );
}

/// By hand: ¾ in of bearing on a rafter 1½ in wide; 5·0.242 = 1.21 to the end and 2½·0.242 = 0.605 to the side, rounded up to
/// sixteenths; both twice are 3.63 in.
#[test]
fn screws_at_butts_on_a_thin_rafter_are_told_once() {
    let barn = changed(|barn| {
        let rafter = &mut barn.frame.timbers.rafter;
        (rafter.sawn.breadth, rafter.ordered.breadth) = (Length::inches(1.5), Length::inches(1.5));
    });
    let clash = found(&barn, "lies only");
    let shape = lay_out(&barn).built.unwrap().shape.clone();
    let n_butts: usize = shape.purlins.iter().map(|row| row.pieces.len() - 1).sum();
    assert!(n_butts > 1 && clash.places().count() == n_butts);
    let says = format!(
        "N1a: {n_butts} butts of purlins, the first with N1b on R{}: each piece lies only 3⁄4″ on its rafter; its #14 \
         wood screw, bored first, asks 1 1⁄4″ to the butt's end and 5⁄8″ to the rafter's side. A rafter 3 11⁄16″ wide, or \
         doubled there, clears it; or let the pieces pass each other side by side, or slant the screws toward the rafter's \
         middle.",
        shape.purlins[0].pieces[0].right.unwrap().rafter
    );
    assert_eq!(clash.says, says);
}

/// Twenty in a purlin 4 in wide stand 0.2 in apart and are 0.242 in thick. 12 in of screw through 2 in of purlin go 10 in into
/// a rafter 8 in deep.
#[test]
fn screws_meet_or_come_out() {
    let many = changed(|barn| barn.fixings.purlin.count = 20);
    assert!(found(&many, "they meet").says.ends_with("fewer or thinner ones clear it."));
    let long = fitted(&changed(|barn| barn.fixings.purlin.length = Length::inches(12.0)));
    let out: Vec<_> = long.clashes.iter().filter(|clash| clash.says.contains("come out of the rafter")).collect();
    assert_eq!(out.len(), 2, "{out:?}");
    assert!(out[0].says.ends_with("its screws come out of the rafter; 2″ shorter they do not."), "{}", out[0].says);
    // Row 7 lies over the ledger's bird's mouth.
    assert!(
        out[1].says.ends_with("its screws come out of the rafter; 2 7⁄16″ shorter they do not."),
        "{}",
        out[1].says
    );
}

/// Blocks come down between the rafters before the purlins are on; not aside through a rafter, nor up through the beam.
#[test]
fn blocks_have_their_way_in() {
    let barn = changed(|barn| barn.frame.blocks = Blocks::OverBeam);
    let fit = fitted(&barn);
    let blocks: Vec<_> = fit.entries.iter().filter(|entry| entry.stick.starts_with('X')).collect();
    assert_eq!(blocks.len(), fit.bodies.iter().filter(|body| body.mark.starts_with('X')).count());
    assert!(blocks.len() > 10);
    for entry in blocks {
        assert_eq!((entry.way.as_str(), &entry.stopped), ("down between its rafters onto the beam", &None));
    }
    let at = |mark: &str| fit.entries.iter().position(|entry| entry.stick == mark).unwrap();
    assert!(at("R1") < at("X1") && at("X1") < at("N1a"));
    let body = |mark: &str| fit.body(mark).unwrap();
    let standing: Vec<_> = fit.bodies.iter().filter(|body| body.mark.starts_with(['R', 'B'])).collect();
    let back = |y: f64, z: f64| [Leg { back: Vector::inches(0.0, y, z) }];
    assert!(goes_in(&body("X3").wood, &back(0.0, -24.0), &standing).unwrap().by.starts_with('B'));
    let aside = [Leg { back: Vector::inches(6.0, 0.0, 0.0) }];
    assert_eq!(goes_in(&body("X3").wood, &aside, &standing).unwrap().by, "R4");
}

/// 3½ in tenons in an 8 in post: 8 − 2·(½ + 3½ + ¼) = −½ in; 1 in of web wants each ¾ in shorter. The rule and the solids say
/// it; together it is said by the solids.
#[test]
fn the_web_between_opposed_mortises_is_said_once() {
    let barn = changed(|barn| {
        // Legs short enough that no pocket lies in a lap.
        (barn.frame.brace_along, barn.frame.brace_down) = (Length::inches(24.0), Length::inches(24.0));
        barn.joinery.brace_tenon = Length::inches(3.5);
    });
    let design = lay_out(&barn);
    let fit = fitted(&barn);
    let rule = design.problems_of("joinery.brace_tenon").next().unwrap();
    assert!(Fit::may_tell(rule) && fit.tells(rule));
    let webs: Vec<_> =
        fit.clashes.iter().filter(|clash| clash.field.as_deref() == Some("joinery.brace_tenon")).collect();
    assert!(
        webs.len() >= 2 && webs.iter().all(|clash| clash.says.ends_with("so do brace tenons of 2 3⁄4″.")),
        "{webs:?}"
    );
    let json: serde_json::Value = serde_json::from_str(&report::json(&barn, &design)).unwrap();
    let fields: Vec<_> = json["problems"].as_array().unwrap().iter().map(|problem| &problem["field"]).collect();
    assert!(!fields.iter().any(|field| **field == "joinery.brace_tenon"), "{fields:?}");
    // Where the solids have nothing to say of it, the rule speaks.
    let fits = fitted(&demo::wool_barn());
    assert!(!fits.tells(rule));
}

/// The barn with holes of that width for a tie, or whatever else of it.
fn bored(tie: impl Fn(&mut Fixings) -> &mut Tie, [diameter, first, apart]: [f64; 3]) -> Project {
    let [diameter, first, apart] = [diameter, first, apart].map(Length::inches);
    let bores = Bores { diameter, first, apart, way: BoreWay::AlongBeam };
    changed(|barn| tie(&mut barn.fixings).bores = Some(bores))
}

/// By hand, NDS 12.5.1 (from memory): ½ in bolts in 9⁄16 in holes want 3½ in of softwood under them, 2 in to the next one and
/// 2 in to either side. A hole of 1½ in is for one of 1 7⁄16: 5¾ in to a side, 4 there are.
#[test]
fn holes_of_a_foot_keep_to_ends_and_each_other() {
    let base = |row| bored(|fixings| &mut fixings.post_base, row);
    assert_eq!(fitted(&base([0.5625, 3.5, 2.0])).clashes, []);
    let low = base([0.5625, 2.0, 1.0]);
    check_says(
        &low,
        "to the end",
        "P1: 4 holes, the first number 1 for its base: only 2″ from its centre to the end; 3 1⁄2″ is the least; moved 1 1⁄2″ \
         higher clears it.",
    );
    assert_eq!(found(&low, "to the end").clears, Some(Length::inches(-1.5)));
    let says = found(&low, "the hole before").says;
    assert!(says.ends_with("only 1″ from the hole before it; 2″ is the least; moved 1″ higher clears it."));
    let thick = base([1.5, 11.0, 6.0]);
    let says = found(&thick, "to the side").says;
    assert!(says.ends_with("only 4″ from its centre to the side; 5 3⁄4″ is the least; take a thinner one."), "{says}");
    // Screws under ¼ in split nothing.
    assert_eq!(fitted(&base([0.25, 1.0, 0.5])).clashes, []);
    let mut oak = low;
    oak.frame.species = "white_oak".to_owned();
    oak.mill.heaviest_pick = Weight::pounds(800.0);
    let says = found(&oak, "to the end").says;
    assert!(says.contains("2 1⁄2″ is the least; moved 1⁄2″ higher"), "{says}");
}

/// A foot's row that climbs into the pocket of a brace is told with the move that leaves a hole's width of wood.
#[test]
fn a_hole_in_a_brace_s_pocket_is_told() {
    let mut barn = bored(|fixings| &mut fixings.post_base, [0.5625, 4.0, 3.0]);
    barn.frame.brace_down = Length::inches(72.0);
    barn.frame.brace_along = Length::inches(30.0);
    barn.fixings.post_base.count = 5;
    let fit = fitted(&barn);
    let clash = fit.clashes.iter().find(|clash| clash.says.contains("for its base: it meets")).unwrap();
    let by = clash.clears.unwrap();
    assert!(clash.stick == "P1" && by > Length::ZERO, "down the post is away from its zero: {}", clash.says);
    // The same row as much lower stands free.
    let lower = by.abs().round_up_to(Length::inches(0.0625));
    if let Some(bores) = &mut barn.fixings.post_base.bores {
        bores.first -= lower;
    }
    assert!(bodies_clear(&barn), "{}", clash.says);
}

/// No hole of a post's foot meets another cut.
fn bodies_clear(project: &Project) -> bool {
    !fitted(project).clashes.iter().any(|clash| clash.says.contains("for its base: it meets"))
}

/// By hand: lap 159 to 199 in, B1 below. Tips ask 3½ in of ½ in screws. Holes 4 and 7 in from B1's tip are 195 and 192 in along
/// the beam; R9 at 194 is 4 in wide: with half a hole 2¼ in either way are its own.
#[test]
fn holes_of_a_scarf_keep_to_tips_and_out_from_under_rafters() {
    let scarf = |row| bored(|fixings| &mut fixings.scarf, row);
    let clear = scarf([0.5, 4.0, 3.0]);
    let says = found(&clear, "hole number 1 from the tip of B1 in scarf 1: R").says;
    assert!(
        says.ends_with("R9 stands on it: sink its head, or moved 1 1⁄4″ away from the stick's zero clears it."),
        "{says}"
    );
    let near = scarf([0.5, 1.0, 1.0]);
    let end = found(&near, "B2 in scarf 1: only 1″ from its centre to the end");
    assert!(end.says.contains("3 1⁄2″ is the least; moved 2 1⁄2″ away from"), "{}", end.says);
    // The third ones are 19¾ in from either tip of the 40 in: ½ in from centre to centre, and ½ in wide.
    let mut long = scarf([0.5, 6.0, 6.875]);
    long.fixings.scarf.count = 3;
    assert!(
        fitted(&long)
            .clashes
            .iter()
            .any(|clash| { clash.says.contains("it meets scarf 1, hole 3 from the tip of B2 in the same wood") })
    );
}

/// By hand: the barn's seat on the ledger is 3 in level at 3 in 12, 3·4/√17 = 2.910 in along the rafter: its middle is 1.455 in
/// from either end. A hole of ⅜ in 2 in up comes out 2 + 3⁄16 − 1.455 = 0.732 in past it.
#[test]
fn a_hole_beside_its_seat_is_told() {
    let head = |row| bored(|fixings| &mut fixings.rafter_head, row);
    assert_eq!(fitted(&head([0.1875, 0.0, 0.75])).clashes, []);
    let far = head([0.375, 0.0, 2.0]);
    let clash = found(&far, "misses the ledger");
    assert!((clash.clears.unwrap().to_inches() - 0.732_286).abs() < 1e-5, "{:?}", clash.clears);
    assert!(clash.says.ends_with(
        "comes out beside the seat and misses the ledger; moved 3⁄4″ away from the stick's zero clears it."
    ));
    assert_eq!(clash.places().count(), lay_out(&far).built.unwrap().shape.rafters.len());
}
