//! Every operation of the hub, one line each.

/// What a request carries.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Take {
    Nothing,
    Parcel,
    Piece,
    Form,
}

/// What comes back when it is done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Answer {
    /// A page; the same as JSON at its address with `.json`.
    Page,
    /// JSON alone.
    Json,
    /// Another address.
    Goes,
    /// A file.
    File,
    Parcel,
    Photo {
        adds: bool,
    },
}

/// One method of one path.
#[derive(Clone, Copy, Debug)]
pub(super) struct Operation {
    pub(super) method: &'static str,
    pub(super) path: &'static str,
    pub(super) says: &'static str,
    pub(super) query: &'static [&'static str],
    pub(super) take: Take,
    pub(super) answer: Answer,
    /// Needs no session.
    pub(super) open: bool,
    /// Not of the console: asked by machines.
    pub(super) machine: bool,
}

const fn page(path: &'static str, says: &'static str, query: &'static [&'static str]) -> Operation {
    let (take, answer) = (Take::Nothing, Answer::Page);
    Operation { method: "get", path, says, query, take, answer, open: false, machine: false }
}

const fn form(path: &'static str, says: &'static str) -> Operation {
    let (take, answer) = (Take::Form, Answer::Goes);
    Operation { method: "post", path, says, query: &[], take, answer, open: false, machine: false }
}

const fn open(operation: Operation, answer: Answer) -> Operation {
    Operation { open: true, answer, ..operation }
}

const fn machine(
    method: &'static str,
    path: &'static str,
    says: &'static str,
    take: Take,
    answer: Answer,
) -> Operation {
    Operation { method, path, says, query: &[], take, answer, open: true, machine: true }
}

/// All of them. What a page's query may say stands in its second list.
pub(super) const ALL: &[Operation] = &[
    machine("get", "/healthz", "Whether the books can be read, with counts.", Take::Nothing, Answer::Json),
    machine("get", "/v1/openapi.json", "This document.", Take::Nothing, Answer::Json),
    machine(
        "post",
        "/v1/exchange",
        "A phone's parcel in, the shop's answer out.",
        Take::Parcel,
        Answer::Parcel,
    ),
    machine(
        "head",
        "/v1/photo/{sha256}",
        "How far a photo is.",
        Take::Nothing,
        Answer::Photo { adds: false },
    ),
    machine("put", "/v1/photo/{sha256}", "One piece of a photo.", Take::Piece, Answer::Photo { adds: true }),
    page("/", "Today's sheet.", &["view"]),
    page("/day/{day}", "A day's sheet, or a closed version of it.", &["view", "version"]),
    Operation {
        query: &["after"],
        answer: Answer::Json,
        ..page("/day/{day}/mark", "How many entries came since a page was made.", &[])
    },
    form("/day/{day}/close", "Closes a day as its next version."),
    Operation { answer: Answer::File, ..page("/photo/{sha256}", "A photo.", &[]) },
    open(page("/sign-in", "Where to sign in.", &["to"]), Answer::File),
    open(form("/sign-in", "Signs in."), Answer::Goes),
    form("/sign-out", "Signs out."),
    open(
        page("/words", "Keeps a choice of language and measures.", &["language", "units", "back"]),
        Answer::Goes,
    ),
    open(page("/assets/{tag}/{name}", "What pages are drawn with.", &[]), Answer::File),
];
