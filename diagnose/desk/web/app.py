"""The pages of the desk and who gets them: everything but the login needs a session, and nothing here changes a job."""

from __future__ import annotations

import asyncio
import contextlib
from collections.abc import AsyncIterator, Awaitable, Callable, Sequence
from math import ceil
from urllib.parse import parse_qs, urlencode

from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import HTMLResponse, PlainTextResponse, RedirectResponse, Response
from starlette.routing import Route
from starlette.types import ASGIApp

from diagnose.desk.web.changes import Changes, EventStream
from diagnose.desk.web.gate import Gate
from diagnose.desk.web.pages import STATIC, Pages, job_path, tag_of
from diagnose.desk.web.reader import Reader
from diagnose.desk.web.shield import Shield, from_here
from diagnose.view import board_words as words
from diagnose.view.trouble import trouble

__all__ = ["Desk"]

POLL_SECONDS = 0.5  # how often it is asked whether the journal changed
AGES_SECONDS = 60.0  # how often lengths of time on the pages are told anew
_AFTER_FAULT = 5.0  # seconds
_LONGEST_FORM = 4096  # bytes
Handler = Callable[[Request], Awaitable[Response]]


class Desk:
    """The pages over one journal. `port` and `secure` shape the cookie, `names` are those this server goes by."""

    def __init__(
        self, reader: Reader, gate: Gate, port: int, names: Sequence[str] = (), secure: bool = False, streams: int = 24
    ) -> None:
        self._reader = reader
        self._gate = gate
        self._pages = Pages()
        self.changes = Changes(streams)
        self._unknown = asyncio.Event()  # something leads that is not worked out yet
        self._cookie = f"desk-{port}"  # a cookie belongs to a host, whatever the port
        self._secure = secure
        self.app: ASGIApp = Shield(self._routes(), names, trouble)

    def _routes(self) -> Starlette:
        inside: list[tuple[str, Handler]] = [
            ("/", self._board),
            ("/job/{job:path}", self._job),
            ("/part/board", self._board_part),
            ("/part/job/{job:path}", self._job_part),
            ("/events", self._events),
        ]
        routes = [Route(path, self._within(handler), methods=["GET"]) for path, handler in inside]
        routes += [
            Route("/login", self._login, methods=["GET"]),
            Route("/login", self._enter, methods=["POST"]),
            Route("/logout", self._leave, methods=["POST"]),
            Route("/static/{name}", self._static, methods=["GET"]),
        ]
        faults = {HTTPException: self._refused, Exception: self._fault}
        return Starlette(routes=routes, lifespan=self._living, exception_handlers=faults)

    @contextlib.asynccontextmanager
    async def _living(self, _: Starlette) -> AsyncIterator[None]:
        await self._reader.open()
        tasks = [asyncio.create_task(each) for each in (self._watch(), self._work_out())]
        yield
        for task in tasks:
            task.cancel()
        await asyncio.gather(*tasks, return_exceptions=True)
        await self._reader.close()

    async def _watch(self) -> None:
        """Notice what is written into the journal, once for all who look on."""
        clock = asyncio.get_running_loop().time
        told = clock()
        while True:
            await asyncio.sleep(POLL_SECONDS)
            try:
                if await self._reader.changed() or clock() - told >= AGES_SECONDS:
                    told = clock()
                    await self.changes.add()
            except Exception as error:
                trouble(error)
                await asyncio.sleep(_AFTER_FAULT)

    async def _work_out(self) -> None:
        """Work out what leads in jobs of which it is not known, one after the other, and tell it now and then."""
        clock = asyncio.get_running_loop().time
        while True:
            await self._unknown.wait()
            self._unknown.clear()
            told = clock()
            try:
                while await self._reader.work_out_one():
                    if clock() - told >= 2 * POLL_SECONDS:
                        told = clock()
                        await self.changes.add()
                await self.changes.add()
            except Exception as error:
                trouble(error)
                await asyncio.sleep(_AFTER_FAULT)

    def _session(self, request: Request) -> str | None:
        return request.cookies.get(self._cookie)

    def _within(self, handler: Handler) -> Handler:
        """Only with a session; a page leads to the login and back, anything else is refused."""

        async def checked(request: Request) -> Response:
            if self._gate.holds(self._session(request)):
                return await handler(request)
            if request.url.path == "/" or request.url.path.startswith("/job/"):
                to = job_path(request.path_params["job"]) if "job" in request.path_params else "/"
                return RedirectResponse(f"/login?{urlencode({'to': to})}" if to != "/" else "/login", 303)
            return PlainTextResponse(words.LOGGED_OUT, 401)

        return checked

    async def _board(self, request: Request) -> Response:
        rows = await self._reader.rows()
        if any(lead is None for _, lead in rows):
            self._unknown.set()
        asked = request.query_params
        page = self._pages.board(rows, asked.get("words", ""), asked.get("sort", ""), self._reader.now())
        return HTMLResponse(page)

    async def _board_part(self, request: Request) -> Response:
        rows = await self._reader.rows()
        if any(lead is None for _, lead in rows):
            self._unknown.set()
        part = self._pages.board_part(rows, "", request.query_params.get("sort", ""), self._reader.now())
        return _part(request, part)

    async def _job(self, request: Request) -> Response:
        page = await self._reader.page(request.path_params["job"])
        if page is None:
            raise HTTPException(404, words.NO_SUCH_JOB)
        return HTMLResponse(self._pages.job(page))

    async def _job_part(self, request: Request) -> Response:
        page = await self._reader.page(request.path_params["job"])
        if page is None:
            raise HTTPException(404, words.NO_SUCH_JOB)
        return _part(request, self._pages.job_part(page))

    async def _events(self, request: Request) -> Response:
        if not self.changes.room():
            return PlainTextResponse("", 503, {"Retry-After": "15"})
        session = self._session(request)
        return EventStream(self.changes, lambda: self._gate.holds(session))

    async def _login(self, request: Request) -> Response:
        if self._gate.holds(self._session(request)):
            return RedirectResponse("/", 303)
        told = words.LOGGED_OUT if "out" in request.query_params else ""
        return HTMLResponse(self._pages.login(told, _safe(request.query_params.get("to", "/"))))

    async def _enter(self, request: Request) -> Response:
        if not from_here(request.headers):
            raise HTTPException(403, words.WRONG_ORIGIN)
        form = await _form(request)
        to = _safe(form.get("to", "/"))
        wait = ceil(self._gate.wait())
        if wait:
            told = words.LOGIN_WAIT.format(seconds=wait)
            return HTMLResponse(self._pages.login(told, to), 429, {"Retry-After": str(wait)})
        session = self._gate.enter(form.get("token", ""))
        if session is None:
            return HTMLResponse(self._pages.login(words.LOGIN_WRONG, to), 403)
        answer = RedirectResponse(to, 303)
        answer.set_cookie(self._cookie, session, httponly=True, samesite="strict", secure=self._secure, path="/")
        return answer

    async def _leave(self, request: Request) -> Response:
        if not from_here(request.headers):
            raise HTTPException(403, words.WRONG_ORIGIN)
        self._gate.leave(self._session(request))
        await self.changes.add()  # wakes the streams of this session, which then end
        answer = RedirectResponse("/login?out", 303)
        answer.delete_cookie(self._cookie, httponly=True, samesite="strict", secure=self._secure, path="/")
        return answer

    async def _static(self, request: Request) -> Response:
        found = STATIC.get(request.path_params["name"])
        if found is None:
            raise HTTPException(404)
        return Response(found[0], media_type=found[1])

    async def _fault(self, request: Request, error: Exception) -> Response:
        """What is said when something inside fails; the shield around the pages logs it."""
        return PlainTextResponse(f"{words.FAULT}. {words.FAULT_TOLD}", 500)

    async def _refused(self, request: Request, error: Exception) -> Response:
        assert isinstance(error, HTTPException)
        known = error.detail if error.detail in (words.NO_SUCH_JOB, words.WRONG_ORIGIN) else ""
        title = known if known == words.WRONG_ORIGIN else words.NOT_FOUND
        page = self._pages.message(title, known if known != title else "", self._gate.holds(self._session(request)))
        return HTMLResponse(page, error.status_code, error.headers)


def _part(request: Request, part: str) -> Response:
    """A part of a page, or that it is the same as the one named by its tag."""
    tag = f'"{tag_of(part)}"'
    if request.headers.get("if-none-match") == tag:
        return Response(status_code=304, headers={"ETag": tag})
    return HTMLResponse(part, headers={"ETag": tag})


async def _form(request: Request) -> dict[str, str]:
    """The fields of a small form. Raises HTTPException where it is none."""
    body = b""
    async for piece in request.stream():
        body += piece
        if len(body) > _LONGEST_FORM:
            raise HTTPException(413)
    try:
        fields = parse_qs(body.decode("ascii"), strict_parsing=bool(body), max_num_fields=8)
    except (UnicodeDecodeError, ValueError):
        raise HTTPException(400) from None
    return {name: values[0] for name, values in fields.items()}


def _safe(to: str) -> str:
    """A page of this server, or the board: a link to the login must not lead elsewhere after it."""
    good = to.startswith("/job/") and to.isascii() and to.isprintable() and "\\" not in to and len(to) < 600
    return to if good else "/"
