//! What a program says while it runs.

use std::io::{BufRead, BufReader, Read};
use std::process::Child;
use std::sync::mpsc::{Receiver, Sender, channel};
use std::thread;

/// The lines that a program has written and nobody has read yet, of both its outputs.
#[derive(Debug)]
pub(super) struct Said(Receiver<String>);

impl Said {
    /// Hears whatever of the program's outputs is piped.
    pub(super) fn by(process: &mut Child) -> Self {
        let (sender, receiver) = channel();
        if let Some(output) = process.stdout.take() {
            hear(output, sender.clone());
        }
        if let Some(output) = process.stderr.take() {
            hear(output, sender);
        }
        Self(receiver)
    }

    /// Takes what has come since it was last asked.
    pub(super) fn take(&self) -> impl Iterator<Item = String> {
        self.0.try_iter()
    }
}

/// Reads on, so that the program is never kept waiting; it ends when the program does.
fn hear(output: impl Read + Send + 'static, sender: Sender<String>) {
    thread::spawn(move || {
        let lines = BufReader::new(output).lines().map_while(Result::ok);
        for line in lines {
            if sender.send(line).is_err() {
                break;
            }
        }
    });
}
