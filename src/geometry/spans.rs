//! The spans of the beam over its posts.
use super::post::PostShape;
use crate::loads::snow::{Pattern, partial_patterns};
use crate::units::Length;

/// A beam end past its post by more than this is a span of its own.
const CANTILEVER_FROM: Length = Length::inches(12.0);

/// Spans between the posts' centre lines, left to right; an end that reaches well past its post is one too.
#[derive(Clone, Debug, PartialEq)]
pub struct Spans {
    posts: Vec<Length>,
    left: bool,
    right: bool,
}

impl Spans {
    /// Of a beam over these posts.
    #[must_use]
    pub fn of(posts: &[PostShape], beam_length: Length) -> Self {
        Self::between(posts.iter().map(PostShape::middle).collect(), beam_length)
    }

    pub(super) fn between(posts: Vec<Length>, beam_length: Length) -> Self {
        let (first, last) = (posts.first().copied().unwrap_or_default(), posts.last().copied().unwrap_or_default());
        Self { left: first > CANTILEVER_FROM, right: beam_length - last > CANTILEVER_FROM, posts }
    }

    /// How many.
    #[must_use]
    pub fn count(&self) -> usize {
        self.posts.len().saturating_sub(1) + usize::from(self.left) + usize::from(self.right)
    }

    /// The one that holds a place along the beam, counted from 0; a short end belongs to the span beside it.
    #[must_use]
    pub fn holding(&self, x: Length) -> usize {
        let passed = self.posts.iter().filter(|post| **post < x).count();
        passed.saturating_sub(usize::from(!self.left)).min(self.count().saturating_sub(1))
    }

    /// Snow whole on some of them and half on others, as the standard asks for continuous beams.
    #[must_use]
    pub fn partial(&self) -> Vec<Pattern> {
        partial_patterns(self.left, self.posts.len().saturating_sub(1), self.right)
    }
}
