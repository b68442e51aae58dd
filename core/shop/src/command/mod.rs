//! The command line: verbs, their arguments, and where their words go.

mod archives;
mod args;
mod campaign;
mod clock;
mod day_sheet;
mod decide;
mod demo;
mod door;
mod due;
mod error;
mod examples;
mod exchange;
mod found;
mod in_out;
mod lay_up;
mod out;
mod password;
mod phone;
mod record;
mod register;
mod serve;
mod verify;

use std::process::ExitCode;

use clap::Parser;

use args::{Sumpbook, Verb};
pub use error::CommandError;
use out::Said;

/// Runs the command with the process's own arguments.
pub fn run() -> ExitCode {
    let asked = match Sumpbook::try_parse() {
        Ok(asked) => asked,
        Err(help) => {
            // Help and version are answers; anything else is a mistake in the asking.
            let code = if help.use_stderr() { ExitCode::from(2) } else { ExitCode::SUCCESS };
            let _ = help.print();
            return code;
        }
    };
    log(asked.verbose);
    match answer(&asked) {
        Ok(Some(said)) => match out::say(&said, asked.json) {
            Ok(()) if said.whole => ExitCode::SUCCESS,
            Ok(()) => ExitCode::FAILURE,
            Err(error) => failed(&error, asked.json),
        },
        Ok(None) => ExitCode::SUCCESS,
        Err(error) => failed(&error, asked.json),
    }
}

fn answer(asked: &Sumpbook) -> Result<Option<Said>, CommandError> {
    match &asked.verb {
        Verb::Init(args) => found::init(&asked.shop, args).map(Some),
        Verb::Register(args) => register::register(&asked.shop, args).map(Some),
        Verb::Record(args) => record::record(&asked.shop, args, asked.json).map(|()| None),
        Verb::Invite(args) => exchange::invite(&asked.shop, args).map(Some),
        Verb::TakeIn(args) => exchange::take_in(&asked.shop, args).map(Some),
        Verb::BringIn(args) => in_out::bring_in(&asked.shop, args).map(Some),
        Verb::TakeOut(args) => in_out::take_out(&asked.shop, args, asked.json),
        Verb::DaySheet(args) => day_sheet::day_sheet(&asked.shop, args).map(Some),
        Verb::Due(args) => due::due(&asked.shop, args).map(Some),
        Verb::Settle(args) => decide::settle(&asked.shop, args).map(Some),
        Verb::Certify(args) => decide::certify(&asked.shop, args).map(Some),
        Verb::LayUp(args) => lay_up::lay_up(&asked.shop, args).map(Some),
        Verb::ReturnToService(args) => lay_up::return_to_service(&asked.shop, args).map(Some),
        Verb::Campaign(args) => campaign::campaign(&asked.shop, args).map(Some),
        Verb::Verify(args) => archives::verify(&asked.shop, args).map(Some),
        Verb::Calendar(args) => archives::calendar(&asked.shop, args).map(Some),
        Verb::Pack(args) => archives::pack(&asked.shop, args).map(Some),
        Verb::Export(args) => archives::export(&asked.shop, args).map(Some),
        Verb::Import(args) => archives::import(&asked.shop, args).map(Some),
        Verb::Backup(args) => archives::backup(&asked.shop, args).map(Some),
        Verb::Restore(args) => archives::restore(&asked.shop, args).map(Some),
        Verb::Phrase => archives::new_phrase(&asked.shop).map(Some),
        Verb::Serve(args) => serve::serve(&asked.shop, args, asked.json).map(|()| None),
        Verb::Code(args) => door::code(&asked.shop, args).map(Some),
        Verb::Accept(args) => door::accept(&asked.shop, args).map(Some),
        Verb::Phones(args) => door::phones(&asked.shop, args).map(Some),
        Verb::StopPhone(args) => door::stop(&asked.shop, args).map(Some),
        Verb::Password(args) => password::password(&asked.shop, args).map(Some),
        Verb::Phone(args) => phone::phone(args, asked.json),
        Verb::Demo(args) => demo::demo(args, asked.json).map(|()| None),
    }
}

fn failed(error: &CommandError, json: bool) -> ExitCode {
    if let CommandError::Found(said) = error {
        let _ = out::say(said, json);
    } else if json {
        let told = serde_json::json!({ "error": error.to_string() });
        let _ = out::line(&told.to_string());
    } else {
        out::aside(&format!("sumpbook: {error}"));
    }
    ExitCode::FAILURE
}

/// What the program does goes to standard error, without anyone's words in it.
fn log(verbose: bool) {
    let level = if verbose { "sumpbook=debug,sumpbook_daybook=debug" } else { "warn" };
    let filter = tracing_subscriber::EnvFilter::new(level);
    let _ = tracing_subscriber::fmt().with_env_filter(filter).with_writer(std::io::stderr).try_init();
}
