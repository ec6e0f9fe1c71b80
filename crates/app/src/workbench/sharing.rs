//! Sharing: the addresses at which others find the workbench, and how a telephone's camera is told of them.

use crate::failure::Failure;
use qrcode::render::{svg, unicode};
use qrcode::{EcLevel, QrCode};
use std::net::{IpAddr, Ipv4Addr, SocketAddr, UdpSocket};

/// Where a workbench is found.
#[derive(Clone, Copy, Debug)]
pub struct Sharing(SocketAddr);

impl Sharing {
    /// Of one that listens at an address.
    pub const fn at(listening: SocketAddr) -> Self {
        Self(listening)
    }

    /// On this machine.
    pub fn here(self) -> String {
        let ip = if self.0.ip().is_unspecified() { IpAddr::V4(Ipv4Addr::LOCALHOST) } else { self.0.ip() };
        format!("http://{}", SocketAddr::new(ip, self.0.port()))
    }

    /// On the network.
    pub fn away(self) -> String {
        let ip =
            if self.0.ip().is_unspecified() { in_the_network().unwrap_or(IpAddr::V4(Ipv4Addr::LOCALHOST)) } else { self.0.ip() };
        format!("http://{}", SocketAddr::new(ip, self.0.port()))
    }
}

/// The address under which the network knows this machine: the one that a message to elsewhere would leave from.
/// None is sent; the place is one that the standard keeps for documentation (RFC 5737).
pub fn in_the_network() -> Option<IpAddr> {
    let socket = UdpSocket::bind((Ipv4Addr::UNSPECIFIED, 0)).ok()?;
    socket.connect((Ipv4Addr::new(198, 51, 100, 1), 9)).ok()?;
    Some(socket.local_addr().ok()?.ip()).filter(|ip| !ip.is_loopback() && !ip.is_unspecified())
}

/// The way in as it is told in the terminal: in words, and as a code for cameras, dark on light whatever the colours.
pub fn for_cameras(way: &str) -> String {
    let words = format!("Others on this network come in as helpers, until it closes, by\n{way}");
    let Ok(code) = QrCode::with_error_correction_level(way, EcLevel::L) else { return words };
    // Terminals write light on dark: what is dark in the code is left out.
    let (dark, light) = (unicode::Dense1x2::Light, unicode::Dense1x2::Dark);
    format!("{words}\n\n{}\n", code.render::<unicode::Dense1x2>().dark_color(dark).light_color(light).build())
}

/// The same for a page.
pub fn as_drawing(way: &str) -> Result<String, Failure> {
    let code = QrCode::with_error_correction_level(way, EcLevel::M).map_err(|error| Failure::new(error.to_string()))?;
    let drawn = code.render::<svg::Color>().min_dimensions(240, 240).build();
    // Within a page it is an element and no document.
    Ok(drawn.split_once("?>").map_or(drawn.clone(), |(_, element)| element.to_owned()))
}
