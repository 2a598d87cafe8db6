//! Posts: from the shoulder under the beam to the foot over its own pier.
use crate::materials::{Section, Timber};
use crate::project::{FixedHeights, Frame, JoineryRules, JointName, Post, Problem, Project, Side, StockRule};
use crate::units::{Length, UnitSystem};
use crate::wording::length;

/// Shortest post, and the least post below a brace's foot.
const LEAST_POST: Length = Length::inches(24.0);
const FOOT_OF_BRACE: Length = Length::inches(6.0);

/// One post.
#[derive(Clone, Debug, PartialEq)]
pub struct PostShape {
    /// Its number from the left, from 1.
    pub number: usize,
    /// Left face, the reference face along the beam.
    pub left: Length,
    /// Right face at the size it is laid out to.
    pub right: Length,
    /// Height of the shoulder: beam seat less the beam's reduced depth.
    pub shoulder: Length,
    /// Height of the foot: its pier and the stand-off.
    pub foot: Length,
    /// The tenon along the beam, left and right edge, measured along x.
    pub tenon: (Length, Length),
    /// The rules its head is made by.
    pub rules: JoineryRules,
    /// Length of the tenon above the shoulder.
    pub tenon_length: Length,
    /// The pier's height was measured.
    pub pier_measured: bool,
    /// An end post: its tenon is shouldered on that side.
    pub end: Option<Side>,
}

impl PostShape {
    /// Centre line along the beam.
    #[must_use]
    pub fn middle(&self) -> Length {
        (self.left + self.right) / 2.0
    }

    /// Shoulder to foot.
    #[must_use]
    pub fn body(&self) -> Length {
        self.shoulder - self.foot
    }

    /// It stands under a piece of the beam between those ends; flush is under, whatever the sums' last bit.
    #[must_use]
    pub fn stands_under(&self, start: Length, end: Length) -> bool {
        let hair = Length::inches(1e-6);
        self.left >= start - hair && self.right <= end + hair
    }

    /// Foot to the end of the tenon.
    #[must_use]
    pub fn length(&self) -> Length {
        self.body() + self.tenon_length
    }
}

/// The bay that holds a place along the beam, counted from 0; the ends past the outer posts are no bay. A bay
/// runs from one post's left face to the next one's.
#[must_use]
pub fn bay_of(posts: &[PostShape], x: Length) -> Option<usize> {
    posts.windows(2).position(|pair| x > pair[0].left && x <= pair[1].left)
}

/// Every post of the frame, left to right.
#[must_use]
pub fn posts(project: &Project, beam_seat: Length) -> Vec<PostShape> {
    let (frame, rules) = (&project.frame, &project.joinery);
    let shoulder = beam_seat - reduced_beam_depth(frame, rules);
    let n_posts = frame.posts.len();
    frame
        .posts
        .iter()
        .enumerate()
        .map(|(index, post)| {
            let end = match index {
                0 => Some(Side::Left),
                _ if index + 1 == n_posts => Some(Side::Right),
                _ => None,
            };
            shape(frame, project.rules_of(JointName::PostHead(index + 1)), post, index + 1, shoulder, end)
        })
        .collect()
}

/// The size joints are laid out to: as ordered where they are cut down to an inner size, as sawn where the stock is trusted.
#[must_use]
pub const fn laid_out(timber: &Timber, rules: &JoineryRules) -> Section {
    match rules.stock {
        StockRule::InnerSize => timber.ordered,
        StockRule::TrueStock => timber.sawn,
    }
}

/// Depth the beam is reduced to over a post: as laid out, less the housing.
#[must_use]
pub fn reduced_beam_depth(frame: &Frame, rules: &JoineryRules) -> Length {
    laid_out(&frame.timbers.beam, rules).depth - rules.housing
}

/// Depth of a housing in the beam's underside, from the real face.
#[must_use]
pub fn beam_housing(frame: &Frame, rules: &JoineryRules) -> Length {
    frame.timbers.beam.sawn.depth - reduced_beam_depth(frame, rules)
}

/// Depth of a brace's housing from the post's real face: the reference (left) face keeps the rule's depth,
/// the other takes what the stick is over size.
#[must_use]
pub fn post_housing(frame: &Frame, rules: &JoineryRules, side: Side) -> Length {
    housing_in(side, frame.timbers.post.sawn.breadth, laid_out(&frame.timbers.post, rules).breadth, rules)
}

/// The same in a post that measures `real` there and is laid out as `laid`.
#[must_use]
pub fn housing_in(side: Side, real: Length, laid: Length, rules: &JoineryRules) -> Length {
    match side {
        Side::Left => rules.housing,
        Side::Right => real - (laid - rules.housing),
    }
}

fn shape(
    frame: &Frame,
    rules: JoineryRules,
    post: &Post,
    number: usize,
    shoulder: Length,
    end: Option<Side>,
) -> PostShape {
    let left = frame.post_left_face(post);
    let right = left + laid_out(&frame.timbers.post, &rules).breadth;
    let tenon = match end {
        Some(Side::Left) => (left + rules.end_shoulder, right),
        Some(Side::Right) => (left, right - rules.end_shoulder),
        None => (left, right),
    };
    PostShape {
        number,
        left,
        right,
        shoulder,
        foot: post.pier_top + frame.stand_off,
        tenon,
        rules,
        tenon_length: rules.post_tenon,
        pier_measured: post.pier_measured,
        end,
    }
}

/// Every post stands below its beam, with its braces on it. Where all are too short the beam is too low,
/// unless its height follows from the pitch; else the pier is too high.
///
/// # Errors
/// The height to change.
pub fn check_posts_stand(frame: &Frame, posts: &[PostShape], units: UnitSystem) -> Result<(), Problem> {
    let least = |post: &Post| {
        if post.brace_left || post.brace_right { frame.brace_down + FOOT_OF_BRACE } else { LEAST_POST }
    };
    let pairs = || frame.posts.iter().zip(posts);
    let short = |(post, shape): &(&Post, &PostShape)| least(post) - shape.body();
    let Some((post, shape)) = pairs().find(|pair| short(pair) > Length::ZERO) else { return Ok(()) };
    let says = format!(
        "P{} would be {} from shoulder to foot: too short{}.",
        shape.number,
        length(shape.body(), units),
        if least(post) == LEAST_POST { "" } else { " for its braces" }
    );
    let all = pairs().map(|pair| short(&pair)).reduce(Length::min).is_some_and(|least| least > Length::ZERO);
    if all && frame.heights.fixed != FixedHeights::PitchAndLedger {
        let most = pairs().map(|pair| short(&pair)).fold(Length::ZERO, Length::max);
        let nearest = frame.heights.beam_seat + most;
        return Err(Problem::stop("frame.heights.beam_seat", says).nearest(nearest));
    }
    let field = format!("frame.posts.{}.pier_top", shape.number - 1);
    Err(Problem::stop(field, says).nearest(post.pier_top - short(&(post, shape))))
}
