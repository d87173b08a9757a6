//! How a value is written and what bounds it has, in words.

use super::model::{Field, Limits, Shape};
use detent_content::Texts;

/// How a value is written: `[…]` is a list, `(…, …)` values without names. Types are told by `link`.
pub(crate) fn shape_words(shape: &Shape, texts: &Texts, link: &dyn Fn(&str) -> String) -> String {
    let of = |shape: &Shape| shape_words(shape, texts, link);
    match shape {
        Shape::TrueOrFalse => texts.get("reference-true-or-false"),
        Shape::WholeNumber => texts.get("reference-whole-number"),
        Shape::Number => texts.get("reference-number"),
        Shape::Letter => texts.get("reference-letter"),
        Shape::Text => texts.get("reference-text"),
        Shape::List(items) => format!("[{}]", of(items)),
        Shape::Tuple(items) => {
            let items: Vec<String> = items.iter().map(of).collect();
            format!("({})", items.join(", "))
        }
        Shape::Map(keys, values) => {
            let keys = keys.as_ref().map(|name| link(name));
            let keys = keys.unwrap_or_else(|| texts.get("reference-text"));
            format!("{{{keys}: {}}}", of(values))
        }
        Shape::Optional(inside) => {
            let inside = format!("Some({})", of(inside));
            texts.with("reference-optional", &[("some", inside.into())])
        }
        Shape::Type(name) => link(name),
    }
}

/// The bounds of a number; none where it has none.
pub(crate) fn limit_words(limits: &Limits, texts: &Texts) -> Option<String> {
    let with = |key: &str, bound: &String| texts.with(key, &[("bound", bound.clone().into())]);
    let Limits {
        least,
        most,
        above,
        below,
    } = limits;
    if let (Some(least), Some(most)) = (least, most) {
        let bounds = [
            ("least", least.clone().into()),
            ("most", most.clone().into()),
        ];
        return Some(texts.with("reference-between", &bounds));
    }
    let words: Vec<String> = [
        ("reference-at-least", least),
        ("reference-more-than", above),
        ("reference-at-most", most),
        ("reference-less-than", below),
    ]
    .into_iter()
    .filter_map(|(key, bound)| Some(with(key, bound.as_ref()?)))
    .collect();
    (!words.is_empty()).then(|| words.join(", "))
}

/// All that can be said of a field's value: how it is written, its unit, its bounds and its default.
pub(crate) fn value_words(
    field: &Field,
    texts: &Texts,
    link: &dyn Fn(&str) -> String,
    code: &dyn Fn(&str) -> String,
) -> String {
    let mut words = vec![shape_words(&field.shape, texts, link)];
    words.extend(field.unit.map(|unit| match unit {
        "money" => texts.get("reference-money"),
        "points" => texts.get("reference-points"),
        unit => unit.to_owned(),
    }));
    words.extend(limit_words(&field.limits, texts));
    if let Some(default) = &field.default {
        let default = code(default);
        words.push(texts.with("reference-default", &[("value", default.into())]));
    }
    words.join(", ")
}
