//! Responses: a status, fields and a body, as HTTP/1.1 sends them.
//!
//! In: what a browser gets. Out: its bytes.

use std::borrow::Cow;
use std::io::{self, Write};

/// The response to a request.
#[derive(Debug)]
pub(in crate::proof) struct Response {
    /// Code and phrase: "404 Not Found".
    pub(super) status: &'static str,
    /// Fields beside the length and the connection.
    fields: Vec<(&'static str, Cow<'static, str>)>,
    body: Cow<'static, [u8]>,
}

impl Response {
    /// A body of the media type `kind`.
    pub(in crate::proof) fn ok(
        kind: &'static str,
        body: impl Into<Cow<'static, [u8]>>,
    ) -> Response {
        Response {
            status: "200 OK",
            fields: vec![("Content-Type", kind.into())],
            body: body.into(),
        }
    }

    /// A status whose phrase is also the body.
    pub(in crate::proof) fn bare(status: &'static str) -> Response {
        Response {
            status,
            ..Response::ok("text/plain; charset=utf-8", status.as_bytes())
        }
    }

    /// A redirection to `location`.
    pub(in crate::proof) fn redirect(location: String) -> Response {
        Response::bare("307 Temporary Redirect").with("Location", location)
    }

    /// The same response with another status.
    pub(in crate::proof) fn status(self, status: &'static str) -> Response {
        Response { status, ..self }
    }

    /// The same response with one more field. `value` has no line break: it is an address or a constant.
    pub(in crate::proof) fn with(
        mut self,
        name: &'static str,
        value: impl Into<Cow<'static, str>>,
    ) -> Response {
        self.fields.push((name, value.into()));
        self
    }

    /// The same response with the field that tells the browser to keep no copy, because the next reading may change the
    /// content.
    pub(in crate::proof) fn not_stored(self) -> Response {
        self.with("Cache-Control", "no-store")
    }

    /// The same response with the fields that keep other sites from embedding or reading it.
    pub(in crate::proof) fn for_this_site_alone(self) -> Response {
        self.with("Cross-Origin-Resource-Policy", "same-origin")
            .with("Cross-Origin-Opener-Policy", "same-origin")
            .with("X-Frame-Options", "DENY")
            .with("X-Content-Type-Options", "nosniff")
            .with("Referrer-Policy", "no-referrer")
    }

    /// Sends it; of a response to HEAD, the head alone.
    ///
    /// # Errors
    /// Where the client takes no more.
    pub(super) fn write(
        &self,
        out: &mut impl Write,
        is_head: bool,
        stays_open: bool,
    ) -> io::Result<()> {
        let mut head = format!("HTTP/1.1 {}\r\n", self.status);
        let connection = if stays_open { "keep-alive" } else { "close" };
        let length = self.body.len().to_string();
        let own = [
            ("Content-Length", length.as_str()),
            ("Connection", connection),
        ];
        let fields = self.fields.iter().map(|(name, value)| (*name, &**value));
        for (name, value) in fields.chain(own) {
            head.extend([name, ": ", value, "\r\n"]);
        }
        head.push_str("\r\n");
        out.write_all(head.as_bytes())?;
        if !is_head {
            out.write_all(&self.body)?;
        }
        out.flush()
    }
}
