//! The book around its formulas: what is told of each, lists, feed and site map.

mod address;
mod card;
mod feed;
mod links;
mod sitemap;

pub use address::{page_address, page_name};
pub use card::{Card, Dated, Used};
pub use feed::feed;
pub use links::{Link, Links};
pub use sitemap::sitemap;
