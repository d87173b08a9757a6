//! Connections, with limits of their own: how many there are, and how long one may take to ask.

use axum::Router;
use hyper::server::conn::http1;
use hyper_util::rt::{TokioIo, TokioTimer};
use hyper_util::service::TowerToHyperService;
use std::future::Future;
use std::path::{Path, PathBuf};
use std::pin::pin;
use std::sync::Arc;
use std::time::Duration;
use tokio::io::{AsyncRead, AsyncWrite};
use tokio::net::TcpListener;
use tokio::sync::Semaphore;
use tokio::time::timeout;
use tokio_rustls::TlsAcceptor;
use tokio_rustls::rustls::ServerConfig;
use tokio_rustls::rustls::crypto::ring;
use tokio_rustls::rustls::pki_types::pem::PemObject;
use tokio_rustls::rustls::pki_types::{CertificateDer, PrivateKeyDer};

/// Most connections at a time: 500 learners with a few each.
const MOST_CONNECTIONS: usize = 4_000;
/// Longest until the head of a question has come.
const LONGEST_HEAD: Duration = Duration::from_secs(15);
/// After a connection could not be taken: the system has no more of something.
const REST: Duration = Duration::from_millis(100);

/// The certificate of a server, with its key: PEM files (RFC 7468), the certificate first and what vouches for it after it.
///
/// # Errors
/// Which of the files cannot be used, and why.
pub fn certificate(chain: &Path, key: &Path) -> Result<TlsAcceptor, (PathBuf, String)> {
    let of = |file: &Path, reason: &dyn ToString| (file.to_owned(), reason.to_string());
    let read = CertificateDer::pem_file_iter(chain).map_err(|error| of(chain, &error))?;
    let certificates = read
        .collect::<Result<Vec<_>, _>>()
        .map_err(|error| of(chain, &error))?;
    let private = PrivateKeyDer::from_pem_file(key).map_err(|error| of(key, &error))?;
    let config = ServerConfig::builder_with_provider(Arc::new(ring::default_provider()))
        .with_safe_default_protocol_versions()
        .map_err(|error| of(chain, &error))?
        .with_no_client_auth()
        .with_single_cert(certificates, private)
        .map_err(|error| of(chain, &error))?;
    Ok(TlsAcceptor::from(Arc::new(config)))
}

/// Answers what comes in until `end` is there; by TLS where there is a certificate.
pub async fn listen(
    listener: TcpListener,
    router: Router,
    certificate: Option<TlsAcceptor>,
    end: impl Future<Output = ()>,
) {
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
        let (service, certificate) = (service.clone(), certificate.clone());
        tokio::spawn(async move {
            match certificate {
                None => answer(stream, service).await,
                Some(certificate) => {
                    if let Ok(Ok(stream)) = timeout(LONGEST_HEAD, certificate.accept(stream)).await
                    {
                        answer(stream, service).await;
                    }
                }
            }
            drop(place);
        });
    }
}

/// Answers on one connection until it ends.
async fn answer(
    stream: impl AsyncRead + AsyncWrite + Unpin + Send + 'static,
    service: TowerToHyperService<Router>,
) {
    let mut connection = http1::Builder::new();
    connection
        .timer(TokioTimer::new())
        .header_read_timeout(LONGEST_HEAD)
        .max_buf_size(64 << 10);
    // One that breaks off is nothing to tell.
    let _ = connection
        .serve_connection(TokioIo::new(stream), service)
        .await;
}
