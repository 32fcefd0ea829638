//! What is wrong with a theme, in words for whoever wrote it.

/// What is wrong with a theme: which file, where, and in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ThemeFault {
    /// The file, relative to the theme.
    pub file: String,
    /// The line, from 1; 0 where it is the file as a whole.
    pub line: usize,
    /// What is wrong.
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
