//! A small HTTP/1.1 server on threads, for the proof alone.
//!
//! In: a listener, and a function that answers a [`Request`]. Out: a [`Response`] for each, in order, on a
//! connection that is kept open. Each connection has a thread, so an answer that waits holds up no other.
//! `httparse` reads the heads of requests.
//!
//! It serves GET and HEAD. A request with a body is refused, because nothing here takes one. There is no
//! Date field: nothing served here is cached by age.

use std::borrow::Cow;
use std::io::{self, ErrorKind, Read, Write};
use std::net::{Shutdown, TcpListener, TcpStream};
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;
use std::time::{Duration, Instant};

/// The longest head of a request, in bytes: well above what browsers send.
const HEAD_LIMIT: usize = 16 * 1024;
/// The most fields in the head of a request.
const FIELD_LIMIT: usize = 100;
/// How many connections are served at once. A browser opens six to one host.
pub(super) const CONNECTION_LIMIT: usize = 128;
/// How long a connection may stay open without a whole request, and how long a client may take to read.
pub(super) const PATIENCE: Duration = Duration::from_secs(60);
/// How long to wait for a client to close, and how long to pause after the system refused a connection,
/// for example because it has no free file descriptors.
const PAUSE: Duration = Duration::from_secs(1);
/// The number of refusals in a row after which the listener counts as broken.
const REFUSAL_LIMIT: usize = 60;
/// The stack of a connection's thread. It can be small, because the buffers are on the heap.
const STACK_BYTES: usize = 256 * 1024;

/// A request for a page or file.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct Request {
    /// The path of the address as sent: neither decoded nor normalised, without the query.
    pub(super) path: String,
    /// The host that the client asked, with its port; empty where the request names none, or several.
    pub(super) host: String,
    /// Whether the browser says that a page of another site or port made the request (Fetch Metadata Request
    /// Headers, W3C; the field Origin, RFC 6454, where a browser sends none of those).
    pub(super) is_cross_site: bool,
}

/// The client at the other end of a connection.
pub(super) struct Client<'a>(&'a TcpStream);

impl Client<'_> {
    /// Whether the client has closed the connection, as a browser does when its user leaves the page.
    pub(super) fn is_gone(&self) -> bool {
        let mut byte = [0];
        let peeked = self
            .0
            .set_nonblocking(true)
            .and_then(|()| self.0.peek(&mut byte));
        let restored = self.0.set_nonblocking(false);
        match peeked {
            Ok(bytes) => bytes == 0 || restored.is_err(),
            Err(error) => error.kind() != ErrorKind::WouldBlock || restored.is_err(),
        }
    }
}

/// The response to a request.
#[derive(Debug)]
pub(super) struct Response {
    /// Code and phrase: "404 Not Found".
    status: &'static str,
    /// Fields beside the length and the connection.
    fields: Vec<(&'static str, Cow<'static, str>)>,
    body: Cow<'static, [u8]>,
}

impl Response {
    /// A body of the media type `kind`.
    pub(super) fn ok(kind: &'static str, body: impl Into<Cow<'static, [u8]>>) -> Response {
        Response {
            status: "200 OK",
            fields: vec![("Content-Type", kind.into())],
            body: body.into(),
        }
    }

    /// A status whose phrase is also the body.
    pub(super) fn bare(status: &'static str) -> Response {
        Response {
            status,
            ..Response::ok("text/plain; charset=utf-8", status.as_bytes())
        }
    }

    /// A redirection to `location`.
    pub(super) fn redirect(location: String) -> Response {
        Response::bare("307 Temporary Redirect").with("Location", location)
    }

    /// The same response with another status.
    pub(super) fn status(self, status: &'static str) -> Response {
        Response { status, ..self }
    }

    /// The same response with one more field. `value` has no line break: it is an address or a constant.
    pub(super) fn with(
        mut self,
        name: &'static str,
        value: impl Into<Cow<'static, str>>,
    ) -> Response {
        self.fields.push((name, value.into()));
        self
    }

    /// The same response with the fields that keep other sites from embedding or reading it.
    pub(super) fn for_this_site_alone(self) -> Response {
        self.with("Cross-Origin-Resource-Policy", "same-origin")
            .with("Cross-Origin-Opener-Policy", "same-origin")
            .with("X-Frame-Options", "DENY")
            .with("X-Content-Type-Options", "nosniff")
            .with("Referrer-Policy", "no-referrer")
    }

    fn write(&self, out: &mut impl Write, is_head: bool, stays_open: bool) -> io::Result<()> {
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

/// Answers every connection to `listener`, each on a thread of its own, until the process ends. A connection
/// without a whole request for `patience` is closed.
///
/// # Errors
/// Where the listener is broken: the system refuses connections for a minute.
pub(super) fn serve<A>(listener: &TcpListener, patience: Duration, answer: A) -> io::Result<()>
where
    A: Fn(&Request, &Client<'_>) -> Response + Send + Sync + 'static,
{
    let answer = Arc::new(answer);
    let open = Arc::new(AtomicUsize::new(0));
    let mut refusals = 0;
    loop {
        let stream = match listener.accept() {
            Ok((stream, _)) => stream,
            Err(error) if refusals == REFUSAL_LIMIT => return Err(error),
            Err(_) => {
                refusals += 1;
                thread::sleep(PAUSE);
                continue;
            }
        };
        refusals = 0;
        let place = Place::take(&open);
        let answer = Arc::clone(&answer);
        let connection = thread::Builder::new()
            .name("proof connection".to_owned())
            .stack_size(STACK_BYTES);
        // Without a thread the connection is dropped, and the client may try again.
        let _ = connection.spawn(move || {
            let place = place;
            // A client that closes or stalls ends its own connection, and nothing else.
            let _ = if place.is_within_limit {
                converse(&stream, patience, &*answer)
            } else {
                let refusal = Response::bare("503 Service Unavailable");
                let sent = refusal.write(&mut &stream, false, false);
                sent.and_then(|()| close(&stream))
            };
        });
    }
}

/// A connection counted among those open.
struct Place {
    open: Arc<AtomicUsize>,
    is_within_limit: bool,
}

impl Place {
    fn take(open: &Arc<AtomicUsize>) -> Place {
        let before = open.fetch_add(1, Ordering::Relaxed);
        Place {
            open: Arc::clone(open),
            is_within_limit: before < CONNECTION_LIMIT,
        }
    }
}

impl Drop for Place {
    fn drop(&mut self) {
        self.open.fetch_sub(1, Ordering::Relaxed);
    }
}

/// Answers the requests of one connection in order, until the client closes it or a request ends it.
fn converse(
    stream: &TcpStream,
    patience: Duration,
    answer: &dyn Fn(&Request, &Client<'_>) -> Response,
) -> io::Result<()> {
    stream.set_nodelay(true)?;
    stream.set_write_timeout(Some(patience))?;
    let mut received = Vec::new();
    while let Some(head) = read_head(&mut UntilLate::new(stream, patience), &mut received)? {
        let (response, is_head, stays_open) = match head {
            Ok(head) => {
                let response = answer(&head.request, &Client(stream));
                (response, head.is_head, head.stays_open)
            }
            Err(refusal) => (refusal, false, false),
        };
        response.write(&mut &*stream, is_head, stays_open)?;
        if !stays_open {
            return close(stream);
        }
    }
    Ok(())
}

/// Reads from a client until the time for one request is over, however slowly its bytes arrive.
struct UntilLate<'a> {
    stream: &'a TcpStream,
    late: Instant,
}

impl UntilLate<'_> {
    fn new(stream: &TcpStream, patience: Duration) -> UntilLate<'_> {
        UntilLate {
            stream,
            late: Instant::now() + patience,
        }
    }
}

impl Read for UntilLate<'_> {
    fn read(&mut self, bytes: &mut [u8]) -> io::Result<usize> {
        let left = self.late.saturating_duration_since(Instant::now());
        if left.is_zero() {
            return Err(ErrorKind::TimedOut.into());
        }
        self.stream.set_read_timeout(Some(left))?;
        self.stream.read(bytes)
    }
}

/// Closes a connection once its response is sent. Unread bytes from the client are read first, because
/// otherwise the system could discard the response as well (RFC 9112, section 9.6).
fn close(mut stream: &TcpStream) -> io::Result<()> {
    stream.shutdown(Shutdown::Write)?;
    stream.set_read_timeout(Some(PAUSE))?;
    let mut unread = [0; 4096];
    for _ in 0..HEAD_LIMIT / unread.len() {
        if stream.read(&mut unread)? == 0 {
            break;
        }
    }
    Ok(())
}

/// The head of a request.
#[derive(Debug)]
struct Head {
    request: Request,
    /// Whether the request is HEAD: the response then has no body.
    is_head: bool,
    /// Whether another request may follow on the connection.
    stays_open: bool,
}

/// Reads the head of the next request, and takes it out of `received`, which holds what was read and not
/// yet used. `None` where the client closed the connection before it began a request.
fn read_head(
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
    use std::io::BufRead as _;

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
    fn a_connection_without_a_request_is_closed_however_slowly_its_bytes_arrive() {
        let listener = TcpListener::bind(("127.0.0.1", 0)).unwrap();
        let address = listener.local_addr().unwrap();
        let patience = Duration::from_millis(400);
        thread::spawn(move || serve(&listener, patience, |_, _| Response::bare("200 OK")));
        let mut idle = TcpStream::connect(address).unwrap();
        let mut slow = TcpStream::connect(address).unwrap();
        let begun = Instant::now();
        let writer = slow.try_clone().unwrap();
        let dripping = thread::spawn(move || {
            let mut writer = writer;
            // It stops where the connection is closed.
            while begun.elapsed() < Duration::from_secs(20) && writer.write_all(b"G").is_ok() {
                thread::sleep(Duration::from_millis(50));
            }
            begun.elapsed()
        });
        let mut text = Vec::new();
        assert_eq!(idle.read_to_end(&mut text).unwrap(), 0);
        let _ = slow.read_to_end(&mut text);
        assert!(dripping.join().unwrap() < Duration::from_secs(15));
    }

    /// RFC 9112, section 9.3.
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

    /// A server of its own address, and that address.
    fn serving<A>(answer: A) -> std::net::SocketAddr
    where
        A: Fn(&Request, &Client<'_>) -> Response + Send + Sync + 'static,
    {
        let listener = TcpListener::bind(("127.0.0.1", 0)).unwrap();
        let address = listener.local_addr().unwrap();
        thread::spawn(move || serve(&listener, PATIENCE, answer));
        address
    }

    /// Sends a request and reads one response: its first line and its body.
    fn ask(stream: &TcpStream, request: &str) -> (String, String) {
        (&*stream).write_all(request.as_bytes()).unwrap();
        let mut reader = io::BufReader::new(stream);
        let mut status = String::new();
        reader.read_line(&mut status).unwrap();
        let mut length = 0;
        loop {
            let mut line = String::new();
            reader.read_line(&mut line).unwrap();
            if let Some(value) = line.strip_prefix("Content-Length: ") {
                length = value.trim().parse().unwrap();
            }
            if line == "\r\n" {
                break;
            }
        }
        if request.starts_with("HEAD") {
            length = 0;
        }
        let mut body = vec![0; length];
        reader.read_exact(&mut body).unwrap();
        assert_eq!(reader.buffer(), b"", "more than one response");
        (status.trim().to_owned(), String::from_utf8(body).unwrap())
    }

    #[test]
    fn one_connection_serves_several_requests_and_the_head_alone() {
        let address =
            serving(|request, _| Response::ok("text/plain", request.path.clone().into_bytes()));
        let stream = TcpStream::connect(address).unwrap();
        let ok = "HTTP/1.1 200 OK".to_owned();
        let first = ask(&stream, "GET /one HTTP/1.1\r\n\r\n");
        assert_eq!(first, (ok.clone(), "/one".to_owned()));
        let head = ask(&stream, "HEAD /two HTTP/1.1\r\n\r\n");
        assert_eq!(head, (ok.clone(), String::new()));
        let third = ask(&stream, "GET /three HTTP/1.1\r\n\r\n");
        assert_eq!(third, (ok, "/three".to_owned()));
        let refused = ask(&stream, "PUT / HTTP/1.1\r\n\r\n");
        assert_eq!(refused.0, "HTTP/1.1 405 Method Not Allowed");
        assert_eq!((&stream).read(&mut [0]).unwrap(), 0, "it stays open");
    }

    #[test]
    fn a_client_that_leaves_is_seen_and_one_that_stays_is_not_taken_for_it() {
        let (tell, told) = std::sync::mpsc::channel();
        let tell = std::sync::Mutex::new(tell);
        let address = serving(move |_, client| {
            let was_there = !client.is_gone();
            while !client.is_gone() {
                thread::sleep(Duration::from_millis(5));
            }
            tell.lock().unwrap().send(was_there).unwrap();
            Response::bare("410 Gone")
        });
        let mut stream = TcpStream::connect(address).unwrap();
        stream.write_all(b"GET / HTTP/1.1\r\n\r\n").unwrap();
        assert!(told.recv_timeout(Duration::from_millis(100)).is_err());
        drop(stream);
        assert!(told.recv_timeout(PATIENCE).unwrap());
    }

    #[test]
    fn beyond_the_limit_connections_are_refused_until_others_close() {
        let address = serving(|_, _| Response::bare("200 OK"));
        let open = || TcpStream::connect(address).unwrap();
        let get = "GET / HTTP/1.1\r\n\r\n";
        let all: Vec<TcpStream> = (0..CONNECTION_LIMIT).map(|_| open()).collect();
        for stream in &all {
            assert_eq!(ask(stream, get).0, "HTTP/1.1 200 OK");
        }
        let mut refused = String::new();
        open().read_to_string(&mut refused).unwrap();
        assert!(refused.starts_with("HTTP/1.1 503 "), "{refused}");
        drop(all);
        // The threads of the closed connections end a moment later.
        for _ in 0..1000 {
            let stream = open();
            let mut first = [0; 12];
            (&stream).write_all(get.as_bytes()).unwrap();
            let read = (&stream).read_exact(&mut first);
            if read.is_ok() && &first == b"HTTP/1.1 200" {
                return;
            }
            thread::sleep(Duration::from_millis(5));
        }
        panic!("no connection is served again");
    }
}
