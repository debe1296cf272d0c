//! From a text to an expression, by binding strength (Pratt's way), over the same tokens as lengths.

use super::{ExpressionError, ExpressionFault as Fault, Node, Operator};
use crate::units::{
    Cursor, Glyph, Kind, LengthFault, Literal, Refusal as LengthRefusal, Token, tokens,
};

/// Characters of an expression; with the brackets' bound this also bounds how deep its tree is.
const LONGEST: usize = 200;
/// Brackets, signs and functions inside each other.
const DEEPEST: u32 = 24;

/// Functions of two values, by their names.
pub(crate) const FUNCTIONS: [(&str, Operator); 3] = [
    ("min", Operator::Least),
    ("max", Operator::Greatest),
    ("round", Operator::Round),
];

type Refusal = (usize, Fault);

/// Whether a measure may be called so.
pub(crate) fn is_name(text: &str) -> bool {
    text.chars().all(is_name_char)
        && text
            .chars()
            .next()
            .is_some_and(|first| !matches!(Glyph::of(first), Glyph::Digit(_)))
}

pub(super) fn read(text: &str) -> Result<Node, ExpressionError> {
    tree(text).map_err(|(at, fault)| ExpressionError { at, fault })
}

fn tree(text: &str) -> Result<Node, Refusal> {
    let text: Vec<char> = text.chars().take(LONGEST + 1).collect();
    if text.len() > LONGEST {
        return Err((LONGEST, Fault::TooLong));
    }
    let tokens = tokens(&text.iter().collect::<String>()).map_err(of_length)?;
    let rest = match tokens.as_slice() {
        // A leading = comes from a spreadsheet.
        [
            Token {
                kind: Kind::About(_),
                ..
            },
            rest @ ..,
        ] => rest,
        all => all,
    };
    let end = text.len();
    if rest.is_empty() {
        return Err((end, Fault::Length(LengthFault::Empty)));
    }
    if let Some(literal) = whole(rest, end) {
        return Ok(Node::Literal(literal));
    }
    let mut reader = Reader {
        text: &text,
        cursor: Cursor { rest, end },
        depth: 0,
    };
    let node = reader.sum()?;
    match reader.cursor.peek() {
        None => Ok(node),
        Some(next) => Err((reader.cursor.at(), left_over(next))),
    }
}

fn of_length((at, fault): LengthRefusal) -> Refusal {
    (at, Fault::Length(fault))
}

/// The one length that the whole text is: here a dash without spaces joins, as it does in every other field.
fn whole(rest: &[Token], end: usize) -> Option<Literal> {
    let mut cursor = Cursor { rest, end };
    let literal = Literal::read(&mut cursor).ok()?;
    let spaced = |token: &Token| token.kind == Kind::Dash && token.spaced;
    (cursor.rest.is_empty() && !rest.iter().any(spaced)).then_some(literal)
}

struct Reader<'a> {
    text: &'a [char],
    cursor: Cursor<'a>,
    depth: u32,
}

impl Reader<'_> {
    fn sum(&mut self) -> Result<Node, Refusal> {
        let mut left = self.product()?;
        loop {
            let operator = match self.cursor.peek() {
                Some(Kind::Plus) => Operator::Add,
                Some(Kind::Dash) => Operator::Subtract,
                _ => return Ok(left),
            };
            self.cursor.skip();
            left = Node::Two(operator, Box::new([left, self.product()?]));
        }
    }

    fn product(&mut self) -> Result<Node, Refusal> {
        let mut left = self.operand()?;
        while let Some(operator) = self.cursor.peek().and_then(product_sign) {
            self.cursor.skip();
            if operator == Operator::Divide && self.is_fraction() {
                return Err((self.cursor.at(), Fault::TwoWays));
            }
            left = Node::Two(operator, Box::new([left, self.operand()?]));
        }
        Ok(left)
    }

    fn operand(&mut self) -> Result<Node, Refusal> {
        self.depth += 1;
        if self.depth > DEEPEST {
            return Err((self.cursor.at(), Fault::TooLong));
        }
        let node = self.operand_within();
        self.depth -= 1;
        node
    }

    fn operand_within(&mut self) -> Result<Node, Refusal> {
        let at = self.cursor.at();
        match self.cursor.peek() {
            Some(Kind::Number(_)) => self.literal().map(Node::Literal),
            Some(Kind::Plus) => {
                self.cursor.skip();
                self.operand()
            }
            Some(Kind::Dash) => {
                self.cursor.skip();
                Ok(Node::Negative(Box::new(self.operand()?)))
            }
            Some(Kind::Other('(' | '（')) => {
                self.cursor.skip();
                let node = self.sum()?;
                self.close()?;
                Ok(node)
            }
            Some(Kind::Word(_)) => self.name(at),
            Some(Kind::Other(c)) if is_letter(*c) => self.name(at),
            Some(Kind::FootMark | Kind::InchMark) => {
                Err((at, Fault::Length(LengthFault::QuoteMarks)))
            }
            _ => Err((at, Fault::NoValue)),
        }
    }

    fn close(&mut self) -> Result<(), Refusal> {
        match self.cursor.peek() {
            Some(Kind::Other(')' | '）')) => {
                self.cursor.skip();
                Ok(())
            }
            None => Err((self.cursor.at(), Fault::Unclosed)),
            Some(next) => Err((self.cursor.at(), left_over(next))),
        }
    }

    /// Whether a fraction comes next that a division sign stands before.
    fn is_fraction(&self) -> bool {
        matches!(
            self.cursor.rest,
            [
                Token {
                    kind: Kind::Number(_),
                    ..
                },
                Token {
                    kind: Kind::Slash,
                    ..
                },
                Token {
                    kind: Kind::Number(_),
                    ..
                },
                ..
            ]
        )
    }

    fn literal(&mut self) -> Result<Literal, Refusal> {
        if let [
            Token {
                kind: Kind::Number(_),
                ..
            },
            Token {
                kind: Kind::Dash,
                spaced: false,
                ..
            },
            dash @ Token {
                kind: Kind::Number(_),
                spaced: false,
                ..
            },
            Token {
                kind: Kind::Slash, ..
            },
            ..,
        ] = self.cursor.rest
        {
            return Err((dash.at, Fault::TwoWays));
        }
        let divides = match self.cursor.rest {
            [
                Token {
                    kind: Kind::Number(over),
                    ..
                },
                Token {
                    kind: Kind::Slash, ..
                },
                under,
                ..,
            ] => {
                over.after.is_some()
                    || !matches!(&under.kind, Kind::Number(under) if under.after.is_none())
            }
            _ => false,
        };
        let read = if divides {
            Literal::read_number
        } else {
            Literal::read_in_sum
        };
        let literal = read(&mut self.cursor).map_err(|refusal| match refusal {
            (at, LengthFault::UnknownUnit(_)) => (at, Fault::NoOperator),
            refusal => of_length(refusal),
        })?;
        if literal.is_in_feet() && self.joins_inches() {
            return Err((self.cursor.at(), Fault::TwoWays));
        }
        Ok(literal)
    }

    /// Whether a dash behind feet may join inches to them: `2' - 3"`, but not `6' - 2*t`.
    fn joins_inches(&self) -> bool {
        let [dash, rest @ ..] = self.cursor.rest else {
            return false;
        };
        let mut behind = Cursor {
            rest,
            end: self.cursor.end,
        };
        dash.kind == Kind::Dash
            && matches!(behind.peek(), Some(Kind::Number(_)))
            && (Literal::read_in_sum(&mut behind).is_err()
                || behind.peek().and_then(product_sign).is_none())
    }

    fn name(&mut self, at: usize) -> Result<Node, Refusal> {
        let chars = self.text.iter().skip(at).take_while(|c| is_name_char(**c));
        let name: String = chars.collect();
        let end = at + name.chars().count();
        while let [Token { kind, at, .. }, ..] = self.cursor.rest
            && *at < end
        {
            if let Kind::Number(number) = kind
                && number.after.is_some()
            {
                return Err((end, Fault::NoOperator));
            }
            self.cursor.skip();
        }
        match FUNCTIONS
            .iter()
            .find(|(known, _)| name.eq_ignore_ascii_case(known))
        {
            Some((_, operator)) => self.call(*operator),
            None => Ok(Node::Name(name)),
        }
    }

    fn call(&mut self, operator: Operator) -> Result<Node, Refusal> {
        if !(self.cursor.take(&Kind::Other('(')) || self.cursor.take(&Kind::Other('（'))) {
            return Err((self.cursor.at(), Fault::TwoValues));
        }
        let first = self.sum()?;
        if !self.cursor.take(&Kind::Stop(';')) {
            return Err((self.cursor.at(), Fault::TwoValues));
        }
        let two = Box::new([first, self.sum()?]);
        self.close()?;
        Ok(Node::Two(operator, two))
    }
}

/// Why nothing of this kind should come behind a value.
fn left_over(next: &Kind) -> Fault {
    match next {
        Kind::About(c) | Kind::Stop(c) => Fault::Length(LengthFault::Unexpected(*c)),
        Kind::Other(c) if !is_letter(*c) => Fault::Length(LengthFault::Unexpected(*c)),
        Kind::FootMark | Kind::InchMark => Fault::Length(LengthFault::QuoteMarks),
        _ => Fault::NoOperator,
    }
}

fn product_sign(kind: &Kind) -> Option<Operator> {
    match kind {
        Kind::Other('*' | '×' | '·' | '∙' | '⋅' | '∗' | '＊') => Some(Operator::Multiply),
        Kind::Other('÷') | Kind::Slash => Some(Operator::Divide),
        _ => None,
    }
}

/// Whether this goes on a name. Beyond ASCII whatever has no other meaning is a letter: which of them are letters is a
/// table that a phone would have to fetch.
fn is_name_char(c: char) -> bool {
    match Glyph::of(c) {
        Glyph::Digit(_) | Glyph::Letter(_) | Glyph::Pair(_) => true,
        Glyph::Other(c) => is_letter(c),
        _ => false,
    }
}

fn is_letter(c: char) -> bool {
    let is_sign = product_sign(&Kind::Other(c)).is_some() || matches!(c, '（' | '）');
    c == '_' || !(c.is_ascii() || is_sign || c.is_control())
}
