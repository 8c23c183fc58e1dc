// The shop's calendar file read by the iCalendar parser of the npm registry: node calendar_peer.mjs PROGRAM, where PROGRAM
// is tailblock; paper_test, which lies beside it, writes the invented file.
import { execFileSync } from "node:child_process";
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
console.log(`  calendar: ${events.length} events read, ${faults} differ`);
process.exit(faults === 0 ? 0 : 1);
