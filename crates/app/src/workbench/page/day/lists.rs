//! What a day gives besides: a list to work from, one to buy by, a calendar, a sheet of paper.

use super::asked::Asked;
use super::{Pairs, WAY, asking, plan};
use crate::paper::{Paper, Printed, set};
use crate::workbench::answer::{Answer, Refusal, page};
use crate::workbench::desk::Desk;
use crate::workbench::door::Visitor;
use crate::workbench::frame::Frame;
use axum::extract::{Query, State};
use axum::http::header;
use axum::response::IntoResponse;
use maud::{Markup, html};
use publish::Units;

pub async fn prep(State(desk): State<Desk>, visitor: Visitor, Query(pairs): Query<Pairs>) -> Answer {
    listed(&desk, &visitor, pairs, "What to do, by day and hour", |opened, day| {
        publish::day::prep_markup(day, Units::of(&opened.book.settings))
    })
}

pub async fn shopping(State(desk): State<Desk>, visitor: Visitor, Query(pairs): Query<Pairs>) -> Answer {
    listed(&desk, &visitor, pairs, "What to buy", |opened, day| {
        publish::day::shopping_markup(day, &opened.book.prices, &opened.book.larder)
    })
}

fn listed(
    desk: &Desk,
    visitor: &Visitor,
    pairs: Pairs,
    title: &str,
    markup: impl Fn(&crate::book::Opened, &plan::day::Timeline) -> Markup,
) -> Answer {
    let opened = desk.book();
    let asked = Asked { pairs };
    let (wanted, day) = tokio::task::block_in_place(|| plan(&opened, &asked))?;
    let served: Vec<&str> = wanted.formulas.iter().map(|formula| formula.head.title.as_str()).collect();
    let body = html! {
        main #work.list {
            h1 { (title) }
            p.fine { (served.join(" · ")) ", on the table on " (day.served.strftime("%A %-d %B at %H:%M").to_string()) ". " a href=(asking(WAY.address, &asked.pairs)) { "Back to the day" } }
            (markup(&opened, &day))
        }
    };
    page(&Frame::of(visitor, title, ""), &body)
}

pub async fn calendar(State(desk): State<Desk>, _visitor: Visitor, Query(pairs): Query<Pairs>) -> Answer {
    let opened = desk.book();
    let (wanted, day) = tokio::task::block_in_place(|| plan(&opened, &Asked { pairs }))?;
    let text = publish::day::calendar(&day, Units::of(&opened.book.settings), &wanted.now);
    let heads = [
        (header::CONTENT_TYPE, "text/calendar; charset=utf-8"),
        (header::CONTENT_DISPOSITION, "attachment; filename=\"day.ics\""),
    ];
    Ok((heads, text).into_response())
}

pub async fn prep_pdf(State(desk): State<Desk>, _visitor: Visitor, Query(pairs): Query<Pairs>) -> Answer {
    let opened = desk.book();
    let made = tokio::task::block_in_place(|| {
        let (_, day) = plan(&opened, &Asked { pairs })?;
        let settings = &opened.book.settings;
        let words = publish::print::prep(&day, &settings.language, Units::of(settings));
        set(Printed::Prep, Paper::A4, &words).map_err(|failure| Refusal::amiss(&failure))
    });
    Ok(([(header::CONTENT_TYPE, "application/pdf")], made?).into_response())
}
