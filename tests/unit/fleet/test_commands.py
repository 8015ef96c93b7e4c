"""`diagnose store`, `diagnose sync`, and a job that goes on at another computer."""

from __future__ import annotations

import io
import sys
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pexpect
import pytest

from diagnose.cli import kit
from diagnose.fleet.store import Store
from diagnose.job import events as ev
from diagnose.job.journal import Journal
from tests.unit.fleet.conftest import Fleet

Run = Callable[..., tuple[int, str, str]]
MAKE = "postgresql://keeper@127.0.0.1:{}/fleet_made"


@pytest.fixture
def home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("DIAGNOSE_HOME", str(tmp_path / "home"))
    monkeypatch.delenv("DIAGNOSE_STORE", raising=False)
    (tmp_path / "home").mkdir()
    return tmp_path / "home"


@pytest.fixture
def run(home: Path, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]) -> Run:
    """Run the program in this process: (exit code, stdout in one line, stderr in one line)."""
    from diagnose.cli import main

    def go(*words: str) -> tuple[int, str, str]:
        monkeypatch.setattr(sys, "argv", ["diagnose", *words])
        with pytest.raises(SystemExit) as end:
            main()
        out, err = (" ".join(text.split()) for text in capfd.readouterr())
        return int(end.value.code or 0), out, err

    return go


@pytest.fixture(scope="module")
def ann(fleet: Fleet) -> str:
    return fleet.member("commands_ann")


def test_without_a_store_the_remedy_is_said(run: Run, home: Path) -> None:
    for words in (("sync",), ("store", "check"), ("store", "init")):
        code, out, err = run(*words)
        assert (code, out) == (2, "")
        assert 'store = "postgresql://login@host/database"' in err
        assert str(home / "config.toml") in err


def test_a_store_is_made_and_people_let_in(run: Run, fleet: Fleet, monkeypatch: pytest.MonkeyPatch) -> None:
    fleet.sql("drop database if exists fleet_made")
    fleet.sql("create database fleet_made")
    address = MAKE.format(fleet.cluster.port)
    for _ in range(2):
        code, out, err = run("store", "init", "--at", address)
        assert (code, err) == (0, "")
        assert "diagnose store member LOGIN" in out
    code, out, err = run(
        "store", "member", "commands_bert", "--as", "desk", "--company", "Invented Kitchens", "--at", address
    )
    assert (code, err) == (0, "")
    assert "as the desk: Invented Kitchens" in out
    assert r"\password commands_bert" in out
    assert f'store = "postgresql://commands_bert@127.0.0.1:{fleet.cluster.port}/fleet_made"' in out
    code, out, err = run("store", "check", "--at", address)
    assert code == 1
    assert "belongs to no company" in err


def test_a_password_is_typed_unseen_and_never_sent(fleet: Fleet, home: Path) -> None:
    words = ["-m", "diagnose", "store", "member", "commands_typed", "--as", "reader", "--company", "Invented Kitchens"]
    child = pexpect.spawn(sys.executable, [*words, "--at", fleet.address()], encoding="utf-8", timeout=60)
    for _ in range(2):
        child.expect(": $")
        child.sendline("open sesame")
    child.expect("The password is set")
    child.expect(pexpect.EOF)
    child.close()
    assert child.exitstatus == 0
    assert "sesame" not in str(child.before)
    fleet.cluster.keep_password("commands_typed", "open sesame")
    assert fleet.sql("select 1", login="commands_typed") == [(1,)]
    ((stored,),) = fleet.sql("select rolpassword from pg_authid where rolname = 'commands_typed'")
    assert stored.startswith("SCRAM-SHA-256$")


def test_check_says_what_one_may(run: Run, ann: str, home: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (home / "config.toml").write_text(f'store = "{ann}"\n')
    code, out, err = run("store", "check")
    assert (code, err) == (0, "")
    assert "commands_ann reads and writes the company's jobs, as a technician: Invented Kitchens." in out
    assert "not encrypted" in out
    assert "clock" not in out
    real = Store.hello
    for seconds, told in ((130.0, "2 minutes slow"), (-7200.0, "2 hours fast"), (119.0, "")):
        monkeypatch.setattr(Store, "hello", lambda *a, by=seconds: replace(real(*a), ahead=by))
        _, out, _ = run("store", "check")
        assert (told in out) if told else ("clock" not in out)


def test_sync_says_what_went_and_came(run: Run, ann: str, home: Path, tmp_path: Path) -> None:
    (home / "config.toml").write_text(f'store = "{ann}"\n')
    journal = Journal(home / "journal.sqlite3", writer=None)
    for _ in range(3):
        journal.append("job-1", ev.NoteAdded("x"))
    assert run("sync") == (0, "Sent 3 events, received 0.", "")
    code, out, _ = run("--journal", str(tmp_path / "other"), "sync")
    assert (code, out) == (0, "Sent 0 events, received 3.")


def test_an_unreachable_store_is_exit_8(run: Run, home: Path) -> None:
    (home / "config.toml").write_text('store = "postgresql://ann@127.0.0.1:1/fleet"\n')
    code, out, err = run("sync")
    assert (code, out) == (8, "")
    assert err == "diagnose: the store at 127.0.0.1 can't be reached; your answers are kept here and sent later"


def test_a_wrong_setting_is_said_and_no_job_waits_for_it(run: Run, home: Path) -> None:
    (home / "config.toml").write_text('colour = "red"\n')
    code, _, err = run("sync")
    assert code == 4
    assert "nothing is called 'colour'" in err
    code, _, err = run("resume", "job-1")
    assert code == 5
    assert "nothing is called 'colour'" in err
    assert "no job 'job-1'" in err


def test_a_job_begun_here_goes_on_at_another_computer(
    run: Run, ann: str, fleet: Fleet, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def at(home: str, store: str, *typed: str) -> None:
        monkeypatch.setenv("DIAGNOSE_HOME", str(tmp_path / home))
        monkeypatch.setenv("DIAGNOSE_STORE", store)
        monkeypatch.setattr(sys, "stdin", io.StringIO("".join(f"{line}\n" for line in typed)))

    monkeypatch.setattr(kit, "SOON", 120.0)
    at("one", ann, "two tank electric 208", "p")
    code, out, _ = run("--plain")
    assert code == 3
    job = out.rpartition("diagnose resume ")[2].split()[0]
    assert run("sync")[0] == 0  # so short a job may end before the store was reached
    at("two", fleet.member("commands_cora"), "p")
    number = job.split("-")[1]
    code, out, err = run("--plain", "resume", number)
    assert code == 3
    assert f"Asking the store for {number}" in err
    assert f"diagnose resume {job}" in out
    one, two = (Journal(tmp_path / home / "journal.sqlite3", writer=None) for home in ("one", "two"))
    assert two.records(job)[0].key == (one.writer, 1)
    at("two", fleet.address("commands_cora"), "p")
    assert run("resume", "no-such-job")[0] == 5
    real = Store.hello
    monkeypatch.setattr(Store, "hello", lambda *a: replace(real(*a), ahead=7200.0))
    assert "The clock of this computer is 2 hours slow" in run("resume", "no-such-job")[2]


def test_without_the_network_a_job_goes_as_ever_and_says_what_waits(
    run: Run, home: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (home / "config.toml").write_text('store = "postgresql://ann@127.0.0.1:1/fleet"\n')
    monkeypatch.setattr(sys, "stdin", io.StringIO("two tank electric 208\np\n"))
    code, _, err = run("--plain")
    assert code == 3
    assert err == "1 event not sent to the store yet; the next `diagnose sync`, or the next job, sends them."
