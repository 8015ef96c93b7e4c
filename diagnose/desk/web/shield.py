"""Around every answer: the name it was asked under is checked, and headers are set that shut everything else out."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from starlette.datastructures import Headers, MutableHeaders
from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from diagnose.desk.web.gate import name_in
from diagnose.view import board_words as words

__all__ = ["HEADERS", "Shield", "from_here"]

HEADERS = {
    "Content-Security-Policy": (
        "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; form-action 'self'; "
        "frame-ancestors 'none'; base-uri 'none'"
    ),
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
    "Referrer-Policy": "no-referrer",
    "Cache-Control": "no-store",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
}


class Shield:
    """Wraps the pages. `names` are those this server goes by besides loopback ones; `log` gets what fails inside."""

    def __init__(self, pages: ASGIApp, names: Sequence[str], log: Callable[[Exception], object]) -> None:
        self._pages = pages
        self._names = tuple(names)
        self._log = log

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] != "http":
            await self._pages(scope, receive, send)
            return

        async def shielded(message: Message) -> None:
            if message["type"] == "http.response.start":
                headers = MutableHeaders(scope=message)
                for name, value in HEADERS.items():
                    headers[name] = value
            await send(message)

        hosts = Headers(scope=scope).getlist("host")
        if len(hosts) != 1 or not name_in(hosts[0], self._names):
            await PlainTextResponse(words.WRONG_HOST, 421)(scope, receive, shielded)
            return
        try:
            await self._pages(scope, receive, shielded)
        except Exception as error:  # answered already
            self._log(error)


def from_here(headers: Headers) -> bool:
    """Whether a form was sent by a page of this server: whoever says otherwise is turned away.

    Our own pages send no referrer, so that a browser may say `null` where it says who sent a form.
    """
    site, origin = headers.get("sec-fetch-site"), headers.get("origin")
    if site is not None:
        return site in ("same-origin", "none")
    if origin in (None, "null"):
        return True
    return origin.partition("://")[2].casefold() == (headers.get("host") or "").casefold()
