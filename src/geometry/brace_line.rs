//! The centre line of a knee brace: where it meets the centre lines of its post and of the beam.
use super::brace::Brace;
use super::post::PostShape;
use crate::project::{Frame, Side};
use crate::units::Length;

/// Where a brace's centre line meets the centre lines of post and beam.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BraceLine {
    /// Below the beam's centre line, down the post's: g_v + (b/2)·tan φ + D/2 − d_b/(2 cos φ).
    pub foot: Length,
    /// From the post's centre line, along the beam's: g_h + b/2 + (D/2)/tan φ − d_b/(2 sin φ).
    pub head: Length,
    /// Cosine of the angle φ between brace and beam.
    pub cos: f64,
    /// Sine of that angle.
    pub sin: f64,
    /// Length between the two.
    pub length: Length,
}

impl BraceLine {
    /// Of this frame's braces.
    #[must_use]
    pub fn of(frame: &Frame) -> Self {
        let timbers = &frame.timbers;
        let (across, down) = (frame.brace_along, frame.brace_down);
        let tan = down / across;
        let long = across.hypot(down);
        let (cos, sin) = (across / long, down / long);
        let (post, beam, brace) = (timbers.post.sawn.breadth, timbers.beam.sawn.depth, timbers.brace.sawn.depth);
        let foot = down + post / 2.0 * tan + beam / 2.0 - brace / (2.0 * cos);
        let head = across + post / 2.0 + beam / 2.0 / tan - brace / (2.0 * sin);
        Self { foot, head, cos, sin, length: foot.hypot(head) }
    }

    /// Where the head of that brace is along the beam.
    #[must_use]
    pub fn head_x(&self, brace: &Brace, posts: &[PostShape]) -> Length {
        let post = posts.iter().find(|post| post.number == brace.post);
        let middle = post.map_or(brace.corner_x, PostShape::middle);
        match brace.side {
            Side::Left => middle - self.head,
            Side::Right => middle + self.head,
        }
    }
}
