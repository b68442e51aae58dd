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

const fn file(path: &'static str, says: &'static str, query: &'static [&'static str]) -> Operation {
    Operation { answer: Answer::File, ..page(path, says, query) }
}

const fn goes(path: &'static str, says: &'static str, query: &'static [&'static str]) -> Operation {
    Operation { answer: Answer::Goes, ..page(path, says, query) }
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
    machine(
        "get",
        "/calendar/{file}",
        "The feed of what runs out, to whoever knows its secret name.",
        Take::Nothing,
        Answer::File,
    ),
    page("/", "Today's sheet.", &["view"]),
    page("/day/{day}", "A day's sheet, or a closed version of it.", &["view", "version"]),
    Operation {
        query: &["after"],
        answer: Answer::Json,
        ..page("/day/{day}/mark", "How many entries came since a page was made.", &[])
    },
    form("/day/{day}/close", "Closes a day as its next version."),
    page("/units", "Every unit: which need somebody, and the others.", &["find", "sort", "table", "page"]),
    goes("/find", "Leads to the unit of a door number.", &["unit"]),
    page("/units/{door}", "One unit and everything recorded of it.", &["history", "hours"]),
    goes("/unit/{door}", "Leads to the unit.", &[]),
    page("/certificates", "Defects without a certificate, the next one first.", &["unit", "item", "signed"]),
    form("/certificates", "Signs a certificate."),
    page("/certificates/{entry}/slip", "A slip with a code, for a phone without signal.", &[]),
    page(
        "/due",
        "What is near its end over the whole fleet, visits, what to order.",
        &["unit", "first", "from"],
    ),
    form("/due/ticked", "Goes on with the ticked tasks."),
    form("/due/plan", "Plans a visit."),
    form("/due/wait", "Waits for a part, or no longer."),
    page("/due/service", "The form for a service done.", &["unit", "task"]),
    form("/due/service", "Records a service."),
    page("/people", "People, phones, and who may sign in.", &[]),
    form("/people/person", "Adds or changes a person."),
    form("/people/code", "Makes a code for a new phone."),
    page("/people/code/{name}", "A phone's code: picture and text.", &[]),
    form("/people/let-in", "Lets a phone in that asks."),
    page("/people/phone/{key}/stop", "Asks before a phone is stopped.", &[]),
    form("/people/phone/{key}/stop", "Stops a phone."),
    form("/people/sign-in", "Sets who may sign in."),
    page("/people/sign-in/remove", "Asks before a sign-in is taken away.", &["name"]),
    form("/people/sign-in/remove", "Takes a sign-in away."),
    page("/set-aside", "What is set aside or to be settled.", &[]),
    form("/set-aside/decide", "Decides by name."),
    Operation { answer: Answer::File, ..page("/photo/{sha256}", "A photo.", &[]) },
    page("/in-and-out", "What comes in and goes out.", &["brought-in"]),
    form("/in-and-out/look", "Looks at a table of older records; nothing is written."),
    page("/in-and-out/dry-run/{seen}", "What would come in of a table that was looked at.", &[]),
    Operation {
        answer: Answer::File,
        ..page("/in-and-out/dry-run/{seen}/refused", "The refused rows of a table, as CSV.", &[])
    },
    form("/in-and-out/dry-run/{seen}/say", "Says how a table writes its days and decimals, and looks again."),
    form("/in-and-out/dry-run/{seen}/bring-in", "Brings in what a dry run saw."),
    page("/in-and-out/gaps", "What an evidence pack will state first.", &["unit"]),
    Operation {
        answer: Answer::File,
        ..page("/in-and-out/table/{kind}", "A table of one kind of record, as CSV.", &["unit", "mark"])
    },
    Operation { answer: Answer::File, ..page("/in-and-out/pack", "An evidence pack, as zip.", &["unit"]) },
    form("/in-and-out/calendar", "Makes an address for the calendar feed, or ends it."),
    Operation { answer: Answer::File, ..form("/in-and-out/fleet", "The whole fleet, as zip.") },
    Operation { answer: Answer::File, ..form("/in-and-out/backup", "A backup, as zip.") },
    open(page("/sign-in", "Where to sign in.", &["to"]), Answer::File),
    open(form("/sign-in", "Signs in."), Answer::Goes),
    form("/sign-out", "Signs out."),
    open(
        page("/words", "Keeps a choice of language and measures.", &["language", "units", "back"]),
        Answer::Goes,
    ),
    open(page("/assets/{tag}/{name}", "What pages are drawn with.", &[]), Answer::File),
];
