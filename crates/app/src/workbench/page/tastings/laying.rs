//! A table is laid: how many seats, and a link for each, drawn for telephones where one can reach it.

use super::{Fields, leads};
use crate::tasting::lay;
use crate::workbench::answer::{Answer, Refusal, page};
use crate::workbench::desk::Desk;
use crate::workbench::door::Visitor;
use crate::workbench::frame::{Frame, token};
use axum::Form;
use axum::extract::{Path, State};
use axum::http::{HeaderMap, header};
use bench::tasting::advise;
use formula::read::Tasting;
use maud::{Markup, PreEscaped, html};
use publish::tasting::advice;
use qrcode::QrCode;
use qrcode::render::svg;

/// The form that lays a table; `again` where one was laid before.
pub fn laying(visitor: &Visitor, tasting: &Tasting, again: bool, headers: &HeaderMap) -> Markup {
    let advised = advise(tasting);
    let seats = tasting.panel.or(advised.map(|advice| advice.seats));
    html! {
        h2 { @if again { "Once more" } @else { "The table" } }
        p.fine { (advice(tasting, advised)) }
        form method="post" action={ "/tastings/" (tasting.name) "/lay" } {
            (token(visitor))
            label { "Seats " input type="number" name="seats" min="1" max="500" value=[seats]; } " "
            button { "Lay the table" }
        }
        p.fine { "Codes and orders are drawn, and each seat gets a link of its own." }
        @if !is_reached(host(headers)) {
            p.fine { "Telephones do not reach this workbench: it is open on this computer alone. To taste on telephones, close it and open it with " code { "wellproved serve BOOK --share" } " before you lay the table. Ballots of paper need none of it." }
        }
    }
}

pub async fn laid(
    State(desk): State<Desk>,
    visitor: Visitor,
    Path(name): Path<String>,
    headers: HeaderMap,
    Form(fields): Fields,
) -> Answer {
    leads(&visitor)?;
    let seats = fields.get("seats").map(|seats| seats.trim()).filter(|seats| !seats.is_empty());
    let whole = |seats: &str| seats.parse().map_err(|_| Refusal::unfit("A table has a whole number of seats.", "such as 24"));
    let seats = seats.map(whole).transpose()?;
    let laid = lay(desk.store()?, &desk.book(), &name, seats, None)
        .await
        .map_err(|failure| Refusal::conflict(quantity::print::capital(failure.words().0), ""))?;
    let (host, is_reached) = (host(&headers), is_reached(host(&headers)));
    let body = html! {
        main #work {
            h1 { (laid.held.tasting.title) ": a link for each seat" }
            @if is_reached {
                p { "Print this page and give each taster one of the cards, or let them point their telephone at it. The links are told this once: only their prints are kept. " a href={ "/tastings/" (name) } { "On to the count" } }
            } @else {
                p role="status" { b { "No telephone reaches these links: they lead to this computer alone." } }
                p { "To taste on telephones, clear the table, close the workbench, open it with " code { "wellproved serve BOOK --share" } " and lay the table anew. Or print the "
                    a href={ "/tastings/" (name) "/ballots" } { "ballots" } ", or taste at this computer, one seat after the other. The links are told this once. "
                    a href={ "/tastings/" (name) } { "On to the count" } }
            }
            ul.links {
                @for (word, number) in laid.words.iter().zip(1..) {
                    @let link = format!("http://{host}/taste/{word}");
                    li { b { "Seat " (number) } @if is_reached { (drawn(&link)) } a href=(link) { (link) } }
                }
            }
        }
    };
    page(&Frame::apart(&visitor, "Links for tasters"), &body)
}

/// The address under which the workbench was asked.
fn host(headers: &HeaderMap) -> &str {
    headers.get(header::HOST).and_then(|host| host.to_str().ok()).unwrap_or("localhost")
}

/// Whether another machine reaches what is asked under this address.
fn is_reached(host: &str) -> bool {
    let name =
        host.rsplit_once(':').filter(|(_, port)| port.bytes().all(|one| one.is_ascii_digit())).map_or(host, |(name, _)| name);
    let name = name.trim_matches(['[', ']']);
    let is_here = name.parse::<std::net::IpAddr>().is_ok_and(|address| address.is_loopback() || address.is_unspecified());
    !is_here && !name.eq_ignore_ascii_case("localhost") && !name.ends_with(".localhost")
}

/// An address for a telephone's camera.
fn drawn(address: &str) -> Markup {
    let code = QrCode::new(address.as_bytes());
    let drawn = code.map(|code| code.render::<svg::Color>().min_dimensions(140, 140).build()).unwrap_or_default();
    // The drawing begins with a declaration that belongs to a file of its own.
    let drawn = drawn.split_once("?>").map_or(drawn.as_str(), |(_, rest)| rest).to_owned();
    html! { (PreEscaped(drawn)) }
}

#[cfg(test)]
mod tests {
    use super::{drawn, is_reached};

    #[test]
    fn only_other_addresses_are_reached() {
        for here in ["127.0.0.1:4000", "localhost", "localhost:80", "[::1]:4000", "127.1.2.3", "0.0.0.0:80", "a.localhost"] {
            assert!(!is_reached(here), "{here}");
        }
        for there in ["192.168.1.20:4000", "[fe80::1]:4000", "bakery.example", "bakery.example:4000", "localhost.example"] {
            assert!(is_reached(there), "{there}");
        }
    }

    #[test]
    fn an_address_is_drawn() {
        assert!(drawn("http://192.168.1.20:4000/taste/abc").0.starts_with("<svg"), "{}", drawn("x").0);
    }
}
