//! The screen that a page is seen on.

use std::path::{Path, PathBuf};

use serde_json::{Value, json};

/// The size of type that browsers come with, in CSS pixels.
const USUAL_TYPE: u32 = 16;

/// A screen, and what its owner prefers.
#[derive(Debug, Clone)]
pub struct View {
    // In CSS pixels.
    width: u32,
    /// In CSS pixels too.
    pub(super) height: u32,
    touch: bool,
    dark: bool,
    large_type: bool,
    profile: Option<PathBuf>,
}

impl View {
    /// A common phone held upright: 390 × 844, touched.
    #[must_use]
    pub fn phone() -> Self {
        Self::touched(390, 844)
    }

    /// The narrowest screen supported: 320 × 568, touched.
    #[must_use]
    pub fn narrow() -> Self {
        Self::touched(320, 568)
    }

    /// A desk: 1280 × 800, with mouse and keyboard.
    #[must_use]
    pub fn desktop() -> Self {
        Self {
            touch: false,
            ..Self::touched(1280, 800)
        }
    }

    fn touched(width: u32, height: u32) -> Self {
        Self {
            width,
            height,
            touch: true,
            dark: false,
            large_type: false,
            profile: None,
        }
    }

    /// The same screen turned by a quarter.
    #[must_use]
    pub fn on_its_side(self) -> Self {
        Self {
            width: self.height,
            height: self.width,
            ..self
        }
    }

    /// With a preference for dark colours.
    #[must_use]
    pub fn dark(self) -> Self {
        Self { dark: true, ..self }
    }

    /// With the browser's type twice as large as usual.
    #[must_use]
    pub fn large_type(self) -> Self {
        Self {
            large_type: true,
            ..self
        }
    }

    /// With the browser's profile kept in `folder`: a later page finds what an earlier one stored.
    #[must_use]
    pub fn profile(self, folder: &Path) -> Self {
        Self {
            profile: Some(folder.to_path_buf()),
            ..self
        }
    }

    /// Width and height in CSS pixels.
    pub(super) fn size(&self) -> (u32, u32) {
        (self.width, self.height)
    }

    /// The screen in the devtools' terms, at another height if need be.
    pub(super) fn metrics(&self, height: &Value) -> Value {
        json!({
            "width": self.width,
            "height": height,
            "deviceScaleFactor": if self.touch { 2 } else { 1 },
            "mobile": self.touch,
        })
    }

    /// What a new session asks the driver for.
    pub(super) fn capabilities(&self) -> serde_json::Map<String, Value> {
        let mut options = json!({
            "args": self.arguments(),
            "perfLoggingPrefs": { "enableNetwork": true, "enablePage": false },
        });
        if self.large_type {
            let sizes = json!({ "default_font_size": 2 * USUAL_TYPE });
            insert(
                &mut options,
                "prefs",
                json!({ "webkit": { "webprefs": sizes } }),
            );
        }
        if self.touch {
            let metrics = json!({
                "width": self.width,
                "height": self.height,
                "pixelRatio": 2.0,
                "touch": true,
                "mobile": true,
            });
            insert(
                &mut options,
                "mobileEmulation",
                json!({ "deviceMetrics": metrics }),
            );
        }
        let mut capabilities = serde_json::Map::new();
        capabilities.insert("goog:chromeOptions".to_owned(), options);
        capabilities.insert(
            "goog:loggingPrefs".to_owned(),
            json!({ "browser": "ALL", "performance": "ALL" }),
        );
        capabilities
    }

    fn arguments(&self) -> Vec<String> {
        let mut arguments = [
            "--headless=new",
            // Its sandbox refuses to run as root, and /dev/shm is tiny in containers.
            "--no-sandbox",
            "--disable-dev-shm-usage",
            "--lang=en-GB",
            // Neither the page nor the browser itself finds any other host.
            "--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE 127.0.0.1",
        ]
        .map(str::to_owned)
        .to_vec();
        if let Some(folder) = &self.profile {
            arguments.push(format!("--user-data-dir={}", folder.display()));
        }
        arguments
    }

    /// The devtools commands that turn a new page into this view.
    pub(super) fn commands(&self) -> Vec<(&'static str, Value)> {
        let scheme = if self.dark { "dark" } else { "light" };
        let features = json!([
            { "name": "prefers-color-scheme", "value": scheme },
            // Nothing fades while a test looks at it, however long that takes.
            { "name": "prefers-reduced-motion", "value": "reduce" },
        ]);
        let mut commands = vec![(
            "Emulation.setEmulatedMedia",
            json!({ "features": features }),
        )];
        if !self.touch {
            let metrics = self.metrics(&self.height.into());
            commands.push(("Emulation.setDeviceMetricsOverride", metrics));
        }
        commands
    }
}

fn insert(object: &mut Value, name: &str, value: Value) {
    if let Value::Object(fields) = object {
        fields.insert(name.to_owned(), value);
    }
}
