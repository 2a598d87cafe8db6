//! Frames drawn at random around the examples.
use outshot::project::{Project, RafterRule, ScarfKind, TailCut, demo};
use outshot::units::{Length, Slope, Weight};
use proptest::prelude::*;

/// A frame a person might draw: the wool barn with most of its numbers moved.
pub fn projects() -> impl Strategy<Value = Project> {
    let sizes = (100.0..600.0_f64, 96.0..160.0_f64, 60.0..180.0_f64, 1.0..9.0_f64, 12.0..40.0_f64);
    let seats = (1.5..3.5_f64, 1.5..6.0_f64, 2.0..20.0_f64, any::<bool>(), 0.0..1.0_f64);
    let joints = (18.0..32.0_f64, 20.0..40.0_f64, 24.0..40.0_f64, 0..6_usize, 0..3_usize, 0.0..1.0_f64);
    (sizes, seats, joints).prop_map(|(sizes, seats, joints)| {
        let mut project = demo::wool_barn();
        // Without them many a beam would need a scarf in every bay, and fold.
        project.mill.lengths.push(Length::feet(24.0));
        project.mill.heaviest_pick = Weight::pounds(600.0);
        let frame = &mut project.frame;
        let sixteenth = |value: f64| Length::inches((value * 16.0).round() / 16.0);
        let (length, bay, reach, pitch, spacing) = sizes;
        let n_posts = (length / bay).round().max(1.0) as usize + 1;
        frame.beam_length = sixteenth(length);
        let post = frame.posts[1];
        let step = (frame.beam_length - Length::inches(12.0)) / (n_posts - 1) as f64;
        frame.posts = (0..n_posts)
            .map(|index| {
                let mut post = post;
                post.x = Length::inches(6.0) + step * index as f64;
                post.brace_left = index > 0;
                post.brace_right = index + 1 < n_posts;
                post
            })
            .collect();
        frame.reach = sixteenth(reach);
        frame.heights.pitch = Slope::in_twelve(pitch);
        frame.rafters.spacing = sixteenth(spacing);
        let (on_ledger, on_beam, tail, square, inset) = seats;
        frame.ledger_seat_length = sixteenth(on_ledger);
        frame.beam_seat_length = sixteenth(on_beam);
        frame.tail = sixteenth(tail);
        frame.tail_cut = if square { TailCut::Square } else { TailCut::Plumb };
        frame.rafters.inset = sixteenth(inset * 4.0);
        let (along, down, lap, kind, rule, gap) = joints;
        frame.brace_along = sixteenth(along);
        frame.brace_down = sixteenth(down);
        frame.scarfs.lap = sixteenth(lap);
        frame.scarfs.kind = ScarfKind::ALL[kind];
        frame.rafters.rule = [RafterRule::FromLeft, RafterRule::FromRight, RafterRule::Equal][rule];
        frame.wall_gap = sixteenth(gap * 0.5);
        project
    })
}
