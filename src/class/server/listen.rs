//! Connections, with limits of their own: how many there are, and how long one may take to ask.

use axum::Router;
use hyper::server::conn::http1;
use hyper_util::rt::{TokioIo, TokioTimer};
use hyper_util::service::TowerToHyperService;
use std::future::Future;
use std::pin::pin;
use std::sync::Arc;
use std::time::Duration;
use tokio::net::TcpListener;
use tokio::sync::Semaphore;

/// Most connections at a time: 500 learners with a few each.
const MOST_CONNECTIONS: usize = 4_000;
/// Longest until the head of a question has come.
const LONGEST_HEAD: Duration = Duration::from_secs(15);
/// After a connection could not be taken: the system has no more of something.
const REST: Duration = Duration::from_millis(100);

/// Answers what comes in until `end` is there.
pub async fn listen(listener: TcpListener, router: Router, end: impl Future<Output = ()>) {
    let room = Arc::new(Semaphore::new(MOST_CONNECTIONS));
    let service = TowerToHyperService::new(router);
    let mut end = pin!(end);
    loop {
        let Ok(place) = Arc::clone(&room).acquire_owned().await else {
            return;
        };
        let accepted = tokio::select! {
            accepted = listener.accept() => accepted,
            () = &mut end => return,
        };
        let Ok((stream, _)) = accepted else {
            tokio::time::sleep(REST).await;
            continue;
        };
        // Small answers go out at once.
        let _ = stream.set_nodelay(true);
        let service = service.clone();
        tokio::spawn(async move {
            let mut connection = http1::Builder::new();
            connection
                .timer(TokioTimer::new())
                .header_read_timeout(LONGEST_HEAD)
                .max_buf_size(64 << 10);
            // One that breaks off is nothing to tell.
            let _ = connection
                .serve_connection(TokioIo::new(stream), service)
                .await;
            drop(place);
        });
    }
}
