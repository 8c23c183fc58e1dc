/** The shop's answer when it cannot do what was asked: one line for the person, and the field it is about, if any. */
export class Refusal extends Error {
  readonly field: string | undefined;

  constructor(line: string) {
    super(line);
    const named = /^([a-z][a-z0-9_.[\]]*): /.exec(line);
    this.field = named?.[1];
  }
}

export type Query = Readonly<Record<string, string | number | undefined>>;

function address(path: string, query: Query): string {
  const asked = new URLSearchParams();
  for (const [name, value] of Object.entries(query)) {
    if (value !== undefined && value !== "") asked.set(name, String(value));
  }
  const text = asked.toString();
  return text === "" ? `/api/${path}` : `/api/${path}?${text}`;
}

async function answer<T>(request: Promise<Response>): Promise<T> {
  let response: Response;
  try {
    response = await request;
  } catch (trouble) {
    if (trouble instanceof DOMException && trouble.name === "AbortError") throw trouble;
    throw new Refusal("The shop's computer does not answer. Is Tailblock still running?");
  }
  const body: unknown = await response.json().catch(() => undefined);
  if (response.ok) return body as T;
  throw new Refusal(refusalLine(body) ?? `The shop's computer answered ${response.status} and said no more.`);
}

function refusalLine(body: unknown): string | undefined {
  if (typeof body !== "object" || body === null) return undefined;
  if ("refused" in body && typeof body.refused === "string") return body.refused;
  if ("storage" in body && typeof body.storage === "string") return body.storage;
  return undefined;
}

export function ask<T>(path: string, query: Query = {}, signal?: AbortSignal): Promise<T> {
  return answer<T>(fetch(address(path, query), signal ? { signal } : {}));
}

export function send<T>(method: "POST" | "PUT", path: string, body: unknown, signal?: AbortSignal): Promise<T> {
  const headers = { "content-type": "application/json" };
  return answer<T>(
    fetch(address(path, {}), { method, headers, body: JSON.stringify(body), ...(signal ? { signal } : {}) }),
  );
}

export function sendText<T>(path: string, query: Query, text: string): Promise<T> {
  return answer<T>(
    fetch(address(path, query), { method: "POST", headers: { "content-type": "text/csv" }, body: text }),
  );
}

/** The line to show for whatever went wrong. */
export function lineFor(trouble: unknown): string {
  return trouble instanceof Error ? trouble.message : String(trouble);
}
