//! A fault of a theme, worded for its author.

/// A fault of a theme: file, line and message.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ThemeFault {
    /// The file, relative to the theme.
    pub file: String,
    /// The line, from 1; 0 for the file as a whole.
    pub line: usize,
    /// The message.
    pub message: String,
}

impl std::fmt::Display for ThemeFault {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self.line {
            0 => write!(f, "{}: {}", self.file, self.message),
            line => write!(f, "{}:{line}: {}", self.file, self.message),
        }
    }
}

impl std::error::Error for ThemeFault {}
