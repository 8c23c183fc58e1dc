// The shop's calendar file read by the iCalendar parser of the npm registry: node calendar_peer.mjs PROGRAM, where PROGRAM
// is tailblock; paper_test, which lies beside it, writes the invented file. Then the feed of the demonstration's bench.
import { execFileSync, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";

const require = createRequire(new URL("../../web/package.json", import.meta.url));
const library = require("ical.js");
const ICAL = library.default ?? library;

const program = process.argv[2];
if (!program) {
  console.error("usage: node calendar_peer.mjs PROGRAM");
  process.exit(2);
}

function written() {
  const folder = mkdtempSync(join(tmpdir(), "tailblock-calendar-"));
  try {
    execFileSync(join(dirname(program), "paper_test"), ["--gtest_filter=Documents.are_written_where_*"], {
      env: { ...process.env, TAILBLOCK_SHOW_PAPER: folder },
    });
    return readFileSync(join(folder, "bench.ics"), "utf8");
  } finally {
    rmSync(folder, { recursive: true });
  }
}

let faults = 0;
function same(what, got, wanted) {
  if (JSON.stringify(got) === JSON.stringify(wanted)) return;
  console.error(`${what}: ${JSON.stringify(got)} where ${JSON.stringify(wanted)} was meant`);
  faults += 1;
}

ICAL.design.strict = true;
const calendar = new ICAL.Component(ICAL.parse(written()));
same("version", calendar.getFirstPropertyValue("version"), "2.0");
same("name", calendar.getFirstPropertyValue("name"), "Under the Stairs: bench (invented)");
same("ask again after", calendar.getFirstPropertyValue("refresh-interval").toSeconds(), 900);

const events = calendar.getAllSubcomponents("vevent").map((component) => new ICAL.Event(component));
const moments = (event) => ({
  uid: event.uid,
  from: event.startDate.isDate ? event.startDate.toString() : event.startDate.toJSDate().toISOString(),
  to: event.endDate.isDate ? event.endDate.toString() : event.endDate.toJSDate().toISOString(),
  zone: event.startDate.isDate ? "none" : event.startDate.zone.tzid,
  changes: event.sequence,
  status: event.component.getFirstPropertyValue("status"),
  stamped: event.component.getFirstPropertyValue("dtstamp").toJSDate().toISOString(),
});
const stamped = "2026-02-20T08:05:00.000Z";
same("events", events.map(moments), [
  { uid: "promise-14@invented.example", from: "2026-02-27", to: "2026-02-28", zone: "none", changes: 1, status: "CONFIRMED", stamped },
  { uid: "cure-88@invented.example", from: "2026-02-21T07:30:00.000Z", to: "2026-02-21T07:45:00.000Z", zone: "UTC", changes: 0, status: "CONFIRMED", stamped },
  { uid: "cure-89@invented.example", from: "2026-02-28T23:59:00.000Z", to: "2026-02-28T23:59:00.000Z", zone: "UTC", changes: 2, status: "CANCELLED", stamped },
]);
same("title with letters of other tongues", events[0].summary, "Promised: Mid-size flat-top, Zofia Łęcka-Désirée");
same(
  "text with a line end, comma, semicolon and backslash",
  events[0].description,
  "Crack, bridge; strings after 3 days.\nHolds with 80 %; ask again, if a step slips \\ waits.",
);
same("place", events[0].location, "3 Invented Lane, Anytown");
same(
  "folded title",
  events[1].summary,
  "Cure ends: bridge of 014 – clamps off, Ærø ☂ 日本語 a title that is long enough to be folded, more than once",
);

async function served() {
  const demo = spawn(program, ["demo", "--no-open", "--port", "0", "--today", "2026-02-20", "--at", "10:40"], {
    env: { ...process.env, TZ: "Europe/Berlin" },
  });
  try {
    let said = "";
    for await (const chunk of demo.stdout) {
      said += chunk;
      if (/http:\/\/127\.0\.0\.1:\d+/.test(said)) break;
    }
    const address = /http:\/\/127\.0\.0\.1:\d+/.exec(said)[0];
    const asked = async (path) => await fetch(`${address}/api/bench${path}`);
    const [feed, bench] = [await (await asked("/calendar.ics")).text(), await (await asked("")).json()];
    return { feed, bench };
  } finally {
    demo.kill("SIGTERM");
    await once(demo, "exit");
  }
}

const { feed, bench } = await served();
const inFeed = new ICAL.Component(ICAL.parse(feed)).getAllSubcomponents("vevent").map((one) => new ICAL.Event(one));
const waiting = bench.work.filter((work) => work.state === "waiting");
const cures = inFeed.filter((event) => event.uid.startsWith("cure-"));
// Berlin is an hour ahead of UTC on that day; its February has no summer time (Directive 2000/84/EC, read).
const ends = ({ wait_ends: { day, minute } }) => new Date(Date.parse(`${day}T00:00:00Z`) + (minute - 60) * 60_000);
same(
  "cures of the bench",
  cures.map((event) => event.startDate.toJSDate().toISOString()).sort(),
  waiting.map((work) => ends(work).toISOString()).sort(),
);
same("there are cures", cures.length > 0, true);
same(
  "promises of the bench",
  inFeed.filter((event) => event.uid.startsWith("promise-")).map((event) => event.startDate.toString()).sort(),
  bench.instruments.flatMap((one) => (one.promised ? [one.promised] : [])).sort(),
);
same("UIDs", new Set(inFeed.map((event) => event.uid)).size, inFeed.length);
console.log(`  calendar: ${events.length + inFeed.length} events read, ${faults} differ`);
process.exit(faults === 0 ? 0 : 1);
