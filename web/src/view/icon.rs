//! Small signs, drawn as lines on a 24 by 24 grid. They only accompany words.

use yew::{Html, classes, html};

/// Which sign.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Icon {
    /// Fingers of a joint.
    Joint,
    /// A base with its runner and rails.
    Sled,
    /// A sheet cut into parts.
    Parts,
    /// Sheets in a folder.
    Jobs,
    /// A shelf.
    Shop,
    /// Two bars.
    Pause,
    /// A loudspeaker.
    Sound,
    /// It is right.
    Tick,
    /// It does not go.
    Cross,
    /// Take care.
    Exclamation,
    /// Good to know.
    Info,
    /// A chisel.
    Chisel,
    /// More below.
    Down,
    /// Add one.
    Plus,
    /// The best of several.
    Star,
    /// One change back.
    Undo,
    /// One change forward again.
    Redo,
}

impl Icon {
    fn path(self) -> &'static str {
        match self {
            Self::Joint => "M2 4h20M2 20h20M2 8h4v8h4V8h4v8h4V8h4",
            Self::Sled => "M3 4h18v16H3zM3 8h18M3 15h18M12 8v7M8 20v2M8 2v2",
            Self::Shop => "M4 4v16M20 4v16M4 11h16M4 18h16M7 11V7h4v4M14 18v-4h3v4",
            Self::Parts => "M3 4h18v16H3zM9 4v16M9 11h12M15 11v9",
            Self::Jobs => "M3 7V4h7l2 3h9v13H3zM7 12h10M7 16h6",
            Self::Pause => "M8 5v14M16 5v14",
            Self::Sound => "M4 10v4h4l5 4V6l-5 4zM16 9a4 4 0 0 1 0 6M19 6a9 9 0 0 1 0 12",
            Self::Tick => "M5 12.5l4.5 4.5L19 7",
            Self::Cross => "M6 6l12 12M18 6L6 18",
            Self::Exclamation => "M12 4v10M12 19v.5",
            Self::Info => "M12 10v9M12 5v.5",
            Self::Chisel => "M14 4l6 6-3 1-4-4zM13 7L5 15l-1 5 5-1 8-8",
            Self::Down => "M6 9l6 6 6-6",
            Self::Plus => "M12 5v14M5 12h14",
            Self::Star => "M12 4l2.3 5.3 5.7.5-4.3 3.8 1.3 5.6-5-3-5 3 1.3-5.6L4 9.8l5.7-.5z",
            Self::Undo => "M9 5L4 10l5 5M4 10h10a5 5 0 0 1 0 10h-3",
            Self::Redo => "M15 5l5 5-5 5M20 10H10a5 5 0 0 0 0 10h3",
        }
    }

    /// The sign.
    pub(super) fn view(self) -> Html {
        html! {
            <svg class="icon" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
                <path d={self.path()} />
            </svg>
        }
    }

    /// The sign in a frame that tells how much it matters: `clash`, `caution`, `warning`, `fits`…
    pub(super) fn sign(self, matter: &'static str) -> Html {
        html! { <span class={classes!("sign", matter)}>{ self.view() }</span> }
    }
}
