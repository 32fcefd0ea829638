//! What lies in a folder and is not a file.

use std::fs::FileType;

/// Something in a folder that is not a file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Nature {
    /// A folder.
    Folder,
    /// A pipe, through which one program writes to another.
    Pipe,
    /// A socket, through which programs talk.
    Socket,
    /// A device.
    Device,
}

impl Nature {
    pub(crate) fn of(file_type: FileType) -> Nature {
        if file_type.is_dir() {
            return Nature::Folder;
        }
        #[cfg(unix)]
        {
            use std::os::unix::fs::FileTypeExt as _;
            if file_type.is_fifo() {
                return Nature::Pipe;
            }
            if file_type.is_socket() {
                return Nature::Socket;
            }
        }
        Nature::Device
    }

    /// Its name with the article.
    pub(crate) fn name(self) -> &'static str {
        match self {
            Nature::Folder => "a folder",
            Nature::Pipe => "a pipe",
            Nature::Socket => "a socket",
            Nature::Device => "a device",
        }
    }
}
