//! Words of the command line that name counts and numbers.

use case::{Check, Move, Place, PressAnswer, Said};
use cushion::{Mass, Size};

use crate::compartment::CompartmentRef;
use crate::say;

/// The most cells that a compartment is asked to hold.
const MOST: u32 = 2_000;

/// Reads `COMPARTMENT=N`.
///
/// # Errors
///
/// Returns what is wrong, in words.
pub(crate) fn cells(text: &str) -> Result<(CompartmentRef, u32), String> {
    let (named, count) =
        text.split_once('=').ok_or("write it as COMPARTMENT=N, such as 3=42 or pelvis-left=42")?;
    let named = named.parse()?;
    let count = count.parse().ok().filter(|count| *count <= MOST);
    let count = count.ok_or_else(|| format!("write a whole number of cells, at most {MOST}"))?;
    Ok((named, count))
}

/// Reads `COMPARTMENT=WORD`, what a press check found.
///
/// # Errors
///
/// Returns what is wrong, in words.
pub(crate) fn press(text: &str) -> Result<(CompartmentRef, PressAnswer), String> {
    let (named, answer) =
        text.split_once('=').ok_or("write it as COMPARTMENT=WORD, such as 3=slack")?;
    let named = named.parse()?;
    let answer = PressAnswer::WORDS.iter().find(|(_, word)| *word == answer);
    answer
        .map(|(answer, _)| (named, *answer))
        .ok_or_else(|| "write slack, like or tight, against its mirror partner".to_owned())
}

/// Reads `NUMBER=CELLS` or `spare=CELLS`.
///
/// # Errors
///
/// Returns what is wrong, in words.
pub(crate) fn counted(text: &str) -> Result<(Place, u32), String> {
    let (named, cells) =
        text.split_once('=').ok_or("write it as NUMBER=CELLS, such as 2=43, or spare=12")?;
    let cells = cells.parse().ok().filter(|cells| *cells <= MOST);
    let cells = cells.ok_or_else(|| format!("write a whole number of cells, at most {MOST}"))?;
    Ok((place(named)?, cells))
}

/// Reads `FROM-TO=CELLS`, where each is the number of a compartment or `spare`.
///
/// # Errors
///
/// Returns what is wrong, in words.
pub(crate) fn a_move(text: &str) -> Result<Move, String> {
    let form = "write it as FROM-TO=CELLS, such as spare-2=4 or 3-1=6";
    let (places, cells) = text.split_once('=').ok_or(form)?;
    let (from, to) = places.split_once('-').ok_or(form)?;
    let (from, to) = (place(from)?, place(to)?);
    let cells = cells.parse().ok().filter(|cells| (1..=MOST).contains(cells));
    let cells = cells.ok_or_else(|| format!("write a whole number of cells, 1 to {MOST}"))?;
    if from == to {
        return Err("cells are moved from one place to another".to_owned());
    }
    Ok(Move { from, to, cells })
}

fn place(named: &str) -> Result<Place, String> {
    if named == "spare" {
        return Ok(Place::Spare);
    }
    let number = named.parse().ok().filter(|number| (1..=99).contains(number));
    let number = number.ok_or_else(|| {
        format!("`{named}` is no compartment; write the number at its opening, or spare")
    })?;
    Ok(Place::Compartment(number))
}

/// Reads a body weight with its unit.
///
/// # Errors
///
/// Returns what is wrong, in words.
pub(crate) fn weight(text: &str) -> Result<Mass, String> {
    let parts = [("kg", Mass::from_kg as fn(f64) -> Mass), ("lb", Mass::from_pounds)];
    let found = parts.iter().find_map(|(unit, of)| Some((text.strip_suffix(unit)?, of)));
    let (number, of) = found.ok_or("write the weight with its unit, as 61kg or 134lb")?;
    let weight = number.trim().parse::<f64>().ok().and_then(|own| Mass::checked(*of, own));
    let weight = weight.filter(|weight| (5.0..=350.0).contains(&weight.to_kg()));
    weight.ok_or_else(|| "write a body weight from 5 to 350 kg".to_owned())
}

/// Reads a number between 50 and 300.
///
/// # Errors
///
/// Returns what is wrong, in words.
pub(crate) fn between_50_and_300(text: &str) -> Result<f64, String> {
    let number = text.parse::<f64>().ok().filter(|number| (50.0..=300.0).contains(number));
    number.ok_or_else(|| "write a number between 50 and 300".to_owned())
}

/// Reads a number between 0 and 40.
///
/// # Errors
///
/// Returns what is wrong, in words.
pub(crate) fn between_0_and_40(text: &str) -> Result<f64, String> {
    let number = text.parse::<f64>().ok().filter(|number| (0.0..=40.0).contains(number));
    number.ok_or_else(|| "write a number between 0 and 40".to_owned())
}

/// Reads a mass for each square metre or metre, such as `220` or `200..240`, from 1 to 2000.
///
/// # Errors
///
/// Returns what is wrong, in words.
pub(crate) fn range_of_mass(text: &str) -> Result<case::Spread<f64>, String> {
    let number = |text: &str| {
        let number = text.trim().parse::<f64>().ok();
        number.filter(|number| (1.0..=2000.0).contains(number))
    };
    let (low, high) = text.split_once("..").unwrap_or((text, text));
    match (number(low), number(high)) {
        (Some(low), Some(high)) if low <= high => {
            Ok(case::Spread { central: f64::midpoint(low, high), low, high })
        }
        _ => Err("write a number from 1 to 2000, or a range such as 200..240".to_owned()),
    }
}

/// Reads `K/N`, a part of a whole.
///
/// # Errors
///
/// Returns what is wrong, in words.
pub(crate) fn shard(text: &str) -> Result<(usize, usize), String> {
    let parts =
        text.split_once('/').and_then(|(own, of)| Some((own.parse().ok()?, of.parse().ok()?)));
    let inside = parts.filter(|(own, of): &(usize, usize)| (1..=*of).contains(own));
    inside.ok_or_else(|| "write it as K/N with K from 1 to N, such as 3/8".to_owned())
}

/// Reads a key and its value, as `measures.hip_width=380`.
pub(crate) fn pair(text: &str) -> Result<(String, String), String> {
    let pair = text.split_once('=').filter(|(key, _)| !key.trim().is_empty());
    let (key, value) = pair.ok_or("write it as KEY=VALUE, such as measures.hip_width=380")?;
    Ok((key.trim().to_owned(), value.to_owned()))
}

/// Reads an entry of a list and its place, as `goal.3=1`.
pub(crate) fn entry_to_place(text: &str) -> Result<(String, usize), String> {
    let (entry, place) = pair(text)?;
    let place = place.trim().parse::<usize>();
    let place = place.map_err(|_| "write it as ENTRY=PLACE, such as goal.3=1")?;
    Ok((entry, place))
}

/// Reads a size.
///
/// # Errors
///
/// Fails where it is none.
pub(crate) fn size(text: &str) -> Result<Size, String> {
    text.parse().map_err(|error| say::language().no_size(error))
}

/// Reads an answer to a kind of check.
///
/// # Errors
///
/// Fails where it is none.
pub(crate) fn check(kind: &str, text: &str) -> Result<Check, String> {
    Check::read(kind, text).map_err(|error| {
        let Said { message, hint } = say::language().no_check(&error);
        hint.map_or(message.clone(), |hint| format!("{message}; {hint}"))
    })
}
