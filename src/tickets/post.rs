//! The post's sheet: zero at the top shoulder, down is positive.
use super::brace::{PocketPlace, pocket_marks};
use super::mark::{Mark, MarkKind, Waste};
use super::stick::Stick;
use super::tie_holes::at_foot;
use crate::design::Shape;
use crate::geometry::{Brace, Bulk, Point, Polygon, PostShape, beam_housing, housing_in, laid_out, web_between};
use crate::joinery::{
    chamfer_bulk, chamfer_runs, head_peg_height, head_peg_holds, head_peg_places, head_peg_room, housing_over,
    post_joints,
};
use crate::materials::Face;
use crate::project::{Project, Role, Side};
use crate::units::{Fineness, Length, Weight};
use crate::wording::{length, tape};

/// Every post's sheet.
pub fn sticks(project: &Project, shape: &Shape) -> Vec<Stick> {
    shape.posts.iter().map(|post| stick(project, shape, post)).collect()
}

fn stick(project: &Project, shape: &Shape, post: &PostShape) -> Stick {
    let timber = project.frame.timbers.post;
    let (breadth, depth) = (timber.sawn.breadth, timber.sawn.depth);
    let (tenon_left, tenon_right) = (post.tenon.0 - post.left, post.tenon.1 - post.left);
    let mut marks = ends(project, post);
    marks.extend(tenon(project, post));
    marks.extend(reduced_head(project, shape, post));
    marks.extend(pockets(project, shape, post));
    marks.extend(chamfer(project, shape, post));
    let (holes, bored) = at_foot(project, post);
    marks.extend(holes);
    let bulk = bulk(project, shape, post).without(bored);
    let profile = Polygon::new(vec![
        Point::new(-post.tenon_length, tenon_left),
        Point::new(-post.tenon_length, tenon_right),
        Point::new(Length::ZERO, tenon_right),
        Point::new(Length::ZERO, breadth),
        Point::new(post.body(), breadth),
        Point::new(post.body(), Length::ZERO),
        Point::new(Length::ZERO, Length::ZERO),
        Point::new(Length::ZERO, tenon_left),
    ]);
    Stick {
        mark: format!("P{}", post.number),
        role: Role::Post,
        timber,
        low: -post.tenon_length,
        high: post.body(),
        bulk,
        is_measured: false,
        green_weight: Weight::ZERO,
        zero: "the top shoulder; measure down to the foot, up to the tenon's end".to_owned(),
        ask: "Outer face toward you? Head at your left?".to_owned(),
        references: (Face::Outer, Face::Left),
        faces: vec![(Face::Outer, breadth), (Face::Left, depth), (Face::Wall, breadth), (Face::Right, depth)],
        profile: (Face::Outer, profile.map(|point| Point::new(point.x, breadth - point.y))),
        profile_lines: Vec::new(),
        whole_line: Some(post.left),
        to_left: false,
        marks,
        same_as: None,
    }
}

/// The wood of the post, all joints cut, nothing bored for ties.
fn bulk(project: &Project, shape: &Shape, post: &PostShape) -> Bulk {
    let timber = project.frame.timbers.post;
    let rules = &post.rules;
    let tenon_area = rules.tenon_thickness * (post.tenon.1 - post.tenon.0);
    let mut bulk = Bulk::prism(timber.sawn.area(), Length::ZERO, post.body()).with(Bulk::prism(
        tenon_area,
        -post.tenon_length,
        Length::ZERO,
    ));
    for brace in shape.braces.iter().filter(|brace| brace.post == post.number) {
        let pocket =
            super::brace::pocket_bulk(project, &brace.foot, &brace.post_pocket(&project.frame), timber.sawn.depth);
        let at = post.shoulder - brace.corner_z + pocket.balance();
        bulk = bulk.without(Bulk::new(pocket.volume(), at));
    }
    for index in 0..head_peg_places(post).len() {
        let at = rules.drawbore - head_peg_height(post, index);
        bulk = bulk.without(Bulk::hole(rules.peg, rules.tenon_thickness, at));
    }
    bulk = bulk.without(reduced_head_bulk(project));
    let joints = post_joints(project, shape, post);
    bulk.without(chamfer_bulk(rules, &chamfer_runs(rules, (Length::ZERO, post.body()), &joints)))
}

/// What a head cut down to the size it is laid out to loses.
fn reduced_head_bulk(project: &Project) -> Bulk {
    let (sawn, laid) = (project.frame.timbers.post.sawn, laid_out(&project.frame.timbers.post, &project.joinery));
    let deep = beam_housing(&project.frame, &project.joinery).max(Length::ZERO);
    let kept = sawn.breadth.min(laid.breadth) * sawn.depth.min(laid.depth);
    Bulk::prism(sawn.area(), Length::ZERO, deep).without(Bulk::prism(kept, Length::ZERO, deep))
}

fn ends(project: &Project, post: &PostShape) -> Vec<Mark> {
    let foot = if post.pier_measured {
        format!("pier P{} was measured", post.number)
    } else {
        format!("planned: measure pier P{} before you cut", post.number)
    };
    let clearance = length(project.joinery.shrink_clearance, project.units);
    vec![
        Mark::line("foot, square all round", Face::Outer, post.body(), MarkKind::End).waste(Waste::After).note(foot),
        Mark::line("top shoulder, square all round", Face::Outer, Length::ZERO, MarkKind::Line)
            .note(format!("undercut {clearance} inside the line"))
            .told([project.joinery.shrink_clearance])
            .mate("beam"),
    ]
}

fn tenon(project: &Project, post: &PostShape) -> Vec<Mark> {
    let rules = &post.rules;
    let cheeks = (rules.tenon_offset, rules.tenon_offset + rules.tenon_thickness);
    let edges = (post.tenon.0 - post.left, post.tenon.1 - post.left);
    let up = (-post.tenon_length, Length::ZERO);
    let mut marks = vec![
        Mark::between("tenon cheeks", Face::Left, up, MarkKind::Tenon)
            .across(cheeks, Face::Outer)
            .note("keep the wood between the cheeks; saw the rest down to the shoulder"),
        Mark::between("tenon width", Face::Outer, up, MarkKind::Tenon)
            .across(edges, Face::Left)
            .note("chamfer its end for entry"),
    ];
    for (index, x) in head_peg_places(post).into_iter().enumerate() {
        marks.push(peg(project, post, index, x));
    }
    marks
}

fn peg(project: &Project, post: &PostShape, index: usize, x: Length) -> Mark {
    let rules = &post.rules;
    let hole = head_peg_height(post, index);
    let says = if head_peg_holds(project, post, index) {
        String::new()
    } else {
        let room = head_peg_room(post, index);
        let [beyond, under] = [room.end, room.edge].map(|size| length(size, project.units));
        format!("; locating, no tension: {beyond} of wood beyond it, {under} to the shoulder")
    };
    Mark::line(format!("tenon peg {}", index + 1), Face::Outer, -(hole - rules.drawbore), MarkKind::Peg)
        .across((x, x), Face::Left)
        .bored(rules.peg, project.joinery.peg)
        .note(format!(
            "{} hole; beam hole {}, tenon hole {} from the shoulder{says}",
            length(rules.peg, project.units),
            tape(hole, project.units, Fineness::Sixteenth),
            tape(hole - rules.drawbore, project.units, Fineness::Sixteenth)
        ))
        .told([rules.peg])
        .mate("beam")
}

fn pockets(project: &Project, shape: &Shape, post: &PostShape) -> Vec<Mark> {
    let on_post = || shape.braces.iter().filter(|brace| brace.post == post.number);
    let timber = &project.frame.timbers.post;
    let laid = laid_out(timber, &project.joinery).breadth;
    let mark = format!("P{}", post.number);
    let feet: Vec<_> = on_post().map(|brace| &brace.foot).collect();
    let remark = if let [one, other] = feet[..] {
        let web = web_between(&project.frame, (one, other));
        format!("; web left to the other brace's mortise {}", length(web, project.units))
    } else {
        String::new()
    };
    let place = |brace: &Brace| {
        let (rules, corner) = (&brace.foot, post.shoulder - brace.corner_z);
        let (face, floor, inward) = match brace.side {
            Side::Left => (Face::Left, rules.housing, 1.0),
            Side::Right => (Face::Right, laid - rules.housing, -1.0),
        };
        let at = corner + brace.form.post_pocket(rules, rules.housing).nose_on_face;
        let real = project.progress.size_at(&mark, timber.sawn, at).breadth;
        let housing = housing_in(brace.side, real, laid, rules);
        let pocket = brace.form.post_pocket(rules, housing);
        let place = PocketPlace {
            mate: &brace.mark(),
            rules,
            face,
            housing,
            corner,
            sign: 1.0,
            floor: (floor, Face::Left),
            peg: floor + rules.peg_from_shoulder * inward,
            remark: remark.clone(),
        };
        pocket_marks(project, &pocket, &place)
    };
    on_post().flat_map(place).collect()
}

fn chamfer(project: &Project, shape: &Shape, post: &PostShape) -> Vec<Mark> {
    let joints = post_joints(project, shape, post);
    chamfers(project, (Length::ZERO, post.body()), &joints, Face::Outer)
}

/// A post larger than it is laid out is cut down at its head, from the reference faces, as deep as the real beam's housing.
fn reduced_head(project: &Project, shape: &Shape, post: &PostShape) -> Vec<Mark> {
    let (rules, timber) = (&project.joinery, &project.frame.timbers.post);
    let deep = housing_over(project, shape, post);
    let laid = laid_out(timber, rules);
    let real = project.progress.most_between(&format!("P{}", post.number), timber.sawn, (Length::ZERO, deep));
    let one = |real: Length, laid: Length, on: Face, from: Face| {
        (real > laid && deep > Length::ZERO).then(|| {
            Mark::between("head cut down to the inner size", on, (Length::ZERO, deep), MarkKind::Housing)
                .across((laid, real), from)
                .waste(Waste::Between)
                .note(format!("keep {} from the {}", length(laid, project.units), from.name()))
                .mate("beam")
        })
    };
    let sides = one(real.breadth, laid.breadth, Face::Outer, Face::Left);
    sides.into_iter().chain(one(real.depth, laid.depth, Face::Left, Face::Outer)).collect()
}

/// Chamfers on the arrises of one face, in the runs between its joints.
pub fn chamfers(project: &Project, ends: (Length, Length), joints: &[(Length, Length)], face: Face) -> Vec<Mark> {
    let rules = &project.joinery;
    let note = format!("{} on each face, both arrises; its ends run out at 45°", length(rules.chamfer, project.units));
    let runs = chamfer_runs(rules, ends, joints).into_iter();
    let one = |run| {
        Mark::between("chamfer, last of all", face, run, MarkKind::Chamfer).note(note.clone()).told([rules.chamfer])
    };
    runs.map(one).collect()
}
