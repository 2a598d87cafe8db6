//! Where things lie in the checkout, and the search path that puts its own tools first.

use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::process::Command;

/// One checkout.
pub struct Repository {
    root: PathBuf,
}

impl Repository {
    /// The checkout that this program belongs to, or the current folder when run by hand.
    pub fn find() -> Result<Self, String> {
        let root = match std::env::var_os("CARGO_MANIFEST_DIR") {
            Some(folder) => PathBuf::from(folder),
            None => std::env::current_dir().map_err(|error| error.to_string())?,
        };
        if root.join("Trunk.toml").is_file() {
            Ok(Self { root })
        } else {
            Err(format!("{} is not the app's folder: start from there.", root.display()))
        }
    }

    /// The checkout's own folder.
    pub fn root(&self) -> &Path {
        &self.root
    }

    /// Tools kept between runs.
    pub fn tools(&self) -> PathBuf {
        self.root.join("target/tools")
    }

    /// Where cargo builds.
    pub fn target(&self) -> PathBuf {
        std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| self.root.join("target"), |folder| self.root.join(folder))
    }

    /// The built site.
    pub fn site(&self) -> PathBuf {
        self.root.join("target/site")
    }

    /// Folder of the browser tests.
    pub fn browser_tests(&self) -> PathBuf {
        self.root.join("tests/browser")
    }

    /// Folders of the checkout's own tools, first in the search path.
    fn tool_folders(&self) -> [PathBuf; 3] {
        let tools = self.tools();
        [tools.join("bin"), tools.join("node/node_modules/.bin"), tools.join("deny/bin")]
    }

    /// The search path with the checkout's own tools in front.
    pub fn search_path(&self) -> OsString {
        let outer = std::env::var_os("PATH").unwrap_or_default();
        let all = self.tool_folders().into_iter().chain(std::env::split_paths(&outer));
        std::env::join_paths(all).unwrap_or(outer)
    }

    /// A command run in the checkout's folder; a tool of the checkout is taken before one of the computer.
    pub fn command(&self, program: &str) -> Command {
        let found = self
            .tool_folders()
            .into_iter()
            .map(|folder| folder.join(program).with_extension(std::env::consts::EXE_EXTENSION))
            .find(|path| path.is_file());
        let mut command = match found {
            Some(path) => Command::new(path),
            None => Command::new(program),
        };
        command.current_dir(&self.root).env("PATH", self.search_path());
        command
    }
}
