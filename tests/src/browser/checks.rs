//! What must hold of a page whatever it shows.

use anyhow::{Result, ensure};
use tokio::time::{Instant, sleep};

use super::accessibility::{Violation, violations};
use super::page::{PATIENCE, PAUSE, Page};

impl Page {
    /// What axe-core finds wrong with the page as it is now.
    ///
    /// # Errors
    ///
    /// When axe-core is not installed or fails.
    pub async fn violations(&self) -> Result<Vec<Violation>> {
        violations(self.client()).await
    }

    /// Fails when axe-core finds anything that keeps somebody from using the page.
    ///
    /// # Errors
    ///
    /// With each such rule and the elements that break it.
    pub async fn assert_accessible(&self) -> Result<()> {
        let found = self.violations().await?;
        let serious: Vec<String> = found
            .iter()
            .filter(|v| v.is_serious())
            .map(Violation::to_string)
            .collect();
        ensure!(
            serious.is_empty(),
            "axe-core finds:\n{}",
            serious.join("\n")
        );
        Ok(())
    }

    /// Every address that the page has asked for.
    ///
    /// # Errors
    ///
    /// When the browser does not answer.
    pub async fn requests(&self) -> Result<Vec<String>> {
        Ok(self.read_journal().await?.requests.clone())
    }

    /// Waits until the page has complained of something in these words.
    ///
    /// # Errors
    ///
    /// With what it has complained of, when it has not done so after a while.
    pub async fn hear(&self, words: &str) -> Result<()> {
        let end = Instant::now() + PATIENCE;
        loop {
            let errors = self.read_journal().await?.errors.join("\n");
            if errors.contains(words) {
                return Ok(());
            }
            ensure!(
                Instant::now() < end,
                "no {words} among the errors:\n{errors}"
            );
            sleep(PAUSE).await;
        }
    }

    /// Fails when the page has written an error to its console, or asked anything of another host.
    ///
    /// # Errors
    ///
    /// With the errors, or the addresses.
    pub async fn assert_quiet(&self) -> Result<()> {
        let journal = self.read_journal().await?;
        ensure!(
            journal.errors.is_empty(),
            "errors on the console:\n{}",
            journal.errors.join("\n")
        );
        ensure!(
            !journal.requests.is_empty(),
            "no request was noted, so none was checked"
        );
        let elsewhere: Vec<_> = journal
            .elsewhere(&self.origin)
            .map(String::as_str)
            .collect();
        ensure!(
            elsewhere.is_empty(),
            "requests to other hosts:\n{}",
            elsewhere.join("\n")
        );
        Ok(())
    }
}
