"""`diagnose desk serve` as a process: its token, its end, and what it refuses to do."""

from __future__ import annotations

import http.client
import os
import re
import shutil
import signal
import ssl
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from diagnose.job import events as ev
from diagnose.job.journal import Journal

ROOT = Path(__file__).resolve().parents[2]
KIND = "two_tank_electric_208"


@pytest.fixture
def home(tmp_path: Path) -> Path:
    journal = Journal(tmp_path / "journal.sqlite3", None)
    journal.append("job-1001", ev.Opened(machine=KIND, type=KIND, site="Pier Canteen, invented"))
    journal.close()
    return tmp_path


def command(home: Path, *words: str) -> tuple[list[str], dict[str, str]]:
    return [sys.executable, "-m", "diagnose", "desk", "serve", "--port", "0", *words], {
        **os.environ,
        "DIAGNOSE_HOME": str(home),
        "PYTHONPATH": str(ROOT),
    }


@contextmanager
def serving(home: Path, *words: str) -> Iterator[tuple[subprocess.Popen[str], int, str]]:
    """The process, its port and what it said of the token."""
    args, env = command(home, *words)
    with subprocess.Popen(args, env=env, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True) as process:
        assert process.stdout is not None
        said = [process.stdout.readline() for _ in range(3)]
        found = re.search(r"https?://[^/]+:(\d+)/$", said[0].strip())
        assert found, said
        try:
            yield process, int(found[1]), said[1].partition(": ")[2].strip()
        finally:
            if process.poll() is None:
                process.kill()


def log_in(connection: http.client.HTTPConnection, token: str) -> str:
    """The site of the job on the board, once logged in."""
    connection.request("POST", "/login", f"token={token}")
    answer = connection.getresponse()
    answer.read()
    assert answer.status == 303
    cookie = (answer.getheader("set-cookie") or "").partition(";")[0]
    connection.request("GET", "/", headers={"Cookie": cookie})
    return connection.getresponse().read().decode()


def test_it_prints_a_token_and_ends_when_it_is_told(home: Path) -> None:
    with serving(home) as (process, port, token):
        assert len(token) >= 32
        connection = http.client.HTTPConnection("127.0.0.1", port, timeout=20)
        assert "Pier Canteen, invented" in log_in(connection, token)
        process.send_signal(signal.SIGINT)
        assert process.wait(20) == 0
        assert process.stderr is not None
        assert process.stderr.read() == ""
        connection.close()
    with serving(home) as (_, _, other):
        assert other != token


def test_a_token_in_a_file_is_not_printed(home: Path) -> None:
    with serving(home, "--token-file", str(home / "token")) as (process, port, told):
        token = (home / "token").read_text().strip()
        assert token not in told
        connection = http.client.HTTPConnection("127.0.0.1", port, timeout=20)
        assert "Pier Canteen, invented" in log_in(connection, token)
        connection.close()
        process.send_signal(signal.SIGTERM)
        process.wait(20)


@pytest.mark.skipif(shutil.which("openssl") is None, reason="no openssl on this computer to make a certificate with")
def test_with_a_certificate_it_is_served_beyond_this_computer(home: Path) -> None:
    key, certificate = home / "k.pem", home / "c.pem"
    made = [
        "openssl",
        "req",
        "-x509",
        "-newkey",
        "ec",
        "-pkeyopt",
        "ec_paramgen_curve:prime256v1",
        "-nodes",
        "-days",
        "2",
    ]
    made += ["-subj", "/CN=desk.invalid", "-keyout", str(key), "-out", str(certificate)]
    subprocess.run(made, check=True, capture_output=True)
    given = ("--certificate", str(certificate), "--key", str(key))
    trust = ssl.create_default_context(cafile=str(certificate))
    trust.check_hostname = False
    with serving(home, "--name", "desk.invalid", *given) as (process, port, token):
        connection = http.client.HTTPSConnection("127.0.0.1", port, timeout=20, context=trust)
        connection.request("GET", "/login", headers={"Host": f"desk.invalid:{port}"})
        answer = connection.getresponse()
        assert (answer.status, "<h1>Log in" in answer.read().decode()) == (200, True)
        assert token
        connection.close()
        process.send_signal(signal.SIGTERM)
        process.wait(20)


@pytest.mark.parametrize(
    ("words", "code", "says"),
    [
        (("--host", "0.0.0.0"), 2, "name --certificate and --key"),
        (("--host", "192.0.2.1"), 2, "name --certificate and --key"),
        (("--certificate", "c.pem"), 2, "a certificate needs its key"),
        (("--certificate", "c.pem", "--key", "k.pem"), 2, "certificate and key can't be used"),
        (("--token-file", "/no/such/folder/token"), 4, "can't be made"),
        (("--port", "99999"), 2, "is not in the range"),
    ],
)
def test_what_it_refuses_is_one_sentence(home: Path, words: tuple[str, ...], code: int, says: str) -> None:
    args, env = command(home, *words)
    done = subprocess.run(args, env=env, capture_output=True, text=True, timeout=60)
    assert (done.returncode, done.stdout) == (code, "")
    assert says in done.stderr
    assert done.stderr.count("\n") == 1


def test_a_port_that_is_taken_is_said(home: Path) -> None:
    with serving(home) as (_, port, _):
        args, env = command(home, "--port", str(port))
        done = subprocess.run(args, env=env, capture_output=True, text=True, timeout=60)
        assert done.returncode == 2
        assert f"port {port} of 127.0.0.1 can't be used" in done.stderr
