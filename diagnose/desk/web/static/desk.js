// Brings the page up to date while one looks at it, and looks for words in the board. Everything else works without it.
"use strict";
(() => {
  const part = document.getElementById("part");
  const live = document.getElementById("live");
  const news = document.getElementById("news");
  const field = document.getElementById("words");
  if (!part || !live || !news) return;

  const SOONEST = 1000; // ms between two looks at what is new
  const AGAIN = 5000; // ms until a lost connection is tried anew
  const SELDOM = 60000; // ms between two times that a change is read aloud
  let tag = `"${part.dataset.tag}"`;
  let stream = null;
  let asked = 0;
  let waiting = null;
  let aloud = 0;
  let lost = false;

  function now() {
    return new Date().toLocaleTimeString([], { hour: "2-digit", minute: "2-digit", hour12: false });
  }

  function say(text) {
    news.textContent = text;
  }

  function tell(works) {
    live.textContent = works ? `Brought up to date by itself, last at ${now()}.` : "Not connected; trying again.";
    if (works === lost) say(works ? "Connected again." : "The connection is lost; trying again.");
    lost = !works;
  }

  // What is the same stays the very same element, so that focus, selection and what was opened stay too.
  function renew(old, fresh) {
    if (old.nodeType !== fresh.nodeType || old.nodeName !== fresh.nodeName || (old.id || "") !== (fresh.id || "")) {
      old.replaceWith(fresh);
      return;
    }
    if (old.nodeType === Node.TEXT_NODE) {
      if (old.data !== fresh.data) old.data = fresh.data;
      return;
    }
    if (old.nodeType !== Node.ELEMENT_NODE) return;
    for (const { name, value } of [...fresh.attributes]) {
      if (old.getAttribute(name) !== value) old.setAttribute(name, value);
    }
    for (const { name } of [...old.attributes]) {
      if (!fresh.hasAttribute(name) && name !== "open" && name !== "hidden") old.removeAttribute(name);
    }
    renewChildren(old, fresh);
  }

  function renewChildren(old, fresh) {
    const byId = new Map([...old.children].filter((e) => e.id).map((e) => [e.id, e]));
    let place = old.firstChild;
    for (const child of [...fresh.childNodes]) {
      const named = child.id ? byId.get(child.id) : null;
      if (named) {
        if (named !== place) old.insertBefore(named, place);
        renew(named, child);
        place = named.isConnected ? named.nextSibling : place;
      } else if (place && !place.id && !child.id && place.nodeName === child.nodeName) {
        const next = place.nextSibling;
        renew(place, child);
        place = next;
      } else {
        old.insertBefore(child, place);
      }
    }
    while (place) {
      const next = place.nextSibling;
      place.remove();
      place = next;
    }
  }

  function replace(text) {
    const fresh = new DOMParser().parseFromString(text, "text/html").body;
    const focused = document.activeElement;
    const steady = anchor();
    const before = steady ? steady.getBoundingClientRect().top : 0;
    const row = document.createElement("div");
    row.append(...fresh.childNodes);
    renewChildren(part, row);
    look(false);
    if (focused && focused !== document.body && focused.isConnected && document.activeElement !== focused) {
      focused.focus({ preventScroll: true });
    }
    if (steady && steady.isConnected) window.scrollBy(0, steady.getBoundingClientRect().top - before);
  }

  // The first row or section in view: it stays where it is on the screen.
  function anchor() {
    if (window.scrollY === 0) return null;
    return [...part.querySelectorAll("tr[id], section[id]")].find((e) => e.getBoundingClientRect().bottom > 0) || null;
  }

  function looked(works) {
    tell(works);
    if (!works) setTimeout(fetchSoon, AGAIN);
  }

  async function fetchPart() {
    asked = Date.now();
    try {
      const answer = await fetch(part.dataset.part, { headers: { "If-None-Match": tag }, cache: "no-store", redirect: "error" });
      if (answer.status === 401) {
        location.assign("/login");
      } else if (answer.status === 200) {
        const text = await answer.text();
        tag = answer.headers.get("ETag") || "";
        replace(text);
        tell(true);
        if (Date.now() - aloud > SELDOM) {
          aloud = Date.now();
          say("This page changed.");
        }
      } else {
        looked(answer.status === 304);
      }
    } catch {
      looked(false);
    }
  }

  function fetchSoon() {
    if (waiting) return;
    waiting = setTimeout(() => { waiting = null; fetchPart(); }, Math.max(0, asked + SOONEST - Date.now()));
  }

  // A page nobody looks at holds no stream: a browser has few of them for all its pages.
  function connect() {
    if (stream || document.hidden) return;
    stream = new EventSource("/events");
    stream.addEventListener("changed", fetchSoon);
    stream.addEventListener("out", () => location.assign("/login"));
    stream.addEventListener("error", () => {
      if (stream && stream.readyState === EventSource.CLOSED) {
        disconnect();
        setTimeout(() => { fetchSoon(); connect(); }, AGAIN);
      } else {
        tell(false);
      }
    });
  }

  function disconnect() {
    if (stream) stream.close();
    stream = null;
  }

  document.addEventListener("visibilitychange", () => {
    if (document.hidden) disconnect();
    else connect();
  });
  window.addEventListener("pagehide", disconnect);
  window.addEventListener("pageshow", connect);

  // Rows without the words are hidden; how many are left is said a moment after the last key.
  let typed = null;
  function look(said) {
    if (!field) return;
    const words = field.value.toLowerCase().split(/\s+/).filter(Boolean);
    const rows = [...part.querySelectorAll("tr[data-said]")];
    let shown = 0;
    for (const row of rows) {
      const fits = words.every((word) => row.dataset.said.includes(word));
      row.hidden = !fits;
      shown += fits ? 1 : 0;
    }
    const count = document.getElementById("count");
    const told = shown === 1 ? "1 open job" : `${shown} open jobs`;
    if (count && rows.length) count.textContent = shown === rows.length ? told : `${shown} of ${rows.length} open jobs shown`;
    if (!said || !count) return; // a page brought up to date meanwhile leaves what is to be said
    clearTimeout(typed);
    typed = setTimeout(() => say(count.textContent), 800);
  }

  if (field) {
    field.addEventListener("input", () => {
      look(true);
      const address = new URL(location.href);
      if (field.value) address.searchParams.set("words", field.value);
      else address.searchParams.delete("words");
      history.replaceState(null, "", address);
    });
    if (field.value) {
      tag = "";
      fetchPart();
    }
  }
  tell(true);
  connect();
})();
