//! `password`: who may sign in to the console. The password comes from a prompt or from standard input, never
//! from the command line, which every user of the machine can read.

use std::io::{BufRead, IsTerminal};
use std::path::Path;

use super::CommandError;
use super::args::{Password, RoleAsked};
use super::found::open;
use super::out::Said;
use crate::ShopError;
use crate::console::session::{Role, Users};

/// Sets someone's password and role.
///
/// # Errors
/// When there is no shop, the two typings differ, or the password is refused.
pub(super) fn password(folder: &Path, args: &Password) -> Result<Said, CommandError> {
    let shop = open(folder)?;
    if args.shown && !shop.ledger.fleet().demo {
        return Err(CommandError::Asked(
            "only an invented fleet shows its password. Nothing was changed. Leave out --shown.".to_owned(),
        ));
    }
    let role = match args.role {
        RoleAsked::Shop => Role::Shop,
        RoleAsked::Reader => Role::Reader,
    };
    let typed = typed(args.name.trim())?;
    let users = Users::of(folder);
    let set = if args.shown {
        users.set_shown(&args.name, role, &typed)
    } else {
        users.set(&args.name, role, &typed)
    };
    set.map_err(|error| CommandError::Asked(error.to_string()))?;
    let known = shop.person(&args.name);
    let mut text = format!("{} may sign in to the console.", args.name.trim());
    if let (Role::Shop, Err(ShopError::UnknownPerson { .. })) = (role, known) {
        text.push_str(
            "\nNobody of the fleet has this name yet: register the person, or what is written has no author and is refused.",
        );
    }
    Said::new(text, &serde_json::json!({ "name": args.name.trim(), "role": role }))
}

/// Something that nobody else is to see: asked at a terminal, else the first line of standard input.
///
/// # Errors
/// When it cannot be read.
pub(super) fn secret(asks: &str) -> Result<String, CommandError> {
    if std::io::stdin().is_terminal() {
        return Ok(rpassword::prompt_password(asks)?);
    }
    let mut line = String::new();
    std::io::stdin().lock().read_line(&mut line)?;
    Ok(line.trim().to_owned())
}

/// The password: asked twice at a terminal, else the first line of standard input.
fn typed(name: &str) -> Result<String, CommandError> {
    if !std::io::stdin().is_terminal() {
        let mut line = String::new();
        std::io::stdin().lock().read_line(&mut line)?;
        return Ok(line.trim_end_matches(['\r', '\n']).to_owned());
    }
    let first = rpassword::prompt_password(format!("New password of {name}: "))?;
    let again = rpassword::prompt_password("The same again: ")?;
    if first == again {
        Ok(first)
    } else {
        Err(CommandError::Asked("the two differ. Nothing was changed. Type it again.".to_owned()))
    }
}
