//! What was asked for on the command line.

use std::ffi::OsString;

/// Said when the command line is not understood.
pub(crate) const USAGE: &str = "\
usage: cargo xtask build                          bundle everything into dist/
       cargo xtask serve [--port N] [--no-build]  build, then serve dist/ on this machine
       cargo xtask test                           every check there is, one step after another
       cargo xtask size                           what the first visit fetches, compressed
       cargo xtask bench                          times of the core and of the page
       cargo xtask lighthouse                     what Lighthouse says of the page, phone and desk";

/// The port that `serve` takes unless told otherwise.
const USUAL_PORT: u16 = 8080;

/// One command with its options.
#[derive(Debug, PartialEq, Eq)]
pub(crate) enum Task {
    /// Bundle into `dist/`.
    Build,
    /// Serve `dist/`.
    Serve {
        /// The port on 127.0.0.1.
        port: u16,
        /// Whether to build first.
        build: bool,
    },
    /// Check everything.
    Test,
    /// Weigh what the first visit fetches.
    Size,
    /// Measure times.
    Bench,
    /// Have the page measured by Lighthouse.
    Lighthouse,
    /// Run a compiled wasm test file; Cargo calls this, with the file and its own options.
    TestRunner(Vec<OsString>),
}

impl Task {
    /// Reads the arguments after the program's name; an error is a sentence for the person.
    pub(crate) fn parse(args: impl IntoIterator<Item = OsString>) -> Result<Self, String> {
        let mut args = args.into_iter();
        let name = args.next().ok_or("No command was given.")?;
        let name = name.to_string_lossy();
        if name == "test-runner" {
            return Ok(Self::TestRunner(args.collect()));
        }
        let rest: Vec<String> = args.map(|arg| arg.to_string_lossy().into_owned()).collect();
        let plain = |task| match rest.first() {
            None => Ok(task),
            Some(option) => Err(format!("{name} takes no {option:?}.")),
        };
        match &*name {
            "build" => plain(Self::Build),
            "serve" => Self::parse_serve(&rest),
            "test" => plain(Self::Test),
            "size" => plain(Self::Size),
            "bench" => plain(Self::Bench),
            "lighthouse" => plain(Self::Lighthouse),
            _ => Err(format!("There is no command {name:?}.")),
        }
    }

    fn parse_serve(options: &[String]) -> Result<Self, String> {
        let (mut port, mut build) = (USUAL_PORT, true);
        let mut options = options.iter();
        while let Some(option) = options.next() {
            match option.as_str() {
                "--no-build" => build = false,
                "--port" => {
                    let number = options.next().ok_or("--port wants a number after it.")?;
                    port = number
                        .parse()
                        .map_err(|_| format!("{number:?} is no port: give 0 to 65535."))?;
                }
                _ => return Err(format!("serve takes no {option:?}.")),
            }
        }
        Ok(Self::Serve { port, build })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parse(line: &str) -> Result<Task, String> {
        Task::parse(line.split_whitespace().map(OsString::from))
    }

    #[test]
    fn commands_and_their_options() {
        assert_eq!(parse("build"), Ok(Task::Build));
        assert_eq!(
            parse("serve --no-build --port 9000"),
            Ok(Task::Serve {
                port: 9000,
                build: false
            })
        );
        assert_eq!(
            parse("test-runner a.wasm --nocapture"),
            Ok(Task::TestRunner(vec![
                "a.wasm".into(),
                "--nocapture".into()
            ]))
        );
    }

    #[test]
    fn what_is_not_understood_is_named() {
        for line in [
            "",
            "biuld",
            "build --fast",
            "serve --port",
            "serve --port 70000",
        ] {
            let problem = parse(line).unwrap_err();
            let last = line.split_whitespace().last().unwrap_or("No command");
            assert!(problem.contains(last), "{line}: {problem}");
        }
    }
}
