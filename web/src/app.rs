//! The one component: update, save, show.

use yew::{Component, Context, Html};

use crate::edge::{self, Edge};
use crate::keep::saved;
use crate::model::Model;
use crate::msg::{Msg, Search};
use crate::view;

/// The page.
pub(crate) struct App {
    model: Model,
    edge: Edge,
}

impl Component for App {
    type Message = Msg;
    type Properties = ();

    fn create(context: &Context<Self>) -> Self {
        let mut edge = Edge::new(context.link().callback(std::convert::identity));
        let (model, effects) = Model::start(edge.found());
        edge.follow(&model, effects);
        Self { model, edge }
    }

    fn update(&mut self, _: &Context<Self>, msg: Msg) -> bool {
        let is_saved_already = matches!(&msg, Msg::OtherTab(text) if saved::is_whole(text));
        let is_slice = matches!(msg, Msg::Search(Search::Slice(_)));
        self.model.now = js_sys::Date::now();
        if msg == Msg::Paper(true) {
            self.model.today = edge::today();
        }
        let effects = self.model.update(msg);
        if is_saved_already {
            self.edge.catch_up(&self.model, effects);
        } else {
            self.edge.follow(&self.model, effects);
        }
        let searching = &self.model.searching;
        !(is_slice && searching.is_quiet && searching.due.is_some())
    }

    fn view(&self, context: &Context<Self>) -> Html {
        let emit = context.link().callback(std::convert::identity);
        view::view(&self.model, &emit)
    }

    fn rendered(&mut self, _: &Context<Self>, _: bool) {
        self.edge.rendered();
    }
}
