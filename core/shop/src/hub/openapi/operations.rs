//! Every operation of the hub, one line each.

/// What a request carries.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Take {
    Nothing,
    Parcel,
    Piece,
    Form,
    /// A form with a file.
    Files,
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
    /// A sound, whole or in part.
    Sound,
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

/// A page that is answered otherwise.
const fn told(operation: Operation, answer: Answer) -> Operation {
    Operation { answer, ..operation }
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
        "How far a photo or a sound is.",
        Take::Nothing,
        Answer::Photo { adds: false },
    ),
    machine(
        "put",
        "/v1/photo/{sha256}",
        "One piece of a photo or of a sound.",
        Take::Piece,
        Answer::Photo { adds: true },
    ),
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
    page("/certificates", "Defects that wait for a certificate, one at a time.", &["unit", "item", "signed"]),
    form("/certificates", "Signs a certificate and goes on to the next."),
    page("/certificates/{entry}/slip", "A certificate to print, with its short code.", &[]),
    page("/units", "Every unit as it stands.", &["find", "table", "page", "sort"]),
    told(page("/find", "To the unit that is meant.", &["unit"]), Answer::Goes),
    page("/units/{door}", "One unit: its clocks, oil, history, open defects.", &["history", "hours"]),
    form("/units/{door}/day-status", "Says what a unit does from a day on."),
    form("/units/{door}/lay-up", "Lays up the set of a unit."),
    form("/units/{door}/return", "Answers lines of the list before its return, done or waived by name."),
    told(page("/unit/{door}", "Where a unit's page was once.", &[]), Answer::Goes),
    form("/units/{door}/papers", "Writes down until which day a paper holds."),
    page("/units/{door}/cab-report", "The last report, to lie in the cab.", &["as-of"]),
    page("/units/{door}/door-tag", "A unit's door tag, to print.", &[]),
    page("/drum-label", "A drum's label of an oil that is registered here, to print.", &["family", "grade"]),
    page("/paper", "Pages of paper, to be typed in.", &[]),
    Operation { take: Take::Files, ..form("/paper/photo", "Keeps the photo of a page.") },
    form("/paper/photo/leave", "Leaves out the photo of a page that is not to be typed in."),
    page("/paper/{door}", "Typing in a page of this unit.", &["photo", "edition", "kept"]),
    form("/paper/{door}", "Records a page that was typed in."),
    page("/paper/{door}/blank", "A blank page of this unit, to print.", &[]),
    page("/set-aside", "What waits for a person's word.", &[]),
    form("/set-aside/decide", "Decides about entries."),
    page("/due", "What runs out, and who comes in when.", &["unit", "first", "from", "defect"]),
    form("/due/plan", "Plans a visit."),
    form("/due/visit/cancel", "Calls a planned visit off."),
    form("/due/wait", "Waits for a part, or says by its name that it is in."),
    form("/due/wait/over", "Says of an open wait, by its entry, that the part is in."),
    form("/due/campaign", "Enters a maker's campaign, or changes the one of that name."),
    form("/due/campaign/withdraw", "Takes a campaign back, by name."),
    form("/due/campaign/look", "Says of a unit whether a campaign is about it, by name."),
    page("/stock", "What lies on the trucks, less what was poured since, and what to load.", &[]),
    form("/stock", "Counts what of a fluid lies on a truck."),
    form("/due/ticked", "Goes on with what was ticked."),
    page("/due/service", "What was done at a visit.", &["unit", "tick"]),
    form("/due/service", "Records a service."),
    page("/units/{door}/note", "What the shop learns of a unit's hours, oil and site.", &[]),
    form("/units/{door}/note/{what}", "Keeps one of these: meter, estimate, site, sample, answer."),
    page(
        "/air",
        "Air for the job: what is left over and at what pressure. Records nothing.",
        &[
            "unit",
            "measures",
            "delivery",
            "holds",
            "altitude",
            "intake",
            "humidity",
            "oil",
            "tool-1",
            "takes-1",
            "at-1",
            "count-1",
            "share-1",
            "tool-2",
            "takes-2",
            "at-2",
            "count-2",
            "share-2",
            "tool-3",
            "takes-3",
            "at-3",
            "count-3",
            "share-3",
            "tool-4",
            "takes-4",
            "at-4",
            "count-4",
            "share-4",
            "bore",
            "length",
            "couplings",
            "quick",
            "elbows",
            "valves",
            "oilers",
            "cut-off",
            "blowing",
            "nozzle",
            "guarded",
        ],
    ),
    page("/numbers", "What the rules count with.", &[]),
    form("/numbers", "Sets the numbers of the rules."),
    page("/programme", "Which services are due how often.", &["unit"]),
    form("/programme", "Sets the programme of every unit without one of its own, or of one unit."),
    form("/programme/fleets", "Gives a unit the fleet's programme again."),
    page("/severities", "What each finding locks.", &[]),
    form("/severities", "Sets what findings lock, item by item."),
    page("/people", "People, phones, and who may sign in.", &["kept"]),
    page("/crew", "The crew over weeks: walks, repeats, repairs, what is past due.", &["weeks"]),
    form("/people/person", "Adds or changes a person."),
    form("/people/new-pin", "Asks a person for a new PIN."),
    form("/people/says", "Sets what the phones say in the shop's words."),
    form("/people/code", "Makes a code for a phone."),
    told(page("/people/code/{name}", "A phone's code, to be scanned.", &[]), Answer::File),
    form("/people/let-in", "Lets a phone in."),
    page("/people/phone/{key}/stop", "Asks before a phone is stopped.", &[]),
    form("/people/phone/{key}/stop", "Stops a phone."),
    form("/people/sign-in", "Sets who may sign in."),
    form("/people/sign-in/remove", "Removes who may sign in."),
    page("/in-and-out", "What can be brought in and taken out.", &["brought-in"]),
    Operation {
        take: Take::Files,
        ..form("/in-and-out/look", "Looks at a file before anything of it is brought in.")
    },
    page("/in-and-out/dry-run/{seen}", "What a file would bring in.", &[]),
    told(page("/in-and-out/dry-run/{seen}/refused", "Its rows that would be refused.", &[]), Answer::File),
    form("/in-and-out/dry-run/{seen}/say", "Says how a table writes its days and decimals, and looks again."),
    form("/in-and-out/dry-run/{seen}/bring-in", "Brings it in."),
    page("/in-and-out/gaps", "What is missing in the proof.", &["unit"]),
    told(page("/in-and-out/table/{kind}", "A table, as CSV.", &["unit", "mark"]), Answer::File),
    told(page("/in-and-out/pack", "An evidence pack.", &["unit", "spanish"]), Answer::File),
    form("/in-and-out/unit", "Enters one unit, or changes the one of that door number."),
    form("/in-and-out/calendar", "Makes or ends the address of the calendar feed."),
    told(form("/in-and-out/fleet", "The whole fleet, as an archive."), Answer::File),
    told(form("/in-and-out/backup", "A backup."), Answer::File),
    Operation {
        query: &["language"],
        ..machine(
            "get",
            "/calendar/{file}",
            "The calendar feed, under its secret.",
            Take::Nothing,
            Answer::File,
        )
    },
    Operation { answer: Answer::File, ..page("/photo/{sha256}", "A photo.", &[]) },
    Operation { answer: Answer::Sound, ..page("/sound/{sha256}", "The sound of a defect.", &[]) },
    open(page("/sign-in", "Where to sign in.", &["to"]), Answer::File),
    open(form("/sign-in", "Signs in."), Answer::Goes),
    form("/sign-out", "Signs out."),
    open(
        page("/words", "Keeps a choice of language and measures.", &["language", "units", "back"]),
        Answer::Goes,
    ),
    open(page("/assets/{tag}/{name}", "What pages are drawn with.", &[]), Answer::File),
];
