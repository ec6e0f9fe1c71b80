//! A formula on the bench: its sheet, edited in place, and beside it what it will do.

mod foresight;
mod gestures;
mod kitchen;
mod readers;
mod remarks;
mod sheet;
mod steps;
mod text;
mod today;

use crate::book::Opened;
use crate::workbench::answer::{Answer, PARTED, Refusal, in_two_turns, page, parts, see, wants_parts};
use crate::workbench::desk::Desk;
use crate::workbench::door::{Role, Visitor};
use crate::workbench::frame::Frame;
use crate::workbench::hand::{Reach, Way};
use crate::workbench::page::addresses::{asking, coded, of_formula};
use crate::workbench::page::changes::undoing;
use axum::Router;
use axum::extract::{Form, Path, Query, State};
use axum::http::HeaderMap;
use axum::routing::{get, post};
use bench::gesture::gesture;
use formula::source::Source;
use formula::{Checked, Formula};
use gestures::Said;
pub use kitchen::Wanted;
use maud::{Markup, html};
pub use today::Patience;

pub fn routes() -> Router<Desk> {
    let here = Router::new()
        .route("/formula/{name}", get(bench_page))
        .route("/formula/{name}/parts", get(again))
        .route("/formula/{name}/try", post(tried))
        .route("/formula/{name}/do", post(done))
        .route("/formula/{name}/back", post(back))
        .route("/formula/{name}/forth", post(forth));
    here.merge(text::routes()).merge(readers::routes()).merge(today::routes()).merge(foresight::routes())
}

/// A formula as it stands in the book.
pub struct OnBench<'o> {
    pub opened: &'o Opened,
    pub source: &'o Source,
    /// The name of the file in the book.
    pub file: String,
}

impl<'o> OnBench<'o> {
    pub fn of(opened: &'o Opened, name: &str) -> Result<Self, Refusal> {
        let source = opened
            .book
            .formulas
            .get(name)
            .ok_or_else(|| Refusal::no_such(format!("The book has no formula called “{name}”.")))?;
        let is_it = |key: &&String| {
            key.starts_with("formulas/") && opened.text.files.get(*key).is_some_and(|one| one.file == source.file)
        };
        let file = opened.text.files.keys().find(is_it).cloned().unwrap_or_default();
        Ok(Self { opened, source, file })
    }

    /// The name of the formula.
    pub fn name(&self) -> &str {
        let stem = self.source.file.rsplit('/').next().unwrap_or_default();
        stem.strip_suffix(".toml").unwrap_or(stem)
    }

    /// A mark of all that a forecast of it rests on, what trials taught included.
    pub fn rests_on(&self, wanted: &Wanted) -> Result<String, Refusal> {
        let taught = self.opened.taught(&wanted.kitchen(self.opened)?);
        Ok(format!("{} {}", self.opened.rests_on(self.name()), store::hash(&format!("{taught:?}"))))
    }

    pub fn checked(&self) -> Checked<Formula> {
        self.opened.book.revised(self.source)
    }
}

async fn bench_page(
    State(desk): State<Desk>,
    visitor: Visitor,
    Path(name): Path<String>,
    Query(wanted): Query<Wanted>,
) -> Answer {
    let opened = desk.book();
    let one = OnBench::of(&opened, &name)?;
    let reach = desk.reach(&one.file).await;
    let markup = tokio::task::block_in_place(|| -> Result<_, Refusal> {
        let checked = one.checked();
        let title = checked.value.head.title.clone();
        let (sheet, ahead) = sheet_and_ahead(&one, &checked, &wanted)?;
        let body = html! {
            main #work.bench data-formula=(name) data-file=(one.file) {
                (heading(&one, &checked.value, &visitor))
                nav.jumps aria-label="On this page" {
                    a href="#sheet" { "The sheet" } a href="#ahead" { "What it will do" } a href="#today" { "The day" }
                }
                (kitchen::markup(&opened, &checked.value, &wanted))
                div.surface {
                    div.hands { (strokes(&one, &reach, &visitor)) (sheet) }
                    (foresight::frame(&ahead))
                }
                (today::frame(&name))
                // For eyes alone: it stands beside the sheet as well.
                a #foot.foot href="#ahead" hidden aria-hidden="true" tabindex="-1" {}
            }
        };
        Ok((title, body))
    });
    let (title, body) = markup?;
    page(&Frame::of(&visitor, &title, ""), &body)
}

fn heading(one: &OnBench, formula: &Formula, visitor: &Visitor) -> Markup {
    let name = &formula.name;
    html! {
        h1 { (formula.head.title) }
        (ways(name, visitor, ""))
        p.fine { "In " (one.file) ". What you change is written there at once." }
        details.keys {
            summary { "By keyboard" }
            p.fine {
                "Type a weight, a percentage, spoons (“2 tbsp”) or eggs (“1 M”): the other figures follow. Enter or Tab writes it, Esc takes it back. "
                kbd { "↑" } " " kbd { "↓" } " go from line to line, with " kbd { "Alt" } " they move the line; "
                kbd { "Ctrl" } " " kbd { "Z" } " undoes, " kbd { "Ctrl" } " " kbd { "Y" } " does again."
            }
        }
    }
}

/// The ways from a formula; `here` is the one that is open.
pub fn ways(name: &str, visitor: &Visitor, here: &str) -> Markup {
    let own = [("", "Sheet"), ("/text", "Text"), ("/page", "As readers see it")];
    let further = super::OF_A_FORMULA.iter().filter(|way| visitor.role >= way.role).map(|way| (way.address, way.title));
    html! {
        nav.ways aria-label="This formula" {
            @for (address, title) in own.into_iter().chain(further) {
                a href=(of_formula(name, address)) aria-current=[(address == here).then_some("page")] { (title) }
            }
            a href=(asking("/day", &[("formula", name), ("serve", "09:30")])) { "Plan the day" }
            @if visitor.role >= Role::Owner { a href={ "/publish#of-" (coded(name)) } { "Publish and print" } }
        }
    }
}

/// What changes with every stroke besides the strokes themselves: the remarks, the sheet.
fn all_parts(one: &OnBench, checked: &Checked<Formula>, wanted: &Wanted) -> Result<Markup, Refusal> {
    let kitchen = wanted.kitchen(one.opened)?;
    let found = one.opened.proof_read(checked.clone(), &kitchen);
    let remarks = remarks::Remarks::of(&checked.value, &one.source.text, &found);
    Ok(html! {
        (remarks.of_the_whole(&checked.value.name))
        (sheet::markup(&checked.value, &kitchen, one, &remarks))
    })
}

/// The sheet, and what it will do, worked out side by side.
fn sheet_and_ahead(one: &OnBench, checked: &Checked<Formula>, wanted: &Wanted) -> Result<(Markup, Markup), Refusal> {
    let (sheet, ahead) = rayon::join(|| all_parts(one, checked, wanted), || foresight::parts(one.opened, checked, wanted));
    Ok((sheet?, ahead?))
}

fn strokes(one: &OnBench, reach: &Reach, visitor: &Visitor) -> Markup {
    html! { div #strokes { (undoing(&one.file, &of_formula(one.name(), ""), reach, visitor)) } }
}

/// The parts as they stand now, for a page that hears of a change.
async fn again(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>, Query(wanted): Query<Wanted>) -> Answer {
    standing(&desk, &visitor, &name, &wanted).await
}

/// Everything that changes with a stroke, as it stands.
async fn standing(desk: &Desk, visitor: &Visitor, name: &str, wanted: &Wanted) -> Answer {
    let opened = desk.book();
    let one = OnBench::of(&opened, name)?;
    let reach = desk.reach(&one.file).await;
    let work = || {
        let (sheet, ahead) = sheet_and_ahead(&one, &one.checked(), wanted)?;
        Ok(html! { (sheet) (ahead) })
    };
    let question = format!("standing {} {name} {}", opened.rests.number, wanted.key());
    let made = tokio::task::block_in_place(|| desk.worked_out().once(question, work))?;
    parts(&html! { (strokes(&one, &reach, visitor)) (made) })
}

/// What a stroke would do, written nowhere: the figures at once, then what guesses leave open and what the rules say of it.
async fn tried(
    State(desk): State<Desk>,
    _visitor: Visitor,
    Path(name): Path<String>,
    Query(wanted): Query<Wanted>,
    Form(said): Form<Said>,
) -> Answer {
    let opened = desk.book();
    let first = || {
        let one = OnBench::of(&opened, &name)?;
        let (text, _) = gesture(&opened.book, one.source, &said.gesture()?)?;
        let source = Source { file: one.source.file.clone(), text };
        let trying = OnBench { opened: &opened, source: &source, file: one.file };
        let checked = trying.checked();
        let kitchen = wanted.kitchen(&opened)?;
        let sheet = || sheet::figures(&checked.value, &kitchen, &opened.book.settings);
        let (sheet, ahead) = rayon::join(sheet, || foresight::at_once(&opened, &checked, &wanted));
        let figures = html! { (sheet) (ahead?) };
        let file = trying.file;
        Ok::<_, Refusal>((figures, source, file, checked, kitchen))
    };
    let (figures, source, file, checked, kitchen) = tokio::task::block_in_place(first)?;
    in_two_turns(&figures, move || {
        let trying = OnBench { opened: &opened, source: &source, file };
        // Proof-reading foresees in the book's own kitchen, the figures in the one that is looked at.
        let proof_read = || opened.proof_read(checked.clone(), &kitchen);
        let (found, ahead) = rayon::join(proof_read, || foresight::parts(&opened, &checked, &wanted).unwrap_or_default());
        let remarks = remarks::Remarks::of(&checked.value, &source.text, &found);
        html! { (ahead) (PARTED) (remarks.of_the_whole(&name)) (PARTED) (sheet::following(&checked.value, &kitchen, &trying, &remarks)) }
    })
}

/// A stroke, written into the file.
async fn done(
    State(desk): State<Desk>,
    visitor: Visitor,
    headers: HeaderMap,
    Path(name): Path<String>,
    Query(wanted): Query<Wanted>,
    Form(said): Form<Said>,
) -> Answer {
    may_write(&visitor)?;
    // A stroke on a line means that line, whatever else was changed meanwhile: it is made on the text as it is now.
    let made = |opened: &Opened| {
        let one = OnBench::of(opened, &name)?;
        let (text, what) = match said.mended(&one, &wanted)? {
            Some(mended) => mended,
            None => gesture(&opened.book, one.source, &said.gesture()?)?,
        };
        Ok((one.file, one.source.text.clone(), text, what))
    };
    desk.write_now(&visitor.name, made).await?;
    shown(&desk, &visitor, &headers, &name, &wanted).await
}

async fn back(desk: State<Desk>, visitor: Visitor, headers: HeaderMap, name: Path<String>, wanted: Query<Wanted>) -> Answer {
    stepped(&desk, &visitor, &headers, &name, &wanted, Way::Back).await
}

async fn forth(desk: State<Desk>, visitor: Visitor, headers: HeaderMap, name: Path<String>, wanted: Query<Wanted>) -> Answer {
    stepped(&desk, &visitor, &headers, &name, &wanted, Way::Forth).await
}

async fn stepped(desk: &Desk, visitor: &Visitor, headers: &HeaderMap, name: &str, wanted: &Wanted, way: Way) -> Answer {
    may_write(visitor)?;
    let file = OnBench::of(&desk.book(), name)?.file;
    desk.step(&file, way, &visitor.name).await?;
    shown(desk, visitor, headers, name, wanted).await
}

/// What stands there now: its parts for a script, the page for everyone else.
async fn shown(desk: &Desk, visitor: &Visitor, headers: &HeaderMap, name: &str, wanted: &Wanted) -> Answer {
    // What was begun by the stroke that was undone is gone: it is brought back from where everything is.
    if OnBench::of(&desk.book(), name).is_err() {
        return see("/changes");
    }
    if !wants_parts(headers) {
        return see(&of_formula(name, ""));
    }
    standing(desk, visitor, name, wanted).await
}

fn may_write(visitor: &Visitor) -> Result<(), Refusal> {
    if visitor.role >= Role::Helper { Ok(()) } else { Err(Refusal::forbidden("That is not for tasters.")) }
}
