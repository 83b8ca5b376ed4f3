//! `chairside`: the page for the whole job, on this machine alone.

use std::sync::Arc;

use casework::Whose;
use chairside::{Demo, House, NotServed, Settings};
use shelf::DiskShelf;

use crate::arguments::{Chairside, Invented};
use crate::commands::demo;
use crate::failure::Failure;
use crate::outside;
use crate::say;
use crate::setting::Setting;

/// The invented clients, to learn with.
const DEMOS: &[Demo] = &[
    Demo { code: "DEMO-1", text: demo::text(Invented::Adult) },
    Demo { code: "DEMO-2", text: demo::text(Invented::Child) },
    Demo { code: "DEMO-3", text: demo::text(Invented::Wide) },
];

/// Serves the page until the program is stopped.
pub(crate) fn run(arguments: &Chairside, setting: Setting) -> Result<(), Failure> {
    if setting.terminal.is_json() {
        return Err(Failure::call("a page has no report").hint("leave --json out"));
    }
    if !arguments.folder.is_dir() {
        let message = format!("{} is no folder", arguments.folder.display());
        return Err(Failure::call(message).hint("name the folder with the clients' files"));
    }
    let started_on = setting.today()?;
    let house = House::new(Settings {
        shelf: Arc::new(DiskShelf::within(&arguments.folder)),
        layouts: outside::layouts(&arguments.plugins),
        // A page that stays open over midnight is of the next day.
        today: Box::new(move || setting.today().unwrap_or(started_on)),
        language: say::language(),
        paper: arguments.paper.sheet(),
        demos: DEMOS,
    });
    let runtime = tokio::runtime::Builder::new_multi_thread().enable_all().build();
    let runtime = runtime.map_err(|error| Failure::write("threads for the page", &error))?;
    runtime.block_on(serve(arguments, house, setting))
}

async fn serve(arguments: &Chairside, house: House, setting: Setting) -> Result<(), Failure> {
    let page = chairside::Chairside::at(arguments.port, house).await.map_err(not_served)?;
    let address = page.address();
    let folder = arguments.folder.display();
    setting.terminal.answer(&format!(
        "The page of {folder} is open on this machine alone:\n  {address}\n\
         The address opens once. Stop it with Ctrl-C; everything is kept as you answer.\n"
    ))?;
    if !arguments.no_open && open::that_detached(&address).is_err() {
        setting
            .terminal
            .warn(&["no browser could be opened: open the address yourself".to_owned()]);
    }
    page.serve(std::future::pending()).await.map_err(not_served)
}

fn not_served(error: NotServed) -> Failure {
    match error {
        NotServed::Port(error) => {
            Failure::new(Whose::Keeper, format!("the port cannot be served: {error}"))
                .hint("leave --port out, and a free one is taken")
        }
        NotServed::NoLot => Failure::new(
            Whose::Keeper,
            "the system gives no random words, so nobody could be kept out",
        ),
        NotServed::Failed(error) => Failure::new(Whose::Keeper, format!("the page ended: {error}")),
    }
}
