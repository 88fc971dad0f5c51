//! Elements of the page. Every element, attribute and event that the screens
//! use passes through here, so that the framework is compiled for one type
//! of each: with a type for every place, the app would be half as large again.

use leptos::ev::{Custom, Event};
use leptos::prelude::*;
use leptos::tachys::html::attribute::any_attribute::{AnyAttribute, IntoAnyAttribute};
use leptos::tachys::html::attribute::custom::custom_attribute;
use leptos::tachys::html::element::{ElementChild, custom};
use leptos::tachys::html::event::on;
use leptos::tachys::html::property::prop;
use leptos::tachys::view::add_attr::AddAnyAttr;

use super::live::Live;

/// An element being put together. Boxed, and its methods kept out of line:
/// a line of a screen is then a call with a pointer.
pub struct El(Box<Parts>);

struct Parts {
    tag: &'static str,
    attributes: Vec<AnyAttribute>,
    children: Vec<AnyView>,
}

/// An element of this tag with this class.
#[inline(never)]
pub fn el(tag: &'static str, class: &'static str) -> El {
    let element = El(Box::new(Parts {
        tag,
        attributes: Vec::new(),
        children: Vec::new(),
    }));
    if class.is_empty() {
        element
    } else {
        element.set("class", class)
    }
}

impl El {
    /// Sets an attribute.
    #[inline(never)]
    pub fn set(self, name: &'static str, value: &str) -> Self {
        self.add(custom_attribute(name, value.to_owned()).into_any_attr())
    }

    /// Sets an attribute that follows the state.
    #[inline(never)]
    pub fn follow(self, name: &'static str, value: Signal<String>) -> Self {
        self.add(custom_attribute(name, value).into_any_attr())
    }

    /// Sets or takes away an attribute that is there or not.
    #[inline(never)]
    pub fn when(self, name: &'static str, value: Signal<bool>) -> Self {
        self.add(custom_attribute(name, value).into_any_attr())
    }

    /// Markup of our own that it holds in place of children, such as a drawing.
    #[inline(never)]
    pub fn markup(self, markup: Signal<String>) -> Self {
        self.add(prop("innerHTML", markup).into_any_attr())
    }

    /// What an input holds.
    #[inline(never)]
    pub fn value(self, value: Signal<String>) -> Self {
        self.add(prop("value", value).into_any_attr())
    }

    /// Whether a box is checked.
    #[inline(never)]
    pub fn checked(self, value: Signal<bool>) -> Self {
        self.add(prop("checked", value).into_any_attr())
    }

    /// Its name for the tests.
    pub fn id(self, testid: &'static str) -> Self {
        self.set("data-testid", testid)
    }

    /// Puts a child in at the end.
    pub fn with(self, child: impl Into<Child>) -> Self {
        self.push(child.into())
    }

    #[inline(never)]
    fn push(mut self, child: Child) -> Self {
        self.0.children.push(child.0);
        self
    }

    /// What a click does.
    #[inline(never)]
    pub fn on_click(self, act: Callback<()>) -> Self {
        self.on("click", move |_| act.run(()))
    }

    /// What choosing does.
    #[inline(never)]
    pub fn on_change(self, act: Callback<()>) -> Self {
        self.on("change", move |_| act.run(()))
    }

    /// What typing does, with all that is typed.
    #[inline(never)]
    pub fn on_input(self, act: Callback<String>) -> Self {
        self.on("input", move |event| act.run(event_target_value(&event)))
    }

    /// What an event does.
    pub fn on(self, event: &'static str, act: impl Fn(Event) + 'static) -> Self {
        let act: Box<dyn FnMut(Event)> = Box::new(act);
        self.listen(event, act)
    }

    #[inline(never)]
    fn listen(self, event: &'static str, act: Box<dyn FnMut(Event)>) -> Self {
        self.add(on(Custom::new(event), act).into_any_attr())
    }

    #[inline(never)]
    fn add(mut self, attribute: AnyAttribute) -> Self {
        self.0.attributes.push(attribute);
        self
    }

    /// The element as a part of the page.
    #[inline(never)]
    pub fn done(self) -> AnyView {
        let Parts {
            tag,
            attributes,
            children,
        } = *self.0;
        custom(tag)
            .child(children)
            .add_any_attr(attributes)
            .into_any()
    }
}

/// Something that can stand in an element.
pub struct Child(AnyView);

impl From<El> for Child {
    fn from(element: El) -> Self {
        Self(element.done())
    }
}

impl From<AnyView> for Child {
    fn from(view: AnyView) -> Self {
        Self(view)
    }
}

impl From<Vec<AnyView>> for Child {
    #[inline(never)]
    fn from(views: Vec<AnyView>) -> Self {
        Self(views.into_any())
    }
}

impl From<Live> for Child {
    #[inline(never)]
    fn from(live: Live) -> Self {
        Self(live.into_any())
    }
}

impl From<Signal<String>> for Child {
    #[inline(never)]
    fn from(text: Signal<String>) -> Self {
        Self(text.into_any())
    }
}

impl From<String> for Child {
    #[inline(never)]
    fn from(text: String) -> Self {
        Self(text.into_any())
    }
}

impl From<&'static str> for Child {
    #[inline(never)]
    fn from(text: &'static str) -> Self {
        text.to_owned().into()
    }
}

impl<T: Into<Self>> From<Option<T>> for Child {
    fn from(child: Option<T>) -> Self {
        child.map_or_else(|| Vec::new().into(), Into::into)
    }
}
