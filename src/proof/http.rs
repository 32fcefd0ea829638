//! A small HTTP/1.1 server on threads, for the proof alone.
//!
//! In: a listener, and a function that answers a [`Request`]. Out: a [`Response`] for each, in order, on a
//! connection that is kept open. Each connection has a thread, so an answer that waits holds up no other.
//! [`request`] reads the heads of requests, [`response`] writes what is answered.
//!
//! It serves GET and HEAD. A request with a body is refused, because nothing here takes one. There is no
//! Date field: nothing served here is cached by age.

mod request;
mod response;

use std::io::{self, ErrorKind, Read};
use std::net::{Shutdown, TcpListener, TcpStream};
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;
use std::time::{Duration, Instant};

use request::{HEAD_LIMIT, read_head};

pub(super) use request::Request;
pub(super) use response::Response;

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

#[cfg(test)]
mod tests {
    use super::*;
    use std::io::{BufRead as _, Write as _};

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
