//! Joints of their own: those that depart from the rules.
use crate::app::cached::{Cached, text_of};
use crate::app::components::{
    Field, Steps, WORDS, choice, entry_field, followed, group, length_field, path_problems, word,
};
use crate::app::dom::{Item, Tag, button, parts, tag};
use crate::app::{Lens, use_store};
use crate::joinery::{departures, exception_says};
use crate::project::{JointName, OwnRule, Project, ScarfKind};
use crate::units::{Fineness, Length};
use crate::wording::tape;
use leptos::prelude::*;

/// Lengths that print alike are the same.
const SAME: Length = Length::inches(1e-6);

/// The list, and a way to add to it.
pub fn own_joints() -> Tag {
    let store = use_store();
    let names = store.slice(|project| project.exceptions.keys().cloned().collect::<Vec<_>>());
    let cards = move || {
        let item = |name: String| Item::new(name.clone(), move || card(name));
        names.get().into_iter().map(item).collect()
    };
    group(
        "Joints of their own",
        parts()
            .child(word("A joint that departs from the rules says so on the sheets of its sticks, and is ringed on the drawing."))
            .each(cards)
            .child(another(names)),
    )
    .attr("id", "exceptions")
    .attr("tabindex", "-1")
}

/// The joints there are that follow the rules, one to be chosen.
fn another(names: Cached<Vec<String>>) -> Tag {
    let store = use_store();
    let open = Cached::new(move || {
        let n_scarfs = store.built().map_or(0, |built| built.shape.beam.scarfs.len());
        let all = JointName::all(&store.project(), n_scarfs).into_iter();
        names.with(|names| all.filter(|joint| !names.contains(&joint.to_string())).collect::<Vec<_>>())
    });
    let asked = RwSignal::new(String::new());
    let options = move || {
        let chosen = asked.get_untracked();
        let option = |joint: JointName| {
            let name = joint.to_string();
            let is_chosen = name == chosen;
            tag("option").attr("value", name).attr("selected", is_chosen).child(titled(joint))
        };
        open.get().into_iter().map(option).collect::<Vec<_>>()
    };
    let add = move |_| {
        let open = open.get_untracked();
        let asked = asked.get_untracked();
        let chosen = open.iter().find(|joint| joint.to_string() == asked).or(open.first());
        if let Some(name) = chosen.map(JointName::to_string) {
            store.edit(|project| {
                project.exceptions.entry(name.clone()).or_default();
            });
            crate::app::focus::focus_field(&format!("exceptions.{name}"));
        }
    };
    let select = tag("select").class("field__input field__pick").attr("id", "own-joint");
    let label = tag("span").class("field__name").child("Another joint");
    parts().child(
        tag("div")
            .class("field")
            .child(tag("label").class("field__label").attr("for", "own-joint").child(label))
            .child(
                tag("div")
                    .class("field__box")
                    .child(select.live(options).on("change", move |event| asked.set(event_target_value(&event)))),
            )
            .child(tag("div").class("actions").child(button("button", add).child("Give it rules of its own"))),
    )
}

/// `P2’s head`, `Scarf 1`.
fn titled(joint: JointName) -> String {
    match joint {
        JointName::Scarf(number) => format!("Scarf {number}"),
        _ => joint.words(),
    }
}

/// One joint: what it may have of its own, why, and the way back.
fn card(name: String) -> Tag {
    let store = use_store();
    let path = format!("exceptions.{name}");
    let gone = name.clone();
    let remove = move |_| {
        store.edit(|project| {
            project.exceptions.remove(&gone);
        });
    };
    let Some(joint) = JointName::parse(&name) else {
        let take = button("button button--small", remove).child(format!("Take {name} away"));
        return group(&name, parts().child(path_problems(path.clone())).child(take)).attr("id", path);
    };
    let says = text_of(move || {
        let project = store.project();
        exception_says(&project, joint).unwrap_or_else(|| "It follows the rules in everything so far.".to_owned())
    });
    let mut holds = parts().child(path_problems(path.clone())).child(tag("p").class("own-joint").child(followed(says)));
    for rule in OwnRule::ALL.into_iter().filter(|rule| joint.takes(*rule)) {
        holds = holds.child(length(&name, joint, rule));
    }
    if let JointName::Scarf(number) = joint {
        holds = holds.child(kind(&name, number));
    }
    let by_rules = format!("{} by the rules again", titled(joint));
    let holds = holds.child(reason(&name)).child(button("button button--small", remove).child(by_rules));
    group(&titled(joint), holds).attr("id", path).attr("tabindex", "-1")
}

/// A length in its field: the rules' until another is typed, and theirs again when it is the same.
fn length(name: &str, joint: JointName, rule: OwnRule) -> Field {
    let store = use_store();
    let (read, written) = (name.to_owned(), name.to_owned());
    let field = Lens::maybe(
        format!("exceptions.{name}.{}", rule.key()),
        move |project: &Project| {
            let own = project.exceptions.get(&read)?;
            Some(rule.of(own).unwrap_or_else(|| rule.in_rules(&project.joinery, joint)))
        },
        move |project: &mut Project, value: Length| {
            let is_rules = value.is_near(rule.in_rules(&project.joinery, joint), SAME);
            if let Some(own) = project.exceptions.get_mut(&written) {
                *rule.of_mut(own) = (!is_rules).then_some(value);
            }
        },
    );
    let hint = text_of(move || {
        let project = store.project();
        let is_own = project.exception_of(joint).and_then(|own| rule.of(own)).is_some();
        let rules = tape(rule.in_rules(&project.joinery, joint), project.units, Fineness::ThirtySecond);
        if is_own { format!("its own; the rules say {rules}") } else { "as the rules say".to_owned() }
    });
    let mut label = rule.name().to_owned();
    label.get_mut(..1).map(str::make_ascii_uppercase);
    length_field(field, label).hint(hint).steps(Steps::of(0.125, 1.0))
}

fn kind(name: &str, number: usize) -> Tag {
    let written = name.to_owned();
    let field = Lens::new(
        format!("exceptions.{name}.scarf_kind"),
        move |project: &Project| project.scarf_kind(number),
        move |project: &mut Project, kind: ScarfKind| {
            let by_rules = project.frame.scarfs.kind;
            if let Some(own) = project.exceptions.get_mut(&written) {
                own.scarf_kind = (kind != by_rules).then_some(kind);
            }
        },
    );
    let kinds = ScarfKind::ALL.into_iter().map(|kind| (kind, kind.name().to_owned())).collect();
    choice(field, "Its kind, plain to strong", "", kinds, None)
}

fn reason(name: &str) -> Field {
    let (read, written) = (name.to_owned(), name.to_owned());
    let field = Lens::maybe(
        format!("exceptions.{name}.reason"),
        move |project: &Project| Some(project.exceptions.get(&read)?.reason.clone()),
        move |project: &mut Project, reason| {
            if let Some(own) = project.exceptions.get_mut(&written) {
                own.reason = reason;
            }
        },
    );
    let entry = WORDS.entry(&field).may_be_empty("no reason given");
    entry_field(entry, "Why".to_owned().into()).hint("it is printed with the joint".to_owned())
}

/// How many joints are not by the rules, for the fold's head.
pub fn n_own(project: &Project) -> usize {
    // Scarfs as many as may be named: whether one is there is the frame's to say.
    let all = JointName::all(project, project.frame.posts.len()).into_iter();
    all.filter(|joint| !departures(project, *joint).is_empty()).count()
}
