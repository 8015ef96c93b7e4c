"""What a login may do is held by the store itself, whatever program it connects with."""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import ExitStack, closing
from pathlib import Path
from typing import Any

import pytest

psycopg = pytest.importorskip("psycopg")

from diagnose.fleet.admin import make_store, new_member, schema_text  # noqa: E402
from diagnose.fleet.errors import Refused  # noqa: E402
from diagnose.fleet.store import connect  # noqa: E402
from diagnose.fleet.sync import sync  # noqa: E402
from diagnose.job import events as ev  # noqa: E402
from diagnose.job.journal import Journal  # noqa: E402
from tests.postgres import ADMIN  # noqa: E402
from tests.unit.fleet.conftest import Fleet  # noqa: E402

INSERT = "insert into diagnose.event (job, writer, seq, seen, at, body) values (%s, %s, %s, '', %s, %s)"
ALL = "select * from diagnose.event order by company, position"
AT = "2026-03-02T08:00:00+00:00"
# Ann, the desk and the reader are of one company, Ben of another.
ANN, BEN, DESK, READER = "rights_ann", "rights_ben", "rights_desk", "rights_reader"


@pytest.fixture(scope="module")
def shop(fleet: Fleet) -> Fleet:
    fleet.member(ANN)
    fleet.member(DESK, "desk")
    fleet.member(READER, "reader")
    fleet.member(BEN, company="The Other Invented Company")
    fleet.sql(INSERT, "job-1", "ann-1", 1, AT, '{"kind":"NoteAdded"}', login=ANN)
    fleet.sql(INSERT, "job-1", "ben-1", 1, AT, '{"kind":"Secret"}', login=BEN)
    return fleet


@pytest.fixture(scope="module")
def at_work(shop: Fleet) -> Iterator[dict[str, Any]]:
    """A connection of each login, and of the administrator."""
    with ExitStack() as open_ones:
        yield {login: open_ones.enter_context(shop.connect(login)) for login in (ANN, BEN, DESK, READER, ADMIN)}


def test_everybody_reads_their_own_company_only(shop: Fleet) -> None:
    for login, theirs in ((ANN, "ann-1"), (DESK, "ann-1"), (READER, "ann-1"), (BEN, "ben-1")):
        assert {w for (w,) in shop.sql("select writer from diagnose.event", login=login)} == {theirs}
        assert {r[2] for r in shop.sql("select * from diagnose.read_events(0, 500)", login=login)} == {theirs}
        (hello,) = shop.sql("select * from diagnose.hello(1)", login=login)
        assert hello[8] == theirs


def test_a_stranger_sees_nothing(shop: Fleet) -> None:
    shop.sql("drop role if exists rights_stranger")
    shop.sql("create role rights_stranger login")
    shop.sql("grant diagnose_technician to rights_stranger")
    shop.sql("alter role rights_stranger password 'x'")
    shop.cluster.keep_password("rights_stranger", "x")
    assert shop.sql("select * from diagnose.event", login="rights_stranger") == []
    with pytest.raises(psycopg.Error, match="may not write"):
        shop.sql(INSERT, "job-1", "str-1", 1, AT, "{}", login="rights_stranger")
    with closing(connect(shop.address("rights_stranger"))) as st, pytest.raises(Refused, match="to no company"):
        st.hello()


@pytest.mark.parametrize(
    "statement",
    [
        "update diagnose.event set body = '{}'",
        "update diagnose.event set login = session_user where false",
        "delete from diagnose.event",
        "truncate diagnose.event",
        "alter table diagnose.event disable trigger all",
        "drop table diagnose.event",
        "alter table diagnose.event no force row level security, disable row level security",
        "select * from diagnose.member",
        "select * from diagnose.company",
        "select * from diagnose.writer",
        "select * from diagnose.store",
        "update diagnose.member set company = 2",
        "insert into diagnose.member values ('rights_ann', 2, 'desk')",
        "delete from diagnose.writer",
        "insert into diagnose.writer (company, name, login) values (2, 'x', 'y')",
        "select diagnose.admit('rights_ann', 'desk', 'Mine')",
        "select diagnose.event_comes()",
        "set role diagnose_owner",
        "set session authorization rights_ben",
        "grant diagnose_desk to rights_ann",
        "create table diagnose.mine (x integer)",
        "create function diagnose.my_company() returns integer language sql as 'select 2'",
        "insert into diagnose.event (company, job, writer, seq, seen, at, body) "
        "values (2, 'job-1', 'w', 1, '', '2026-03-02T08:00:00Z', '{}')",
        "insert into diagnose.event (position, job, writer, seq, seen, at, body) "
        "values (999, 'job-1', 'w', 1, '', '2026-03-02T08:00:00Z', '{}')",
        "insert into diagnose.event (login, job, writer, seq, seen, at, body) "
        "values ('rights_ben', 'job-1', 'w', 1, '', '2026-03-02T08:00:00Z', '{}')",
        "set session_replication_role = replica",
    ],
)
def test_nobody_changes_what_is_there_or_who_they_are(shop: Fleet, at_work: dict[str, Any], statement: str) -> None:
    before = at_work[ADMIN].execute(ALL).fetchall()
    for login in (ANN, DESK, READER):
        with pytest.raises(psycopg.errors.InsufficientPrivilege):
            at_work[login].execute(statement)
    assert at_work[ADMIN].execute(ALL).fetchall() == before


@pytest.mark.parametrize(
    "statement", ["update diagnose.event set seen = ''", "delete from diagnose.event", "truncate diagnose.event"]
)
def test_even_the_owner_is_refused(shop: Fleet, statement: str) -> None:
    with pytest.raises(psycopg.Error, match="appended and never changed"):
        shop.sql(statement)


def test_an_event_gets_its_place_login_and_company_from_the_store(shop: Fleet) -> None:
    shop.sql(INSERT, "job-2", "desk-1", 1, AT, "{}", login=DESK)
    (row,) = shop.sql("select company, login, position from diagnose.event where writer = 'desk-1'")
    ((highest,),) = shop.sql("select count(*) from diagnose.event where company = %s", row[0])
    assert row[1:] == (DESK, highest)


@pytest.mark.parametrize("login", [DESK, BEN])
def test_a_stolen_writer_is_refused(shop: Fleet, login: str) -> None:
    if login == BEN:  # writers of another company are no concern, nor to be seen
        shop.sql(INSERT, "job-1", "ann-1", 1, AT, "{}", login=BEN)
        return
    with pytest.raises(psycopg.Error, match="belongs to another login"):
        shop.sql(INSERT, "job-1", "ann-1", 2, AT, "{}", login=login)


def test_a_reader_writes_nothing_in_any_way(shop: Fleet, tmp_path: Path) -> None:
    with pytest.raises(psycopg.errors.InsufficientPrivilege):
        shop.sql(INSERT, "job-1", "reader-1", 1, AT, "{}", login=READER)
    with pytest.raises(psycopg.errors.InsufficientPrivilege):
        shop.sql("select * from diagnose.push_events('[]')", login=READER)
    journal = Journal(tmp_path / "j", writer=None)
    journal.append("job-1", ev.NoteAdded("mine"))
    passed = sync(journal.path, shop.address(READER))
    assert (passed.sent, passed.held) == (0, 1)
    assert passed.received


@pytest.mark.parametrize(
    ("job", "writer", "seq", "at", "body"),
    [
        ("../etc", "ann-2", 1, AT, "{}"),
        ("a" * 81, "ann-2", 1, AT, "{}"),
        ("job-1", "local", 1, AT, "{}"),
        ("job-1", "a b", 1, AT, "{}"),
        ("job-1", "ann-2", 0, AT, "{}"),
        ("job-1", "ann-2", 2, AT, "{}"),
        ("job-1", "ann-2", 1, "yesterday", "{}"),
        ("job-1", "ann-2", 1, "2026-02-31T08:00:00Z", "{}"),
        ("job-1", "ann-2", 1, AT, "[]"),
        ("job-1", "ann-2", 1, AT, "{"),
        ("job-1", "ann-2", 1, AT, '{"x": "' + "y" * 1_048_577 + '"}'),
    ],
)
def test_what_is_no_event_is_refused(
    at_work: dict[str, Any], job: str, writer: str, seq: int, at: str, body: str
) -> None:
    with pytest.raises(psycopg.Error):
        at_work[ANN].execute(INSERT, (job, writer, seq, at, body))


def test_places_are_the_order_of_commits_without_gaps(shop: Fleet) -> None:
    """A slow transaction makes the next wait: a higher place is never seen before a lower one."""
    slow, quick = shop.connect(ANN), shop.connect(DESK)
    slow.execute("begin")
    slow.execute(INSERT, ("job-3", "slow", 1, AT, "{}"))
    quick.execute("set lock_timeout = '50ms'")
    with pytest.raises(psycopg.errors.LockNotAvailable):
        quick.execute(INSERT, ("job-3", "quick", 1, AT, "{}"))
    slow.execute("rollback")
    quick.execute(INSERT, ("job-3", "quick", 1, AT, "{}"))
    places = [p for (p,) in shop.sql("select position from diagnose.event order by position", login=ANN)]
    assert places == list(range(1, len(places) + 1))
    slow.close()
    quick.close()


def test_no_lock_that_anybody_may_take_keeps_others_waiting(shop: Fleet) -> None:
    assert "pg_advisory" not in schema_text().split("create table")[1]
    with shop.connect(BEN) as other:
        other.execute("begin")
        other.execute(INSERT, ("job-4", "ben-2", 1, AT, "{}"))
        shop.sql(
            "set lock_timeout = '1s'; insert into diagnose.event (job, writer, seq, seen, at, body) "
            f"values ('job-4', 'ann-4', 1, '', '{AT}', '{{}}')",
            login=ANN,
        )
        other.execute("rollback")


def test_what_is_told_to_listeners_is_a_place_and_no_more(shop: Fleet) -> None:
    with shop.connect(DESK) as listening:
        (hello,) = shop.sql("select * from diagnose.hello(0)", login=DESK)
        listening.execute(f"listen {hello[4]}")
        shop.sql(INSERT, "job-5", "ann-5", 1, AT, '{"kind":"Hush"}', login=ANN)
        (told,) = listening.notifies(timeout=5, stop_after=1)
        assert told.payload == str(hello[5] + 1)
    channels = {c for (c,) in shop.sql("select channel from diagnose.company")}
    assert len(channels) == 2
    assert all(re.fullmatch(r"diagnose_[0-9a-f]{32}", c) for c in channels)


def test_functions_with_the_owners_rights_look_nowhere_else(shop: Fleet) -> None:
    rows = shop.sql(
        "select proname, prosecdef, proconfig, proacl from pg_proc where pronamespace = 'diagnose'::regnamespace"
    )
    assert len(rows) >= 8
    for name, _, config, rights in rows:
        assert config == ["search_path=pg_catalog, pg_temp"], name
        assert not re.search(r"(^|[{,])=", str(rights)), f"{name} is open to everybody"
        assert rights is not None, name
    tables = shop.sql("select relname, relacl from pg_class where relnamespace = 'diagnose'::regnamespace")
    assert not [name for name, rights in tables if rights and re.search(r"(^|[{,])=", str(rights))]


def test_making_it_again_changes_nothing(shop: Fleet) -> None:
    before = shop.sql("select id from diagnose.store"), shop.sql("select count(*) from diagnose.event")
    store = connect(shop.address())
    make_store(store)
    store.close()
    assert (shop.sql("select id from diagnose.store"), shop.sql("select count(*) from diagnose.event")) == before
    assert shop.sql(
        "select count(*) from pg_trigger where tgrelid = 'diagnose.event'::regclass and not tgisinternal"
    ) == [(3,)]


def test_who_may_come_in_is_said_by_who_keeps_the_store(shop: Fleet) -> None:
    store = connect(shop.address())
    try:
        assert new_member(store, "rights_new", "reader", "Invented Kitchens")
        assert not new_member(store, "rights_new", "desk", "Invented Kitchens")
        groups = "select roleid::regrole::text from pg_auth_members where member = 'rights_new'::regrole"
        assert shop.sql(groups) == [("diagnose_desk",)]
        with pytest.raises(Refused, match="another company"):
            new_member(store, "rights_new", "desk", "The Other Invented Company")
        with pytest.raises(Refused, match="administrator"):
            new_member(store, "keeper", "desk", "Invented Kitchens")
        for login in ("1", "diagnose_owner", "pg_monitor", "a b", 'x"y'):
            with pytest.raises(Refused, match="won't do"):
                new_member(store, login, "desk", "Invented Kitchens")
    finally:
        store.close()
    mine = connect(shop.address(ANN))
    for attempt in (lambda: make_store(mine), lambda: new_member(mine, "rights_more", "desk", "Mine")):
        with pytest.raises(Refused, match="postgres"):
            attempt()
    mine.close()


def test_an_administrator_need_not_be_a_superuser(shop: Fleet) -> None:
    shop.sql("create role rights_chief login createrole password 'x'")
    shop.cluster.keep_password("rights_chief", "x")
    shop.sql("create database fleet_chief")
    shop.sql("grant create on database fleet_chief to rights_chief")
    store = connect(shop.cluster.address("rights_chief", "fleet_chief"))
    for _ in range(2):
        make_store(store)
    assert new_member(store, "rights_hired", "technician", "Invented Kitchens")
    store.close()
    ((owner,),) = shop.cluster.sql(
        "select relowner::regrole::text from pg_class where oid = 'diagnose.event'::regclass", database="fleet_chief"
    )
    assert owner == "diagnose_owner"
