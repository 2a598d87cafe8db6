//! The posts: where each stands, what it stands on, which braces it has.
use super::super::drawn::fact;
use crate::app::cached::text_of;
use crate::app::components::{Steps, facts, fold, group, length_field, path_problems, signed_length_field, toggle};
use crate::app::dom::{Item, Tag, button, parts, tag};
use crate::app::{Lens, use_store};
use crate::lens;
use crate::project::{Frame, Post, Project};
use crate::units::Length;
use crate::wording;
use leptos::prelude::*;

/// Posts.
pub fn posts() -> Tag {
    let store = use_store();
    let n_posts = store.slice(|project| project.frame.posts.len());
    let summary = text_of(move || format!("{} of them", n_posts.get()));
    let cards =
        move || (0..n_posts.get()).map(|index| Item::new(index.to_string(), move || post_card(index))).collect();
    let add = move |_| store.edit(|project| add_post(&mut project.frame));
    let equal = move |_| store.edit(|project| make_equal(&mut project.frame));
    fold("Posts", summary, false, || {
        parts()
            .child(path_problems("frame.posts"))
            .each(cards)
            .child(
                tag("div")
                    .class("actions")
                    .child(button("button", add).child("Add a post"))
                    .child(button("button", equal).child("Make the bays equal")),
            )
            .child(
                length_field(lens!(frame.stand_off), "Stand-off")
                    .hint("pier top to the foot of the post")
                    .steps(Steps::of(0.25, 5.0)),
            )
    })
}

/// One field of one post.
fn of_post<T: 'static>(
    index: usize,
    name: &str,
    get: impl Fn(&Post) -> T + Send + Sync + 'static,
    set: impl Fn(&mut Post, T) + Send + Sync + 'static,
) -> Lens<T> {
    Lens::maybe(
        format!("frame.posts.{index}.{name}"),
        move |project: &Project| project.frame.posts.get(index).map(&get),
        move |project: &mut Project, value| {
            if let Some(post) = project.frame.posts.get_mut(index) {
                set(post, value);
            }
        },
    )
}

fn post_card(index: usize) -> Tag {
    let store = use_store();
    let number = index + 1;
    let x = of_post(index, "x", |post| post.x, |post, x| post.x = x);
    let pier = of_post(index, "pier_top", |post| post.pier_top, |post, top| post.pier_top = top);
    let measured = of_post(index, "pier_measured", |post| post.pier_measured, |post, is| post.pier_measured = is);
    let left = of_post(index, "brace_left", |post| post.brace_left, |post, is| post.brace_left = is);
    let right = of_post(index, "brace_right", |post| post.brace_right, |post, is| post.brace_right = is);
    let bays = text_of(move || bays(&store.project(), index));
    let remove = move |_| {
        store.edit(|project| {
            if index < project.frame.posts.len() {
                project.frame.posts.remove(index);
            }
        });
    };
    let can_remove = move || store.project().frame.posts.len() > 2;
    group(
        &format!("P{number}"),
        parts()
            .child(length_field(x, format!("P{number} from the left")).hint(bays).steps(Steps::of(1.0, 20.0)))
            .child(
                signed_length_field(pier, format!("P{number} pier top"))
                    .hint("above the level; minus is below")
                    .steps(Steps::of(0.25, 5.0)),
            )
            .child(toggle(measured, "The pier stands, this is measured", ""))
            .child(toggle(left, "Brace on its left", room_beside(index, true)))
            .child(toggle(right, "Brace on its right", room_beside(index, false)))
            .child(facts(&[(
                "Shoulder to foot",
                fact(move |built, project| Some(wording::length(built.shape.posts.get(index)?.body(), project.units))),
            )]))
            .shown(can_remove, move || button("button button--small", remove).child(format!("Take P{number} away"))),
    )
}

/// The two bays beside a post, centre to centre.
fn bays(project: &Project, index: usize) -> String {
    let posts = &project.frame.posts;
    let Some(post) = posts.get(index) else { return String::new() };
    let say = |length: Length| wording::length(length, project.units);
    let left = index.checked_sub(1).and_then(|before| posts.get(before)).map(|before| say(post.x - before.x));
    let right = posts.get(index + 1).map(|after| say(after.x - post.x));
    match (left, right) {
        (Some(left), Some(right)) => format!("centre line; bays {left} and {right}"),
        (Some(bay), None) | (None, Some(bay)) => format!("centre line; bay {bay}"),
        (None, None) => "centre line".to_owned(),
    }
}

/// What stays clear in the bay beside a post, at the passage height; nothing past the outer posts.
fn room_beside(index: usize, is_left: bool) -> Signal<String> {
    let store = use_store();
    text_of(move || {
        let project = store.project();
        let bay = if is_left { index.checked_sub(1) } else { Some(index) };
        let clear =
            bay.zip(store.built()).and_then(|(bay, built)| built.shape.clearances.between_braces.get(bay).copied());
        let say = |length| wording::length(length, project.units);
        clear.map_or_else(String::new, |clear| {
            format!("bay clear {} at {} up", say(clear), say(project.site.passage_height))
        })
    })
}

/// A post in the middle of the widest bay, on a pier like its neighbours'; where there is no bay yet, the
/// missing end posts.
fn add_post(frame: &mut Frame) {
    if frame.posts.len() < 2 {
        frame.posts = end_posts(frame);
        return;
    }
    let widest = frame
        .posts
        .windows(2)
        .enumerate()
        .max_by(|(_, a), (_, b)| (a[1].x - a[0].x).to_inches().total_cmp(&(b[1].x - b[0].x).to_inches()));
    let Some((index, pair)) = widest else { return };
    let post = Post {
        x: (pair[0].x + pair[1].x) / 2.0,
        pier_top: (pair[0].pier_top + pair[1].pier_top) / 2.0,
        pier_measured: false,
        brace_left: true,
        brace_right: true,
    };
    frame.posts.insert(index + 1, post);
}

/// A post at each end, as far in as half a post and its end shoulder ask; the pier of a post that stands
/// already serves both.
fn end_posts(frame: &Frame) -> Vec<Post> {
    let inset = frame.timbers.post.ordered.breadth * 0.75;
    let known = frame.posts.first();
    let post = |x: Length, brace_left: bool| Post {
        x,
        pier_top: known.map_or(Length::ZERO, |post| post.pier_top),
        pier_measured: false,
        brace_left,
        brace_right: !brace_left,
    };
    vec![post(inset, false), post(frame.beam_length - inset, true)]
}

/// The outer posts stay; those between are spread evenly.
fn make_equal(frame: &mut Frame) {
    let (Some(first), Some(last)) = (frame.posts.first().map(|post| post.x), frame.posts.last().map(|post| post.x))
    else {
        return;
    };
    let n_bays = frame.posts.len().saturating_sub(1).max(1) as f64;
    for (index, post) in frame.posts.iter_mut().enumerate() {
        post.x = first + (last - first) * (index as f64 / n_bays);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::demo;

    #[test]
    fn a_new_post_halves_the_widest_bay() {
        let mut frame = demo::log_store().frame;
        let n_posts = frame.posts.len();
        add_post(&mut frame);
        assert_eq!(frame.posts.len(), n_posts + 1);
        assert!(frame.posts.windows(2).all(|pair| pair[0].x < pair[1].x));
    }

    #[test]
    fn equal_bays_keep_the_outer_posts() {
        let mut frame = demo::log_store().frame;
        let (first, last) = (frame.posts[0].x, frame.posts[3].x);
        make_equal(&mut frame);
        assert_eq!((frame.posts[0].x, frame.posts[3].x), (first, last));
        let bays: Vec<Length> = frame.posts.windows(2).map(|pair| pair[1].x - pair[0].x).collect();
        assert!(bays.iter().all(|bay| bay.is_near(bays[0], Length::inches(1e-9))));
    }
}
