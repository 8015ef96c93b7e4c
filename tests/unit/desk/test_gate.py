"""Who may look: the right token alone, wrong ones ever more slowly, sessions that end, names this server answers to."""

from __future__ import annotations

import os
import stat
from pathlib import Path

import pytest

from diagnose.desk.web import gate as room
from diagnose.desk.web.gate import Gate, TokenError, is_loopback, name_in, new_token, token_in
from diagnose.desk.web.serve import ServeError, Serving

TOKEN = "a-token-for-tests-alone"


class Clock:
    def __init__(self) -> None:
        self.at = 1000.0

    def __call__(self) -> float:
        return self.at


@pytest.fixture
def clock() -> Clock:
    return Clock()


def test_the_right_token_opens_a_session_and_no_other_does(clock: Clock) -> None:
    gate = Gate(TOKEN, clock)
    for wrong in ("", TOKEN[:-1], TOKEN + "x", TOKEN.upper()):
        fresh = Gate(TOKEN, clock)
        assert fresh.enter(wrong) is None
    session = gate.enter(f" {TOKEN}\n")
    assert session is not None
    assert gate.holds(session)
    assert not any(gate.holds(other) for other in (None, "", session[:-1], TOKEN))


def test_every_session_is_another(clock: Clock) -> None:
    gate = Gate(TOKEN, clock)
    assert len({gate.enter(TOKEN) for _ in range(20)}) == 20


def test_sessions_end_by_themselves_and_when_left(clock: Clock) -> None:
    gate = Gate(TOKEN, clock)
    one, two = gate.enter(TOKEN), gate.enter(TOKEN)
    gate.leave(one)
    assert (gate.holds(one), gate.holds(two)) == (False, True)
    clock.at += room.SESSION_SECONDS
    assert not gate.holds(two)


def test_no_more_sessions_are_kept_than_there_is_room_for(clock: Clock) -> None:
    gate = Gate(TOKEN, clock)
    sessions = [gate.enter(TOKEN) for _ in range(room.MOST_SESSIONS + 3)]
    assert [gate.holds(each) for each in sessions[:4]] == [False, False, False, True]
    assert gate.holds(sessions[-1])


def test_wrong_tokens_are_slowed_down_ever_more(clock: Clock) -> None:
    gate = Gate(TOKEN, clock)
    waits = []
    for _ in range(12):
        clock.at += gate.wait()
        assert gate.enter("wrong") is None
        waits.append(gate.wait())
    assert waits[:6] == [0.0, 0.0, 1.0, 2.0, 4.0, 8.0]
    assert waits[-1] == 30.0


def test_while_one_waits_even_the_right_token_is_not_looked_at(clock: Clock) -> None:
    gate = Gate(TOKEN, clock)
    for _ in range(3):
        gate.enter("wrong")
    assert gate.enter(TOKEN) is None
    clock.at += 1.0
    assert gate.enter(TOKEN) is not None
    assert gate.wait() == 0.0


def test_wrong_tokens_are_forgotten_after_a_while(clock: Clock) -> None:
    gate = Gate(TOKEN, clock)
    for _ in range(4):
        clock.at += gate.wait()
        gate.enter("wrong")
    clock.at += 601.0
    gate.enter("wrong")
    assert gate.wait() == 0.0


def test_tokens_made_here_are_long_and_never_the_same() -> None:
    made = {new_token() for _ in range(50)}
    assert len(made) == 50
    assert min(map(len, made)) >= 32


class TestFile:
    def test_it_is_made_for_its_owner_alone_and_read_again(self, tmp_path: Path) -> None:
        path = tmp_path / "token"
        token = token_in(path)
        assert stat.S_IMODE(path.stat().st_mode) == 0o600
        assert token_in(path) == token
        assert token in path.read_text()

    @pytest.mark.parametrize("mode", [0o644, 0o640, 0o604, 0o660])
    def test_one_that_others_can_read_is_refused(self, tmp_path: Path, mode: int) -> None:
        path = tmp_path / "token"
        token_in(path)
        path.chmod(mode)
        with pytest.raises(TokenError, match="chmod 600"):
            token_in(path)

    @pytest.mark.parametrize(
        "content", [b"", b"short", b"x" * 500, b"\xff" * 40, b"line one and\nline two, long enough"]
    )
    def test_what_is_no_token_is_refused(self, tmp_path: Path, content: bytes) -> None:
        path = tmp_path / "token"
        path.write_bytes(content)
        path.chmod(0o600)
        with pytest.raises(TokenError):
            token_in(path)

    def test_links_folders_and_pipes_are_refused(self, tmp_path: Path) -> None:
        token_in(tmp_path / "token")
        (tmp_path / "link").symlink_to(tmp_path / "token")
        os.mkfifo(tmp_path / "pipe", 0o600)
        for name in ("link", "pipe", "."):
            with pytest.raises(TokenError):
                token_in(tmp_path / name)
        with pytest.raises(TokenError, match="can't be made"):
            token_in(tmp_path / "no" / "such" / "folder")


@pytest.mark.parametrize(
    ("host", "loopback"),
    [("127.0.0.1", True), ("127.9.9.9", True), ("::1", True), ("localhost", True), ("0.0.0.0", False), ("::", False),
     ("192.0.2.7", False), ("desk.invalid", False), ("127.0.0.1.invalid", False), ("", False)],
)  # fmt: skip
def test_which_hosts_are_this_computer_alone(host: str, loopback: bool) -> None:
    assert is_loopback(host) is loopback


@pytest.mark.parametrize(
    "header", ["desk.invalid", "DESK.invalid:8377", "127.0.0.1:9", "localhost", "[::1]:80", "[::1]"]
)
def test_names_of_this_server(header: str) -> None:
    assert name_in(header, ["desk.invalid"])


@pytest.mark.parametrize(
    "header",
    ["", ":", "evil.invalid", "desk.invalid.evil", "desk.invalid:x", "127.0.0.1@evil.invalid", "[::1", "[::1]x", "a b"],
)
def test_names_of_others(header: str) -> None:
    assert not name_in(header, ["desk.invalid"])


@pytest.mark.parametrize(
    ("serving", "remedy"),
    [
        (Serving(host="0.0.0.0"), "name --certificate and --key"),
        (Serving(host="192.0.2.7"), "name --certificate and --key"),
        (Serving(certificate=Path("c")), "needs its key"),
        (Serving(key=Path("k")), "needs its key"),
        (Serving(host="0.0.0.0", certificate=Path("c"), key=Path("k")), "--name"),
    ],
)
def test_beyond_this_computer_only_with_a_certificate(serving: Serving, remedy: str) -> None:
    with pytest.raises(ServeError, match=remedy):
        serving.check()


def test_ways_that_are_allowed() -> None:
    for serving in (Serving(), Serving(host="::1"), Serving(host="localhost", port=0)):
        serving.check()
    Serving(host="192.0.2.7", certificate=Path("c"), key=Path("k")).check()
    Serving(host="0.0.0.0", names=("desk.invalid",), certificate=Path("c"), key=Path("k")).check()
