//! What must be remembered from one day to the next: revisions, trials, tastings, prices.
//!
//! Nothing is remembered yet: a book is its text files. This room will hold one contract, `Store`,
//! in words of the trade, with an embedded database by default and a server for a team.
