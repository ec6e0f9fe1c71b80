//! Asking over one connection, again and again, as a browser does.

use std::io::{Error, ErrorKind};
use std::net::{Ipv4Addr, SocketAddr};
use tokio::io::{AsyncBufReadExt, AsyncReadExt, AsyncWriteExt, BufReader};
use tokio::net::{TcpSocket, TcpStream};

/// Where the workbench is, and at which address of this machine somebody sits.
#[derive(Clone, Copy)]
pub struct Place {
    pub to: SocketAddr,
    pub from: Ipv4Addr,
}

/// A connection.
pub struct Line {
    place: Place,
    stream: Option<BufReader<TcpStream>>,
}

impl Line {
    pub const fn of(place: Place) -> Self {
        Self { place, stream: None }
    }

    /// Asks, and gives status and body; a connection that was closed while it rested is opened anew.
    pub async fn ask(&mut self, method: &str, path: &str, token: &str, body: &str) -> Result<(u16, String), Error> {
        if let Some(stream) = self.stream.take()
            && let Ok(answer) = self.asked(stream, method, path, token, body).await
        {
            return Ok(answer);
        }
        let stream = BufReader::new(connected(self.place).await?);
        self.asked(stream, method, path, token, body).await
    }

    async fn asked(
        &mut self,
        mut stream: BufReader<TcpStream>,
        method: &str,
        path: &str,
        token: &str,
        body: &str,
    ) -> Result<(u16, String), Error> {
        stream.get_mut().write_all(request(self.place, method, path, token, body).as_bytes()).await?;
        let (status, length) = head(&mut stream).await?;
        let mut bytes = Vec::new();
        match length {
            Some(length) => piece(&mut stream, length, &mut bytes).await?,
            None => in_pieces(&mut stream, &mut bytes).await?,
        }
        self.stream = Some(stream);
        Ok((status, String::from_utf8_lossy(&bytes).into_owned()))
    }
}

/// Looks on: what happens is given line by line.
pub async fn look_on(place: Place, path: &str) -> Result<BufReader<TcpStream>, Error> {
    let mut stream = BufReader::new(connected(place).await?);
    stream.get_mut().write_all(request(place, "GET", path, "", "").as_bytes()).await?;
    Ok(stream)
}

async fn connected(place: Place) -> Result<TcpStream, Error> {
    let socket = TcpSocket::new_v4()?;
    socket.bind((place.from, 0).into())?;
    let stream = socket.connect(place.to).await?;
    stream.set_nodelay(true)?;
    Ok(stream)
}

fn request(place: Place, method: &str, path: &str, token: &str, body: &str) -> String {
    let kind = "Content-Type: application/x-www-form-urlencoded\r\n";
    let said =
        if method == "POST" { format!("{kind}Content-Length: {}\r\nx-token: {token}\r\n", body.len()) } else { String::new() };
    format!("{method} {path} HTTP/1.1\r\nHost: {}\r\nx-parts: 1\r\n{said}\r\n{body}", place.to)
}

async fn piece(stream: &mut BufReader<TcpStream>, length: usize, bytes: &mut Vec<u8>) -> Result<(), Error> {
    let begun = bytes.len();
    bytes.resize(begun + length, 0);
    stream.read_exact(&mut bytes[begun..]).await?;
    Ok(())
}

/// Reads what comes in pieces, each after its length (RFC 9112, 7.1).
async fn in_pieces(stream: &mut BufReader<TcpStream>, bytes: &mut Vec<u8>) -> Result<(), Error> {
    let mut line = String::new();
    loop {
        line.clear();
        stream.read_line(&mut line).await?;
        let length = usize::from_str_radix(line.trim_end(), 16).map_err(|_| Error::from(ErrorKind::InvalidData))?;
        piece(stream, length, bytes).await?;
        stream.read_line(&mut line).await?;
        if length == 0 {
            return Ok(());
        }
    }
}

/// The status, and how long the body is where that is told beforehand.
async fn head(stream: &mut BufReader<TcpStream>) -> Result<(u16, Option<usize>), Error> {
    let (mut status, mut length, mut line) = (0, Some(0), String::new());
    loop {
        line.clear();
        if stream.read_line(&mut line).await? == 0 {
            return Err(ErrorKind::UnexpectedEof.into());
        }
        let told = line.trim_end().to_ascii_lowercase();
        if let Some(rest) = told.strip_prefix("http/1.1 ") {
            status = rest.split(' ').next().and_then(|number| number.parse().ok()).unwrap_or_default();
        } else if let Some(rest) = told.strip_prefix("content-length: ") {
            length = rest.parse().ok();
        } else if told == "transfer-encoding: chunked" {
            length = None;
        } else if told.is_empty() {
            return Ok((status, length));
        }
    }
}
