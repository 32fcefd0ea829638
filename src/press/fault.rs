//! Why no site could be made of a catalogue without errors.

use std::borrow::Cow;
use std::fmt;

use crate::page::ThemeFault;
use crate::picture::Fault;

/// A failure of the disk while pictures were prepared. Nothing is wrong with the records.
#[derive(Clone, Debug)]
pub struct DiskFault(pub(super) Fault);

impl DiskFault {
    /// What could not be written, and why: one phrase.
    #[must_use]
    pub fn cause(&self) -> &dyn fmt::Display {
        &self.0
    }

    /// The action that the user can take.
    #[must_use]
    pub fn help(&self) -> Cow<'static, str> {
        self.0.help()
    }
}

impl fmt::Display for DiskFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "the disk failed: {}", self.0)
    }
}

impl std::error::Error for DiskFault {}

/// Why no site could be made of a catalogue without errors.
#[derive(Debug)]
pub enum PullFault {
    /// A template or word of the catalogue's own theme is broken.
    Theme(ThemeFault),
    /// The disk failed.
    Disk(DiskFault),
    /// A private name stands in files of the site; the findings of the report say where.
    PrivateName,
}

impl fmt::Display for PullFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            PullFault::Theme(fault) => fault.fmt(f),
            PullFault::Disk(fault) => fault.fmt(f),
            PullFault::PrivateName => {
                f.write_str("files of the site would tell what is kept private")
            }
        }
    }
}

impl std::error::Error for PullFault {}

impl From<ThemeFault> for PullFault {
    fn from(fault: ThemeFault) -> PullFault {
        PullFault::Theme(fault)
    }
}

impl From<DiskFault> for PullFault {
    fn from(fault: DiskFault) -> PullFault {
        PullFault::Disk(fault)
    }
}
