//! The boards that a joint is cut on, end by end.

use notchwright_core::message;
use notchwright_core::stop::Board;
use notchwright_core::units::read_number;

use super::FieldProblem;
use crate::state::{End, Ends, Entry, Field, MOST_NAMES, PiecesField, PiecesForm};

/// The boards of all pieces.
#[derive(Clone, Debug, PartialEq)]
pub struct Pieces {
    what: String,
    count: usize,
    a: Alike,
    b: Alike,
}

/// The boards of one piece that are cut alike.
#[derive(Clone, Debug, PartialEq)]
struct Alike {
    names: Vec<String>,
    ends: usize,
}

impl Default for Pieces {
    fn default() -> Self {
        Self::read(&PiecesForm::default()).0
    }
}

/// More pieces than anybody makes alike.
const MOST_PIECES: usize = 200;

impl Pieces {
    /// What the form says, one piece where it says nothing that can be read.
    pub(super) fn read(form: &PiecesForm) -> (Self, Option<FieldProblem>) {
        let count = count(&form.count);
        let problem = count.is_none().then(|| FieldProblem {
            field: Some(Field::Pieces(PiecesField::Count)),
            message: message![format!("Pieces: a whole number from 1 to {MOST_PIECES}.")],
        });
        let alike = |names: &Entry, ends| Alike {
            names: names_in(&names.text),
            ends: match ends {
                Ends::One => 1,
                Ends::Both => 2,
            },
        };
        let pieces = Self {
            what: form.what.text.trim().to_owned(),
            count: count.unwrap_or(1),
            a: alike(&form.names_a, form.ends_a),
            b: alike(&form.names_b, form.ends_b),
        };
        (pieces, problem)
    }

    fn alike(&self, board: Board) -> &Alike {
        match board {
            Board::A => &self.a,
            Board::B => &self.b,
        }
    }

    /// How many ends are cut as `board`.
    #[must_use]
    pub fn count(&self, board: Board) -> usize {
        let alike = self.alike(board);
        self.count * alike.names.len() * alike.ends
    }

    /// Every end that is cut as `board`, in the order of cutting.
    pub fn ends(&self, board: Board) -> impl Iterator<Item = End> {
        let Alike { names, ends } = self.alike(board);
        let (boards, ends) = (names.len(), *ends);
        (0..self.count).flat_map(move |piece| {
            (0..boards).flat_map(move |board| (0..ends).map(move |end| End::new(piece, board, end)))
        })
    }

    /// What one end is called: `drawer 3, front, second end`; only what tells it from others is said.
    #[must_use]
    pub fn name(&self, board: Board, end: End) -> String {
        let Alike { names, ends } = self.alike(board);
        let what = if self.what.is_empty() {
            "piece"
        } else {
            &self.what
        };
        let piece = (self.count > 1).then(|| format!("{what} {}", end.piece() + 1));
        let name = names.get(end.board()).filter(|name| !name.is_empty());
        let which = match end.end() {
            0 => "first end",
            _ => "second end",
        };
        let end = (*ends > 1).then(|| which.to_owned());
        let said: Vec<_> = [piece, name.cloned(), end].into_iter().flatten().collect();
        said.join(", ")
    }
}

fn count(entry: &Entry) -> Option<usize> {
    if entry.is_blank() {
        return Some(1);
    }
    let count = read_number(entry.text.trim()).filter(|count| count.fract() == 0.0)?;
    (1..=MOST_PIECES).find(|whole| *whole as f64 == count)
}

/// Names between semicolons, at least one: a board need not have a name.
fn names_in(text: &str) -> Vec<String> {
    let names = text.split([';', '\n']).map(str::trim);
    let names = names.filter(|name| !name.is_empty()).take(MOST_NAMES);
    let names: Vec<_> = names.map(str::to_owned).collect();
    if names.is_empty() {
        vec![String::new()]
    } else {
        names
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::state::State;

    fn names(form: &PiecesForm, board: Board) -> Vec<String> {
        let (pieces, problem) = Pieces::read(form);
        assert_eq!(problem, None);
        let ends: Vec<_> = pieces.ends(board).collect();
        assert_eq!(ends.len(), pieces.count(board));
        ends.into_iter()
            .map(|end| pieces.name(board, end))
            .collect()
    }

    #[test]
    fn every_end_has_a_name_of_its_own() {
        let form = State::demo().work.joint.pieces;
        let fronts = names(&form, Board::B);
        assert_eq!(fronts.len(), 16);
        assert_eq!(fronts[0], "drawer 1, front, first end");
        assert_eq!(fronts[5], "drawer 3, front, second end");
        let sides = names(&form, Board::A);
        assert_eq!(sides.len(), 16);
        assert_eq!(sides[5], "drawer 3, right side");
    }

    #[test]
    fn only_what_tells_ends_apart_is_said() {
        assert_eq!(names(&PiecesForm::default(), Board::A), [""]);
        let form = PiecesForm {
            names_a: Entry::mm(" front ;; back "),
            ends_b: Ends::Both,
            ..PiecesForm::default()
        };
        assert_eq!(names(&form, Board::A), ["front", "back"]);
        assert_eq!(names(&form, Board::B), ["first end", "second end"]);
    }

    #[test]
    fn a_count_that_is_none_is_said_beside_its_field() {
        for text in ["0", "2.5", "eight", "-1", "201", "1e9"] {
            let form = PiecesForm {
                count: Entry::mm(text),
                ..PiecesForm::default()
            };
            let (pieces, problem) = Pieces::read(&form);
            assert_eq!(pieces.count(Board::A), 1, "{text}");
            let field = problem.and_then(|problem| problem.field);
            assert_eq!(field, Some(Field::Pieces(PiecesField::Count)), "{text}");
        }
    }

    #[test]
    fn an_end_is_the_same_however_many_there_are() {
        let ends = |count: &str, board| {
            let form = PiecesForm {
                count: Entry::mm(count),
                ..State::demo().work.joint.pieces
            };
            Pieces::read(&form).0.ends(board).collect::<Vec<_>>()
        };
        for board in [Board::A, Board::B] {
            assert_eq!(ends("8", board)[..6], ends("3", board)[..6]);
        }
    }
}
