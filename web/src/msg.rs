//! Everything that can happen to the page.

use notchwright_core::sheet::SearchReached;
use notchwright_core::stop::Board;
use notchwright_core::units::{Mm, Unit};

use crate::model::{Can, Chunk};
use crate::notice::Notice;
use crate::state::{
    Approach, Edge, End, Ends, Field, First, GrindKind, Group, Hand, Id, JointKind, LayoutKind,
    LeadBy, Leftover, Mark, MeasuredFrom, Order, PaperSize, PartsTool, PinsBy, Place, Prints,
    Rises, Rounding, Section, Side, SlopeBy, Spot, Step, Theme, Tool, WidthBy, ZeroKind,
};

/// Something that happened.
#[derive(Clone, Debug, PartialEq)]
pub enum Msg {
    /// Something was typed, chosen, added or removed.
    Edit(Edit),
    /// Something happened at the saw.
    Saw(SawMove),
    /// One works otherwise at the saw.
    Way(Way),
    /// This was said while the page listened.
    Heard(String),
    /// The setting is to be spoken again.
    Speak,
    /// This is what the browser can do besides.
    Can(Can),
    /// The last change is to be undone.
    Undo,
    /// The change undone last is to be made again.
    Redo,
    /// Another place is to be shown.
    Go(Place),
    /// Something in the sled's place is to be shown otherwise.
    Look(Look),
    /// A part of the program has come.
    Came(Chunk),
    /// A part of the program could not be had.
    DidNotCome(Chunk),
    /// It is to be asked for again.
    AskAgain(Chunk),
    /// The strip that is typed in is to be kept as a test of today.
    KeepTest,
    /// This text is to be saved as a file of this name.
    SaveFile {
        /// Name of the file.
        name: &'static str,
        /// What is in it.
        text: String,
    },
    /// Something of the open joint is to be saved for other programs.
    Export(Export),
    /// Something is to be done with the search for a layout of sheets.
    Search(Search),
    /// The page is to be printed.
    Print,
    /// Everything that was typed is to be saved as a file.
    SaveAll,
    /// This file is to be read.
    ReadFile(web_sys::File),
    /// This is what is in a file that is to be opened.
    OpenFile(String),
    /// The open job alone is to be saved as a file.
    SaveJob,
    /// The open job is to be handed to another program of the device.
    ShareJob,
    /// The browser is to be asked to keep what is stored.
    Persist,
    /// A file was larger than any job.
    FileTooLarge,
    /// Lengths are to be shown in another unit.
    Units(Unit),
    /// Another theme is wanted.
    Theme(Theme),
    /// The address now carries this fragment, `#` included.
    OpenLink(String),
    /// Another tab of this browser stored this text.
    OtherTab(String),
    /// Another tab of this browser had stored this text unseen, and now this tab's has taken its place.
    Overtaken(String),
    /// The link of this job is to be copied.
    CopyLink,
    /// The parts are to be copied for a spreadsheet.
    CopyParts,
    /// What was kept aside under this key is to be opened in place of what is here.
    OpenAside(String),
    /// What was kept aside under this key is to be saved as a file.
    SaveAside(String),
    /// What was kept aside under this key is to be copied.
    CopyAside(String),
    /// What was kept aside under this key is no longer wanted.
    DropAside(String),
    /// The page is about to be printed, or has been.
    Paper(bool),
    /// Something is to be said.
    Say(Notice),
    /// A notice has been read.
    Dismiss(Notice),
    /// The waiting version is to take over.
    UseUpdate,
}

/// A change of what was typed and chosen. Every one can be undone.
#[derive(Clone, Debug, PartialEq)]
pub enum Edit {
    /// A text was typed into a field.
    Type(Field, String),
    /// A length that was worked out is to be put into a field.
    Set(Field, Mm),
    /// It is another joint.
    Joint(JointKind),
    /// Dovetails' pins are found otherwise.
    Pins(PinsBy),
    /// Dovetails' slope is given otherwise.
    Slope(SlopeBy),
    /// A number of tails was picked.
    Tails(usize),
    /// Another cutter is for the pin board: none for the one that cuts the tails.
    PinCutter(Id),
    /// The width is to be divided in another way.
    Layout(LayoutKind),
    /// A number of fingers was picked.
    Count(usize),
    /// The rest of the width is to go elsewhere.
    Leftover(Leftover),
    /// The pattern is to be mirrored or not.
    Mirrored(bool),
    /// Board A is to begin otherwise.
    First(First),
    /// The zero is found in another way.
    Zero(ZeroKind),
    /// There is to be a groove, or none.
    Groove(bool),
    /// The groove is measured from another edge.
    GrooveEdge(Edge),
    /// A blank item is to be added.
    Add(Shelf),
    /// A cutter of this kerf is to be added, made up of a stack.
    AddStack(Mm),
    /// A copy of an item is to be added.
    Duplicate(Shelf, Id),
    /// An item is to be removed.
    Remove(Shelf, Id),
    /// An item is to be used.
    Choose(Shelf, Id),
    /// A cutter's teeth are ground otherwise.
    Grind(Id, GrindKind),
    /// A screw's lead is given otherwise.
    LeadBy(Id, LeadBy),
    /// A screw's readings are rounded otherwise.
    Rounding(Id, Rounding),
    /// A screw's readings rise the other way.
    Rises(Id, Rises),
    /// A screw's travel per turn was found to be this.
    TakeLead(Id, Mm),
    /// The runner's slot is on another side.
    Side(Id, Side),
    /// The distance to a slot was measured from another place.
    MeasuredFrom(Id, MeasuredFrom),
    /// A saw's slots have another section.
    Section(Id, Section),
    /// A blank position is to be added to the screw's table.
    AddPoint,
    /// A position is to be removed.
    RemovePoint(Id),
    /// All positions are to be removed.
    ClearPoints,
    /// The dial came to a position the other way.
    Approach(Id, Approach),
    /// The strip that is typed in is to be kept as a test of this day, `2026-04-30`.
    KeepTest(String),
    /// A kept test is to be removed.
    RemoveTest(Id),
    /// A groove's width is found otherwise.
    WidthBy(WidthBy),
    /// So many ends of this board are cut.
    Ends(Board, Ends),
    /// The chosen sled's own parts are to be added to those of the job.
    SledParts,
    /// Something is to be done with what is made.
    Making(MakingEdit),
    /// The drawers are to be gone on with elsewhere.
    HandOver(HandOver),
    /// Something is to be done with the jobs.
    Job(Leaf),
    /// Something is to be done with the joints of the open job.
    JointOf(Leaf),
}

/// A change of what is made.
#[derive(Clone, Debug, PartialEq)]
pub enum MakingEdit {
    /// One of a few words is chosen for a field.
    Choose(Spot, &'static str),
    /// A row of another list is chosen for a field.
    Refer(Spot, Id),
    /// A blank row is to be added.
    Add(Group),
    /// A copy of a row is to be added.
    Duplicate(Group, Id),
    /// A row is to be removed.
    Remove(Group, Id),
    /// These rows of a spreadsheet are to be added as parts.
    Paste(String),
    /// A cut of a layout was made, or was not.
    Tick(Tick),
}

/// A cut of a layout of sheets that was made, or was not.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tick {
    /// Of which layout.
    pub of: Mark,
    /// Its number, from 1, through all sheets.
    pub cut: u32,
    /// Whether it was made.
    pub is_made: bool,
}

/// What is to be done with the search for a layout of sheets.
#[derive(Clone, Debug, PartialEq)]
pub enum Search {
    /// A slice of it has been made beside the page, or is to be made here.
    Slice(Option<SearchReached>),
    /// It has searched long enough.
    Stop,
    /// It is to go on.
    GoOn,
}

/// Where drawers are gone on with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HandOver {
    /// The joint of this drawer of the plan, from 0, becomes a new joint of the open job.
    Joint(usize),
    /// Boards and bottoms become parts.
    Parts,
    /// The same, to be laid out on sheets.
    Sheet,
}

/// What is shown of a place that has several tools.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Look {
    /// Another of its tools.
    Tool(Tool),
    /// Another tool of the parts' place.
    PartsTool(PartsTool),
    /// The sled pushed so far through, in thousandths of its stroke.
    Pushed(u32),
    /// Another cut of the five-cut test, from 0.
    Cut(u32),
    /// What is printed of the base.
    Prints(Prints),
    /// The paper it is printed on.
    Paper(PaperSize),
    /// Whether a joint's full-size template is printed.
    Templates(bool),
}

/// What can be saved of the open joint for other programs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Export {
    /// Its stops.
    Csv,
    /// One of its pictures, from 0.
    Svg(usize),
    /// One of its pictures, from 0, for drawing programs.
    Dxf(usize),
}

/// What can be done with one of several of which one is open, each by its place from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Leaf {
    /// Add a new one and open it.
    Add,
    /// Open it.
    Open(usize),
    /// Add a copy of it and open that.
    Duplicate(usize),
    /// Remove it.
    Remove(usize),
}

/// How one works at the saw.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// Whether the setting is spoken.
    Speaks(bool),
    /// Whether spoken words are heard.
    Listens(bool),
    /// Which hand is free.
    Hand(Hand),
    /// In which order boards come.
    Order(Order),
}

/// A list in the shop.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shelf {
    /// Saws.
    Saws,
    /// Sleds.
    Sleds,
    /// Cutters.
    Cutters,
    /// Screws.
    Screws,
}

/// A move at the saw.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SawMove {
    /// To the saw: where it was left, or to the first set-up.
    Open,
    /// On to the next stop or set-up.
    Next,
    /// Back to the one before.
    Back,
    /// To this step of this set, both from 0.
    Jump(usize, Step),
    /// To this end of a board, in the same set-up.
    Take(End),
    /// This end was cut in this set-up, or was not.
    Mark(End, bool),
    /// To the first set-up, with nothing cut.
    Anew,
    /// To interrupt the work, or to go on with it.
    Pause(bool),
    /// Back to the joint.
    Leave,
}
