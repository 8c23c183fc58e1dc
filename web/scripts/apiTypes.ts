import { compile, type JSONSchema } from "json-schema-to-typescript";

/** As much of an OpenAPI document as is read here. */
export interface ApiDocument {
  readonly components: { readonly schemas: Readonly<Record<string, unknown>> };
}

/** A reference with words of its own beside it would be taken for one more type. */
function bareReference(_key: string, value: unknown): unknown {
  return typeof value === "object" && value !== null && "$ref" in value ? { $ref: value.$ref } : value;
}

/** TypeScript for every struct the API document names; ranges and meanings stay as comments. */
export async function apiTypes(document: ApiDocument): Promise<string> {
  const { schemas } = document.components;
  const text = JSON.stringify(schemas).replaceAll("#/components/schemas/", "#/$defs/");
  const names = Object.keys(schemas).sort();
  const whole = {
    title: "Api",
    type: "object",
    additionalProperties: false,
    required: names,
    properties: Object.fromEntries(names.map((name) => [name, { $ref: `#/$defs/${name}` }])),
    $defs: JSON.parse(text, bareReference),
  } satisfies JSONSchema;
  return compile(whole, "Api", {
    additionalProperties: false,
    ignoreMinAndMaxItems: true,
    bannerComment: "// Written by `npm run types` from the program's own API document; not by hand.",
    style: { printWidth: 120 },
  });
}
