"""A PostgreSQL server of the tests' own, on loopback: its files in a folder for the time, its port at random."""

from __future__ import annotations

import contextlib
import os
import pwd
import secrets
import shutil
import signal
import socket
import subprocess
import tempfile
import time
from pathlib import Path
from typing import Any

__all__ = ["ADMIN", "Cluster", "programs"]

ADMIN = "keeper"
_LOCAL = "127.0.0.1"


def programs() -> Path | None:
    """The folder of the newest PostgreSQL on this computer; None where there is none."""
    found = [p.parent for p in Path("/usr/lib/postgresql").glob("*/bin/initdb")]
    found.sort(key=lambda folder: float(folder.parent.name))
    on_path = shutil.which("initdb")
    if on_path:
        found.append(Path(on_path).resolve().parent)
    return found[-1] if found else None


class Cluster:
    """A server that is started, killed and started again. Its administrator is `ADMIN`, all logins need passwords."""

    def __init__(self, bin_folder: Path) -> None:
        self._bin = bin_folder
        self._as: dict[str, Any] = _somebody_else() if os.geteuid() == 0 else {}
        self.folder = Path(tempfile.mkdtemp(prefix="store-", dir="/tmp" if self._as else None))
        self._server: subprocess.Popen[bytes] | None = None
        self.port = 0
        self._passwords = {ADMIN: secrets.token_hex(8)}
        self.passfile = self.folder / "passwords"
        secret = self.folder / "secret"
        secret.write_text(self._passwords[ADMIN])
        if self._as:
            for each in (self.folder, secret):
                os.chown(each, self._as["user"], self._as["group"])
        make = ["initdb", "-D", "data", "-U", ADMIN, "--pwfile=secret", "--auth=scram-sha-256"]
        self._run([*make, "--no-sync", "-E", "UTF8", "--locale=C"])
        self.start()

    def _run(self, words: list[str]) -> None:
        command = [str(self._bin / words[0]), *words[1:]]
        done = subprocess.run(command, cwd=self.folder, capture_output=True, text=True, **self._as)
        assert done.returncode == 0, done.stdout + done.stderr

    def start(self, durable: bool = False) -> None:
        """Start the server, on the port it had where it had one, and wait until it answers.

        Only a `durable` one waits for its disk, which is slow, and is of no use but to a test of just that.
        """
        self.port = self.port or _free_port()
        settings = {
            "listen_addresses": _LOCAL,
            "port": str(self.port),
            "unix_socket_directories": "",
            "shared_buffers": "16MB",
            "max_connections": "60",
            "autovacuum": "off",
            "fsync": "on" if durable else "off",
            "log_min_messages": "fatal",
        }
        words = [word for name, value in settings.items() for word in ("-c", f"{name}={value}")]
        command = [str(self._bin / "postgres"), "-D", str(self.folder / "data"), *words]
        self._write_passwords()
        for _ in range(1200):
            if self._server is None or self._server.poll() is not None:  # the one before may not be gone yet
                with open(self.folder / "log", "ab") as log:
                    self._server = subprocess.Popen(command, cwd=self.folder, stdout=log, stderr=log, **self._as)
            with contextlib.suppress(Exception):
                self.sql("select 1")
                return
            time.sleep(0.05)
        raise AssertionError((self.folder / "log").read_text()[-2000:])

    def kill(self) -> None:
        """Kill the server and whoever works for it, as a failing computer would."""
        assert self._server is not None
        pids = [int(pid) for pid in _children(self._server.pid)]
        os.kill(self._server.pid, signal.SIGKILL)
        for pid in pids:
            with contextlib.suppress(ProcessLookupError):
                os.kill(pid, signal.SIGKILL)
        self._server.wait()
        self._server = None

    def end(self) -> None:
        """Let the server finish and end."""
        assert self._server is not None
        self._server.send_signal(signal.SIGINT)
        self._server.wait(60)
        self._server = None

    def stop(self) -> None:
        """Stop the server and remove its files."""
        if self._server is not None:
            self._server.send_signal(signal.SIGQUIT)
            self._server.wait(20)
        shutil.rmtree(self.folder, ignore_errors=True)

    def address(self, login: str = ADMIN, database: str = "postgres") -> str:
        """Where it is, as the program is told: without the password, which stands in `passfile`."""
        return f"postgresql://{login}@{_LOCAL}:{self.port}/{database}"

    def keep_password(self, login: str, password: str) -> None:
        """Write a login's password into the file where programs look."""
        self._passwords[login] = password
        self._write_passwords()

    def _write_passwords(self) -> None:
        lines = [f"{_LOCAL}:*:*:{login}:{password}\n" for login, password in self._passwords.items()]
        with open(os.open(self.passfile, os.O_CREAT | os.O_WRONLY | os.O_TRUNC, 0o600), "w") as file:
            file.writelines(lines)

    def connect(self, login: str = ADMIN, database: str = "postgres") -> Any:
        """A connection as this login; each statement is a transaction."""
        import psycopg

        address = self.address(login, database)
        return psycopg.connect(address, autocommit=True, password=self._passwords[login], connect_timeout=5)

    def sql(self, statement: str, *values: object, login: str = ADMIN, database: str = "postgres") -> list[Any]:
        """Run a statement; its rows."""
        with self.connect(login, database) as connection:
            cursor = connection.execute(statement, values or None)
            return cursor.fetchall() if cursor.description else []


def _somebody_else() -> dict[str, Any]:
    """PostgreSQL refuses to run for root: somebody who has no rights here runs it."""
    for name in ("postgres", "nobody"):
        with contextlib.suppress(KeyError):
            who = pwd.getpwnam(name)
            return {"user": who.pw_uid, "group": who.pw_gid, "extra_groups": []}
    raise AssertionError("run the tests as a user other than root")


def _free_port() -> int:
    with socket.socket() as free:
        free.bind((_LOCAL, 0))
        return int(free.getsockname()[1])


def _children(pid: int) -> list[str]:
    listed = Path(f"/proc/{pid}/task/{pid}/children")
    return listed.read_text().split() if listed.exists() else []
