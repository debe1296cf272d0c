//! What the page says once, until it is dismissed.

use crate::keep::Unreadable;

/// Something to say.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Notice {
    /// The page now works without a network.
    OfflineReady,
    /// A newer version is complete and waits for consent.
    UpdateWaiting,
    /// A job from elsewhere was added to those here.
    JobAdded,
    /// A job from elsewhere was among those here, and is open now.
    JobKnown,
    /// There are too many jobs here for another.
    NoRoom,
    /// There are too many of something for another.
    Full,
    /// What was planned with a tool that is gone is now planned with another.
    ToolGone,
    /// The page is open in another tab of this browser too.
    AnotherTab,
    /// What another tab had stored was overtaken; it is kept aside.
    Overtaken,
    /// The link was copied, but is longer than some programs pass on.
    LinkLong,
    /// The browser keeps what is stored, whatever room it needs.
    WillKeep,
    /// The browser did not promise that.
    MayWipe,
    /// A link could not be read; nothing was changed.
    LinkBroken(Unreadable),
    /// Parts of a link could not be read; the rest was opened.
    LinkPartly,
    /// A file replaced other work; undo brings that back.
    FileReplaced,
    /// What is in the file is what was here.
    FileSame,
    /// The job of a file was here already, but had been cut further there.
    FileFurther,
    /// A file could not be read; nothing was changed.
    FileBroken(Unreadable),
    /// Parts of a file could not be read; the rest was opened.
    FilePartly,
    /// What was stored could not be read; it is kept aside.
    StoreBroken,
    /// Parts of what was stored could not be read; the rest was opened, and the original is kept aside.
    StorePartly,
    /// This browser stores nothing for the page.
    StoreBlocked,
    /// The browser's store is full.
    StoreFull,
    /// This browser cannot keep the screen awake.
    ScreenMaySleep,
    /// The plan is no longer the one that was being cut.
    PlanChanged,
    /// An item of this name was removed; undo brings it back.
    Removed(String),
    /// What became of parts or joints that were handed over, and whether something of it must not be overlooked.
    HandedOver(String, bool),
    /// Why nothing was changed.
    Unchanged(String),
    /// The link was copied.
    Copied,
    /// The browser did not let the page copy.
    NotCopied,
}

impl Notice {
    /// What it says.
    #[must_use]
    pub fn text(&self) -> String {
        match self {
            Self::OfflineReady => "Ready to work without a network.".into(),
            Self::UpdateWaiting => "A newer version is ready. What you typed stays.".into(),
            Self::JobAdded => "The job is open; it was added to those that were here.".into(),
            Self::JobKnown => "The job was here already, and is open now.".into(),
            Self::NoRoom => {
                "There is no room for another job here. Save one as a file and remove it first.".into()
            }
            Self::Full => "There is no room for another: remove one first.".into(),
            Self::ToolGone => {
                "A tool that this was planned with was removed: another one is taken for it. Choose in the shop.".into()
            }
            Self::AnotherTab => {
                "This page is open in another tab too. Both keep the same work: what is changed in one shows in the other."
                    .into()
            }
            Self::Overtaken => {
                "Another tab had stored other work meanwhile. It is kept aside in the shop; nothing of it is lost.".into()
            }
            Self::LinkLong => {
                "Copied. This link is longer than some programs pass on whole: a file of the job is safer.".into()
            }
            Self::WillKeep => "The browser promised to keep what is stored here.".into(),
            Self::MayWipe => {
                "The browser did not promise to keep what is stored here: a bookmark or a file protects it.".into()
            }
            Self::LinkBroken(fault) => {
                format!("The link could not be opened. {fault} Nothing here was changed.")
            },
            Self::LinkPartly => {
                "Parts of the link could not be read and have their usual values; the link itself is kept aside."
                    .into()
            }
            Self::FileReplaced => {
                "The file is open. What was here before is not lost: Undo brings it back.".into()
            }
            Self::FileSame => "The file holds what is here already.".into(),
            Self::FileFurther => {
                "The job was here already. The file says that more of it is cut: that was taken over.".into()
            }
            Self::FileBroken(fault) => {
                format!("The file could not be opened. {fault} Nothing here was changed.")
            }
            Self::FilePartly => {
                "Parts of the file could not be read and have their usual values; the file itself is as it was.".into()
            }
            Self::StoreBroken => {
                "What was stored here could not be read. It is kept aside, and nothing of it is lost."
                    .into()
            }
            Self::StorePartly => {
                "Parts of what was stored could not be read and have their usual values. The original is kept aside."
                    .into()
            }
            Self::StoreBlocked => {
                "This browser stores nothing for this page: bookmark it to keep your work.".into()
            }
            Self::StoreFull => {
                "The browser's store is full: bookmark this page to keep your work.".into()
            }
            Self::ScreenMaySleep => {
                "This browser cannot keep the screen awake: set the device to stay on while you cut.".into()
            }
            Self::PlanChanged => {
                "The plan is not the one you were cutting: check the dial and the boards before you go on."
                    .into()
            }
            Self::Removed(name) if name.trim().is_empty() => "It was removed.".into(),
            Self::Removed(name) => format!("{name} was removed."),
            Self::HandedOver(says, _) | Self::Unchanged(says) => says.clone(),
            Self::Copied => "Copied.".into(),
            Self::NotCopied => "The browser did not let the page copy.".into(),
        }
    }

    /// Whether it warns, so that it must not be overlooked.
    #[must_use]
    pub fn is_warning(&self) -> bool {
        !matches!(
            self,
            Self::OfflineReady
                | Self::UpdateWaiting
                | Self::Removed(_)
                | Self::HandedOver(_, false)
                | Self::Unchanged(_)
                | Self::Copied
                | Self::FileSame
                | Self::JobAdded
                | Self::JobKnown
                | Self::AnotherTab
                | Self::WillKeep
        )
    }

    /// Whether it says why nothing was changed.
    #[must_use]
    pub fn is_refusal(&self) -> bool {
        matches!(self, Self::NoRoom | Self::Full | Self::Unchanged(_))
    }

    /// Whether [`Undo`](crate::msg::Msg::Undo) belongs beside it.
    #[must_use]
    pub fn can_undo(&self) -> bool {
        matches!(
            self,
            Self::JobAdded
                | Self::JobKnown
                | Self::LinkPartly
                | Self::FileReplaced
                | Self::FilePartly
                | Self::HandedOver(..)
                | Self::Removed(_)
        )
    }
}
