"""A real browser without a window, spoken to over a pipe in its own debugging protocol, from Python alone."""

from __future__ import annotations

import base64
import contextlib
import importlib.util
import json
import os
import shutil
import subprocess
import sys
import threading
import time
from pathlib import Path
from typing import Any

__all__ = ["Browser", "Page", "axe_source", "chromium"]

_FLAGS = (
    "--headless=new",
    "--no-sandbox",  # tests may run as root, where the sandbox can't
    "--disable-gpu",
    "--disable-quic",
    "--disable-sync",
    "--disable-extensions",
    "--disable-dev-shm-usage",
    "--disable-component-update",
    "--disable-background-networking",
    "--disable-default-apps",
    "--no-default-browser-check",
    "--no-first-run",
    "--force-color-profile=srgb",
    "--remote-debugging-pipe",
)
# The protocol speaks on descriptors 3 and 4; the launcher puts ours there and becomes the browser.
_LAUNCH = (
    "import os, sys; os.dup2(int(sys.argv[1]), 3); os.dup2(int(sys.argv[2]), 4); os.execv(sys.argv[3], sys.argv[3:])"
)
_GONE_ON = ("navigated or closed", "context was destroyed", "Cannot find context")
_PATIENCE = 30.0  # seconds until a browser that does not answer is given up; nothing is measured by it


def chromium() -> str | None:
    """The browser of this computer; None where there is none."""
    return next((found for name in ("chromium", "chromium-browser") if (found := shutil.which(name))), None)


def axe_source() -> str:
    """The checker of accessibility, as a script."""
    found = importlib.util.find_spec("axe_core_python")
    assert found is not None
    assert found.origin is not None
    return Path(found.origin).with_name("axe.min.js").read_text("utf-8")


class Browser:
    """One browser for as long as the block runs."""

    def __init__(self, program: str, profile: Path) -> None:
        ours_in, its_out = os.pipe()
        its_in, ours_out = os.pipe()
        # High numbers, so that putting one on 3 or 4 never closes the other.
        handed = [os.dup2(fd, fd + 200) for fd in (its_in, its_out)]
        self._process = subprocess.Popen(
            [sys.executable, "-c", _LAUNCH, *map(str, handed), program, *_FLAGS, f"--user-data-dir={profile}"],
            pass_fds=handed,
            stdin=subprocess.DEVNULL,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )
        for fd in (its_in, its_out, *handed):
            os.close(fd)
        self._to = os.fdopen(ours_out, "wb")
        self._from = os.fdopen(ours_in, "rb")
        self._number = 0
        self._news = threading.Condition()
        self._answers: dict[int, dict[str, Any]] = {}
        self.events: list[dict[str, Any]] = []
        self._gone = False
        self._listener = threading.Thread(target=self._listen, daemon=True)
        self._listener.start()

    def __enter__(self) -> Browser:
        return self

    def __exit__(self, *_: object) -> None:
        with contextlib.suppress(OSError, AssertionError):
            self.ask("Browser.close")
        self._process.wait(_PATIENCE)
        self._to.close()
        self._listener.join(_PATIENCE)
        self._from.close()

    def _listen(self) -> None:
        rest = b""
        while piece := self._from.read1(1 << 16):
            *whole, rest = (rest + piece).split(b"\0")
            with self._news:
                for each in whole:
                    told = json.loads(each)
                    if "id" in told:
                        self._answers[told["id"]] = told
                    else:
                        self.events.append(told)
                self._news.notify_all()
        with self._news:
            self._gone = True
            self._news.notify_all()

    def ask(self, method: str, session: str = "", **given: Any) -> dict[str, Any]:
        """One command and its answer."""
        self._number += 1
        number = self._number
        told: dict[str, Any] = {"id": number, "method": method, "params": given}
        if session:
            told["sessionId"] = session
        self._to.write(json.dumps(told).encode() + b"\0")
        self._to.flush()
        with self._news:
            self._news.wait_for(lambda: number in self._answers or self._gone, _PATIENCE)
            answer = self._answers.pop(number, None)
        assert answer is not None, f"the browser does not answer {method}"
        if any(told in str(answer.get("error", "")) for told in _GONE_ON):
            raise Navigated(f"{method}: {answer['error']}")
        assert "error" not in answer, f"{method}: {answer['error']}"
        return answer["result"]  # type: ignore[no-any-return]

    def wait_event(self, method: str, session: str, after: int) -> None:
        """Wait for an event of a page that came after the first `after` of all events."""

        def there() -> bool:
            return any(e["method"] == method and e.get("sessionId") == session for e in self.events[after:])

        with self._news:
            assert self._news.wait_for(there, _PATIENCE), f"{method} never came"

    def page(self, width: int = 1280, height: int = 900, dark: bool = False) -> Page:
        """A page of its own: no cookie of another."""
        context = self.ask("Target.createBrowserContext")["browserContextId"]
        target = self.ask("Target.createTarget", url="about:blank", browserContextId=context)["targetId"]
        session = self.ask("Target.attachToTarget", targetId=target, flatten=True)["sessionId"]
        page = Page(self, session, context)
        for domain in ("Page", "Runtime", "Network", "Log"):
            page.ask(f"{domain}.enable")
        page.ask("Emulation.setFocusEmulationEnabled", enabled=True)  # as if it were the one in front
        page.resize(width, height)
        page.colours(dark)
        return page


class Navigated(Exception):
    """The page gave way to another while something was asked of it."""


class Page:
    """One page in the browser."""

    def __init__(self, browser: Browser, session: str, context: str) -> None:
        self._browser = browser
        self._session = session
        self._context = context

    def ask(self, method: str, **given: Any) -> dict[str, Any]:
        return self._browser.ask(method, self._session, **given)

    def close(self) -> None:
        self._browser.ask("Target.disposeBrowserContext", browserContextId=self._context)

    def resize(self, width: int, height: int = 900) -> None:
        self.ask(
            "Emulation.setDeviceMetricsOverride", width=width, height=height, deviceScaleFactor=1, mobile=width < 600
        )

    def colours(self, dark: bool, media: str = "screen") -> None:
        scheme = {"name": "prefers-color-scheme", "value": "dark" if dark else "light"}
        self.ask("Emulation.setEmulatedMedia", media=media, features=[scheme])

    def scripts(self, allowed: bool) -> None:
        self.ask("Emulation.setScriptExecutionDisabled", value=not allowed)

    def go(self, address: str) -> None:
        """Open an address and wait until it is there."""
        before = len(self._browser.events)
        told = self.ask("Page.navigate", url=address)
        assert "errorText" not in told, told
        self._browser.wait_event("Page.loadEventFired", self._session, before)

    def type(self, text: str, enter: bool = False) -> None:
        """Type into what has the focus; with Enter, wait for the page that follows."""
        self.ask("Input.insertText", text=text)
        if enter:
            before = len(self._browser.events)
            for kind in ("keyDown", "keyUp"):
                given = {"text": "\r"} if kind == "keyDown" else {}
                self.ask("Input.dispatchKeyEvent", type=kind, key="Enter", windowsVirtualKeyCode=13, **given)
            self._browser.wait_event("Page.loadEventFired", self._session, before)

    def run(self, script: str) -> Any:
        """The value of an expression in the page; promises are waited for."""
        told = self.ask("Runtime.evaluate", expression=script, awaitPromise=True, returnByValue=True)
        assert "exceptionDetails" not in told, told["exceptionDetails"]
        return told["result"].get("value")

    def html(self) -> str:
        """The page as it stands, also where scripts may not run."""
        root = self.ask("DOM.getDocument", depth=0)["root"]["nodeId"]
        return str(self.ask("DOM.getOuterHTML", nodeId=root)["outerHTML"])

    def until(self, condition: str) -> None:
        """Wait until an expression is true."""
        end = time.monotonic() + _PATIENCE
        while not self._now(condition):
            assert time.monotonic() < end, f"never came: {condition}"
            time.sleep(0.05)

    def _now(self, condition: str) -> bool:
        """Whether it is true now; while the page gives way to another it is not."""
        try:
            return bool(self.run(f"Boolean({condition})"))
        except Navigated:
            return False

    def told(self, method: str) -> list[dict[str, Any]]:
        """What happened in this page, of one kind."""
        return [
            e["params"] for e in self._browser.events if e["method"] == method and e.get("sessionId") == self._session
        ]

    @property
    def requests(self) -> list[str]:
        """All it ever asked for, from wherever."""
        return [told["request"]["url"] for told in self.told("Network.requestWillBeSent")]

    @property
    def complaints(self) -> list[str]:
        """Dialogs that opened, exceptions, and what the browser itself found wrong."""
        dialogs = [told["message"] for told in self.told("Page.javascriptDialogOpening")]
        thrown = [json.dumps(told["exceptionDetails"]) for told in self.told("Runtime.exceptionThrown")]
        logged = [told["entry"] for told in self.told("Log.entryAdded")]
        errors = [f"{entry['text']} {entry.get('url', '')}" for entry in logged if entry["level"] == "error"]
        return [*dialogs, *thrown, *errors]

    @property
    def too_wide(self) -> float:
        """By how many columns of dots the page is wider than the screen."""
        return float(self.run("document.documentElement.scrollWidth - document.documentElement.clientWidth"))

    def barred(self, axe: str = "") -> list[str]:
        """What the checker of accessibility finds; `axe` is another edition of it."""
        self.run((axe or axe_source()) + "; undefined")
        found = self.run("axe.run(document).then((all) => all.violations)")
        return [f"{each['id']}: {[node['target'] for node in each['nodes']][:3]}" for each in found]

    def picture(self, path: Path) -> None:
        """Keep what it looks like, from top to end."""
        taken = self.ask("Page.captureScreenshot", captureBeyondViewport=True)
        path.write_bytes(base64.b64decode(taken["data"]))
