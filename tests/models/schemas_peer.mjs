// The schemas of every computation against ajv, a general JSON Schema 2020-12 validator of the npm registry:
// node schemas_peer.mjs PROGRAM, where PROGRAM is tailblock. Each schema must be valid itself (strict, no unknown
// keyword), each example must fit its request schema, each result its result schema, and an example with a field that
// nobody knows must fit no longer.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { createRequire } from "node:module";
import test from "node:test";

const require = createRequire(new URL("../../web/package.json", import.meta.url));
const { default: Ajv } = require("ajv/dist/2020.js");

const program = process.argv[2] ?? process.env.TAILBLOCK_PROGRAM;
if (!program) throw new Error("usage: node schemas_peer.mjs PROGRAM");

const run = (args, input) => execFileSync(program, args, { input, encoding: "utf8", maxBuffer: 1 << 26 });
const names = run(["compute", "--list"]).trim().split("\n").map((line) => line.split(/\s/)[0]);

/** A field whose reader takes a number or text says so with oneOf; ajv's strict mode wants types that may join. */
const validator = (schema) =>
  new Ajv({ strict: true, strictTypes: false, strictRequired: true, formats: { date: /^\d{4}-\d\d-\d\d$/ } }).compile(schema);

test("there are computations", () => assert.ok(names.length >= 8, names.join()));

for (const name of names) {
  test(name, () => {
    const { request, result } = JSON.parse(run(["compute", name, "--schema"]));
    const example = JSON.parse(run(["compute", name, "--example"]));
    const fitsRequest = validator(request);
    assert.ok(fitsRequest(example), JSON.stringify(fitsRequest.errors));
    assert.equal(fitsRequest({ ...example, colour: "brown" }), false);
    const answer = JSON.parse(run(["compute", name], JSON.stringify(example)));
    const fitsResult = validator(result);
    assert.ok(fitsResult(answer), JSON.stringify(fitsResult.errors));
  });
}
