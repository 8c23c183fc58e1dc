// The API document against a general OpenAPI 3.1 linter of the npm registry: node openapi_peer.mjs PROGRAM, where
// PROGRAM is tailblock. The program is started on an invented shop, and its own document is checked; then every GET of
// it that takes no more than a number is called, and the answer must fit the schema that the document states.
import assert from "node:assert/strict";
import { spawn } from "node:child_process";
import { createRequire } from "node:module";
import test from "node:test";

const require = createRequire(new URL("../../web/package.json", import.meta.url));
const { createConfig, lintFromString } = require("@redocly/openapi-core");
const { default: Ajv } = require("ajv/dist/2020.js");

const program = process.argv[2] ?? process.env.TAILBLOCK_PROGRAM;
if (!program) throw new Error("usage: node openapi_peer.mjs PROGRAM");

const shop = spawn(program, ["demo", "--port", "0"], { stdio: ["ignore", "pipe", "inherit"] });
const address = await new Promise((found, lost) => {
  let said = "";
  shop.stdout.on("data", (part) => {
    said += part;
    const match = /http:\/\/127\.0\.0\.1:\d+\//.exec(said);
    if (match) found(match[0]);
  });
  shop.on("exit", () => lost(new Error(`the program ended: ${said}`)));
});
test.after(() => shop.kill());

const source = await (await fetch(new URL("api/openapi.json", address))).text();
const document = JSON.parse(source);

test("the document is valid OpenAPI 3.1", async () => {
  const config = await createConfig({ extends: ["spec"], rules: { struct: "error", "no-unresolved-refs": "error" } });
  const problems = await lintFromString({ source, config, absoluteRef: "openapi.json" });
  assert.deepEqual(problems.map((problem) => `${problem.location[0]?.pointer}: ${problem.message}`), []);
});

const ajv = new Ajv({ strict: false, formats: { date: /^\d{4}-\d\d-\d\d$/ } });
ajv.addSchema({ $id: "openapi", components: document.components });

/** An estimate is of a visit that has jobs. */
const visitWithJobs = async () => (await (await fetch(new URL("api/bench", address))).json()).work[0].visit_id;

for (const [path, calls] of Object.entries(document.paths)) {
  const schema = calls.get?.responses["200"].content["application/json"]?.schema;
  if (!schema?.$ref) continue;
  if (path === "/api/read-length") continue; // needs a text; tests/http/endpoints_test.cpp asks it
  test(`GET ${path}`, async () => {
    const id = path === "/api/visits/{id}/estimate" ? await visitWithJobs() : 1;
    const answer = await fetch(new URL(path.replace("{id}", id).slice(1), address));
    assert.equal(answer.status, 200, await answer.clone().text());
    const fits = ajv.compile({ $ref: `openapi${schema.$ref}` });
    assert.ok(fits(await answer.json()), JSON.stringify(fits.errors?.slice(0, 3)));
  });
}
