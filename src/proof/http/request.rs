//! Requests: the head of each, read with `httparse`.
//!
//! In: the bytes that a client sends. Out: a [`Head`] for each request in them, or the [`Response`] that refuses it.

use std::io::{self, Read};

use super::response::Response;

/// The longest head of a request, in bytes: well above what browsers send.
pub(super) const HEAD_LIMIT: usize = 16 * 1024;
/// The most fields in the head of a request.
const FIELD_LIMIT: usize = 100;

/// A request for a page or file.
#[derive(Debug, PartialEq, Eq)]
pub(in crate::proof) struct Request {
    /// The path of the address as sent: neither decoded nor normalised, without the query.
    pub(in crate::proof) path: String,
    /// The host that the client asked, with its port; empty where the request names none, or several.
    pub(in crate::proof) host: String,
    /// Whether the browser says that a page of another site or port made the request (Fetch Metadata Request
    /// Headers, W3C; the field Origin, RFC 6454, where a browser sends none of those).
    pub(in crate::proof) is_cross_site: bool,
}

/// The head of a request.
#[derive(Debug)]
pub(super) struct Head {
    pub(super) request: Request,
    /// Whether the request is HEAD: the response then has no body.
    pub(super) is_head: bool,
    /// Whether another request may follow on the connection.
    pub(super) stays_open: bool,
}

/// Reads the head of the next request, and takes it out of `received`, which holds what was read and not
/// yet used. `None` where the client closed the connection before it began a request.
pub(super) fn read_head(
    stream: &mut impl Read,
    received: &mut Vec<u8>,
) -> io::Result<Option<Result<Head, Response>>> {
    loop {
        if let Some(parsed) = parse(received) {
            return Ok(Some(parsed.map(|(head, length)| {
                received.drain(..length);
                head
            })));
        }
        if received.len() >= HEAD_LIMIT {
            let refusal = Response::bare("431 Request Header Fields Too Large");
            return Ok(Some(Err(refusal)));
        }
        let mut bytes = [0; 4096];
        match stream.read(&mut bytes)? {
            0 => return Ok(None),
            read => received.extend_from_slice(&bytes[..read]),
        }
    }
}

/// The head at the start of `received` and its length in bytes, or the response that refuses the request.
/// `None` where the head is not complete yet.
fn parse(received: &[u8]) -> Option<Result<(Head, usize), Response>> {
    let mut fields = [httparse::EMPTY_HEADER; FIELD_LIMIT];
    let mut parsed = httparse::Request::new(&mut fields);
    let length = match parsed.parse(received) {
        Ok(httparse::Status::Complete(length)) => length,
        Ok(httparse::Status::Partial) => return None,
        Err(httparse::Error::TooManyHeaders) => {
            return Some(Err(Response::bare("431 Request Header Fields Too Large")));
        }
        Err(_) => return Some(Err(Response::bare("400 Bad Request"))),
    };
    let named = |name: &'static str| {
        let fields = parsed.headers.iter();
        fields.filter(move |field| field.name.eq_ignore_ascii_case(name))
    };
    let has_body = named("Transfer-Encoding").next().is_some()
        || named("Content-Length").any(|field| field.value != b"0");
    if has_body {
        return Some(Err(Response::bare("413 Content Too Large")));
    }
    let is_head = match parsed.method {
        Some("GET") => false,
        Some("HEAD") => true,
        _ => {
            let refusal = Response::bare("405 Method Not Allowed").with("Allow", "GET, HEAD");
            return Some(Err(refusal));
        }
    };
    let text = |value: &[u8]| String::from_utf8_lossy(value).trim().to_owned();
    let mut hosts = named("Host").map(|field| text(field.value));
    let host = match (hosts.next(), hosts.next()) {
        (Some(host), None) => host,
        _ => String::new(),
    };
    let closes = named("Connection").any(|field| {
        let value = text(field.value);
        let mut options = value.split(',');
        options.any(|option| option.trim().eq_ignore_ascii_case("close"))
    });
    // Only the path of an address on this server: the form for proxies names a host of its own.
    let target = parsed.path.unwrap_or_default();
    if !target.starts_with('/') {
        return Some(Err(Response::bare("400 Bad Request")));
    }
    let path = target.split(['?', '#']).next().unwrap_or_default();
    let from_elsewhere = |field: &httparse::Header<'_>| {
        !matches!(text(field.value).as_str(), "same-origin" | "none")
    };
    let of_another = |field: &httparse::Header<'_>| {
        let origin = text(field.value);
        origin.strip_prefix("http://") != Some(host.as_str())
    };
    let is_cross_site =
        named("Sec-Fetch-Site").any(from_elsewhere) || named("Origin").any(of_another);
    let head = Head {
        request: Request {
            path: path.to_owned(),
            host,
            is_cross_site,
        },
        is_head,
        stays_open: parsed.version == Some(1) && !closes,
    };
    Some(Ok((head, length)))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn head(text: &str) -> Head {
        parse(text.as_bytes()).unwrap().unwrap().0
    }

    fn refusal(text: &str) -> &'static str {
        parse(text.as_bytes()).unwrap().unwrap_err().status
    }

    #[test]
    fn a_head_gives_the_path_without_the_query_and_the_one_host() {
        let read = head("GET /design/14/?v=1 HTTP/1.1\r\nhOsT: localhost:7414\r\n\r\n");
        let request = Request {
            path: "/design/14/".to_owned(),
            host: "localhost:7414".to_owned(),
            is_cross_site: false,
        };
        assert_eq!((read.request, read.is_head), (request, false));
        assert!(head("HEAD / HTTP/1.1\r\nHost: a\r\n\r\n").is_head);
        let two = head("GET / HTTP/1.1\r\nHost: localhost\r\nHost: example.org\r\n\r\n");
        assert_eq!(two.request.host, "");
        assert_eq!(head("GET / HTTP/1.1\r\n\r\n").request.host, "");
    }

    #[test]
    fn a_request_of_another_site_is_told_by_its_fields() {
        let is_cross_site = |field: &str| {
            let text = format!("GET / HTTP/1.1\r\nHost: localhost:7414\r\n{field}\r\n\r\n");
            head(&text).request.is_cross_site
        };
        for own in [
            "Accept: */*",
            "Sec-Fetch-Site: same-origin",
            "Sec-Fetch-Site: none",
            "Origin: http://localhost:7414",
        ] {
            assert!(!is_cross_site(own), "{own}");
        }
        for other in [
            "Sec-Fetch-Site: cross-site",
            "Sec-Fetch-Site: same-site",
            "sec-fetch-site: anything",
            "Origin: https://prints.example.org",
            "Origin: http://localhost:8000",
            "Origin: null",
        ] {
            assert!(is_cross_site(other), "{other}");
        }
    }

    #[test]
    fn a_connection_stays_open_unless_either_end_says_otherwise() {
        assert!(head("GET / HTTP/1.1\r\n\r\n").stays_open);
        assert!(!head("GET / HTTP/1.1\r\nConnection: te, Close\r\n\r\n").stays_open);
        assert!(!head("GET / HTTP/1.0\r\n\r\n").stays_open);
    }

    #[test]
    fn what_is_not_served_is_refused() {
        assert_eq!(refusal("hello\r\n\r\n"), "400 Bad Request");
        let of_a_proxy = "GET http://localhost/ HTTP/1.1\r\nHost: localhost\r\n\r\n";
        assert_eq!(refusal(of_a_proxy), "400 Bad Request");
        let options = "OPTIONS * HTTP/1.1\r\n\r\n";
        assert_eq!(refusal(options), "405 Method Not Allowed");
        for body in ["Content-Length: 3", "Transfer-Encoding: chunked"] {
            let request = format!("GET / HTTP/1.1\r\n{body}\r\n\r\nabc");
            assert_eq!(refusal(&request), "413 Content Too Large");
        }
        let empty = "GET / HTTP/1.1\r\nContent-Length: 0\r\n\r\n";
        assert!(parse(empty.as_bytes()).unwrap().is_ok());
        let fields = "A: b\r\n".repeat(FIELD_LIMIT + 1);
        let many = format!("GET / HTTP/1.1\r\n{fields}\r\n");
        assert_eq!(refusal(&many), "431 Request Header Fields Too Large");
    }

    #[test]
    fn a_head_that_does_not_end_is_refused() {
        let endless = format!("GET / HTTP/1.1\r\nA: {}", "b".repeat(2 * HEAD_LIMIT));
        let mut received = Vec::new();
        let read = read_head(&mut endless.as_bytes(), &mut received).unwrap();
        let refusal = read.unwrap().unwrap_err();
        assert_eq!(refusal.status, "431 Request Header Fields Too Large");
        assert!(received.len() < HEAD_LIMIT + 4096);
    }

    #[test]
    fn requests_that_arrive_together_or_in_pieces_are_taken_one_by_one() {
        /// Gives its bytes three at a time.
        struct InPieces<'a>(&'a [u8]);
        impl Read for InPieces<'_> {
            fn read(&mut self, bytes: &mut [u8]) -> io::Result<usize> {
                let some = self.0.len().min(3);
                self.0.read(&mut bytes[..some])
            }
        }
        let requests = b"GET /a HTTP/1.1\r\n\r\nGET /b HTTP/1.1\r\n\r\n";
        let paths = |stream: &mut dyn Read| {
            let (mut stream, mut received, mut paths) = (stream, Vec::new(), Vec::new());
            while let Some(head) = read_head(&mut stream, &mut received).unwrap() {
                paths.push(head.unwrap().request.path);
            }
            paths
        };
        assert_eq!(paths(&mut &requests[..]), ["/a", "/b"]);
        assert_eq!(paths(&mut InPieces(requests)), ["/a", "/b"]);
    }
}
