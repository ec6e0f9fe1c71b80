//! Listening: each connection with its patience and its end.

use super::door::From;
use axum::Router;
use axum::extract::Request;
use hyper::body::Incoming;
use hyper::server::conn::http1;
use hyper::service::{Service, service_fn};
use hyper_util::rt::{TokioIo, TokioTimer};
use hyper_util::server::graceful::GracefulShutdown;
use hyper_util::service::TowerToHyperService;
use std::future::Future;
use std::sync::Arc;
use std::time::Duration;
use tokio::net::{TcpListener, TcpStream};
use tokio::sync::Semaphore;

/// How long the head of a request may take, and a connection may rest between two of them.
const HEAD: Duration = Duration::from_secs(10);
/// How long what is being answered may take once it is to close.
const FAREWELL: Duration = Duration::from_millis(800);
/// So many connections at once; more are turned away.
const MOST: usize = 512;
/// After the system refuses a connection, as it does where too many files are open.
const PAUSE: Duration = Duration::from_millis(50);

/// Answers until it is asked to stop, and then what it is still answering.
pub async fn listen(listener: TcpListener, app: Router, stop: impl Future<Output = ()>) {
    let (graceful, seats) = (GracefulShutdown::new(), Arc::new(Semaphore::new(MOST)));
    let mut http = http1::Builder::new();
    http.timer(TokioTimer::new()).header_read_timeout(HEAD).max_headers(64).max_buf_size(64 * 1024);
    tokio::pin!(stop);
    loop {
        let came = tokio::select! { came = listener.accept() => came, () = &mut stop => break };
        let Ok((stream, peer)) = came else {
            tokio::time::sleep(PAUSE).await;
            continue;
        };
        let (Ok(seat), Ok(arrived_at)) = (Arc::clone(&seats).try_acquire_owned(), stream.local_addr()) else { continue };
        let answering = answering(&app, From { peer, arrived_at });
        let connection = graceful.watch(http.serve_connection(at_once(stream), answering));
        tokio::spawn(async move {
            // One that breaks off is nobody else's concern.
            let _ = connection.await;
            drop(seat);
        });
    }
    drop(listener);
    let _ = tokio::time::timeout(FAREWELL, graceful.shutdown()).await;
}

/// Small answers go out as they are made.
fn at_once(stream: TcpStream) -> TokioIo<TcpStream> {
    let _ = stream.set_nodelay(true);
    TokioIo::new(stream)
}

fn answering(
    app: &Router,
    from: From,
) -> impl Service<Request<Incoming>, Response = axum::response::Response, Error = std::convert::Infallible, Future: Send> + use<>
{
    let app = TowerToHyperService::new(app.clone());
    service_fn(move |mut request: Request<Incoming>| {
        request.extensions_mut().insert(from);
        app.call(request)
    })
}
