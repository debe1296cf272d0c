//! The many characters that keyboards, phones and pasted pages put into a length, brought down to
//! the few that mean something.

/// What one character means in a length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Glyph {
    Digit(u8),
    /// `.`
    Point,
    /// `,`
    Comma,
    Semicolon,
    Plus,
    /// A hyphen, a minus or a dash: a sign at the start, a join further on.
    Dash,
    Slash,
    /// A whole fraction in one character: `¾`.
    Vulgar(u8, u8),
    /// `⅟`, which waits for its lower number.
    OneOver,
    /// A foot mark or a single quote.
    Single,
    /// An inch mark or a double quote.
    Double,
    /// `=`, `~` or `≈`: fair to write before a length, and nothing to read.
    About(char),
    Letter(char),
    /// A unit of two letters in one character: `㎜`.
    Pair(&'static str),
    Space,
    Other(char),
}

impl Glyph {
    pub(crate) fn of(given: char) -> Self {
        let c = narrow(given);
        match c {
            '0'..='9' => Self::Digit(c.to_digit(10).map_or(0, |digit| digit as u8)),
            '.' => Self::Point,
            ',' => Self::Comma,
            ';' => Self::Semicolon,
            '+' | '\u{FE62}' => Self::Plus,
            '-' | '\u{2010}'..='\u{2013}' | '\u{2212}' | '\u{FE63}' => Self::Dash,
            '/' | '\u{2044}' | '\u{2215}' => Self::Slash,
            '\u{215F}' => Self::OneOver,
            '\'' | '\u{B4}' | '\u{2B9}' | '\u{2018}' | '\u{2019}' | '\u{2032}' => Self::Single,
            '"' | '\u{2BA}' | '\u{201C}' | '\u{201D}' | '\u{2033}' => Self::Double,
            '=' | '~' | '\u{2248}' => Self::About(c),
            '\u{339C}' => Self::Pair("mm"),
            '\u{339D}' => Self::Pair("cm"),
            _ if is_blank(c) => Self::Space,
            _ if c.is_ascii_alphabetic() => Self::Letter(c),
            _ => vulgar(c).map_or(Self::Other(given), |(over, under)| {
                Self::Vulgar(over, under)
            }),
        }
    }
}

/// The ordinary form of a full-width character, as typed with an East Asian keyboard.
fn narrow(c: char) -> char {
    const FULL_WIDTH_BY: u32 = 0xFEE0;
    match c {
        '\u{FF01}'..='\u{FF5E}' => char::from_u32(c as u32 - FULL_WIDTH_BY).unwrap_or(c),
        _ => c,
    }
}

/// Spaces of every width, and the marks of no width that come along when text is pasted.
fn is_blank(c: char) -> bool {
    c.is_whitespace()
        || matches!(c, '\u{200B}'..='\u{200F}' | '\u{202A}'..='\u{202E}' | '\u{2060}' | '\u{2066}'..='\u{2069}' | '\u{FEFF}')
}

/// Every fraction that Unicode has a character for (blocks Latin-1 and Number Forms).
fn vulgar(c: char) -> Option<(u8, u8)> {
    Some(match c {
        '½' => (1, 2),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        '⅕' => (1, 5),
        '⅖' => (2, 5),
        '⅗' => (3, 5),
        '⅘' => (4, 5),
        '⅙' => (1, 6),
        '⅚' => (5, 6),
        '⅐' => (1, 7),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        '⅑' => (1, 9),
        '⅒' => (1, 10),
        '↉' => (0, 3),
        _ => return None,
    })
}
