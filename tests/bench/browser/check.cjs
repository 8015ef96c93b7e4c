// node check.cjs LIBRARIES CHROMIUM SHOTS PAGE...   (called by __main__.py, which says what for)
"use strict";

const fs = require("node:fs");
const path = require("node:path");
const { createRequire } = require("node:module");
const { pathToFileURL } = require("node:url");

const [libraries, program, shots, ...pages] = process.argv.slice(2);
const from = createRequire(path.join(libraries, "package.json"));
const { chromium } = from("playwright-core");
const axe = fs.readFileSync(from.resolve("axe-core/axe.min.js"), "utf8");

const FLAGS = [
  "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
  "--disable-component-update", "--disable-sync",
];
// Page widths are A4 and Letter less the margins of the style sheet, at 96 dots an inch.
const VIEWS = [
  { name: "desk", width: 1280, media: "screen", colours: "light" },
  { name: "desk-dark", width: 1280, media: "screen", colours: "dark" },
  { name: "phone", width: 390, media: "screen", colours: "light" },
  { name: "small-phone", width: 320, media: "screen", colours: "dark" },
  { name: "a4", width: 673, media: "print", colours: "dark" },
  { name: "letter", width: 695, media: "print", colours: "light" },
];

async function look(browser, file, view) {
  const page = await browser.newPage({ viewport: { width: view.width, height: 900 }, colorScheme: view.colours });
  const faults = [];
  const address = pathToFileURL(file).href;
  page.on("request", (request) => { if (request.url() !== address) faults.push(`asks for ${request.url()}`); });
  page.on("console", (message) => { if (message.type() === "error") faults.push(`says ${message.text()}`); });
  page.on("dialog", (dialog) => { faults.push(`opens a dialog: ${dialog.message()}`); dialog.dismiss(); });
  await page.emulateMedia({ media: view.media, colorScheme: view.colours });
  await page.goto(address);
  const wide = await page.evaluate(() => {
    const room = document.documentElement.clientWidth;
    const hidden = (e) => { const head = e.closest("thead"); return head && getComputedStyle(head).clipPath !== "none"; };
    const over = [...document.querySelectorAll("main *")].filter(
      (e) => e.getBoundingClientRect().right > room + 0.5 && !hidden(e), // headers of a folded table are read, not seen
    );
    const names = over.slice(0, 3).map((e) => `${e.tagName} ${e.textContent.trim().slice(0, 30)}`);
    return { over: document.documentElement.scrollWidth - room, names };
  });
  if (wide.over > 0 || wide.names.length) faults.push(`is ${wide.over} px too wide: ${wide.names.join("; ")}`);
  await page.evaluate(() => document.querySelectorAll("details").forEach((d) => { d.open = true; }));
  await page.evaluate(axe);
  const found = await page.evaluate(() => window.axe.run(document));
  for (const each of found.violations) {
    faults.push(`${each.id} (${each.impact}): ${each.nodes.slice(0, 3).map((n) => n.target.join(" ")).join("; ")}`);
  }
  if (shots) {
    await page.evaluate(() => document.querySelectorAll("details").forEach((d) => { d.open = false; }));
    const name = `${path.basename(file, ".html")}-${view.name}`;
    await page.screenshot({ path: path.join(shots, `${name}.png`), fullPage: true });
    if (view.media === "print") {
      await page.pdf({ path: path.join(shots, `${name}.pdf`), format: view.name, preferCSSPageSize: false, printBackground: true });
    }
  }
  await page.close();
  return faults;
}

async function main() {
  const browser = await chromium.launch({ executablePath: program, args: FLAGS });
  let bad = 0;
  for (const file of pages) {
    for (const view of VIEWS) {
      const faults = await look(browser, file, view);
      bad += faults.length;
      console.log(`${path.basename(file)} ${view.name}: ${faults.length ? faults.join("\n  ") : "in order"}`);
    }
  }
  await browser.close();
  process.exitCode = bad ? 1 : 0;
}

main();
